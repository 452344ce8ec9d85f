package ampersheet.problem;

import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PlacedPart;
import ampersheet.model.CircuitModel;
import ampersheet.problem.Inventory.Bin;
import ampersheet.problem.Inventory.Kind;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is left in the bins while a class draws the problems of one template. Everybody builds it at the same time;
 * before the next one, the parts go back.
 */
final class Stock {
    private static final Unit WATT = Unit.parse("W");

    private final Inventory inventory;
    private final Map<Bin, Integer> taken = new LinkedHashMap<>();

    Stock(Inventory inventory) {
        this.inventory = inventory;
    }

    /** What keeps a problem from being built, however full the bins are. */
    Optional<Attempt.Refused> objection(Problem problem) {
        Optional<CircuitModel> circuit = problem.model(CircuitModel.class);
        if (circuit.isEmpty()) {
            return Optional.empty();
        }
        OperatingPoint point = circuit.get().operatingPoint();
        for (PlacedPart part : circuit.get().schematic().parts()) {
            Optional<Kind> kind = inventory.limited(part.kind());
            if (kind.isEmpty()) {
                continue;
            }
            double value = Inventory.value(kind.get(), part);
            Optional<Bin> bin = inventory.bin(kind.get(), value);
            if (bin.isEmpty()) {
                return Optional.of(new Attempt.Refused(
                        Refusal.NOT_IN_THE_BINS,
                        "no bin holds the " + kind.get().word() + " " + part.name() + " of " + value + " in SI units"));
            }
            double watts = Math.abs(point.power(part.name()));
            if (bin.get().rating().isPresent() && watts > bin.get().rating().getAsDouble()) {
                return Optional.of(new Attempt.Refused(
                        Refusal.ABOVE_ITS_RATING,
                        part.name() + " takes up "
                                + QuantityWriter.POINT.plain(watts, WATT, 3).text() + ", more than the "
                                + QuantityWriter.POINT
                                        .plain(bin.get().rating().getAsDouble(), WATT, 3)
                                        .text() + " it is rated for"));
            }
        }
        return Optional.empty();
    }

    /** Takes the parts of a problem out of the bins; if one holds too few, all stay. */
    Optional<Attempt.Refused> take(Problem problem) {
        Map<Bin, Integer> wanted = new LinkedHashMap<>();
        for (Bin bin : parts(problem)) {
            wanted.merge(bin, 1, Integer::sum);
        }
        for (Map.Entry<Bin, Integer> each : wanted.entrySet()) {
            if (taken.getOrDefault(each.getKey(), 0) + each.getValue()
                    > each.getKey().count()) {
                return Optional.of(new Attempt.Refused(
                        Refusal.TOO_FEW_PARTS,
                        "the bin in line " + each.getKey().place().line() + " holds "
                                + each.getKey().count()));
            }
        }
        wanted.forEach((bin, count) -> taken.merge(bin, count, Integer::sum));
        return Optional.empty();
    }

    private List<Bin> parts(Problem problem) {
        List<Bin> bins = new ArrayList<>();
        problem.schematic()
                .ifPresent(schematic -> schematic
                        .parts()
                        .forEach(part -> inventory
                                .limited(part.kind())
                                .flatMap(kind -> inventory.bin(kind, Inventory.value(kind, part)))
                                .ifPresent(bins::add)));
        return bins;
    }
}
