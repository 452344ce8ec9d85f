package ampersheet.bench;

import ampersheet.bench.NotLaidOut.Reason;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Saying;
import ampersheet.problem.Inventory;
import ampersheet.problem.Inventory.Bin;
import ampersheet.problem.Inventory.Kind;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where parts are taken from: bins as far as a workshop lists them, else what is common. */
public final class Drawer {
    private final Optional<Inventory> bins;
    /** Everybody builds one problem at the same time. */
    private final Map<Bin, Integer> taken = new LinkedHashMap<>();

    public Drawer(Optional<Inventory> bins) {
        this.bins = bins;
    }

    Optional<Inventory> bins() {
        return bins;
    }

    /** Takes the parts of a circuit out of the bins. */
    public void take(BenchCircuit circuit) {
        circuit.parts().forEach(part -> part.bin().ifPresent(bin -> taken.merge(bin, part.count(), Integer::sum)));
    }

    /**
     * What is laid out for a drawn part; a current sink stays one.
     *
     * @param inUse of the bins, for other parts of the same circuit
     */
    FittedPart fit(PlacedPart part, List<FittedPart> inUse) throws NotLaidOut {
        PlacedPart drawn = FittedPart.standsIn(part.kind()) ? FittedPart.asBox(part) : part;
        Optional<Kind> kind = bins.flatMap(known -> known.limited(drawn.kind()));
        if (kind.isPresent()) {
            return fromBin(drawn, kind.get(), inUse);
        }
        return switch (drawn.kind()) {
            case SOURCE -> CommonParts.source(drawn);
            case RESISTOR, LOAD -> CommonParts.resistor(drawn);
            case LED -> CommonParts.led(drawn);
            case DIODE -> CommonParts.diode(drawn);
            case ZENER -> CommonParts.zener(drawn);
            case REFERENCE -> CommonParts.reference(drawn);
            case NMOS, PMOS -> CommonParts.mosfet(drawn);
            case NPN -> CommonParts.transistor(drawn);
            case TRIMPOT -> CommonParts.trimpot(drawn);
            case REGULATOR -> CommonParts.regulator(drawn);
            case CAPACITOR -> CommonParts.capacitor(drawn);
            case SINK, SWITCH, VOLTMETER, AMMETER, WIRE, GROUND, NODE -> new FittedPart(drawn, List.of());
            case CABLE, STRIP, PANEL ->
                throw new IllegalStateException(
                        "no template with a " + drawn.kind().word() + " comes to the bench");
        };
    }

    /** A resistor in the place of a sink. */
    FittedPart resistorFor(PlacedPart sink, double ohms, List<FittedPart> inUse) throws NotLaidOut {
        PlacedPart resistor =
                new PlacedPart(PartKind.RESISTOR, sink.name(), sink.ends(), Map.of(PartValue.OHMS, ohms), Map.of());
        return fit(resistor, inUse).inPlaceOf(PartKind.SINK);
    }

    private FittedPart fromBin(PlacedPart drawn, Kind kind, List<FittedPart> inUse) throws NotLaidOut {
        int count = kind == Kind.LED ? CommonParts.ledsIn(drawn) : 1;
        double wanted = drawn.values().get(kind.value()) / count;
        Bin nearest = null;
        for (Bin bin : bins.orElseThrow().bins()) {
            if (bin.kind() == kind
                    && left(bin, inUse) >= count
                    && (nearest == null || ratio(bin.value(), wanted) < ratio(nearest.value(), wanted))) {
                nearest = bin;
            }
        }
        if (nearest == null) {
            throw new NotLaidOut(
                    Reason.NO_SUCH_PART,
                    Saying.of("problem.no-card.empty-bins", "part", drawn.name(), "kind", kind.word()));
        }
        CommonParts.requireNear(drawn, wanted, nearest.value(), unit(kind.dimension()));
        Bin bin = nearest;
        if (kind == Kind.LED) {
            return CommonParts.led(drawn, count, bin.value(), bin.tolerance() * bin.value())
                    .from(bin);
        }
        PlacedPart part = FittedPart.with(
                drawn.kind() == PartKind.ZENER
                        ? new PlacedPart(drawn.kind(), drawn.name(), drawn.ends(), Map.of())
                        : drawn,
                kind.value(),
                bin.value());
        List<Tolerance> tolerances =
                bin.tolerance() > 0 ? List.of(Tolerance.share(kind.value(), bin.value(), bin.tolerance())) : List.of();
        return new FittedPart(part, tolerances).from(bin);
    }

    private int left(Bin bin, List<FittedPart> inUse) {
        int used = inUse.stream()
                .filter(part -> part.bin().filter(bin::equals).isPresent())
                .mapToInt(FittedPart::count)
                .sum();
        return bin.count() - used - taken.getOrDefault(bin, 0);
    }

    private static double ratio(double one, double other) {
        return Math.max(one / other, other / one);
    }

    private static Unit unit(Dimension dimension) {
        return Unit.parse(
                dimension.equals(Dimension.RESISTANCE) ? "ohm" : dimension.equals(Dimension.CAPACITANCE) ? "F" : "V");
    }
}
