package ampersheet.template;

import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Looks for givens that meet the requirements of a template: all combinations of few, seeded picks of many. */
final class Samples {
    /** Up to so many combinations all are tried. */
    static final long ALL = 200_000;

    static final int PICKS = 20_000;
    private static final long SEED = 0x5DEECE66DL;

    private final List<Given> givens;
    private final List<Constant> constants;
    private final List<Condition> requirements;

    Samples(List<Given> givens, List<Constant> constants, List<Condition> requirements) {
        this.givens = givens;
        this.constants = constants;
        this.requirements = requirements;
    }

    /**
     * @param found at most as many as were wanted
     * @param tried combinations looked at
     * @param all whether these are all there are
     * @param failedFirst for each requirement, how often it was the first that failed
     */
    record Outcome(List<Values> found, long tried, boolean all, List<Long> failedFirst) {}

    Outcome find(int wanted) {
        long space = space(givens);
        boolean all = space <= ALL;
        long count = all ? space : PICKS;
        List<Values> found = new ArrayList<>();
        long[] failed = new long[requirements.size()];
        long state = SEED;
        // An odd stride through the whole space meets every combination once, far ones first.
        long stride = stride(space);
        long at = 0;
        long tried = 0;
        while (tried < count && found.size() < wanted) {
            if (all) {
                at = (at + stride) % space;
            } else {
                state = state * 6364136223846793005L + 1442695040888963407L;
                at = (state >>> 1) % space;
            }
            tried++;
            Values values = at(at);
            int failing = firstFailing(values);
            if (failing < 0) {
                found.add(values);
            } else {
                failed[failing]++;
            }
        }
        List<Long> failedFirst = new ArrayList<>();
        for (long each : failed) {
            failedFirst.add(each);
        }
        return new Outcome(found, tried, all, failedFirst);
    }

    private int firstFailing(Values values) {
        for (int i = 0; i < requirements.size(); i++) {
            if (!Evaluation.holds(requirements.get(i), values)) {
                return i;
            }
        }
        return -1;
    }

    private static long stride(long space) {
        long stride = space * 5 / 8 + 1;
        while (greatestCommonDivisor(stride, space) != 1) {
            stride++;
        }
        return stride;
    }

    private static long greatestCommonDivisor(long a, long b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }

    /** Product of the numbers of values; {@link Long#MAX_VALUE} if that is not enough. */
    static long space(List<Given> givens) {
        long space = 1;
        for (Given given : givens) {
            long values = given instanceof QuantityGiven quantity
                    ? quantity.values().size()
                    : ((WordGiven) given).values().size();
            if (space > Long.MAX_VALUE / values) {
                return Long.MAX_VALUE;
            }
            space *= values;
        }
        return space;
    }

    private Values at(long combination) {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        long rest = combination;
        for (Given given : givens) {
            if (given instanceof QuantityGiven quantity) {
                int size = quantity.values().size();
                quantities.put(
                        given.name(),
                        new Quantity(
                                quantity.values().get((int) (rest % size)),
                                quantity.unit().dimension()));
                rest /= size;
            } else {
                List<String> choices = ((WordGiven) given).values();
                words.put(given.name(), choices.get((int) (rest % choices.size())));
                rest /= choices.size();
            }
        }
        for (Constant constant : constants) {
            quantities.put(
                    constant.name(), new Quantity(constant.si(), constant.unit().dimension()));
        }
        return Values.of(quantities, words);
    }
}
