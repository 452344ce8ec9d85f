package ampersheet.issue;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.Timetable;
import ampersheet.sheet.Timetable.SkillWeeks;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;

/** A forecast in sentences, whoever tells them: the command in columns, the desk on a page. */
public final class ForecastWords {
    private static final int A_WEEK = 7;

    private ForecastWords() {}

    /** Something that is told, and what it is about. */
    public record Line(String label, String text) {}

    /** What a sheet will be. */
    public static List<Line> of(Forecast forecast) {
        List<Line> lines = new ArrayList<>();
        lines.add(new Line(say("folder.forecast.label.sheet"), sheet(forecast)));
        lines.add(new Line(say("folder.forecast.label.time"), time(forecast.minutes())));
        forecast.paper().ifPresent(paper -> lines.add(new Line(say("folder.forecast.label.paper"), paper(paper))));
        StringJoiner levels = new StringJoiner(", ");
        forecast.levels()
                .forEach((level, share) ->
                        levels.add(say("folder.forecast.level", "level", level.toString(), "percent", percent(share))));
        lines.add(new Line(say("folder.forecast.label.levels"), levels.toString()));
        lines.add(new Line(
                say("folder.forecast.label.mixed"),
                say("folder.forecast.mixed", "percent", percent(forecast.mixed()))));
        lines.add(new Line(
                say("folder.forecast.label.marks"),
                say(
                        "folder.forecast.marks",
                        "expected",
                        decimal(forecast.marks().expected()),
                        "luck",
                        decimal(forecast.marks().luck()),
                        "sheets",
                        decimal(forecast.marks().sheets()))));
        forecast.spread()
                .ifPresent(spread -> lines.add(new Line(
                        say("folder.forecast.label.even"),
                        say(
                                "folder.forecast.even.differ",
                                "evenly",
                                decimal(spread.evenly()),
                                "as-they-come",
                                decimal(spread.asTheyCome())))));
        return lines;
    }

    private static String sheet(Forecast forecast) {
        IntSummaryStatistics problems = forecast.problems();
        IntSummaryStatistics examples = forecast.examples();
        return say(
                "folder.forecast.sheet",
                "problems",
                range(problems.getMin(), problems.getMax(), count("folder.forecast.count.problems", problems.getMax())),
                "examples",
                range(
                        examples.getMin(),
                        examples.getMax(),
                        count("folder.forecast.count.worked-examples", examples.getMax())));
    }

    private static String time(IntSummaryStatistics minutes) {
        return say(
                "folder.forecast.time",
                "minutes",
                range(minutes.getMin(), minutes.getMax(), count("folder.forecast.count.minutes", minutes.getMax())),
                "average",
                Long.toString(Math.round(minutes.getAverage())));
    }

    private static String paper(PaperCount paper) {
        return say(
                "folder.forecast.paper",
                "sides",
                range(paper.least(), paper.most(), count("folder.forecast.count.sides", paper.most())),
                "looked",
                count("plan.looked-at.paper", paper.sheets()));
    }

    /** The skills that a week of a course has, new ones apart from those that return. */
    public static List<Line> met(Timetable timetable, int week) {
        List<String> enter = new ArrayList<>();
        List<String> again = new ArrayList<>();
        for (SkillWeeks skill : timetable.skills()) {
            if (skill.weeks().contains(week)) {
                (skill.weeks().get(0) == week ? enter : again).add(skill.skill());
            }
        }
        List<Line> lines = new ArrayList<>();
        if (!enter.isEmpty()) {
            lines.add(new Line(say("folder.forecast.label.enters"), String.join("; ", enter)));
        }
        if (!again.isEmpty()) {
            lines.add(new Line(say("folder.forecast.label.returns"), String.join("; ", again)));
        }
        return lines;
    }

    /** Which skills of a plan have one template only. */
    public static List<String> lonely(Map<String, Integer> templates) {
        return templates.entrySet().stream()
                .filter(skill -> skill.getValue() == 1)
                .map(skill -> lonely(skill.getKey()))
                .toList();
    }

    private static String lonely(String skill) {
        return say("folder.forecast.lonely", "skill", skill);
    }

    /** What of the weeks had better be looked at, whatever sheets are drawn. */
    public static List<String> remarks(Timetable timetable) {
        List<String> remarks = new ArrayList<>();
        timetable.skills().stream()
                .filter(skill -> skill.templates() == 1)
                .forEach(skill -> remarks.add(lonely(skill.skill())));
        for (SkillWeeks skill : timetable.skills()) {
            boolean last = skill.weeks().get(0) == timetable.size();
            if (skill.weeks().size() == 1) {
                remarks.add(
                        last
                                ? say("folder.forecast.never-returns.last-week", "skill", skill.skill())
                                : say("folder.forecast.never-returns", "skill", skill.skill()));
            }
        }
        for (int week = 1; week <= timetable.size(); week++) {
            fullness(timetable, week, remarks);
        }
        for (int week = 2; week <= timetable.size(); week++) {
            distance(timetable, week, remarks);
        }
        for (int week = 1; week <= timetable.size(); week++) {
            if (timetable.isMoved(week)) {
                remarks.add(say("folder.forecast.moved", "week", Integer.toString(week)));
            }
        }
        timetable
                .unread()
                .forEach(archive -> remarks.add(say("folder.forecast.unread", "archive", Output.shown(archive))));
        timetable
                .missingBases()
                .forEach((base, skills) -> remarks.add(
                        say("folder.forecast.missing-base", "skills", String.join("\", \"", skills), "base", base)));
        return remarks;
    }

    private static void fullness(Timetable timetable, int week, List<String> remarks) {
        int wanted = timetable.course().weeks().get(week - 1).problems();
        int has = timetable.problems(week);
        if (has != wanted) {
            String[] instead = {"week", Integer.toString(week), "wanted", Integer.toString(wanted)};
            remarks.add(
                    has > wanted
                            ? count("folder.forecast.too-many", has, instead)
                            : count("folder.forecast.too-few", has, instead));
        }
    }

    private static void distance(Timetable timetable, int week, List<String> remarks) {
        List<CoursePlan.Week> weeks = timetable.course().weeks();
        long days = ChronoUnit.DAYS.between(
                weeks.get(week - 2).date(), weeks.get(week - 1).date());
        if (days != A_WEEK) {
            remarks.add(count(
                    "folder.forecast.no-week-between",
                    Math.toIntExact(days),
                    "before",
                    Integer.toString(week - 1),
                    "week",
                    Integer.toString(week)));
        }
    }

    /** @param counted the most, with what it is that is counted */
    private static String range(int least, int most, String counted) {
        return least == most
                ? counted
                : say("folder.forecast.from-to", "least", Integer.toString(least), "most", counted);
    }

    private static String percent(double share) {
        return Long.toString(Math.round(100 * share));
    }

    private static String decimal(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
