package ampersheet.circuit;

import java.util.Map;
import java.util.TreeMap;

/** Turns the way model sheets give a diode into the values of a {@link PartKind#DIODE} or {@link PartKind#LED}. */
public final class Diodes {
    private Diodes() {}

    /**
     * @param saturation saturation current Is, A
     * @param emission emission coefficient n
     * @param series series resistance Rs, ohms
     * @param amps current of the point to state the diode by; any within its use
     * @return values volts, amps, emission, series
     */
    public static Map<PartValue, Double> stated(double saturation, double emission, double series, double amps) {
        double volts = Junction.saturating(saturation, emission, series).voltageAt(amps);
        return new TreeMap<>(Map.of(
                PartValue.VOLTS, volts, PartValue.AMPS, amps, PartValue.EMISSION, emission, PartValue.SERIES, series));
    }
}
