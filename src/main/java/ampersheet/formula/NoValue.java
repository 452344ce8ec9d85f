package ampersheet.formula;

/**
 * With these values there is no result, because no case of a step applies. It is an outcome, for whoever tries values
 * that nobody has promised to lead anywhere; any other exception is a fault of the program and not to be taken for it.
 */
public final class NoValue extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NoValue(String message) {
        super(message);
    }
}
