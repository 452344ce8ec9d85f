package ampersheet.formula;

import ampersheet.quantity.Dimension;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the names in a formula stand for, before any number is known: enough to check it.
 *
 * @param quantities dimension of each named quantity
 * @param words for each given that is a word (an order, a corner), the words it may be
 */
public record Scope(Map<String, Dimension> quantities, Map<String, Set<String>> words, Measures measures) {

    /** Dimensions of the measures of a model, such as {@code current(D1)}; none outside a proof. */
    @FunctionalInterface
    public interface Measures {
        /**
         * @param arguments the arguments as names or numbers, as written
         * @return empty if the model has no such measure
         */
        Optional<Dimension> dimension(String measure, List<Expression> arguments);
    }

    public static final Measures NO_MEASURES = (measure, arguments) -> Optional.empty();
}
