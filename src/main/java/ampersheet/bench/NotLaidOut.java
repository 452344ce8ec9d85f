package ampersheet.bench;

/** A circuit that is better not laid out: its message, a clause that begins with the part or the circuit, says why. */
public final class NotLaidOut extends Exception {
    private static final long serialVersionUID = 1;

    /** What kind of reason, so that those of many draws can be counted. */
    public enum Reason {
        NOT_FOR_THE_BENCH,
        NO_SUCH_PART,
        TOO_HOT,
        OUTSIDE_LIMITS,
        NOT_SUPPLIED,
        NOTHING_TO_MEASURE
    }

    private final Reason reason;

    NotLaidOut(Reason reason, String told) {
        super(told, null, false, false);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
