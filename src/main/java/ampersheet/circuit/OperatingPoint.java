package ampersheet.circuit;

import java.util.List;

/**
 * A solved circuit. Part, node and terminal names that do not exist throw {@link IllegalArgumentException}.
 *
 * <p>Parts with more than two ends are seen from their main path: drain to source, collector to emitter, in to out, and
 * a trimpot from {@code from} to {@code to} with the current at {@code from}; a regulator's current is what leaves at
 * {@code out}.
 */
public interface OperatingPoint {
    /** Volts against the reference node. */
    double voltage(String node);

    /** Volts across the part, {@code from} against {@code to}; for a source {@code to} against {@code from}. */
    double across(String part);

    /** Amperes through the part, {@code from} to {@code to}; for a source delivered out of {@code to}. */
    double current(String part);

    /** Amperes into the part at one of its terminals. */
    double current(String part, String terminal);

    /** Watts the part takes up; for a source watts it delivers. */
    double power(String part);

    /** Volts across each load of a strip, tap 1 first, or of a panel, row by row from the top. */
    List<Double> loads(String part);

    /** Largest sum of currents at any node, amperes: Kirchhoff's current law says 0. */
    double currentResidual();

    /** Watts delivered less watts taken up: energy conservation says 0. */
    double powerResidual();
}
