package ampersheet.bench;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Between which ends a quantity of a circuit lies while every part keeps its tolerance. The circuit is solved with each
 * value at either end, one at a time; then with all values at the ends that make it larger, and with all at those that
 * make it smaller. What rises or falls with each value, whatever the others are, is worst there.
 */
final class Band {
    private final List<PlacedPart> nominal;
    private final List<Place> places = new ArrayList<>();

    /** @param part index among the parts */
    private record Place(int part, Tolerance tolerance) {}

    record Ends(double low, double high) {}

    Band(List<PlacedPart> nominal, List<FittedPart> parts) {
        this.nominal = nominal;
        for (FittedPart part : parts) {
            List<Tolerance> tolerances = new ArrayList<>(part.tolerances());
            if (part.part().kind() == PartKind.TRIMPOT) {
                tolerances.addAll(Readings.ofWiper(part.part()));
            }
            tolerances.forEach(tolerance -> places.add(new Place(nominal.indexOf(part.part()), tolerance)));
        }
    }

    Ends of(ToDoubleFunction<List<PlacedPart>> quantity) {
        double middle = quantity.applyAsDouble(nominal);
        double low = middle;
        double high = middle;
        List<PlacedPart> larger = nominal;
        List<PlacedPart> smaller = nominal;
        for (Place place : places) {
            double atLow = quantity.applyAsDouble(
                    with(nominal, place, place.tolerance().low()));
            double atHigh = quantity.applyAsDouble(
                    with(nominal, place, place.tolerance().high()));
            boolean rises = atHigh >= atLow;
            larger = with(
                    larger,
                    place,
                    rises ? place.tolerance().high() : place.tolerance().low());
            smaller = with(
                    smaller,
                    place,
                    rises ? place.tolerance().low() : place.tolerance().high());
            low = Math.min(low, Math.min(atLow, atHigh));
            high = Math.max(high, Math.max(atLow, atHigh));
        }
        return new Ends(Math.min(low, quantity.applyAsDouble(smaller)), Math.max(high, quantity.applyAsDouble(larger)));
    }

    private static List<PlacedPart> with(List<PlacedPart> parts, Place place, double si) {
        List<PlacedPart> changed = new ArrayList<>(parts);
        changed.set(
                place.part(),
                FittedPart.with(parts.get(place.part()), place.tolerance().value(), si));
        return changed;
    }
}
