package ampersheet.bench;

import ampersheet.bench.NotLaidOut.Reason;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.language.Saying;
import ampersheet.model.CircuitModel;
import ampersheet.problem.Problem;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.template.ExtraLowVoltage;
import ampersheet.template.TradeLimit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What the parts laid out bear; common parts, without heat sinks, among people. */
final class BenchLimits {
    /** A part in a TO-220 case or smaller, in free air, some 60 K/W. */
    private static final double MOST_BARE_WATTS = 1;

    private static final double MOST_DIODE_WATTS = 0.7;
    private static final double MOST_ZENER_WATTS = 0.25;
    private static final double MOST_LED_AMPS = 0.02;
    private static final double LEAST_LED_AMPS = 0.001;
    private static final double MOST_REFERENCE_AMPS = 0.015;
    private static final double MOST_TRANSISTOR_AMPS = 0.5;
    /** A trimpot turns into heat what a small one bears. */
    private static final double MOST_TRIMPOT_WATTS = 0.1;
    /** Nearer to an end nobody sets a trimpot by hand. */
    private static final double LEAST_POSITION = 0.03;
    /** Of what it is to hold, a regulator or reference may miss. */
    private static final double HELD = 0.01;

    private static final double NONE = 1e-6;
    /** From here on a small part is too hot to touch. */
    private static final double HOT_WATTS = 0.5;

    private final Problem problem;
    private final Netlist netlist;
    private final OperatingPoint point;

    private BenchLimits(Problem problem, CircuitModel wired) {
        this.problem = problem;
        this.netlist = wired.netlist();
        this.point = wired.operatingPoint();
    }

    /**
     * Parts that get hot; resistors are rated for what they turn into heat.
     *
     * @param parts in which ratings are put
     * @throws NotLaidOut if one is beyond what it bears
     */
    static List<String> hot(Problem problem, CircuitModel drawn, List<FittedPart> parts) throws NotLaidOut {
        CircuitModel wired = drawn.with(BenchCircuit.laidOut(drawn, parts));
        BenchLimits limits = new BenchLimits(problem, wired);
        List<String> hot = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            FittedPart part = parts.get(i);
            limits.require(part);
            limits.requireTrade(part);
            double watts = Math.abs(limits.point.power(part.name()));
            if (isResistor(part) && part.bin().isEmpty()) {
                part = part.rated(rating(part, watts));
                parts.set(i, part);
            }
            boolean supply = part.part().kind() == PartKind.SOURCE;
            if (!supply && watts >= HOT_WATTS
                    || part.rating().isPresent() && watts > part.rating().getAsDouble() / 2 * (1 + 1e-9)) {
                hot.add(part.name());
            }
        }
        limits.requireExtraLow();
        return hot;
    }

    private static boolean isResistor(FittedPart part) {
        return part.part().kind() == PartKind.RESISTOR || part.part().kind() == PartKind.LOAD;
    }

    /** Twice what it turns into heat. */
    private static double rating(FittedPart part, double watts) throws NotLaidOut {
        for (double rating : CommonParts.RATINGS) {
            if (2 * watts <= rating) {
                return rating;
            }
        }
        throw new NotLaidOut(
                Reason.TOO_HOT,
                Saying.of(
                        "problem.no-card.hot-resistor",
                        "part",
                        part.name(),
                        "watts",
                        watts(watts),
                        "most",
                        watts(CommonParts.MOST_RESISTOR_WATTS)));
    }

    private void require(FittedPart part) throws NotLaidOut {
        double amps = point.current(part.name());
        double watts = Math.abs(point.power(part.name()));
        switch (part.part().kind()) {
            case SOURCE -> requireSupplied(part, amps);
            case RESISTOR, LOAD -> {
                CommonParts.requireMoreThanContacts(
                        part.name(), part.part().values().get(PartValue.OHMS));
                if (part.rating().isPresent() && watts > part.rating().getAsDouble()) {
                    throw tooHot(part, watts, part.rating().getAsDouble());
                }
            }
            case LED -> requireLed(part, amps);
            case DIODE -> requireWatts(part, watts, MOST_DIODE_WATTS);
            case ZENER -> requireWatts(part, watts, MOST_ZENER_WATTS);
            case TRIMPOT -> requireTrimpot(part, watts);
            case REFERENCE -> {
                requireAmps(part, amps, MOST_REFERENCE_AMPS);
                requireHeld(part, -point.across(part.name()));
            }
            case REGULATOR -> {
                requireWatts(part, watts, MOST_BARE_WATTS);
                requireHeld(part, voltage(part, "out") - voltage(part, "ground"));
            }
            case NMOS, PMOS -> requireSwitched(part, watts);
            case NPN -> {
                requireAmps(part, amps, MOST_TRANSISTOR_AMPS);
                requireWatts(part, watts, MOST_BARE_WATTS);
            }
            default -> {
                // A switch, a capacitor and a meter bear what the others do.
            }
        }
    }

    private static NotLaidOut tooHot(FittedPart part, double watts, double most) {
        return new NotLaidOut(
                Reason.TOO_HOT,
                Saying.of("problem.no-card.hot-part", "part", part.name(), "watts", watts(watts), "most", watts(most)));
    }

    private static void requireWatts(FittedPart part, double watts, double most) throws NotLaidOut {
        if (watts > most) {
            throw tooHot(part, watts, most);
        }
    }

    private static void requireAmps(FittedPart part, double amps, double most) throws NotLaidOut {
        if (Math.abs(amps) > most) {
            throw new NotLaidOut(
                    Reason.OUTSIDE_LIMITS,
                    Saying.of(
                            "problem.no-card.current",
                            "part",
                            part.name(),
                            "amps",
                            amps(Math.abs(amps)),
                            "most",
                            amps(most)));
        }
    }

    private static void requireSupplied(FittedPart part, double amps) throws NotLaidOut {
        if (amps < -NONE) {
            throw new NotLaidOut(
                    Reason.NOT_SUPPLIED,
                    Saying.of("problem.no-card.supply-takes-in", "part", part.name(), "amps", amps(-amps)));
        }
        if (amps > BenchSupply.MOST_AMPS) {
            throw new NotLaidOut(
                    Reason.NOT_SUPPLIED,
                    Saying.of(
                            "problem.no-card.supply-current",
                            "part",
                            part.name(),
                            "amps",
                            amps(amps),
                            "most",
                            amps(BenchSupply.MOST_AMPS)));
        }
    }

    private static void requireLed(FittedPart part, double amps) throws NotLaidOut {
        requireAmps(part, amps, MOST_LED_AMPS);
        if (amps > NONE && amps < LEAST_LED_AMPS) {
            throw new NotLaidOut(
                    Reason.OUTSIDE_LIMITS,
                    Saying.of("problem.no-card.hardly-shines", "part", part.name(), "amps", amps(amps)));
        }
    }

    private static void requireTrimpot(FittedPart part, double watts) throws NotLaidOut {
        requireWatts(part, watts, MOST_TRIMPOT_WATTS);
        double position = part.part().values().get(PartValue.POSITION);
        if (position < LEAST_POSITION || position > 1 - LEAST_POSITION) {
            throw new NotLaidOut(
                    Reason.NO_SUCH_PART, Saying.of("problem.no-card.trimpot-near-its-end", "part", part.name()));
        }
    }

    private static void requireHeld(FittedPart part, double volts) throws NotLaidOut {
        double wanted = part.part().values().get(PartValue.VOLTS);
        if (Math.abs(volts - wanted) > HELD * wanted) {
            throw new NotLaidOut(
                    Reason.OUTSIDE_LIMITS,
                    Saying.of(
                            "problem.no-card.not-held",
                            "part",
                            part.name(),
                            "wanted",
                            CommonParts.volts(wanted),
                            "volts",
                            CommonParts.volts(volts)));
        }
    }

    /** Between off and on, one part is unlike the next. */
    private void requireSwitched(FittedPart part, double watts) throws NotLaidOut {
        requireWatts(part, watts, MOST_BARE_WATTS);
        double sign = part.part().kind() == PartKind.NMOS ? 1 : -1;
        double drive = sign * (voltage(part, "gate") - voltage(part, "source"));
        double threshold = part.part().values().get(PartValue.THRESHOLD);
        if (drive > threshold / 2 && drive < threshold) {
            throw new NotLaidOut(
                    Reason.OUTSIDE_LIMITS,
                    Saying.of("problem.no-card.half-on", "part", part.name(), "volts", CommonParts.volts(drive)));
        }
    }

    private double voltage(FittedPart part, String terminal) {
        Netlist.Connected connected = netlist.parts().stream()
                .filter(one -> one.part().name().equals(part.name()))
                .findFirst()
                .orElseThrow();
        return point.voltage(connected.node().get(terminal));
    }

    /** The limits of the trade for parts of any circuit. */
    private void requireTrade(FittedPart part) throws NotLaidOut {
        for (TradeLimit limit : problem.template().premises().partLimits()) {
            OptionalDouble measured = limit.measured(part.part(), point);
            if (measured.isEmpty()) {
                continue;
            }
            double value = measured.getAsDouble();
            if (!limit.allows(value)) {
                throw new NotLaidOut(
                        Reason.OUTSIDE_LIMITS,
                        language -> Saying.of(
                                "problem.no-card.part-beyond-limit",
                                "limited",
                                language.say("common.the", "what", limit.meaning()),
                                "part",
                                part.name(),
                                "value",
                                limit.text(value, language),
                                "usual",
                                limit.told(language)));
            }
        }
    }

    private void requireExtraLow() throws NotLaidOut {
        double lowest = 0;
        double highest = 0;
        for (String node : netlist.nodes()) {
            lowest = Math.min(lowest, point.voltage(node));
            highest = Math.max(highest, point.voltage(node));
        }
        if (highest - lowest > ExtraLowVoltage.VOLTS) {
            throw new NotLaidOut(
                    Reason.OUTSIDE_LIMITS,
                    Saying.of(
                            "problem.no-card.extra-low-voltage",
                            "volts",
                            CommonParts.volts(highest - lowest),
                            "limit",
                            ExtraLowVoltage.LIMIT));
        }
    }

    static String amps(double amps) {
        return QuantityWriter.POINT.plain(amps, Unit.parse("A"), 3).text();
    }

    static String watts(double watts) {
        return QuantityWriter.POINT.plain(watts, Unit.parse("W"), 3).text();
    }
}
