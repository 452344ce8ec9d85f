package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.issue.Forecast;
import ampersheet.issue.ForecastWords;
import ampersheet.sheet.Timetable;
import ampersheet.sheet.Timetable.SkillWeeks;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.UnaryOperator;

/** A forecast in words and columns. */
final class ForecastText {
    /** Widths of columns. */
    private static final int WEEKS = 14;

    private static final int GAPS = 10;

    private final StringBuilder out = new StringBuilder();
    private final Set<String> warnings = new LinkedHashSet<>();
    /** As wide as the longest of its labels needs. */
    private final LabelColumn labels =
            LabelColumn.of(say("command.plan.labelled", "label", say("folder.forecast.label.sheet")));

    private ForecastText() {}

    static String of(Forecast plan) {
        ForecastText text = new ForecastText();
        text.line(plan.plan().title());
        text.line(count("plan.looked-at", (int) plan.problems().getCount()));
        text.sheet(plan, warning -> warning);
        text.line("");
        text.line(say("command.plan.skills"));
        plan.templates().forEach((skill, templates) -> text.line("  " + skill + ": " + templates));
        text.warnings.addAll(ForecastWords.lonely(plan.templates()));
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
            text.lines(ForecastWords.met(timetable, week));
            text.sheet(forecast, warning -> say("command.plan.in-week", "week", number, "warning", warning));
        }
        text.line("");
        text.skills(timetable);
        text.warnings.addAll(ForecastWords.remarks(timetable));
        text.tellWarnings();
        return text.out.toString();
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    private void lines(List<ForecastWords.Line> told) {
        told.forEach(one -> line("  " + labels.line(say("command.plan.labelled", "label", one.label()), one.text())));
    }

    private void sheet(Forecast forecast, UnaryOperator<String> placed) {
        lines(ForecastWords.of(forecast));
        forecast.warnings().forEach(warning -> warnings.add(placed.apply(warning)));
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
        }
    }

    private void row(int widest, String skill, String weeks, String gaps, String templates) {
        line(padded(skill, widest) + "  " + padded(weeks, WEEKS) + "  " + padded(gaps, GAPS) + "  " + templates);
    }

    private void tellWarnings() {
        if (!warnings.isEmpty()) {
            line("");
            line(say("command.plan.look"));
            warnings.forEach(warning -> line("  " + warning));
        }
        line("");
        line(say("folder.forecast.estimate"));
    }

    private static String joined(List<Integer> numbers) {
        StringJoiner text = new StringJoiner(", ");
        numbers.forEach(number -> text.add(Integer.toString(number)));
        return text.toString();
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
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
