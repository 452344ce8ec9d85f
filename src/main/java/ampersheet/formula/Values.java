package ampersheet.formula;

import ampersheet.quantity.Quantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The values names have while a formula is evaluated. Immutable.
 *
 * @param quantities by name, in the order given
 * @param words by name
 */
public record Values(Map<String, Quantity> quantities, Map<String, String> words, Measured measured) {

  /** Reads a measure off a solved model; only in a proof. */
  @FunctionalInterface
  public interface Measured {
    Quantity value(String measure, List<Expression> arguments);
  }

  public static final Measured NOTHING_MEASURED = (measure, arguments) -> {
    throw new IllegalStateException("no model is solved here: " + measure);
  };

  public Values {
    quantities = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(quantities));
    words = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(words));
  }

  public static Values of(Map<String, Quantity> quantities, Map<String, String> words) {
    return new Values(quantities, words, NOTHING_MEASURED);
  }

  public Values with(String name, Quantity value) {
    Map<String, Quantity> more = new LinkedHashMap<>(quantities);
    more.put(name, value);
    return new Values(more, words, measured);
  }

  public Values measuring(Measured model) {
    return new Values(quantities, words, model);
  }

  /** @throws IllegalArgumentException if there is no such quantity: a checked formula never asks for one */
  public Quantity quantity(String name) {
    Quantity found = quantities.get(name);
    if (found == null) {
      throw new IllegalArgumentException("no quantity named " + name);
    }
    return found;
  }
}
