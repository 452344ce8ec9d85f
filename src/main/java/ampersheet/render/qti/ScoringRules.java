package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DecimalSlips;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.UsualSlip;
import ampersheet.answer.UsualSlips;
import ampersheet.quantity.SignificantFigures;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The ladder of verdicts for one number, as bands with fixed ends: the first rule with a band that holds the response
 * gives credit and feedback. All ends are in the unit printed behind the blank.
 */
final class ScoringRules {
    private static final double PERCENT = 100;
    private static final int EXACT_DIGITS = 15;

    private final ProblemKey problem;
    private final AnswerKey key;
    private final Unit unit;
    private final double expected;
    private final Credit credit;
    private final List<Rule> rules = new ArrayList<>();

    private ScoringRules(ProblemKey problem, AnswerKey key, Credit credit) {
        this.problem = problem;
        this.key = key;
        this.credit = credit;
        this.unit = key.unit();
        this.expected = printed(key, key.expected());
    }

    /** What a right answer earns, and one that is rounded too far. */
    record Credit(double right, double coarse) {}

    /** @param feedback identifier of what is said */
    record Rule(List<Band> anyOf, String feedback, double credit) {
        Rule {
            anyOf = List.copyOf(anyOf);
        }
    }

    /** From here to there, ends included. */
    record Band(double least, double most) {
        static Band around(double value, double tolerance) {
            return new Band(value - tolerance, value + tolerance);
        }

        /** What the numerator must be divided by for a result within the tolerance of the value, which is not zero. */
        static Band dividing(double numerator, double value, double tolerance) {
            return new Band(numerator / (value + tolerance), numerator / (value - tolerance));
        }
    }

    static List<Rule> of(ProblemKey problem, AnswerKey key, Credit credit) {
        ScoringRules rules = new ScoringRules(problem, key, credit);
        rules.write();
        return List.copyOf(rules.rules);
    }

    /** Only what earns something. */
    static List<Rule> earning(ProblemKey problem, AnswerKey key, Credit credit) {
        ScoringRules rules = new ScoringRules(problem, key, credit);
        rules.right();
        rules.tooCoarse();
        return List.copyOf(rules.rules);
    }

    /** What is taken for this value (SI) and for nothing else. */
    static Band exactly(AnswerKey key, double si) {
        return Band.around(
                printed(key, si),
                (key.acceptance().band(si) + Acceptance.LAST_BITS * Math.abs(si))
                        / key.unit().factor());
    }

    /** In the unit printed, without the last bits that only a change of unit brought in: a platform may show it. */
    static double printed(AnswerKey key, double si) {
        return SignificantFigures.round(key.unit().fromSi(si), EXACT_DIGITS);
    }

    /** Identifier of what is said of a modelled mistake. */
    static String mistake(int index) {
        return "MISTAKE_" + (index + 1);
    }

    private void write() {
        Acceptance acceptance = key.acceptance();
        right();
        mistakes(Acceptance.HALF, true);
        tooCoarse();
        double wanted = unit.offset() == 0 ? key.expected() : expected;
        double band = acceptance.band(key.expected());
        if (Math.abs(wanted) > band) {
            double near = perUnit(band + Acceptance.LAST_BITS * Math.abs(wanted));
            add(Feedback.POWER_OF_TEN, powers(near), 0);
            add(Feedback.SIGN, meant(-expected, near), 0);
            if (acceptance instanceof Acceptance.Within && unit.offset() == 0) {
                double close = acceptance.reciprocalBand(key.expected());
                add(Feedback.RECIPROCAL, reciprocals(perUnit(close + Acceptance.LAST_BITS * Math.abs(wanted))), 0);
            }
        }
        mistakes(1, false);
        add(Feedback.UNEXPLAINED, neighbours(), 0);
        usualSlips();
    }

    private void right() {
        double tolerance = tolerance(key.expected(), 1);
        List<Band> right = new ArrayList<>(List.of(Band.around(expected, tolerance)));
        if (key.isShare()) {
            right.add(asFraction(expected, tolerance));
        }
        rules.add(new Rule(right, Feedback.CORRECT.name(), credit.right()));
    }

    private void tooCoarse() {
        if (key.acceptance() instanceof Acceptance.Within) {
            add(Feedback.TOO_COARSE, coarse(), credit.coarse());
        }
    }

    private void add(Feedback feedback, List<Band> anyOf, double earned) {
        if (!anyOf.isEmpty()) {
            rules.add(new Rule(anyOf, feedback.name(), earned));
        }
    }

    /** The same as a fraction of 1, where % is printed behind the place. */
    private static Band asFraction(double percent, double tolerance) {
        return Band.around(percent / PERCENT, tolerance / PERCENT);
    }

    /**
     * Of a share, as what such a number is taken for: from ten times the key on, so many percent; below, a fraction.
     */
    private List<Band> meant(double value, double tolerance) {
        Band asPrinted = Band.around(value, tolerance);
        if (!key.isShare()) {
            return List.of(asPrinted);
        }
        List<Band> meant = new ArrayList<>();
        if (isPercent(value)) {
            meant.add(asPrinted);
        }
        if (!isPercent(value / PERCENT)) {
            meant.add(asFraction(value, tolerance));
        }
        return meant;
    }

    private boolean isPercent(double typed) {
        return Math.abs(typed) >= key.leastPercent();
    }

    /**
     * Each mistake's own explanation helps more than a general one: in the inner half of its band it comes first.
     *
     * @param either whether a share is looked for both in percent and as a fraction, whatever its size
     */
    private void mistakes(double part, boolean either) {
        List<Rule> fractions = new ArrayList<>();
        for (int i = 0; i < key.mistakes().size(); i++) {
            KnownMistake mistake = key.mistakes().get(i);
            double value = printed(key, mistake.value());
            double tolerance = tolerance(mistake.value(), part);
            List<Band> meant = either ? List.of(Band.around(value, tolerance)) : meant(value, tolerance);
            if (!meant.isEmpty()) {
                rules.add(new Rule(meant, mistake(i), 0));
            }
            if (either && key.isShare()) {
                fractions.add(new Rule(List.of(asFraction(value, tolerance)), mistake(i), 0));
            }
        }
        rules.addAll(fractions);
    }

    /** A step off in a series or a count is likelier than any value it may happen to be the same as. */
    private List<Band> neighbours() {
        List<Double> neighbours = new ArrayList<>();
        if (key.acceptance() instanceof Acceptance.Count) {
            neighbours.addAll(List.of(key.expected() - 1, key.expected() + 1));
        } else if (key.acceptance() instanceof Acceptance.Preferred preferred) {
            neighbours.addAll(List.of(preferred.below(key.expected()), preferred.above(key.expected())));
        }
        return neighbours.stream()
                .map(si -> Band.around(printed(key, si), tolerance(si, 1)))
                .toList();
    }

    /** In the order of the ladder, all of one rung together. */
    private void usualSlips() {
        Map<Rung, List<Band>> slips = new EnumMap<>(Rung.class);
        for (UsualSlip slip : UsualSlips.of(problem, key)) {
            slips.computeIfAbsent(slip.rung(), rung -> new ArrayList<>())
                    .addAll(meant(
                            printed(key, slip.value()),
                            perUnit(slip.reach() + Acceptance.LAST_BITS * Math.abs(slip.value()))));
        }
        slips.forEach((rung, anyOf) -> add(Feedback.valueOf(rung.name()), anyOf, 0));
    }

    private double tolerance(double si, double part) {
        return perUnit(part * key.acceptance().band(si) + Acceptance.LAST_BITS * Math.abs(si));
    }

    private double perUnit(double si) {
        return si / unit.factor();
    }

    private List<Band> coarse() {
        List<Band> coarse = new ArrayList<>();
        for (int figures = 1; figures < key.figures(); figures++) {
            double rounded = SignificantFigures.round(expected, figures);
            if (Math.abs(rounded - expected) <= Acceptance.COARSEST * Math.abs(expected)) {
                coarse.addAll(meant(rounded, Acceptance.SAME * Math.abs(rounded)));
            }
        }
        return coarse;
    }

    private List<Band> powers(double near) {
        List<Band> powers = new ArrayList<>();
        for (int power : DecimalSlips.powers()) {
            double factor = DecimalSlips.factor(power);
            powers.addAll(meant(expected * factor, near * factor));
            powers.addAll(meant(expected / factor, near / factor));
        }
        return powers;
    }

    /** Whoever divides upside down may do it in the unit printed or in the coherent one. */
    private List<Band> reciprocals(double near) {
        List<Band> reciprocals = new ArrayList<>();
        double factor = unit.factor() * unit.factor();
        for (double numerator : factor == 1 ? List.of(1.0) : List.of(1.0, 1 / factor)) {
            if (!key.isShare() || isPercent(numerator / expected)) {
                reciprocals.add(Band.dividing(numerator, expected, near));
            }
            if (key.isShare() && !isPercent(numerator / expected / PERCENT)) {
                reciprocals.add(Band.dividing(numerator / PERCENT, expected, near));
            }
        }
        return reciprocals;
    }
}
