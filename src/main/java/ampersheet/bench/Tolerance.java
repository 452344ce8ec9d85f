package ampersheet.bench;

import ampersheet.circuit.PartValue;

/**
 * Between which ends a value of a part lies.
 *
 * @param value which
 * @param low SI
 * @param high SI
 */
public record Tolerance(PartValue value, double low, double high) {
    /** @param share of the value to both sides */
    static Tolerance share(PartValue value, double nominal, double share) {
        return new Tolerance(value, nominal * (1 - share), nominal * (1 + share));
    }

    static Tolerance amount(PartValue value, double nominal, double amount) {
        return new Tolerance(value, nominal - amount, nominal + amount);
    }
}
