package ampersheet.answer;

import ampersheet.quantity.PreferredSeries;
import java.util.List;

/** What counts as the right answer. */
public sealed interface Acceptance {

  /**
   * A computed quantity: within {@code relative} of the unrounded key, or within {@code floor} (SI), whichever is more.
   */
  record Within(double relative, double floor) implements Acceptance {
    public double band(double expected) {
      return Math.max(Math.abs(expected) * relative, floor);
    }
  }

  /** A preferred value: exactly this member of the series. */
  record Preferred(PreferredSeries series) implements Acceptance {}

  /** A whole number, exactly. */
  record Count() implements Acceptance {}

  /** One of several options; the expected value is the index of the right one. */
  record Choice(List<Option> options) implements Acceptance {
    public Choice {
      options = List.copyOf(options);
    }
  }

  /** @param explanation why this is wrong, said when it was chosen wrongly; may be empty for the right one */
  record Option(String text, String explanation) {}
}
