package ampersheet.bench;

import ampersheet.quantity.Dimension;

/**
 * What the meter shows of the circuit as it is laid out, with the meter in it.
 *
 * @param range on which it reads
 * @param expected of parts that are exactly what is written on them, SI
 * @param low with parts and meter as far off as they may be, SI, rounded outwards to the meter's step
 * @param high likewise
 */
public record MeterReading(Probes probes, BenchMeter.Range range, double expected, double low, double high) {
    public Dimension quantity() {
        return probes instanceof Probes.Current ? Dimension.CURRENT : Dimension.VOLTAGE;
    }
}
