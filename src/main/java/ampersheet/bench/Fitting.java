package ampersheet.bench;

import ampersheet.bench.NotLaidOut.Reason;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Saying;
import ampersheet.model.CircuitModel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Chooses what is laid out for each drawn part. Currents that are only drawn as drawn off come last: the largest goes
 * to the electronic load, and resistors that draw about as much stand for the others.
 */
final class Fitting {
    private static final double NEAR = 1e-9;

    private final CircuitModel drawn;
    private final Drawer drawer;

    Fitting(CircuitModel drawn, Drawer drawer) {
        this.drawn = drawn;
        this.drawer = drawer;
    }

    List<FittedPart> parts() throws NotLaidOut {
        List<FittedPart> parts = new ArrayList<>();
        for (PlacedPart part : drawn.schematic().parts()) {
            if (BenchCircuit.isSeen(part.kind())) {
                parts.add(drawer.fit(part, parts));
            }
        }
        return withSinks(parts);
    }

    private List<FittedPart> withSinks(List<FittedPart> parts) throws NotLaidOut {
        List<FittedPart> sinks =
                parts.stream().filter(part -> part.drawn() == PartKind.SINK).toList();
        if (sinks.isEmpty()) {
            return parts;
        }
        OperatingPoint point = drawn.with(BenchCircuit.laidOut(drawn, parts)).operatingPoint();
        Optional<FittedPart> largest = sinks.stream()
                .filter(sink -> amps(sink) >= BenchSupply.LEAST_SUNK_AMPS
                        && point.across(sink.name()) >= BenchSupply.LEAST_SUNK_VOLTS)
                .max(Comparator.comparingDouble(sink -> point.power(sink.name())));
        List<FittedPart> fitted = new ArrayList<>(parts);
        for (FittedPart sink : sinks) {
            int at = fitted.indexOf(sink);
            if (largest.filter(sink::equals).isPresent()) {
                fitted.set(at, electronicLoad(sink, point.across(sink.name())));
            } else {
                fitted.set(at, resistor(sink, point.across(sink.name()), fitted));
            }
        }
        return fitted;
    }

    private static double amps(FittedPart sink) {
        return sink.part().values().get(PartValue.AMPS);
    }

    private static FittedPart electronicLoad(FittedPart sink, double volts) throws NotLaidOut {
        double amps = BenchSupply.sunk(amps(sink));
        if (amps * volts > BenchSupply.MOST_SUNK_WATTS || amps > BenchSupply.MOST_AMPS) {
            throw new NotLaidOut(
                    Reason.NOT_SUPPLIED,
                    Saying.of(
                            "problem.no-card.electronic-load",
                            "part",
                            sink.name(),
                            "amps",
                            BenchLimits.amps(amps),
                            "volts",
                            CommonParts.volts(volts),
                            "most-amps",
                            BenchLimits.amps(BenchSupply.MOST_AMPS),
                            "most-watts",
                            BenchLimits.watts(BenchSupply.MOST_SUNK_WATTS)));
        }
        return new FittedPart(
                FittedPart.with(sink.part(), PartValue.AMPS, amps),
                List.of(Tolerance.share(PartValue.AMPS, amps, CommonParts.ELECTRONIC_LOAD)));
    }

    private FittedPart resistor(FittedPart sink, double volts, List<FittedPart> inUse) throws NotLaidOut {
        double amps = amps(sink);
        if (!(volts > NEAR && amps > NEAR)) {
            throw new NotLaidOut(
                    Reason.NO_SUCH_PART,
                    Saying.of(
                            "problem.no-card.no-resistor-draws-it",
                            "part",
                            sink.name(),
                            "amps",
                            BenchLimits.amps(amps),
                            "volts",
                            CommonParts.volts(volts)));
        }
        return drawer.resistorFor(sink.part(), volts / amps, inUse);
    }
}
