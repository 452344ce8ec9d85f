package ampersheet.bench;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.problem.Inventory.Bin;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * A drawn part as it is laid out.
 *
 * @param drawn what the problem draws in its place
 * @param part with the values that it has on the bench; its kind is another where something stands in for it
 * @param count how many of them in series: a symbol may stand for several LEDs
 * @param rating power for which it is to be rated, watts; empty where nobody asks
 * @param bin from which it is taken; empty where none is listed
 * @param tolerances of its values, the bin's if there is one
 */
public record FittedPart(
        PartKind drawn,
        PlacedPart part,
        int count,
        OptionalDouble rating,
        Optional<Bin> bin,
        List<Tolerance> tolerances) {
    public FittedPart {
        tolerances = List.copyOf(tolerances);
    }

    FittedPart(PlacedPart part, List<Tolerance> tolerances) {
        this(part.kind(), part, 1, OptionalDouble.empty(), Optional.empty(), tolerances);
    }

    public String name() {
        return part.name();
    }

    /** Whether something else is always taken than what is drawn. */
    static boolean standsIn(PartKind drawn) {
        return drawn == PartKind.LOAD || drawn == PartKind.SINK;
    }

    /** A resistor is no motor and no lamp: what stands in for one is not drawn as one. */
    static PlacedPart asBox(PlacedPart drawn) {
        return new PlacedPart(drawn.kind(), drawn.name(), drawn.ends(), drawn.values());
    }

    FittedPart rated(double watts) {
        return new FittedPart(drawn, part, count, OptionalDouble.of(watts), bin, tolerances);
    }

    FittedPart from(Bin taken) {
        return new FittedPart(drawn, part, count, taken.rating(), Optional.of(taken), tolerances);
    }

    FittedPart inPlaceOf(PartKind other) {
        return new FittedPart(other, part, count, rating, bin, tolerances);
    }

    static PlacedPart with(PlacedPart part, PartValue value, double si) {
        TreeMap<PartValue, Double> values = new TreeMap<>(part.values());
        values.put(value, si);
        return new PlacedPart(part.kind(), part.name(), part.ends(), values, part.words());
    }
}
