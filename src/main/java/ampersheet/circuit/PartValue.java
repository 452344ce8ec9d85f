package ampersheet.circuit;

import ampersheet.quantity.Dimension;
import java.util.List;

/**
 * Every value that a part may have, as templates name it. The constants stand in the order of their keys, because that
 * is the order in which a part's values are read, told and written wherever no other is asked for.
 */
public enum PartValue {
    AMPS("amps", Dimension.CURRENT),
    BUS("bus", Dimension.RESISTANCE),
    CLOSED("closed", Dimension.ONE),
    COLUMNS("columns", Dimension.ONE),
    CROSS("cross", Dimension.RESISTANCE),
    DROPOUT("dropout", Dimension.VOLTAGE),
    EMISSION("emission", Dimension.ONE),
    FARADS("farads", Dimension.CAPACITANCE),
    GAIN("gain", Dimension.ONE),
    GAUGE("gauge", Dimension.ONE),
    INITIAL("initial", Dimension.VOLTAGE),
    LOAD_OHMS("load_ohms", Dimension.RESISTANCE),
    METRES("metres", Dimension.LENGTH),
    MINIMUM("minimum", Dimension.CURRENT),
    OHMS("ohms", Dimension.RESISTANCE),
    ON("on", Dimension.RESISTANCE),
    POSITION("position", Dimension.ONE),
    QUIESCENT("quiescent", Dimension.CURRENT),
    ROWS("rows", Dimension.ONE),
    SATURATION("saturation", Dimension.VOLTAGE),
    SERIES("series", Dimension.RESISTANCE),
    SLOPE("slope", Dimension.RESISTANCE),
    TAPS("taps", Dimension.ONE),
    THRESHOLD("threshold", Dimension.VOLTAGE),
    VOLTS("volts", Dimension.VOLTAGE);

    /**
     * Those that are printed beside a part, in the order printed; what is not listed is a property of the model, not of
     * the problem.
     */
    public static final List<PartValue> PRINTED = List.of(
            VOLTS, COLUMNS, ROWS, TAPS, AMPS, LOAD_OHMS, OHMS, BUS, CROSS, GAUGE, METRES, FARADS, ON, THRESHOLD,
            POSITION, MINIMUM, QUIESCENT, SLOPE, SERIES);

    private final String key;
    private final Dimension dimension;

    PartValue(String key, Dimension dimension) {
        this.key = key;
        this.dimension = dimension;
    }

    /** As it stands in a template. */
    public String key() {
        return key;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Whether the problem holds for any that serves, where the author writes no more than a number for it. */
    public boolean isOfTheModel() {
        return this == THRESHOLD || this == POSITION;
    }

    /** The key: faults tell a value by it. */
    @Override
    public String toString() {
        return key;
    }
}
