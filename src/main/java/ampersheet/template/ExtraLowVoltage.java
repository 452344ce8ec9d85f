package ampersheet.template;

/** The highest voltage that is taught, and the words for it. */
public final class ExtraLowVoltage {
    /** Direct voltage. */
    public static final double VOLTS = GivensSection.EXTRA_LOW_VOLTS;
    /** {@code 60 V}. */
    public static final String LIMIT = (int) VOLTS + " V";
    /** Behind a voltage that is too high. */
    public static final String ABOVE = "above the limit of " + LIMIT + " direct current";

    private ExtraLowVoltage() {}
}
