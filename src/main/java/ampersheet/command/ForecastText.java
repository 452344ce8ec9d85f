package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.issue.Forecast;
import ampersheet.sheet.Timetable;
import ampersheet.sheet.Timetable.SkillWeeks;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.UnaryOperator;

/** A forecast in words and columns. */
final class ForecastText {
    private static final int A_WEEK = 7;
    /** Widths of columns. */
    private static final int WEEKS = 14;

    private static final int GAPS = 10;

    private final StringBuilder out = new StringBuilder();
    private final Set<String> warnings = new LinkedHashSet<>();
    /** As wide as the longest of its labels needs. */
    private final LabelColumn labels = LabelColumn.of(say("command.plan.label.sheet"));

    private ForecastText() {}

    static String of(Forecast plan) {
        ForecastText text = new ForecastText();
        text.line(plan.plan().title());
        text.line(count("plan.looked-at", (int) plan.problems().getCount()));
        text.sheet(plan, warning -> warning);
        text.line("");
        text.line(say("command.plan.skills"));
        plan.templates().forEach((skill, templates) -> {
            text.line("  " + skill + ": " + templates);
            text.lonely(skill, templates);
        });
        text.tellWarnings();
        return text.out.toString();
    }

    static String of(Timetable timetable, List<Forecast> weeks, int learners) {
        ForecastText text = new ForecastText();
        text.line(say(
                "command.plan.course",
                "title",
                timetable.course().common().title(),
                "weeks",
                count("command.count.weeks", timetable.size()),
                "learners",
                count("command.count.learners", learners),
                "seats",
                Integer.toString(timetable.course().seats())));
        for (int week = 1; week <= weeks.size(); week++) {
            Forecast forecast = weeks.get(week - 1);
            text.line("");
            String number = Integer.toString(week);
            text.line(say(
                    "command.plan.week",
                    "week",
                    number,
                    "date",
                    forecast.plan().heading().date(),
                    "title",
                    forecast.plan().title()));
            text.met(timetable, week);
            text.sheet(forecast, warning -> say("command.plan.in-week", "week", number, "warning", warning));
        }
        text.line("");
        text.skills(timetable);
        text.remarks(timetable);
        text.tellWarnings();
        return text.out.toString();
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    /** The same with a label before it. */
    private void line(String label, String text) {
        line("  " + labels.line(label, text));
    }

    private void met(Timetable timetable, int week) {
        List<String> enter = new ArrayList<>();
        List<String> again = new ArrayList<>();
        for (SkillWeeks skill : timetable.skills()) {
            if (skill.weeks().contains(week)) {
                (skill.weeks().get(0) == week ? enter : again).add(skill.skill());
            }
        }
        if (!enter.isEmpty()) {
            line(say("command.plan.label.enters"), String.join("; ", enter));
        }
        if (!again.isEmpty()) {
            line(say("command.plan.label.returns"), String.join("; ", again));
        }
    }

    private void sheet(Forecast forecast, UnaryOperator<String> placed) {
        IntSummaryStatistics problems = forecast.problems();
        IntSummaryStatistics examples = forecast.examples();
        IntSummaryStatistics minutes = forecast.minutes();
        line(
                say("command.plan.label.sheet"),
                say(
                        "command.plan.sheet",
                        "problems",
                        range(problems.getMin(), problems.getMax(), count("command.count.problems", problems.getMax())),
                        "examples",
                        range(
                                examples.getMin(),
                                examples.getMax(),
                                count("command.count.worked-examples", examples.getMax()))));
        line(
                say("command.plan.label.time"),
                say(
                        "command.plan.time",
                        "minutes",
                        range(minutes.getMin(), minutes.getMax(), count("command.count.minutes", minutes.getMax())),
                        "average",
                        Long.toString(Math.round(minutes.getAverage()))));
        forecast.paper()
                .ifPresent(paper -> line(
                        say("command.plan.label.paper"),
                        say(
                                "command.plan.paper",
                                "sides",
                                range(paper.least(), paper.most(), count("command.count.sides", paper.most())),
                                "looked",
                                count("plan.looked-at.paper", paper.sheets()))));
        StringJoiner levels = new StringJoiner(", ");
        forecast.levels()
                .forEach((level, share) ->
                        levels.add(say("command.plan.level", "level", level.toString(), "percent", percent(share))));
        line(say("command.plan.label.levels"), levels.toString());
        line(say("command.plan.label.mixed"), say("command.plan.mixed", "percent", percent(forecast.mixed())));
        scatter(forecast);
        forecast.warnings().forEach(warning -> warnings.add(placed.apply(warning)));
    }

    private void scatter(Forecast forecast) {
        line(
                say("command.plan.label.marks"),
                say(
                        "command.plan.marks",
                        "expected",
                        decimal(forecast.marks().expected()),
                        "luck",
                        decimal(forecast.marks().luck()),
                        "sheets",
                        decimal(forecast.marks().sheets())));
        forecast.spread()
                .ifPresent(spread -> line(
                        say("command.plan.label.even"),
                        say(
                                "command.plan.even",
                                "evenly",
                                decimal(spread.evenly()),
                                "as-they-come",
                                decimal(spread.asTheyCome()))));
    }

    private void skills(Timetable timetable) {
        int widest = timetable.skills().stream()
                .mapToInt(skill -> skill.skill().length())
                .max()
                .orElse(0);
        row(
                widest,
                say("command.plan.column.skill"),
                say("command.plan.column.weeks"),
                say("command.plan.column.gaps"),
                say("command.plan.column.templates"));
        for (SkillWeeks skill : timetable.skills()) {
            row(
                    widest,
                    skill.skill(),
                    joined(skill.weeks()),
                    joined(skill.gaps()),
                    Integer.toString(skill.templates()));
            lonely(skill.skill(), skill.templates());
        }
    }

    private void row(int widest, String skill, String weeks, String gaps, String templates) {
        line(padded(skill, widest) + "  " + padded(weeks, WEEKS) + "  " + padded(gaps, GAPS) + "  " + templates);
    }

    private void lonely(String skill, int templates) {
        if (templates == 1) {
            warnings.add(say("command.plan.lonely", "skill", skill));
        }
    }

    private void remarks(Timetable timetable) {
        for (SkillWeeks skill : timetable.skills()) {
            boolean last = skill.weeks().get(0) == timetable.size();
            if (skill.weeks().size() == 1) {
                warnings.add(
                        last
                                ? say("command.plan.never-returns.last-week", "skill", skill.skill())
                                : say("command.plan.never-returns", "skill", skill.skill()));
            }
        }
        for (int week = 1; week <= timetable.size(); week++) {
            int wanted = timetable.course().weeks().get(week - 1).problems();
            int has = timetable.problems(week);
            if (has != wanted) {
                String[] instead = {"week", Integer.toString(week), "wanted", Integer.toString(wanted)};
                warnings.add(
                        has > wanted
                                ? count("command.plan.too-many", has, instead)
                                : count("command.plan.too-few", has, instead));
            }
        }
        for (int week = 2; week <= timetable.size(); week++) {
            long days = ChronoUnit.DAYS.between(
                    timetable.course().weeks().get(week - 2).date(),
                    timetable.course().weeks().get(week - 1).date());
            if (days != A_WEEK) {
                warnings.add(count(
                        "command.plan.no-week-between",
                        Math.toIntExact(days),
                        "before",
                        Integer.toString(week - 1),
                        "week",
                        Integer.toString(week)));
            }
        }
        timetable
                .missingBases()
                .forEach((base, skills) -> warnings.add(
                        say("command.plan.missing-base", "skills", String.join("\", \"", skills), "base", base)));
    }

    private void tellWarnings() {
        if (!warnings.isEmpty()) {
            line("");
            line(say("command.plan.look"));
            warnings.forEach(warning -> line("  " + warning));
        }
        line("");
        line(say("command.plan.estimate"));
    }

    private static String joined(List<Integer> numbers) {
        StringJoiner text = new StringJoiner(", ");
        numbers.forEach(number -> text.add(Integer.toString(number)));
        return text.toString();
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    /** @param counted the most, with what it is that is counted */
    private static String range(int least, int most, String counted) {
        return least == most ? counted : say("command.plan.from-to", "least", Integer.toString(least), "most", counted);
    }

    private static String percent(double share) {
        return Long.toString(Math.round(100 * share));
    }

    private static String decimal(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }

    /** The same for programs. */
    static void write(Json json, Forecast forecast) {
        json.text("title", forecast.plan().title())
                .number("problems_least", forecast.problems().getMin())
                .number("problems_most", forecast.problems().getMax())
                .number("examples_most", forecast.examples().getMax())
                .number("minutes_least", forecast.minutes().getMin())
                .number("minutes_most", forecast.minutes().getMax())
                .number("mixed", forecast.mixed())
                .number("marks_expected", forecast.marks().expected())
                .number("marks_luck", forecast.marks().luck())
                .number("marks_sheets", forecast.marks().sheets())
                .objects("levels", List.copyOf(forecast.levels().entrySet()), ForecastText::level)
                .texts("warnings", forecast.warnings());
        forecast.paper().ifPresent(paper -> json.number("sides_most", paper.most()));
        forecast.spread()
                .ifPresent(spread -> json.number("difficulty_spread", spread.evenly())
                        .number("difficulty_spread_as_they_come", spread.asTheyCome()));
    }

    private static void level(Json json, Map.Entry<Integer, Double> level) {
        json.number("level", level.getKey()).number("share", level.getValue());
    }
}
