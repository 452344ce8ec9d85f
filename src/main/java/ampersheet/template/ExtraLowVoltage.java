package ampersheet.template;

/** The highest voltage that is taught, and the words for it. */
public final class ExtraLowVoltage {
  /** Direct voltage. */
  public static final double VOLTS = GivensSection.EXTRA_LOW_VOLTS;
  /** {@code 60 V}. */
  public static final String LIMIT = (int) VOLTS + " V";

  private ExtraLowVoltage() {}
}
