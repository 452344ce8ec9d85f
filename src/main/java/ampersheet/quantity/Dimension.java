package ampersheet.quantity;

/**
 * Exponents of the SI base units metre, kilogram, second, ampere and kelvin. Counts, bits, turns, degrees of angle and
 * percentages have dimension one.
 */
public record Dimension(int metre, int kilogram, int second, int ampere, int kelvin) {
    public static final Dimension ONE = new Dimension(0, 0, 0, 0, 0);
    public static final Dimension LENGTH = new Dimension(1, 0, 0, 0, 0);
    public static final Dimension MASS = new Dimension(0, 1, 0, 0, 0);
    public static final Dimension TIME = new Dimension(0, 0, 1, 0, 0);
    public static final Dimension CURRENT = new Dimension(0, 0, 0, 1, 0);
    public static final Dimension TEMPERATURE = new Dimension(0, 0, 0, 0, 1);
    public static final Dimension VOLTAGE = new Dimension(2, 1, -3, -1, 0);
    public static final Dimension RESISTANCE = new Dimension(2, 1, -3, -2, 0);
    public static final Dimension POWER = new Dimension(2, 1, -3, 0, 0);
    public static final Dimension ENERGY = new Dimension(2, 1, -2, 0, 0);
    public static final Dimension CAPACITANCE = new Dimension(-2, -1, 4, 2, 0);
    public static final Dimension INDUCTANCE = new Dimension(2, 1, -2, -2, 0);
    public static final Dimension FREQUENCY = new Dimension(0, 0, -1, 0, 0);

    public Dimension times(Dimension other) {
        return new Dimension(
                metre + other.metre,
                kilogram + other.kilogram,
                second + other.second,
                ampere + other.ampere,
                kelvin + other.kelvin);
    }

    public Dimension over(Dimension other) {
        return new Dimension(
                metre - other.metre,
                kilogram - other.kilogram,
                second - other.second,
                ampere - other.ampere,
                kelvin - other.kelvin);
    }

    public Dimension power(int exponent) {
        return new Dimension(
                metre * exponent, kilogram * exponent, second * exponent, ampere * exponent, kelvin * exponent);
    }

    /** Whether every exponent is even, so that a square root has a dimension of its own. */
    public boolean isSquare() {
        return metre % 2 == 0 && kilogram % 2 == 0 && second % 2 == 0 && ampere % 2 == 0 && kelvin % 2 == 0;
    }

    /** @throws IllegalArgumentException unless {@link #isSquare()} */
    public Dimension squareRoot() {
        if (!isSquare()) {
            throw new IllegalArgumentException("no square root of " + this);
        }
        return new Dimension(metre / 2, kilogram / 2, second / 2, ampere / 2, kelvin / 2);
    }

    /** Written out: every formula compares dimensions, and what a record makes by itself is slow until it is hot. */
    @Override
    public boolean equals(Object other) {
        return this == other
                || other instanceof Dimension dimension
                        && metre == dimension.metre
                        && kilogram == dimension.kilogram
                        && second == dimension.second
                        && ampere == dimension.ampere
                        && kelvin == dimension.kelvin;
    }

    @Override
    public int hashCode() {
        return (((metre * 31 + kilogram) * 31 + second) * 31 + ampere) * 31 + kelvin;
    }
}
