package ampersheet.problem;

import ampersheet.circuit.PlacedPart;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.model.CircuitModel;
import ampersheet.model.Measure;
import ampersheet.model.Measures;
import ampersheet.model.Models;
import ampersheet.problem.Inventory.Bin;
import ampersheet.problem.Inventory.Meter;
import ampersheet.quantity.Dimension;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.Way;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a meter of the workshop reads where an asked value can be measured: between these bounds, if the parts keep
 * their tolerances and the meter its own.
 *
 * @param of the asked step
 * @param nominal with parts exactly as printed, SI
 * @param low with the least favourable parts and meter, SI
 * @param high likewise
 */
public record BenchReading(String of, double nominal, double low, double high) {
    /** All corners are solved. */
    private static final int MOST_PARTS = 10;

    /**
     * One for each asked step that is a voltage or current of the drawn circuit, for which the workshop has a meter.
     */
    public static List<BenchReading> of(Problem problem, Inventory inventory) {
        List<BenchReading> readings = new ArrayList<>();
        for (Problem.Answer answer : problem.answers()) {
            for (Proof proof : problem.template().proofs()) {
                if (proof.of().equals(answer.of()) && isReadOff(proof)) {
                    Dimension quantity = problem.values().quantity(answer.of()).dimension();
                    inventory
                            .meter(quantity)
                            .flatMap(meter -> reading(proof, problem, inventory, meter))
                            .ifPresent(readings::add);
                }
            }
        }
        return readings;
    }

    /** A single measure of the circuit as drawn. */
    private static boolean isReadOff(Proof proof) {
        return proof.way() instanceof Way.Direct
                && proof.with().isEmpty()
                && proof.measure() instanceof Expression.Call call
                && Measures.first(call.function(), call.arguments().size())
                        .filter(Measure::isReadByMeter)
                        .isPresent();
    }

    private static Optional<BenchReading> reading(Proof proof, Problem problem, Inventory inventory, Meter meter) {
        CircuitModel circuit = problem.model(CircuitModel.class).orElseThrow();
        List<PlacedPart> parts = circuit.schematic().parts();
        Map<PlacedPart, Double> tolerated = new LinkedHashMap<>();
        for (PlacedPart part : parts) {
            Optional<Bin> bin =
                    inventory.limited(part.kind()).flatMap(kind -> inventory.bin(kind, Inventory.value(kind, part)));
            bin.filter(found -> found.tolerance() > 0).ifPresent(found -> tolerated.put(part, found.tolerance()));
        }
        if (tolerated.size() > MOST_PARTS) {
            return Optional.empty();
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int corner = 0; corner < 1 << tolerated.size(); corner++) {
            double read = measured(proof.measure(), problem, circuit.with(at(parts, tolerated, corner, inventory)));
            low = Math.min(low, read);
            high = Math.max(high, read);
        }
        return Optional.of(new BenchReading(
                proof.of(),
                measured(proof.measure(), problem, circuit),
                low - meter.error(low),
                high + meter.error(high)));
    }

    private static List<PlacedPart> at(
            List<PlacedPart> nominal, Map<PlacedPart, Double> tolerated, int corner, Inventory inventory) {
        List<PlacedPart> parts = new ArrayList<>();
        int bit = 0;
        for (PlacedPart part : nominal) {
            Double tolerance = tolerated.get(part);
            if (tolerance == null) {
                parts.add(part);
            } else {
                double sign = (corner >> bit++ & 1) == 1 ? 1 : -1;
                parts.add(inventory.limited(part.kind()).orElseThrow().scaled(part, 1 + sign * tolerance));
            }
        }
        return parts;
    }

    private static double measured(Expression measure, Problem problem, CircuitModel circuit) {
        return Evaluation.evaluate(measure, Models.of(circuit).measuredBy(problem.givens()))
                .value();
    }
}
