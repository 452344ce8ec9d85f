package ampersheet.formula;

import ampersheet.quantity.Quantity;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The values names have while a formula is evaluated. Immutable.
 *
 * <p>A value that is added lies on top of those before it: a working adds them one by one, a design task does so for
 * thousands of choices, and none of them copies what it stands on.
 */
public final class Values {
    /** So many lie on top of each other before they are put into one map. */
    private static final int DEEPEST = 12;

    /** Reads a measure off a solved model; only in a proof. */
    @FunctionalInterface
    public interface Measured {
        Quantity value(String measure, List<Expression> arguments);
    }

    public static final Measured NOTHING_MEASURED = (measure, arguments) -> {
        throw new IllegalStateException("no model is solved here: " + measure);
    };

    /** At the bottom of the pile; above it empty, and not looked at. */
    private final Map<String, Quantity> bottom;

    private final Values under;
    private final String name;
    private final Quantity value;
    private final int depth;
    private final Map<String, String> words;
    private final Measured measured;

    private Values(
            Map<String, Quantity> bottom,
            Values under,
            String name,
            Quantity value,
            Map<String, String> words,
            Measured measured) {
        this.bottom = bottom;
        this.under = under;
        this.name = name;
        this.value = value;
        this.depth = under == null ? 0 : under.depth + 1;
        this.words = words;
        this.measured = measured;
    }

    /**
     * @param quantities by name, in the order given
     * @param words by name
     */
    public static Values of(Map<String, Quantity> quantities, Map<String, String> words) {
        return new Values(inOrder(quantities), null, "", null, inOrder(words), NOTHING_MEASURED);
    }

    private static <V> Map<String, V> inOrder(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    public Values with(String name, Quantity value) {
        Values pile = depth < DEEPEST ? this : new Values(quantities(), null, "", null, words, measured);
        return new Values(Map.of(), pile, name, value, words, measured);
    }

    public Values measuring(Measured model) {
        return new Values(bottom, under, name, value, words, model);
    }

    public boolean has(String wanted) {
        return find(wanted) != null;
    }

    /** @throws IllegalArgumentException if there is no such quantity: a checked formula never asks for one */
    public Quantity quantity(String wanted) {
        Quantity found = find(wanted);
        if (found == null) {
            throw new IllegalArgumentException("no quantity named " + wanted);
        }
        return found;
    }

    private Quantity find(String wanted) {
        // Most names looked at are others: their codes tell that without a look at the letters.
        int code = wanted.hashCode();
        Values at = this;
        while (at.under != null) {
            if (at.name.hashCode() == code && at.name.equals(wanted)) {
                return at.value;
            }
            at = at.under;
        }
        return at.bottom.get(wanted);
    }

    /** By name, in the order in which the names were first given. */
    public Map<String, Quantity> quantities() {
        if (under == null) {
            return bottom;
        }
        Map<String, Quantity> all = new LinkedHashMap<>();
        fill(all);
        return Collections.unmodifiableMap(all);
    }

    private void fill(Map<String, Quantity> all) {
        if (under == null) {
            all.putAll(bottom);
        } else {
            under.fill(all);
            all.put(name, value);
        }
    }

    /** By name. */
    public Map<String, String> words() {
        return words;
    }

    public Measured measured() {
        return measured;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Values values
                && quantities().equals(values.quantities())
                && words.equals(values.words)
                && measured.equals(values.measured);
    }

    @Override
    public int hashCode() {
        return 31 * quantities().hashCode() + words.hashCode();
    }

    @Override
    public String toString() {
        return quantities() + (words.isEmpty() ? "" : " " + words);
    }
}
