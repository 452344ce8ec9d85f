package ampersheet.problem;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Values;
import ampersheet.model.Unsolved;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate.Tolerance;
import ampersheet.template.ProblemTemplate.Way;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * Finds a worst case without knowing which corner it is: the model is solved at every corner of the tolerances, and at
 * points drawn at random inside them, none of which may pass the corners, and some of which must come near.
 */
final class WithinTolerances {
    /** Points drawn inside. */
    private static final int POINTS = 128;
    /**
     * Share of the way from the nominal values to the worst case that some point must reach. Of three quantities that
     * count alike, a point passes it with probability 0.12, so that 128 points all miss it once in 10 million.
     */
    private static final double REACHED = 0.4;
    /** What a solver may be off, relative. */
    private static final double SOLVED = 1e-9;
    /** Whole numbers so few apart are too coarse to tell how near a point came. */
    private static final double COARSE = 10;

    private final Way.Extreme way;
    private final Values nominal;
    private final ToDoubleFunction<Map<String, Quantity>> measured;
    private final Objections objections;

    /** @param measured the measure with other values for some names; or {@link Unsolved} */
    WithinTolerances(
            Way.Extreme way, Values nominal, ToDoubleFunction<Map<String, Quantity>> measured, Objections objections) {
        this.way = way;
        this.nominal = nominal;
        this.measured = measured;
        this.objections = objections;
    }

    double find(String step) {
        double sign = way.largest() ? 1 : -1;
        double worst = Double.NEGATIVE_INFINITY;
        for (int corner = 0; corner < 1 << way.tolerances().size(); corner++) {
            int ends = corner;
            worst = Math.max(worst, sign * measured.applyAsDouble(values(i -> (ends >> i & 1) == 1 ? 1 : 0)));
        }
        double at = sign * measured.applyAsDouble(Map.of());
        double best = at;
        Random random = new Random(seed());
        for (int point = 0; point < POINTS; point++) {
            best = Math.max(best, sign * measured.applyAsDouble(values(i -> random.nextDouble())));
        }
        if (best > worst + SOLVED * Math.abs(worst)) {
            objections.raise(
                    Refusal.ROUTES_DISAGREE,
                    () -> "the model passes the worst case of " + step
                            + " inside its tolerances: no corner is the worst");
        }
        boolean coarse = Elementary.isWhole(worst) && Elementary.isWhole(at) && worst - at < COARSE;
        if (!coarse && best - at < REACHED * (worst - at)) {
            objections.raise(
                    Refusal.ROUTES_DISAGREE,
                    () -> "of " + POINTS + " points inside its tolerances none comes near the worst case of " + step);
        }
        return sign * worst;
    }

    private interface Place {
        /** From 0, the low end, to 1, the high end. */
        double of(int tolerance);
    }

    private Map<String, Quantity> values(Place place) {
        Map<String, Quantity> values = new LinkedHashMap<>();
        List<Tolerance> tolerances = way.tolerances();
        for (int i = 0; i < tolerances.size(); i++) {
            Quantity low = Evaluation.evaluate(tolerances.get(i).low(), nominal);
            Quantity high = Evaluation.evaluate(tolerances.get(i).high(), nominal);
            double share = place.of(i);
            double value = share == 1 ? high.value() : low.value() + share * (high.value() - low.value());
            values.put(tolerances.get(i).of(), new Quantity(value, low.dimension()));
        }
        return values;
    }

    /** The same points for the same givens, on every machine. */
    private long seed() {
        long seed = 1;
        for (Quantity quantity : nominal.quantities().values()) {
            seed = 31 * seed + Double.doubleToLongBits(quantity.value());
        }
        return seed;
    }
}
