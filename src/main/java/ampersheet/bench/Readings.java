package ampersheet.bench;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.Netlist.Connected;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.model.CircuitModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * What is worth measuring of a circuit as it is laid out. Left out is what was set by hand, what shows the same as
 * another reading, and what is too small, or too uncertain, to tell anything.
 */
final class Readings {
    static final int MOST = 5;
    /** So many of them go to currents, for which the circuit has to be opened. */
    private static final int MOST_CURRENTS = 2;
    /** Half of the band over the reading: beyond, it tells nothing. */
    private static final double WIDEST = 0.3;

    private static final double WIDEST_OF_MARKED = 0.9;
    /** Two readings that differ by less are one. */
    private static final double SAME = 5e-3;
    /** How far a wiper may be from where it is set, as a share of its way. */
    private static final double WIPER = 0.1;

    private static final double NONE = 1e-6;
    private static final List<PartKind> BY_INTEREST = List.of(
            PartKind.VOLTMETER,
            PartKind.LED,
            PartKind.ZENER,
            PartKind.REFERENCE,
            PartKind.DIODE,
            PartKind.REGULATOR,
            PartKind.NPN,
            PartKind.RESISTOR,
            PartKind.LOAD,
            PartKind.SINK);
    /** Between which terminals parts are measured that have more than two. */
    private static final Map<PartKind, List<List<String>>> ENDS = Map.of(
            PartKind.REGULATOR, List.of(List.of("out", "ground"), List.of("in", "out")),
            PartKind.NPN, List.of(List.of("base", "emitter")));

    private static final Set<PartKind> CARRYING = Set.of(PartKind.LED, PartKind.RESISTOR, PartKind.LOAD);

    private final CircuitModel drawn;
    private final List<PlacedPart> nominal;
    private final Netlist netlist;
    private final OperatingPoint point;
    private final BenchMeter meter;
    private final Band band;
    private final List<Probes.Voltage> set = new ArrayList<>();
    private final List<FittedPart> parts;

    Readings(CircuitModel drawn, List<FittedPart> parts, BenchMeter meter) {
        this.drawn = drawn;
        this.parts = parts;
        this.meter = meter;
        this.nominal = BenchCircuit.laidOut(drawn, parts);
        CircuitModel wired = drawn.with(nominal);
        this.netlist = wired.netlist();
        this.point = wired.operatingPoint();
        this.band = new Band(nominal, parts);
        for (FittedPart part : parts) {
            if (part.part().kind() == PartKind.SOURCE) {
                set.add(new Probes.Voltage(node(part.name(), "to"), node(part.name(), "from"), Optional.empty()));
            }
        }
    }

    /** What each supply's current limit is set to. */
    Map<String, Double> currentLimits() {
        Map<String, Double> limits = new LinkedHashMap<>();
        for (FittedPart part : parts) {
            if (part.part().kind() == PartKind.SOURCE) {
                ToDoubleFunction<List<PlacedPart>> current =
                        with -> drawn.with(with).operatingPoint().current(part.name());
                limits.put(part.name(), BenchSupply.limit(band.of(current).high()));
            }
        }
        return limits;
    }

    /** What the meter shows at each wiper where it is to stand. */
    Map<String, MeterReading> settings() {
        Map<String, MeterReading> settings = new LinkedHashMap<>();
        for (FittedPart part : parts) {
            if (part.part().kind() == PartKind.TRIMPOT) {
                Probes.Voltage probes =
                        new Probes.Voltage(node(part.name(), "wiper"), netlist.reference(), Optional.empty());
                settings.put(part.name(), reading(shown(probes)));
                set.add(probes);
            }
        }
        return settings;
    }

    /** Most telling first; none if all show what was set. */
    List<MeterReading> telling() {
        List<Shown> currents = news(currents().stream()
                .map(this::shown)
                .filter(current -> !isSunk(current.expected()))
                .toList());
        List<MeterReading> amperes = readings(currents, MOST_CURRENTS);
        List<Shown> voltages = news(voltages().stream()
                .filter(probes -> set.stream().noneMatch(probes::sameNodes))
                .map(this::shown)
                .toList());
        List<MeterReading> telling = readings(voltages, MOST - amperes.size());
        telling.addAll(amperes);
        return telling.stream().allMatch(this::isSupplied) ? List.of() : telling;
    }

    /**
     * A reading before its band is known.
     *
     * @param expected with the meter in the circuit, SI
     */
    private record Shown(Probes probes, BenchMeter.Range range, double expected) {}

    private Shown shown(Probes probes) {
        MeteredCircuit metered = new MeteredCircuit(drawn, probes, meter);
        BenchMeter.Range range = metered.range(nominal);
        return new Shown(probes, range, metered.measured(nominal, range));
    }

    /** Without what is too small to be read, and what shows the same as another. */
    private static List<Shown> news(List<Shown> all) {
        List<Shown> news = new ArrayList<>();
        for (Shown one : all) {
            if (one.range().tells(one.expected()) && news.stream().noneMatch(other -> isSame(one, other))) {
                news.add(one);
            }
        }
        return news;
    }

    private List<MeterReading> readings(List<Shown> news, int most) {
        List<MeterReading> readings = new ArrayList<>();
        for (Shown one : news) {
            if (readings.size() < most) {
                MeterReading reading = reading(one);
                if ((reading.high() - reading.low()) / 2 <= widest(one.probes()) * reading.expected()) {
                    readings.add(reading);
                }
            }
        }
        return readings;
    }

    /** A meter that is drawn, or a point that has a name, is what the circuit is about. */
    private double widest(Probes probes) {
        boolean isMarked = probes instanceof Probes.Voltage voltage
                && voltage.across()
                        .map(across -> parts.stream()
                                .anyMatch(part -> part.part().kind() == PartKind.VOLTMETER
                                        && part.name().equals(across)))
                        .orElse(true);
        return isMarked ? WIDEST_OF_MARKED : WIDEST;
    }

    /** The same nodes, or in another place, of another part alike, the same number, are no news. */
    private static boolean isSame(Shown one, Shown other) {
        boolean sameNumber = Math.abs(one.expected() - other.expected()) <= SAME * other.expected();
        if (one.probes() instanceof Probes.Voltage first && other.probes() instanceof Probes.Voltage second) {
            return first.sameNodes(second)
                    || sameNumber
                            && first.across().isPresent() == second.across().isPresent();
        }
        return sameNumber;
    }

    /** Whether it shows the voltage of a supply in another place. */
    private boolean isSupplied(MeterReading reading) {
        return reading.probes() instanceof Probes.Voltage
                && parts.stream()
                        .filter(part -> part.part().kind() == PartKind.SOURCE)
                        .anyMatch(part -> Math.abs(reading.expected()
                                        - part.part().values().get(PartValue.VOLTS))
                                <= SAME * reading.expected());
    }

    private boolean isSunk(double amps) {
        return parts.stream()
                .filter(part -> part.part().kind() == PartKind.SINK)
                .anyMatch(part -> Math.abs(amps - part.part().values().get(PartValue.AMPS)) <= 0.01 * amps);
    }

    private List<Probes.Voltage> voltages() {
        List<Probes.Voltage> voltages = new ArrayList<>();
        for (PlacedPart part : nominal) {
            if (part.kind() == PartKind.NODE) {
                String node = netlist.nodeAt().get(part.end("at"));
                if (!node.equals(netlist.reference())) {
                    voltages.add(positive(node, netlist.reference(), Optional.empty()));
                }
            }
        }
        for (PartKind kind : BY_INTEREST) {
            for (FittedPart part : parts) {
                if (part.part().kind() == kind && !isBlocking(part)) {
                    for (List<String> ends : ENDS.getOrDefault(kind, List.of(List.of("from", "to")))) {
                        voltages.add(positive(
                                node(part.name(), ends.get(0)),
                                node(part.name(), ends.get(1)),
                                Optional.of(part.name())));
                    }
                }
            }
        }
        return voltages;
    }

    /** The wrong way round a diode shows what the parts beside it make of it. */
    private boolean isBlocking(FittedPart part) {
        return (part.part().kind() == PartKind.LED || part.part().kind() == PartKind.DIODE)
                && point.current(part.name()) < NONE;
    }

    private Probes.Voltage positive(String one, String other, Optional<String> across) {
        return point.voltage(one) >= point.voltage(other)
                ? new Probes.Voltage(one, other, across)
                : new Probes.Voltage(other, one, across);
    }

    private List<Probes.Current> currents() {
        List<Probes.Current> currents = new ArrayList<>();
        for (FittedPart part : parts) {
            if (part.part().kind() == PartKind.SOURCE && Math.abs(point.current(part.name())) > NONE) {
                currents.add(new Probes.Current(part.name(), "to", true));
            }
        }
        for (FittedPart part : parts) {
            if (CARRYING.contains(part.part().kind()) && Math.abs(point.current(part.name())) > NONE) {
                boolean forwards = point.current(part.name()) > 0;
                currents.add(new Probes.Current(part.name(), forwards ? "from" : "to", false));
            }
        }
        return currents;
    }

    private MeterReading reading(Shown shown) {
        MeteredCircuit metered = new MeteredCircuit(drawn, shown.probes(), meter);
        BenchMeter.Range range = shown.range();
        Band.Ends ends = band.of(with -> metered.measured(with, range));
        return new MeterReading(
                shown.probes(),
                range,
                range.shown(shown.expected()),
                range.below(ends.low() - range.error(ends.low())),
                range.above(ends.high() + range.error(ends.high())));
    }

    private String node(String part, String terminal) {
        for (Connected connected : netlist.parts()) {
            if (connected.part().name().equals(part)) {
                return connected.node().get(terminal);
            }
        }
        throw new IllegalStateException("a part that is not in its own circuit: " + part);
    }

    static List<Tolerance> ofWiper(PlacedPart trimpot) {
        double position = trimpot.values().get(PartValue.POSITION);
        return List.of(new Tolerance(PartValue.POSITION, Math.max(0, position - WIPER), Math.min(1, position + WIPER)));
    }
}
