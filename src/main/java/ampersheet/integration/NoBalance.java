package ampersheet.integration;

/** A system has no state that goes with the one given. */
public final class NoBalance extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NoBalance(String message) {
        super(message);
    }
}
