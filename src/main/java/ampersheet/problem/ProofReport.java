package ampersheet.problem;

import java.util.List;
import java.util.Locale;

/**
 * What solving many draws of a template by both routes showed.
 *
 * @param wanted problems asked for
 * @param tally accepted and refused, by reason
 * @param exhausted whether every combination of the givens was tried
 * @param disagreements the first of them; {@link Tally#refused(Refusal)} has their number
 * @param values worst gap of every proven value, asked ones first
 * @param mistakes in the order of the template
 * @param leaning steps whose second route changes when the first route is made wrong on purpose: it is no second route
 * @param warnings sentences for the template's author
 */
public record ProofReport(String template, String seed, int wanted, Tally tally, boolean exhausted,
    List<Disagreement> disagreements, List<ProvenValue> values, List<MadeMistake> mistakes, List<String> leaning,
    Variants variants, List<String> warnings) {
  public ProofReport {
    disagreements = List.copyOf(disagreements);
    values = List.copyOf(values);
    mistakes = List.copyOf(mistakes);
    leaning = List.copyOf(leaning);
    warnings = List.copyOf(warnings);
  }

  /** @param givens in one line, as they can be given to {@code work}; @param detail both values */
  public record Disagreement(String givens, String detail) {}

  /**
   * @param asked whether the sheet asks for it, or a model only takes it as a value
   * @param worstGap between the routes; relative, or absolute where the value is zero
   * @param allowed at that draw
   * @param givens of that draw
   * @param because the author's reason for a wide gap; may be empty
   */
  public record ProvenValue(String step, boolean asked, double worstGap, double allowed, String givens,
      String because) {}

  /**
   * @param made accepted draws in which the mistake can be made
   * @param closest how near it came to the key or to another mistake, in multiples of what both tolerances need: above 1
   *     no answer can pass for both; infinite if it was never made, or where values count exactly
   * @param to {@code the key}, or the id of the other mistake
   * @param givens of that draw
   */
  public record MadeMistake(String id, String of, long made, double closest, String to, String givens) {}

  public boolean passed() {
    return tally.refused(Refusal.ROUTES_DISAGREE) == 0 && leaning.isEmpty() && tally.accepted() > 0;
  }

  /** As plain text for a terminal. */
  public String print() {
    StringBuilder out = new StringBuilder();
    line(out, "%s: %s", template, passed() ? "proven" : "NOT PROVEN");
    line(out, "  %d draws%s: %d accepted, %d refused (%.1f %%)", tally.tried(), exhausted ? " (all there are)" : "",
        tally.accepted(), tally.refused(), 100 * tally.refusalRate());
    for (Refusal reason : Refusal.values()) {
      if (tally.refused(reason) > 0) {
        line(out, "    %6d  %4.1f %%  %s", tally.refused(reason), 100.0 * tally.refused(reason) / tally.tried(),
            reason.sentence());
      }
    }
    disagreements.forEach(one -> line(out, "  DISAGREE  %s: %s", one.givens(), one.detail()));
    leaning.forEach(step -> line(out, "  LEANING   the second route to %s follows the first: it proves nothing", step));
    for (ProvenValue value : values) {
      line(out, "  %-8s worst gap %.2g, allowed %.2g%s  at %s%s", value.step(), value.worstGap(), value.allowed(),
          value.asked() ? "" : " (not asked)", value.givens(),
          value.because().isEmpty() ? "" : "; " + value.because());
    }
    mistakes.forEach(mistake -> line(out, "  mistake %s of %s: %s", mistake.id(), mistake.of(), apart(mistake)));
    line(out, "  distinct variants: %d of %d combinations, %s", variants.count(), variants.combinations(),
        variants.basis().words());
    warnings.forEach(warning -> line(out, "  warning: %s", warning));
    return out.toString();
  }

  private static String apart(MadeMistake mistake) {
    if (mistake.made() == 0) {
      return "never made";
    }
    return String.format(Locale.ROOT, "made %d times, ", mistake.made()) + (Double.isInfinite(mistake.closest())
        ? "always another value"
        : String.format(Locale.ROOT, "closest %.2f × both tolerances, to %s", mistake.closest(), mistake.to()));
  }

  private static void line(StringBuilder out, String format, Object... values) {
    out.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
