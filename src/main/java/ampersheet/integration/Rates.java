package ampersheet.integration;

/** A state that changes at rates that depend on the state alone. */
public interface Rates {
    /** Whether {@link #at} may be asked; otherwise only {@link #implicitStep} is. */
    default boolean isExplicit() {
        return true;
    }

    /**
     * Change of each member of the state per second.
     *
     * @throws NoBalance when the system has no such state
     */
    double[] at(double[] state);

    /**
     * The state {@code y = from + seconds · rates(y)}, that is, after a step of the backward Euler method.
     *
     * @throws NoBalance when there is none
     */
    double[] implicitStep(double[] from, double seconds);
}
