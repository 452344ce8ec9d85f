package ampersheet.quantity;

import java.util.Objects;

/**
 * A number of coherent SI units.
 *
 * @param value in the coherent SI unit of the dimension (V, A, ohm, W, K, s, m …); temperatures in kelvin
 */
public record Quantity(double value, Dimension dimension) {
    public Quantity {
        Objects.requireNonNull(dimension);
    }

    public static Quantity number(double value) {
        return new Quantity(value, Dimension.ONE);
    }
}
