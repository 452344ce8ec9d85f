package ampersheet.command;

import ampersheet.issue.Forecast;
import ampersheet.sheet.Timetable;
import ampersheet.sheet.Timetable.SkillWeeks;
import ampersheet.source.Told;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;

/** A forecast in words and columns. */
final class ForecastText {
    private static final int A_WEEK = 7;

    private final StringBuilder out = new StringBuilder();
    private final Set<String> warnings = new LinkedHashSet<>();

    private ForecastText() {}

    static String of(Forecast plan) {
        ForecastText text = new ForecastText();
        text.line(plan.plan().title());
        text.line(Told.count("plan.looked-at", (int) plan.problems().getCount()));
        text.sheet(plan, "");
        text.line("");
        text.line("Skills and their templates");
        plan.templates().forEach((skill, templates) -> {
            text.line("  " + skill + ": " + templates);
            text.lonely(skill, templates);
        });
        text.tellWarnings();
        return text.out.toString();
    }

    static String of(Timetable timetable, List<Forecast> weeks, int learners) {
        ForecastText text = new ForecastText();
        text.line(timetable.course().common().title() + ": " + count(timetable.size(), "week") + ", looked at for "
                + count(learners, "learner") + ", numbers kept for "
                + timetable.course().seats());
        for (int week = 1; week <= weeks.size(); week++) {
            Forecast forecast = weeks.get(week - 1);
            text.line("");
            text.line("Week " + week + ", " + forecast.plan().heading().date() + ": "
                    + forecast.plan().title());
            text.met(timetable, week);
            text.sheet(forecast, "week " + week + ": ");
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

    private void met(Timetable timetable, int week) {
        List<String> enter = new ArrayList<>();
        List<String> again = new ArrayList<>();
        for (SkillWeeks skill : timetable.skills()) {
            if (skill.weeks().contains(week)) {
                (skill.weeks().get(0) == week ? enter : again).add(skill.skill());
            }
        }
        if (!enter.isEmpty()) {
            line("  enters:   " + String.join("; ", enter));
        }
        if (!again.isEmpty()) {
            line("  returns:  " + String.join("; ", again));
        }
    }

    private void sheet(Forecast forecast, String where) {
        line("  a sheet:  " + range(forecast.problems(), "problem") + " to work on, "
                + range(forecast.examples(), "worked example"));
        line("  time:     about " + range(forecast.minutes(), "minute") + " a learner, "
                + Math.round(forecast.minutes().getAverage()) + " on average");
        forecast.paper()
                .ifPresent(paper -> line("  paper:    "
                        + (paper.least() == paper.most() ? "" : paper.least() + " to ") + count(paper.most(), "side")
                        + " a learner "
                        + Told.count("plan.looked-at.paper", paper.sheets())));
        StringJoiner levels = new StringJoiner(", ");
        forecast.levels().forEach((level, share) -> levels.add("level " + level + " " + percent(share)));
        line("  levels:   " + levels);
        line("  mixed:    " + percent(forecast.mixed()) + " of neighbours are about different topics");
        line("  marks:    " + decimal(forecast.marks().expected()) + " % expected, give or take "
                + decimal(forecast.marks().luck()) + " by luck; the sheets themselves differ by "
                + decimal(forecast.marks().sheets()));
        forecast.spread()
                .ifPresent(spread -> line("  even:     summed difficulties differ by " + decimal(spread.evenly())
                        + "; as variants come, by " + decimal(spread.asTheyCome())));
        forecast.warnings().forEach(warning -> warnings.add(where + warning));
    }

    private void skills(Timetable timetable) {
        int widest = timetable.skills().stream()
                .mapToInt(skill -> skill.skill().length())
                .max()
                .orElse(0);
        line(padded("Skill", widest) + "  met in weeks    gaps        templates");
        for (SkillWeeks skill : timetable.skills()) {
            line(padded(skill.skill(), widest) + "  " + padded(joined(skill.weeks()), 14) + "  "
                    + padded(joined(skill.gaps()), 10) + "  " + skill.templates());
            lonely(skill.skill(), skill.templates());
        }
    }

    private void lonely(String skill, int templates) {
        if (templates == 1) {
            warnings.add("\"" + skill + "\" has one template here: neighbours get other numbers, but the same working "
                    + "to copy. A pool or skill: of two or more is worth more.");
        }
    }

    private void remarks(Timetable timetable) {
        for (SkillWeeks skill : timetable.skills()) {
            boolean last = skill.weeks().get(0) == timetable.size();
            if (skill.weeks().size() == 1) {
                warnings.add("\"" + skill.skill() + "\" never returns"
                        + (last ? ": it enters in the last week." : ". Give the weeks more problems, or it a gap:."));
            }
        }
        for (int week = 1; week <= timetable.size(); week++) {
            int wanted = timetable.course().weeks().get(week - 1).problems();
            int has = timetable.problems(week);
            if (has != wanted) {
                warnings.add("week " + week + " has " + count(has, "problem") + " to work on instead of " + wanted
                        + (has > wanted
                                ? ": so much enters or has a gap: of its own."
                                : ": nothing else has entered that could fill it."));
            }
        }
        for (int week = 2; week <= timetable.size(); week++) {
            long days = ChronoUnit.DAYS.between(
                    timetable.course().weeks().get(week - 2).date(),
                    timetable.course().weeks().get(week - 1).date());
            if (days != A_WEEK) {
                warnings.add("Between week " + (week - 1) + " and week " + week + " are " + days
                        + " days: gaps are counted in weeks of the course.");
            }
        }
        timetable
                .missingBases()
                .forEach((base, skills) -> warnings.add("\"" + String.join("\", \"", skills) + "\" builds on \"" + base
                        + "\", which this course does not have."));
    }

    private void tellWarnings() {
        if (!warnings.isEmpty()) {
            line("");
            line("To look at");
            warnings.forEach(warning -> line("  " + warning));
        }
        line("");
        line("Marks are an estimate: of level 0 nine problems in ten are taken to be right, of level 4 five.");
    }

    private static String joined(List<Integer> numbers) {
        StringJoiner text = new StringJoiner(", ");
        numbers.forEach(number -> text.add(Integer.toString(number)));
        return text.toString();
    }

    private static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    private static String range(IntSummaryStatistics counts, String what) {
        return (counts.getMin() == counts.getMax() ? "" : counts.getMin() + " to ") + count(counts.getMax(), what);
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }

    private static String decimal(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
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
