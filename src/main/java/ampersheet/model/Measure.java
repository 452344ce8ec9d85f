package ampersheet.model;

import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleBiFunction;

/**
 * What can be read off a solved model: proofs and losses are made of measures.
 *
 * @param kind the model that is read, in whose figure the value could be read off
 * @param meaning what it measures, without article
 */
public record Measure(
        ModelKind kind,
        String name,
        List<Argument> arguments,
        Dimension dimension,
        String meaning,
        ToDoubleBiFunction<Model, Arguments> reading) {
    public Measure {
        arguments = List.copyOf(arguments);
    }

    /** @param reading the value in SI units, or {@link Unsolved} */
    static <M extends Model> Measure of(
            ModelKind kind,
            Class<M> model,
            String name,
            List<Argument> arguments,
            Dimension dimension,
            String meaning,
            ToDoubleBiFunction<M, Arguments> reading) {
        return new Measure(
                kind,
                name,
                arguments,
                dimension,
                meaning,
                (read, asked) -> reading.applyAsDouble(model.cast(read), asked));
    }

    /**
     * @param model of this measure's kind
     * @param asking the values that formulas among the arguments take
     * @throws Unsolved if the model has no solution, or no such thing
     */
    public Quantity read(Model model, List<Expression> given, Values asking) {
        return new Quantity(reading.applyAsDouble(model, new Arguments(given, asking)), dimension);
    }

    /** Whether two probes on the circuit as drawn, or a meter in its line, show it. */
    public boolean isReadByMeter() {
        return kind == ModelKind.CIRCUIT
                && Set.of(Dimension.VOLTAGE, Dimension.CURRENT).contains(dimension)
                && arguments.stream()
                        .allMatch(argument -> argument == Argument.CIRCUIT_NODE || argument == Argument.PART);
    }

    /** Such as {@code voltage(node, node)}. */
    public String shape() {
        List<String> words = new ArrayList<>();
        arguments.forEach(argument -> words.add(argument.word()));
        return name + "(" + String.join(", ", words) + ")";
    }
}
