package ampersheet.formula;

/** A formula that cannot be read, or that does not make sense in its scope; told at a character. */
public final class FormulaFault extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final int position;
    private final String expected;
    private final String nextAction;

    /** @param position 0-based index into the text of the formula */
    public FormulaFault(int position, String problem, String expected, String nextAction) {
        super(problem);
        this.position = position;
        this.expected = expected;
        this.nextAction = nextAction;
    }

    public int position() {
        return position;
    }

    public String expected() {
        return expected;
    }

    public String nextAction() {
        return nextAction;
    }
}
