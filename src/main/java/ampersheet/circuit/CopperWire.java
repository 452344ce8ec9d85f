package ampersheet.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.StringJoiner;

/**
 * Solid copper wire by American wire gauge number, at 20 °C, as a handbook prints it: T. Floyd, Electric Circuit
 * Fundamentals, 2nd edition, by way of HyperPhysics, American Wire Gages (AWG) Sizes and Resistances. Printed in
 * inches, circular mils and per 1,000 feet.
 *
 * <p>A table on purpose, not the gauge formula: whoever works a wire by formula finds here what was measured and
 * printed.
 */
public final class CopperWire {
    private static final double INCH = 0.0254;
    private static final double CIRCULAR_MIL = Math.PI / 4 * (INCH / 1000) * (INCH / 1000);
    private static final double THOUSAND_FEET = 1000 * 0.3048;
    private static final int[] GAUGES = {10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30};
    private static final double[] INCHES = {
        0.10189, 0.0808, 0.06408, 0.05082, 0.0403, 0.03196, 0.02535, 0.0201, 0.01594, 0.01264, 0.01002
    };
    private static final double[] CIRCULAR_MILS = {
        10381, 6529, 4106.8, 2582.9, 1624.3, 1021.5, 642.4, 404.01, 254.1, 159.79, 100.5
    };
    private static final double[] OHMS = {0.9989, 1.588, 2.525, 4.016, 6.385, 10.15, 16.14, 25.67, 40.81, 64.90, 103.2};

    private CopperWire() {}

    /** A row of the table, in SI. @param ohmsPerMetre of one conductor */
    public record Gauge(int number, double diameter, double area, double ohmsPerMetre) {}

    /** The whole table, thickest first. */
    public static List<Gauge> table() {
        List<Gauge> table = new ArrayList<>();
        for (int i = 0; i < GAUGES.length; i++) {
            table.add(new Gauge(GAUGES[i], INCHES[i] * INCH, CIRCULAR_MILS[i] * CIRCULAR_MIL, OHMS[i] / THOUSAND_FEET));
        }
        return List.copyOf(table);
    }

    /** Empty for a gauge that the table does not hold. */
    static OptionalDouble ohmsPerMetre(double gauge) {
        for (int i = 0; i < GAUGES.length; i++) {
            if (GAUGES[i] == gauge) {
                return OptionalDouble.of(OHMS[i] / THOUSAND_FEET);
            }
        }
        return OptionalDouble.empty();
    }

    /** All gauges of the table, for a sentence. */
    static String gauges() {
        StringJoiner list = new StringJoiner(", ");
        for (int gauge : GAUGES) {
            list.add(Integer.toString(gauge));
        }
        return list.toString();
    }
}
