package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.CoursePlan.Topic;
import ampersheet.sheet.CoursePlan.Week;
import ampersheet.sheet.Plan.Entry;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.SourceText;
import ampersheet.source.WithinMemory;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads course files; the form is told in {@code problem-templates/README.md}. */
public final class CoursePlanReader {
    private static final String WEEKS = "weeks";
    private static final String PROBLEMS = "problems-a-week";
    private static final int USUAL_PROBLEMS = 8;
    private static final int USUAL_SEATS = 40;
    private static final String WEEK_EXAMPLE =
            "{date: 2026-03-02, new: [{template: current-limiting/one-indicator, example: yes}]}";
    /** Keys of a course that no plan has. */
    private static final Set<String> OWN = Set.of(WEEKS, PROBLEMS, "gap", "seats", "pools");

    private static final Map<String, Boolean> POOLS = PlanReader.ordered("mixed", false, "together", true);

    private final Faults faults = new Faults();
    private final PlanReader plans;
    private LocalDate before;

    private CoursePlanReader(String file, String text, Optional<PlanReader.Beside> beside) {
        this.plans = new PlanReader(file, text, beside, faults);
    }

    /** Whether a file is meant as a course, and not as the plan of one sheet. */
    public static boolean isCourse(String file, String text) {
        return YamlReader.read(new SourceText(file, text), new Faults())
                .filter(Yaml.Mapping.class::isInstance)
                .flatMap(root -> ((Yaml.Mapping) root).value(WEEKS))
                .isPresent();
    }

    /**
     * The course without the files that it names.
     *
     * @param file as its reader knows it
     * @throws DiagnosticException with all faults of the file at once
     */
    public static CoursePlan read(String file, String text) {
        return read(file, text, Optional.empty());
    }

    /** The course with the files that it names. */
    public static CoursePlan read(String file, String text, PlanReader.Beside beside) {
        return read(file, text, Optional.of(beside));
    }

    private static CoursePlan read(String file, String text, Optional<PlanReader.Beside> beside) {
        if (text.isBlank()) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(file), say("plan.course.empty"), say("plan.course.keys"), say("plan.begin")));
        }
        return WithinMemory.of(file, () -> new CoursePlanReader(file, text, beside).course(file, text));
    }

    private CoursePlan course(String file, String text) {
        Optional<Yaml> root = YamlReader.read(new SourceText(file, text), faults);
        Optional<CoursePlan> course = root.flatMap(this::course);
        if (faults.hasErrors()) {
            throw new DiagnosticException(faults.inOrder());
        }
        return course.orElseThrow();
    }

    private Optional<CoursePlan> course(Yaml root) {
        if (!(root instanceof Yaml.Mapping mapping)) {
            faults.error(
                    root.place(),
                    say("plan.course.not-a-course", "kind", root.kind()),
                    say("plan.course.keys"),
                    say("plan.begin"));
            return Optional.empty();
        }
        Fields fields = new Fields(mapping, say("plan.group.course"), faults);
        for (String key : List.of("date", "due")) {
            if (fields.hasUntold(key)) {
                faults.error(
                        fields.placeOf(key),
                        say("plan.course.of-a-week", "key", key),
                        say("plan.course.of-a-week.expected", "key", key),
                        say("plan.course.of-a-week.next"));
            }
        }
        int problems = number(fields, PROBLEMS, 1, PlanReader.MOST_PROBLEMS).orElse(USUAL_PROBLEMS);
        int gap = number(fields, "gap", 1, CoursePlan.MOST_WEEKS).orElse(1);
        int seats = number(fields, "seats", 1, CoursePlan.MOST_SEATS).orElse(USUAL_SEATS);
        boolean together = plans.choice(fields, "pools", POOLS, false);
        List<Week> weeks = weeks(fields, problems);
        Plan common = plans.withoutProblems(fields);
        if (common.dealing().repeats()) {
            faults.error(
                    fields.placeOf("repeats"),
                    say("plan.course.repeats"),
                    say("plan.course.repeats.expected"),
                    say("plan.course.repeats.next"));
        }
        fields.finish();
        List<Yaml.Entry> said = mapping.entries().stream()
                .filter(entry -> !OWN.contains(entry.key().text()))
                .filter(entry -> !PlanWriter.OF_ONE.contains(entry.key().text()))
                .toList();
        return Optional.of(new CoursePlan(common, said, problems, gap, seats, together, weeks));
    }

    private List<Week> weeks(Fields fields, int problems) {
        fields.need(WEEKS, say("plan.course.weeks.expected", "example", WEEK_EXAMPLE));
        List<Week> weeks = new ArrayList<>();
        for (Yaml.Mapping written : fields.groups(WEEKS, WEEK_EXAMPLE)) {
            weeks.add(week(new Fields(written, say("plan.group.week"), faults), problems, weeks.size() + 1));
        }
        if (fields.list(WEEKS).map(list -> list.items().isEmpty()).orElse(false)) {
            faults.error(
                    fields.placeOf(WEEKS),
                    say("plan.course.weeks.none"),
                    say("plan.course.weeks.none.expected", "example", WEEK_EXAMPLE),
                    say("plan.course.weeks.none.next"));
        } else if (weeks.size() > CoursePlan.MOST_WEEKS) {
            faults.error(
                    fields.placeOf(WEEKS),
                    say("plan.course.weeks.many", "count", Integer.toString(weeks.size())),
                    say("plan.at-most", "most", Integer.toString(CoursePlan.MOST_WEEKS)),
                    say("plan.course.weeks.many.next"));
        } else if (!weeks.isEmpty() && weeks.get(0).enters().isEmpty() && !faults.hasErrors()) {
            faults.error(
                    weeks.get(0).place(),
                    say("plan.course.first-week"),
                    say("plan.course.first-week.expected"),
                    say("plan.course.first-week.next"));
        }
        return weeks;
    }

    private Week week(Fields fields, int usual, int number) {
        LocalDate date = fields.needText("date", say("plan.course.date.expected"))
                .flatMap(written -> date(written, number))
                .orElse(LocalDate.EPOCH);
        String title = words(fields, "title");
        String due = words(fields, "due");
        int problems = number(fields, "problems", 1, PlanReader.MOST_PROBLEMS).orElse(usual);
        List<Topic> enters = new ArrayList<>();
        for (Yaml.Mapping written : fields.groups("new", PlanReader.ENTRY_EXAMPLE)) {
            Fields topic = new Fields(written, say("plan.group.topic"), faults);
            Optional<Integer> gap = topic.text("gap").flatMap(this::gap);
            Optional<Entry> entry = plans.entry(topic);
            entry.ifPresent(read -> enters.add(new Topic(read, gap)));
        }
        fields.finish();
        return new Week(date, title, due, problems, enters, fields.place());
    }

    private Optional<LocalDate> date(Yaml.Scalar written, int number) {
        try {
            LocalDate date = LocalDate.parse(written.text());
            if (before != null && !date.isAfter(before)) {
                faults.error(
                        written.place(),
                        say(
                                "plan.course.order",
                                "number",
                                Integer.toString(number),
                                "date",
                                date.toString(),
                                "before",
                                before.toString()),
                        say("plan.course.order.expected"),
                        say("plan.course.order.next"));
            }
            before = date;
            return Optional.of(date);
        } catch (DateTimeParseException unreadable) {
            faults.error(
                    written.place(),
                    say("plan.course.date.unread", "written", written.text()),
                    say("plan.course.date.unread.expected"),
                    say("plan.course.date.unread.next"));
            return Optional.empty();
        }
    }

    private Optional<Integer> gap(Yaml.Scalar written) {
        if (written.text().equals("never")) {
            return Optional.of(0);
        }
        return plans.wholeNumber(written, "gap", 1, CoursePlan.MOST_WEEKS);
    }

    private Optional<Integer> number(Fields fields, String key, int least, int most) {
        return fields.text(key).flatMap(written -> plans.wholeNumber(written, key, least, most));
    }

    private static String words(Fields fields, String key) {
        return fields.text(key)
                .map(written -> RosterReader.printable(written.text()))
                .orElse("");
    }
}
