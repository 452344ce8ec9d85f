package ampersheet.bench;

/**
 * Between which ends a value of a part lies.
 *
 * @param value its key, as {@code ohms}
 * @param low SI
 * @param high SI
 */
public record Tolerance(String value, double low, double high) {
    /** @param share of the value to both sides */
    static Tolerance share(String value, double nominal, double share) {
        return new Tolerance(value, nominal * (1 - share), nominal * (1 + share));
    }

    static Tolerance amount(String value, double nominal, double amount) {
        return new Tolerance(value, nominal - amount, nominal + amount);
    }
}
