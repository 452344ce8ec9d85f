package ampersheet.answer;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.SignificantFigures;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * For any problem key, what a learner would have to type to reach each rung; rungs that the numbers leave no room for
 * are left out. Values are worked out here from the key, not by the judge.
 *
 * @param typed everything typed, the probed question among it
 * @param mistake id expected with {@link Rung#KNOWN_MISTAKE}, else empty
 */
public record LadderProbe(Rung rung, String question, Map<String, String> typed, String mistake) {
    /** Rungs for which many a problem's numbers leave no room; each is reached somewhere. */
    public static final Set<Rung> BY_CHANCE = Set.of(
            Rung.OTHER_SCALE,
            Rung.RISE_OR_TEMPERATURE,
            Rung.OTHER_QUANTITY,
            Rung.EXACT_OR_FITTED,
            Rung.WRONG_PAIR,
            Rung.CARRIED_MISTAKE,
            Rung.MISPLACED_GIVEN,
            Rung.NEAR_MISS);

    private static final double[] SOMEHOW_WRONG = {1.37, 0.61, 1.83, 0.43, 2.71, 3.37, 0.29, 5.3, 7.7};

    public static List<LadderProbe> of(ProblemKey problem) {
        List<LadderProbe> probes = new ArrayList<>();
        for (AnswerKey key : problem.answers()) {
            new Probing(problem, key, probes).probe();
        }
        return probes;
    }

    /** The verdict on the probed question. */
    public Verdict verdict(ProblemKey problem) {
        for (Verdict verdict : Judge.judge(problem, typed)) {
            if (verdict.question().equals(question)) {
                return verdict;
            }
        }
        throw new AssertionError("no verdict for " + question);
    }

    private record Probing(ProblemKey problem, AnswerKey key, List<LadderProbe> probes) {

        void probe() {
            add(Rung.BLANK, "", "");
            add(Rung.UNREADABLE, "quite a lot", "");
            if (key.acceptance() instanceof Acceptance.Choice choice) {
                options(choice);
            } else if (key.acceptance() instanceof Acceptance.Designed designed) {
                design(designed);
            } else {
                quantity();
            }
        }

        private void options(Acceptance.Choice choice) {
            for (int i = 0; i < choice.options().size(); i++) {
                boolean right = i == (int) key.expected();
                add(
                        right ? Rung.CORRECT : Rung.KNOWN_MISTAKE,
                        choice.options().get(i).text(),
                        right ? "" : "option-" + i);
            }
        }

        /** The key's values are one right choice; the others are worked here, by the steps. */
        private void design(Acceptance.Designed designed) {
            DesignKey design = problem.designs().stream()
                    .filter(one -> one.steps().contains(key.step()))
                    .findFirst()
                    .orElseThrow();
            add(Rung.AMBIGUOUS, "4,700", "");
            add(Rung.WRONG_DIMENSION, key.unit().dimension().equals(Dimension.MASS) ? "5 V" : "5 kg", "");
            add(Rung.UNEXPLAINED, written(key.expected() * 1.0217 + 0.3), "");
            add(Rung.UNEXPLAINED, written(designed.to() * 10), "");
            if (design.steps().size() > 1) {
                add(Rung.INCOMPLETE, written(key.expected()), "");
            }
            withPartners(design, Rung.CORRECT, written(key.expected()), "");
            if (!key.unitPrinted() && !key.unit().dimension().equals(Dimension.ONE)) {
                withPartners(
                        design,
                        Rung.UNIT_MISSING,
                        QuantityWriter.POINT
                                .plain(key.unit().fromSi(key.expected()), Unit.ONE, 12)
                                .text(),
                        "");
            }
            for (double member : designed.members()) {
                Values values = problem.working().work(problem.givens(), chosen(design, member));
                for (DesignKey.Criterion criterion : design.criteria()) {
                    if (!Evaluation.holds(criterion.where(), values)) {
                        withPartners(design, Rung.CRITERION_MISSED, written(member), criterion.id());
                        break;
                    }
                }
            }
        }

        private Map<String, Quantity> chosen(DesignKey design, double member) {
            Map<String, Quantity> chosen = new LinkedHashMap<>();
            for (AnswerKey blank : problem.answers()) {
                if (design.steps().contains(blank.step())) {
                    chosen.put(
                            blank.step(),
                            new Quantity(
                                    blank == key ? member : blank.expected(),
                                    blank.unit().dimension()));
                }
            }
            return chosen;
        }

        private void withPartners(DesignKey design, Rung rung, String text, String mistake) {
            Map<String, String> typed = new LinkedHashMap<>();
            for (AnswerKey blank : problem.answers()) {
                if (design.steps().contains(blank.step())) {
                    typed.put(
                            blank.question(),
                            QuantityWriter.POINT
                                    .plain(blank.expected(), blank.unit(), 12)
                                    .text());
                }
            }
            typed.put(key.question(), text);
            probes.add(new LadderProbe(rung, key.question(), typed, mistake));
        }

        private void quantity() {
            double k = key.expected();
            add(Rung.AMBIGUOUS, "4,700", "");
            add(Rung.WRONG_DIMENSION, key.unit().dimension().equals(Dimension.MASS) ? "5 V" : "5 kg", "");
            if (!key.unitPrinted() && !key.unit().dimension().equals(Dimension.ONE)) {
                add(
                        Rung.UNIT_MISSING,
                        QuantityWriter.POINT
                                .plain(key.unit().fromSi(k), Unit.ONE, 12)
                                .text(),
                        "");
            }
            add(Rung.CORRECT, written(k), "");
            for (KnownMistake mistake : key.mistakes()) {
                add(Rung.KNOWN_MISTAKE, written(mistake.value()), mistake.id());
            }
            coarse();
            if (Math.abs(number(k)) > band(k)) {
                first(
                        Rung.POWER_OF_TEN,
                        scaled(1e3),
                        scaled(1e-3),
                        scaled(1e6),
                        scaled(1e-6),
                        scaled(1e2),
                        scaled(1e-2));
            }
            if (key.acceptance() instanceof Acceptance.Within) {
                if (Math.abs(number(k)) > 2 * band(k)) {
                    first(Rung.SIGN, fromNumber(-number(k)));
                }
                if (key.unit().offset() == 0 && k != 0 && !isPowerOfTen(1 / k)) {
                    first(Rung.RECIPROCAL, 1 / k);
                }
            }
            for (double factor : SOMEHOW_WRONG) {
                double value =
                        key.acceptance() instanceof Acceptance.Count ? Math.floor(k * factor) + 7 : scaled(factor);
                if (isUnexplained(value)) {
                    add(Rung.UNEXPLAINED, written(value), "");
                    break;
                }
            }
            usualSlips();
            consistent();
        }

        private void usualSlips() {
            boolean measured = key.acceptance() instanceof Acceptance.Within;
            if (measured && key.unit().offset() != 0) {
                add(
                        Rung.OTHER_SCALE,
                        QuantityWriter.POINT
                                .plain(number(key.expected()), Unit.parse("K"), 12)
                                .text(),
                        "");
            }
            if (!measured) {
                return;
            }
            Map<Rung, List<Double>> slips = slips();
            List<Double> earlier = new ArrayList<>();
            for (Map.Entry<Rung, List<Double>> slip : slips.entrySet()) {
                for (double value : slip.getValue()) {
                    if (isWrong(value, 1.5 * band(key.expected())) && !isCoarse(value) && isClearOf(earlier, value)) {
                        add(slip.getKey(), written(value), "");
                    }
                }
                earlier.addAll(slip.getValue());
            }
            double near = scaled(1.0413);
            boolean outside = isWrong(near, 1.01 * band(key.expected()));
            if (outside && isClearOf(earlier, near) && key.expected() != 0) {
                add(Rung.NEAR_MISS, written(near), "");
            }
        }

        /** By rung, in the order of the ladder; what follows from a design is not among them. */
        private Map<Rung, List<Double>> slips() {
            Values values = problem.working().work(problem.givens());
            Set<String> left = new HashSet<>();
            problem.designs().forEach(design -> left.addAll(design.steps()));
            left.addAll(problem.working().following(left));
            Map<Rung, List<Double>> slips = new LinkedHashMap<>();
            for (Rung rung :
                    List.of(Rung.RISE_OR_TEMPERATURE, Rung.EXACT_OR_FITTED, Rung.OTHER_QUANTITY, Rung.WRONG_PAIR)) {
                slips.put(rung, new ArrayList<>());
            }
            double k = key.expected();
            boolean kelvin = key.unit().dimension().equals(Dimension.TEMPERATURE);
            values.quantities().forEach((name, quantity) -> {
                double v = quantity.value();
                boolean given = problem.givens().has(name);
                if (left.contains(name) || name.equals(key.step())) {
                    return;
                }
                if (kelvin && given && quantity.dimension().equals(Dimension.TEMPERATURE)) {
                    boolean fromZero = v > 173.15;
                    double number = fromZero ? v - 273.15 : v;
                    boolean rise = key.unit().offset() == 0;
                    slips.get(Rung.RISE_OR_TEMPERATURE)
                            .addAll(List.of(k + number, fromZero && rise ? k + v : k - number));
                }
                if (quantity.dimension().equals(key.unit().dimension())) {
                    boolean otherScale = kelvin && v > 173.15 == (key.unit().offset() == 0);
                    slips.get(Rung.OTHER_QUANTITY).add(!otherScale ? v : v > 173.15 ? v - 273.15 : v + 273.15);
                }
            });
            if (kelvin) {
                slips.get(Rung.RISE_OR_TEMPERATURE).addAll(List.of(k + 273.15, k - 273.15));
            }
            for (Step step : problem.working().steps()) {
                Expression is = step.cases().get(step.applying(values)).is();
                boolean fits = is instanceof Expression.Call call
                        && Set.of("next_up", "next_down", "nearest", "floor", "ceiling", "round")
                                .contains(call.function());
                if (fits && !left.contains(step.id())) {
                    Quantity exact = Evaluation.evaluate(is.parts().get(0), values);
                    double follows = step.id().equals(key.step()) ? exact.value() : worked(step.id(), exact);
                    slips.get(Rung.EXACT_OR_FITTED).add(follows);
                }
            }
            if (key.unit().dimension().equals(Dimension.POWER)) {
                values.quantities()
                        .forEach((voltage, volts) -> values.quantities().forEach((current, amperes) -> {
                            if (volts.dimension().equals(Dimension.VOLTAGE)
                                    && amperes.dimension().equals(Dimension.CURRENT)
                                    && !left.contains(voltage)
                                    && !left.contains(current)) {
                                slips.get(Rung.WRONG_PAIR).add(volts.value() * amperes.value());
                            }
                        }));
            }
            WrongWorkings wrong = new WrongWorkings(problem, key);
            slips.put(Rung.CARRIED_MISTAKE, wrong.carried());
            slips.put(Rung.MISPLACED_GIVEN, wrong.misplaced());
            slips.values().forEach(list -> list.removeIf(value -> !Double.isFinite(value) || value == 0));
            return slips;
        }

        private boolean isClearOf(List<Double> others, double value) {
            boolean whole = key.acceptance() instanceof Acceptance.Count;
            for (double other : others) {
                double reach = whole
                        ? 0.5
                        : key.unit().offset() != 0
                                ? 2 * band(other)
                                : Math.max(
                                        0.012 * Math.abs(other),
                                        key.unit().dimension().equals(Dimension.TEMPERATURE)
                                                ? 2 * band(key.expected())
                                                : 0);
                if (Math.abs(value - other) <= reach) {
                    return false;
                }
            }
            return true;
        }

        private void coarse() {
            if (!(key.acceptance() instanceof Acceptance.Within)) {
                return;
            }
            double wanted = key.unit().fromSi(key.expected());
            for (int figures = 1; figures < key.figures(); figures++) {
                double coarse = SignificantFigures.round(wanted, figures);
                double si = key.unit().toSi(coarse);
                boolean outside = Math.abs(si - key.expected()) > band(key.expected()) * 1.001;
                if (outside && Math.abs(coarse - wanted) < 0.0499 * Math.abs(wanted) && isClearOfMistakes(si)) {
                    add(Rung.TOO_COARSE, written(si), "");
                    return;
                }
            }
        }

        /** A wrong earlier answer and what follows from it. */
        private void consistent() {
            for (AnswerKey earlier : problem.answers()) {
                if (earlier.question().equals(key.question())) {
                    return;
                }
                if (earlier.acceptance() instanceof Acceptance.Designed designed) {
                    if (followsDesign(earlier, designed)) {
                        return;
                    }
                    continue;
                }
                if (earlier.acceptance() instanceof Acceptance.Choice) {
                    continue;
                }
                for (double factor : SOMEHOW_WRONG) {
                    double wrong = earlier.acceptance() instanceof Acceptance.Count
                            ? Math.floor(earlier.expected() * factor) + 7
                            : earlier.unit()
                                    .toSi(SignificantFigures.round(
                                            earlier.unit().fromSi(earlier.expected()) * factor, 3));
                    double follows = worked(earlier, wrong);
                    boolean finite = follows - follows == 0;
                    if (finite
                            && isPlainlyWrong(follows)
                            && new Probing(problem, earlier, probes).isPlainlyWrong(wrong)) {
                        Map<String, String> typed = new LinkedHashMap<>();
                        typed.put(earlier.question(), new Probing(problem, earlier, probes).written(wrong));
                        typed.put(key.question(), written(follows));
                        probes.add(new LadderProbe(Rung.CONSISTENT_WITH_EARLIER, key.question(), typed, ""));
                        return;
                    }
                }
            }
        }

        /** What follows from a design that fails, and from one that is right though it is not the key's. */
        private boolean followsDesign(AnswerKey blank, Acceptance.Designed designed) {
            Probing probing = new Probing(problem, blank, probes);
            DesignKey design = problem.designs().get(0);
            boolean afterWrong = false;
            boolean afterRight = false;
            for (double member : designed.members()) {
                Values values = problem.working().work(problem.givens(), probing.chosen(design, member));
                double follows = values.quantity(key.step()).value();
                boolean right = true;
                for (DesignKey.Criterion criterion : design.criteria()) {
                    right &= Evaluation.holds(criterion.where(), values);
                }
                boolean another = right && Math.abs(follows - key.expected()) > 3 * band(key.expected());
                if (another ? !afterRight : !right && !afterWrong && isPlainlyWrong(follows)) {
                    afterRight |= another;
                    afterWrong |= !right;
                    probing.withPartners(design, Rung.CORRECT, probing.written(member), "");
                    Map<String, String> typed =
                            new LinkedHashMap<>(probes.remove(probes.size() - 1).typed());
                    typed.put(key.question(), written(follows));
                    probes.add(new LadderProbe(
                            right ? Rung.CORRECT : Rung.CONSISTENT_WITH_EARLIER, key.question(), typed, ""));
                }
            }
            return afterWrong;
        }

        private double worked(AnswerKey earlier, double wrong) {
            return worked(earlier.step(), new Quantity(wrong, earlier.unit().dimension()));
        }

        private double worked(String step, Quantity instead) {
            try {
                Values values = problem.working().work(problem.givens(), Map.of(step, instead));
                return values.quantity(key.step()).value();
            } catch (IllegalStateException | IllegalArgumentException nothingFollows) {
                return Double.NaN;
            }
        }

        private void first(Rung rung, double... candidates) {
            for (double candidate : candidates) {
                if (isClearOfMistakes(candidate) && Math.abs(candidate - key.expected()) > 3 * band(key.expected())) {
                    add(rung, written(candidate), "");
                    return;
                }
            }
        }

        private boolean isUnexplained(double value) {
            List<Double> slips = new ArrayList<>();
            slips().values().forEach(slips::addAll);
            return isPlainlyWrong(value) && isClearOf(slips, value);
        }

        /** Neither right nor explained by what can be seen from the key alone. */
        private boolean isPlainlyWrong(double value) {
            return isWrong(value, 0.06 * Math.abs(key.expected()) + 3 * band(key.expected()));
        }

        private boolean isCoarse(double value) {
            for (int figures = 1; figures < key.figures(); figures++) {
                double coarse = SignificantFigures.round(key.unit().fromSi(key.expected()), figures);
                if (Math.abs(key.unit().fromSi(value) - coarse) <= 1e-6 * Math.abs(coarse)) {
                    return true;
                }
            }
            return false;
        }

        private boolean isWrong(double value, double atLeast) {
            double k = key.expected();
            boolean reciprocal = near(value, 1 / k)
                    || near(value, key.unit().toSi(1 / key.unit().fromSi(k)))
                    // An absolute tolerance is wide for a small key: what is far from its reciprocal may still have it
                    // for its own.
                    || value != 0
                            && (Math.abs(1 / value - k) <= 2 * band(k)
                                    || Math.abs(key.unit().toSi(1 / key.unit().fromSi(value)) - k) <= 2 * band(k));
            return Math.abs(value - k) > atLeast
                    && isClearOfMistakes(value)
                    && !isPowerOfTen(value)
                    && !near(value, fromNumber(-number(k)))
                    && !reciprocal;
        }

        private boolean isPowerOfTen(double value) {
            for (int power = -9; power <= 9; power++) {
                boolean digits = Math.abs(number(value) / Math.pow(10, power) - number(key.expected()))
                        <= 2 * band(key.expected());
                if (near(value, scaled(Math.pow(10, power))) || digits) {
                    return true;
                }
            }
            return false;
        }

        private boolean isClearOfMistakes(double value) {
            for (KnownMistake mistake : key.mistakes()) {
                if (Math.abs(value - mistake.value()) <= 2 * band(mistake.value())) {
                    return false;
                }
            }
            return true;
        }

        private boolean near(double a, double b) {
            return Math.abs(a - b) <= 2 * Math.max(band(a), band(b));
        }

        private double band(double value) {
            return key.acceptance().band(value);
        }

        private double scaled(double factor) {
            return fromNumber(number(key.expected()) * factor);
        }

        private double number(double si) {
            return key.unit().offset() == 0 ? si : key.unit().fromSi(si);
        }

        private double fromNumber(double number) {
            return key.unit().offset() == 0 ? number : key.unit().toSi(number);
        }

        private String written(double si) {
            return QuantityWriter.POINT.plain(si, key.unit(), 12).text();
        }

        private void add(Rung rung, String text, String mistake) {
            probes.add(new LadderProbe(rung, key.question(), Map.of(key.question(), text), mistake));
        }
    }
}
