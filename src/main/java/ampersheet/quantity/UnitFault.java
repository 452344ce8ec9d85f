package ampersheet.quantity;

/** A text that is not a unit. */
public final class UnitFault extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int position;

    /** @param position 0-based index of the first character that does not fit */
    public UnitFault(int position, String problem) {
        super(problem);
        this.position = position;
    }

    public int position() {
        return position;
    }
}
