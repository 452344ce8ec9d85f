package ampersheet.bench;

import static ampersheet.bench.NotLaidOut.Reason.NO_SUCH_PART;

import ampersheet.bench.NotLaidOut.Reason;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Saying;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What is taken as at hand where nobody lists bins: common parts with their common tolerances; no source but practice.
 */
public final class CommonParts {
    /** Resistors of a mixed drawer. */
    public static final double RESISTOR = 0.05;

    public static final double TRIMPOT = 0.1;
    public static final double ZENER = 0.05;
    public static final double REFERENCE = 0.02;
    public static final double REGULATOR = 0.04;
    /** A supply that is set by the meter, and stays so. */
    public static final double SUPPLY = 0.01;

    public static final double ELECTRONIC_LOAD = 0.02;
    /** Volts, of one LED. */
    public static final double LED = 0.2;

    public static final double DIODE = 0.1;
    static final double MOSFET_ON = 0.5;
    /** Of the smallest ones sold. */
    private static final double MOST_MOSFET_OHMS = 3;

    static final double TRANSISTOR_GAIN = 2;
    /** Of small silicon transistors, at a base current of 1 mA. */
    private static final double BASE_EMITTER_VOLTS = 0.7;

    private static final double BASE_EMITTER = 0.1;
    private static final double BASE_AMPS = 0.001;
    private static final double SATURATION_VOLTS = 0.2;

    /** Of the two contacts of a part in a breadboard, some 20 mΩ each. */
    static final double CONTACTS_OHMS = 0.04;

    /** Below, the contacts count for more than the part's tolerance. */
    static final double LEAST_OHMS = 1;

    static final double MOST_OHMS = 10e6;
    /** A part that is further from the drawn one is another circuit. */
    private static final double FURTHEST = 1.5;

    static final List<Double> RATINGS = List.of(0.25, 0.5, 1.0, 2.0, 5.0);
    /** Rated for twice what it turns into heat, a resistor can be had up to here. */
    static final double MOST_RESISTOR_WATTS = 2.5;

    private static final List<Double> REGULATED = List.of(3.3, 5.0, 6.0, 8.0, 9.0, 10.0, 12.0, 15.0, 18.0, 24.0);
    private static final List<Double> TRIMPOTS =
            List.of(100.0, 200.0, 500.0, 1e3, 2e3, 5e3, 10e3, 20e3, 50e3, 100e3, 200e3, 500e3, 1e6);
    /** Supplies are set to tenths of a volt. */
    private static final double SETTING = 10;

    static final double LED_AMPS = 0.01;
    /** Of one LED in the law of the circuit room. */
    private static final double LED_EMISSION = 2;

    private static final double LEAST_LED_VOLTS = 1.5;

    /** An LED as one asks for it: by its colour. */
    public enum Colour {
        RED(1.9, 2.05, LED),
        GREEN(2.2, 2.6, LED),
        BLUE_OR_WHITE(3.0, Double.POSITIVE_INFINITY, 0.3);

        private final double volts;
        private final double below;
        private final double amount;

        Colour(double volts, double below, double amount) {
            this.volts = volts;
            this.below = below;
            this.amount = amount;
        }

        /** The colour of a forward voltage. */
        public static Colour of(double volts) {
            for (Colour colour : values()) {
                if (volts < colour.below) {
                    return colour;
                }
            }
            throw new IllegalStateException("a forward voltage that is no number");
        }
    }

    private CommonParts() {}

    static FittedPart resistor(PlacedPart drawn) throws NotLaidOut {
        double ohms = drawn.values().get(PartValue.OHMS);
        if (ohms == 0) {
            throw new NotLaidOut(NO_SUCH_PART, Saying.of("problem.no-card.without-resistance", "part", drawn.name()));
        }
        requireMoreThanContacts(drawn.name(), ohms);
        double nearest = ohms > 0 && ohms < Double.POSITIVE_INFINITY ? PreferredSeries.E24.nearest(ohms) : 0;
        double value = Math.min(MOST_OHMS, Math.max(LEAST_OHMS, nearest));
        requireNear(drawn, ohms, value, Unit.parse("ohm"));
        return new FittedPart(
                FittedPart.with(drawn, PartValue.OHMS, value),
                List.of(Tolerance.share(PartValue.OHMS, value, RESISTOR)));
    }

    /**
     * No band holds for what the contacts of a breadboard change.
     *
     * @throws NotLaidOut if they do
     */
    static void requireMoreThanContacts(String name, double ohms) throws NotLaidOut {
        if (ohms > 0 && ohms < LEAST_OHMS) {
            throw new NotLaidOut(
                    Reason.NO_SUCH_PART,
                    Saying.of(
                            "problem.no-card.contacts",
                            "part",
                            name,
                            "ohms",
                            ohms(ohms),
                            "contacts",
                            ohms(CONTACTS_OHMS),
                            "least",
                            ohms(LEAST_OHMS)));
        }
    }

    static FittedPart source(PlacedPart drawn) throws NotLaidOut {
        double volts = Math.rint(drawn.values().get(PartValue.VOLTS) * SETTING) / SETTING;
        if (volts < BenchSupply.LEAST_VOLTS || volts > BenchSupply.MOST_VOLTS) {
            throw new NotLaidOut(
                    Reason.NOT_SUPPLIED,
                    Saying.of(
                            "problem.no-card.supply-voltage",
                            "part",
                            drawn.name(),
                            "volts",
                            volts(drawn.values().get(PartValue.VOLTS)),
                            "most",
                            volts(BenchSupply.MOST_VOLTS)));
        }
        PlacedPart part = FittedPart.with(drawn, PartValue.VOLTS, volts);
        return new FittedPart(part, List.of(Tolerance.share(PartValue.VOLTS, volts, SUPPLY)));
    }

    static FittedPart led(PlacedPart drawn) throws NotLaidOut {
        int count = ledsIn(drawn);
        double each = drawn.values().get(PartValue.VOLTS) / count;
        if (!(each >= LEAST_LED_VOLTS)) {
            throw new NotLaidOut(
                    NO_SUCH_PART, Saying.of("problem.no-card.no-such-led", "part", drawn.name(), "volts", volts(each)));
        }
        Colour colour = Colour.of(each);
        return led(drawn, count, colour.volts, colour.amount);
    }

    /** @param amount volts that each may be off */
    /** @param amount volts that each may be off */
    static FittedPart led(PlacedPart drawn, int count, double each, double amount) {
        TreeMap<PartValue, Double> values = new TreeMap<>();
        values.put(PartValue.VOLTS, count * each);
        values.put(PartValue.AMPS, LED_AMPS);
        values.put(PartValue.EMISSION, count * LED_EMISSION);
        return new FittedPart(
                drawn.kind(),
                new PlacedPart(drawn.kind(), drawn.name(), drawn.ends(), values),
                count,
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(Tolerance.amount(PartValue.VOLTS, count * each, count * amount)));
    }

    /** Several in series are drawn as one with a softer knee, each adding its own. */
    static int ledsIn(PlacedPart drawn) {
        double count = drawn.values().getOrDefault(PartValue.EMISSION, LED_EMISSION) / LED_EMISSION;
        boolean several = count > 1
                && count == Math.rint(count)
                && drawn.values().get(PartValue.VOLTS) / count >= LEAST_LED_VOLTS;
        return several ? (int) count : 1;
    }

    static FittedPart diode(PlacedPart drawn) {
        double volts = drawn.values().get(PartValue.VOLTS) < 0.5 ? 0.3 : 0.7;
        TreeMap<PartValue, Double> values = new TreeMap<>();
        values.put(PartValue.VOLTS, volts);
        values.put(PartValue.AMPS, 0.01);
        PlacedPart part = new PlacedPart(drawn.kind(), drawn.name(), drawn.ends(), values);
        return new FittedPart(part, List.of(Tolerance.amount(PartValue.VOLTS, volts, DIODE)));
    }

    static FittedPart zener(PlacedPart drawn) {
        double volts = PreferredSeries.E24.nearest(drawn.values().get(PartValue.VOLTS));
        TreeMap<PartValue, Double> values = new TreeMap<>();
        values.put(PartValue.VOLTS, volts);
        PlacedPart part = new PlacedPart(drawn.kind(), drawn.name(), drawn.ends(), values);
        return new FittedPart(part, List.of(Tolerance.share(PartValue.VOLTS, volts, ZENER))).rated(0.5);
    }

    static FittedPart regulator(PlacedPart drawn) throws NotLaidOut {
        double volts = nearest(REGULATED, drawn.values().get(PartValue.VOLTS));
        requireNear(drawn, drawn.values().get(PartValue.VOLTS), volts, Unit.parse("V"));
        return new FittedPart(
                FittedPart.with(drawn, PartValue.VOLTS, volts),
                List.of(Tolerance.share(PartValue.VOLTS, volts, REGULATOR)));
    }

    static FittedPart trimpot(PlacedPart drawn) throws NotLaidOut {
        double ohms = nearest(TRIMPOTS, drawn.values().get(PartValue.OHMS));
        requireNear(drawn, drawn.values().get(PartValue.OHMS), ohms, Unit.parse("ohm"));
        return new FittedPart(
                FittedPart.with(drawn, PartValue.OHMS, ohms), List.of(Tolerance.share(PartValue.OHMS, ohms, TRIMPOT)));
    }

    static FittedPart capacitor(PlacedPart drawn) {
        double farads = PreferredSeries.E6.nearest(drawn.values().get(PartValue.FARADS));
        return new FittedPart(FittedPart.with(drawn, PartValue.FARADS, farads), List.of());
    }

    static FittedPart reference(PlacedPart drawn) {
        double volts = drawn.values().get(PartValue.VOLTS);
        return new FittedPart(drawn, List.of(Tolerance.share(PartValue.VOLTS, volts, REFERENCE)));
    }

    static FittedPart mosfet(PlacedPart drawn) {
        double on = Math.min(MOST_MOSFET_OHMS, drawn.values().get(PartValue.ON));
        return new FittedPart(
                FittedPart.with(drawn, PartValue.ON, on), List.of(Tolerance.share(PartValue.ON, on, MOSFET_ON)));
    }

    static FittedPart transistor(PlacedPart drawn) {
        double gain = drawn.values().get(PartValue.GAIN);
        TreeMap<PartValue, Double> values = new TreeMap<>();
        values.put(PartValue.GAIN, gain);
        values.put(PartValue.VOLTS, BASE_EMITTER_VOLTS);
        values.put(PartValue.AMPS, BASE_AMPS);
        values.put(PartValue.SATURATION, SATURATION_VOLTS);
        return new FittedPart(
                new PlacedPart(drawn.kind(), drawn.name(), drawn.ends(), values),
                List.of(
                        new Tolerance(PartValue.GAIN, gain / TRANSISTOR_GAIN, gain * TRANSISTOR_GAIN),
                        Tolerance.amount(PartValue.VOLTS, BASE_EMITTER_VOLTS, BASE_EMITTER),
                        new Tolerance(PartValue.SATURATION, SATURATION_VOLTS / 2, SATURATION_VOLTS * 2)));
    }

    static void requireNear(PlacedPart drawn, double wanted, double had, Unit unit) throws NotLaidOut {
        if (!(had / wanted <= FURTHEST && wanted / had <= FURTHEST)) {
            throw new NotLaidOut(
                    NO_SUCH_PART,
                    Saying.of(
                            "problem.no-card.too-far",
                            "part",
                            drawn.name(),
                            "wanted",
                            QuantityWriter.POINT.plain(wanted, unit, 3).text(),
                            "nearest",
                            QuantityWriter.POINT.plain(had, unit, 3).text()));
        }
    }

    private static double nearest(List<Double> members, double value) {
        double best = members.get(0);
        for (double member : members) {
            if (Math.abs(member - value) < Math.abs(best - value)) {
                best = member;
            }
        }
        return best;
    }

    private static String ohms(double ohms) {
        return QuantityWriter.POINT.plain(ohms, Unit.parse("ohm"), 3).text();
    }

    static String volts(double volts) {
        return QuantityWriter.POINT.plain(volts, Unit.parse("V"), 3).text();
    }
}
