package ampersheet.issue;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.render.pdf.Profile;
import ampersheet.sheet.EvenDeal;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SetFacts;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a plan will give a class, before anything is made: sheets are drawn and looked at, and none is written.
 *
 * @param problems to work on, on a sheet
 * @param examples worked, on a sheet
 * @param minutes that a sheet takes
 * @param levels share of the problems at each level, over the class
 * @param mixed share of neighbours that are about different topics, over the class
 * @param paper sides of a sheet as {@code handout} makes it; empty if nobody asked
 * @param marks what learners get who are alike
 * @param spread how equally hard the sheets are; empty if the plan does not ask for it
 * @param templates that practise each skill, in the order of the plan
 * @param warnings what had better be looked at, each in a sentence
 */
public record Forecast(
        Plan plan,
        IntSummaryStatistics problems,
        IntSummaryStatistics examples,
        IntSummaryStatistics minutes,
        Map<Integer, Double> levels,
        double mixed,
        Optional<PaperCount> paper,
        Marks marks,
        Optional<EvenDeal.Spread> spread,
        Map<String, Integer> templates,
        List<String> warnings) {
    /** With fewer, luck and a lucky draw decide too much. */
    public static final int FEWEST = 8;
    /** So many sheets are looked at where nobody says how many learners there are. */
    public static final int USUAL_LEARNERS = 30;
    /** Sheets that are laid out to count their sides: it takes a second for each. */
    private static final int LAID_OUT = 3;

    /**
     * An estimate, in percent of the marks, for a learner of the middle of a class: right are 90, 80, 70, 60 and 50 of
     * a hundred problems of the levels 0 to 4. That is assumed and not measured. Answers of one problem are taken to be
     * right or wrong together, each counts one mark.
     *
     * @param expected in the middle
     * @param luck how far one learner's marks would scatter around that, if she did the sheet again and again (one
     *     standard deviation)
     * @param sheets how far the sheets themselves differ, because a pool has members of several levels or with more
     *     questions (one standard deviation)
     */
    public record Marks(double expected, double luck, double sheets) {
        private static final double EASIEST = 0.9;
        private static final double A_LEVEL = 0.1;

        static Marks of(List<Sheet> sheets) {
            double sum = 0;
            double squares = 0;
            double scatter = 0;
            for (Sheet sheet : sheets) {
                double marks = 0;
                double right = 0;
                double variance = 0;
                for (SheetProblem problem : sheet.problems()) {
                    int answers = problem.key().answers().size();
                    if (problem.support() instanceof Support.Full || answers == 0) {
                        continue;
                    }
                    double share = EASIEST - A_LEVEL * problem.template().level();
                    marks += answers;
                    right += answers * share;
                    variance += answers * answers * share * (1 - share);
                }
                double expected = marks == 0 ? 0 : right / marks;
                sum += expected;
                squares += expected * expected;
                scatter += marks == 0 ? 0 : variance / (marks * marks);
            }
            int n = sheets.size();
            double mean = sum / n;
            return new Marks(
                    100 * mean, 100 * Math.sqrt(scatter / n), 100 * Math.sqrt(Math.max(0, squares / n - mean * mean)));
        }
    }

    /**
     * @param learners seats 1 to this one are looked at
     * @param wish how handouts would look; empty if their sides need not be counted
     * @throws ampersheet.diagnostic.DiagnosticException if a template has too few variants for the class
     */
    public static Forecast of(ProblemSet set, int learners, Optional<Handouts.Wish> wish) {
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(learners);
        List<Sheet> sheets = new ArrayList<>();
        for (int seat = 1; seat <= learners; seat++) {
            sheets.add(maker.sheet(seat));
        }
        List<SetFacts> facts = sheets.stream().map(SetFacts::of).toList();
        Map<Integer, Double> levels = new TreeMap<>();
        int problems = facts.stream().mapToInt(SetFacts::problems).sum();
        facts.forEach(one -> one.levels().forEach((level, count) -> levels.merge(level, (double) count, Double::sum)));
        levels.replaceAll((level, count) -> count / Math.max(1, problems));
        int pairs = facts.stream().mapToInt(SetFacts::pairs).sum();
        int mixed = facts.stream().mapToInt(SetFacts::mixed).sum();
        Map<String, Integer> templates = templates(set);
        Optional<EvenDeal.Spread> spread = maker.spread(learners);
        return new Forecast(
                set.plan(),
                facts.stream().mapToInt(SetFacts::problems).summaryStatistics(),
                facts.stream().mapToInt(SetFacts::examples).summaryStatistics(),
                facts.stream().mapToInt(SetFacts::minutes).summaryStatistics(),
                levels,
                pairs == 0 ? 0 : (double) mixed / pairs,
                wish.map(how -> Handouts.count(set, seats(Math.min(LAID_OUT, learners)), how)),
                Marks.of(sheets),
                spread,
                templates,
                warnings(facts, spread));
    }

    /** How the sheets are laid out of which a forecast counts the sides: as {@code handout} does it by itself. */
    public static Handouts.Wish usualPaper(Plan plan) {
        return new Handouts.Wish(plan.paper(), Profile.COMPACT, Handouts.Keys.NONE, true);
    }

    private static Roster seats(int last) {
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= last; seat++) {
            seats.add(new Roster.Seat(seat, ""));
        }
        return new Roster(seats);
    }

    private static Map<String, Integer> templates(ProblemSet set) {
        Map<String, Set<String>> names = new LinkedHashMap<>();
        set.templates()
                .forEach(template -> names.computeIfAbsent(template.skill(), first -> new LinkedHashSet<>())
                        .add(template.name()));
        Map<String, Integer> counts = new LinkedHashMap<>();
        names.forEach((skill, templates) -> counts.put(skill, templates.size()));
        return counts;
    }

    private static List<String> warnings(List<SetFacts> facts, Optional<EvenDeal.Spread> spread) {
        Set<String> warnings = new LinkedHashSet<>();
        int fewest = facts.stream().mapToInt(SetFacts::problems).min().orElse(0);
        if (fewest > 0 && fewest < FEWEST) {
            warnings.add(count("folder.forecast.few-problems", fewest, "enough", Integer.toString(FEWEST)));
        }
        facts.stream()
                .max((one, other) -> Integer.compare(one.minutes(), other.minutes()))
                .ifPresent(longest -> warnings.addAll(longest.warnings()));
        if (facts.size() > 1 && spread.filter(found -> !found.isWorthIt()).isPresent()) {
            warnings.add(say("folder.forecast.even"));
        }
        return List.copyOf(warnings);
    }
}
