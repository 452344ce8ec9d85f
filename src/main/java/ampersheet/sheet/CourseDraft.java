package ampersheet.sheet;

import static ampersheet.source.Told.say;

import java.time.LocalDate;
import java.util.List;

/** A course file to begin with: the problems of a plan enter one after the other, and return. */
public final class CourseDraft {
    private static final int FEWEST_PROBLEMS = 3;
    private static final int DAYS_A_WEEK = 7;
    /** Column in which they begin. */
    private static final int COMMENTS = 29;

    private CourseDraft() {}

    /**
     * Half of the problems enter in the first week, so that there is something to return; the others follow evenly. The
     * plan's seed stays with the plan: the weeks would show the numbers of its sheets again.
     *
     * @param first day of the first week
     * @param seats for so many each week keeps numbers
     */
    public static String of(Plan plan, LocalDate first, int weeks, int seats) {
        List<Plan.Entry> entries = plan.entries();
        int problems = entries.stream().mapToInt(Plan.Entry::count).sum();
        StringBuilder text = new StringBuilder();
        say("plan.draft.comment")
                .lines()
                .forEach(line -> text.append("# ").append(line).append('\n'));
        text.append("title: ").append(EntryText.quoted(plan.title())).append('\n');
        PlanWriter.saidOfCourse(plan)
                .forEach(entry -> text.append(entry.key().text())
                        .append(": ")
                        .append(PlanWriter.flow(entry.value()))
                        .append('\n'));
        commented(text, "problems-a-week: " + Math.max(FEWEST_PROBLEMS, problems), say("plan.draft.problems"));
        commented(text, "seats: " + seats, say("plan.draft.seats"));
        commented(text, "gap: 1", say("plan.draft.gap"));
        text.append("weeks:\n");
        int begun = 0;
        for (int week = 1; week <= weeks; week++) {
            text.append("  - date: ")
                    .append(first.plusDays((long) DAYS_A_WEEK * (week - 1)))
                    .append('\n');
            int until = enteredBy(week, weeks, entries.size());
            if (until > begun) {
                text.append("    new:\n");
                entries.subList(begun, until)
                        .forEach(entry -> text.append("      - ")
                                .append(EntryText.READABLE.of(entry))
                                .append('\n'));
            }
            begun = until;
        }
        return text.toString();
    }

    private static int enteredBy(int week, int weeks, int entries) {
        int firstHalf = (entries + 1) / 2;
        int others = entries - firstHalf;
        return week == weeks ? entries : firstHalf + (others * (week - 1) + weeks - 2) / Math.max(1, weeks - 1);
    }

    private static void commented(StringBuilder text, String line, String comment) {
        text.append(line)
                .append(" ".repeat(Math.max(1, COMMENTS - line.length())))
                .append("# ")
                .append(comment)
                .append('\n');
    }
}
