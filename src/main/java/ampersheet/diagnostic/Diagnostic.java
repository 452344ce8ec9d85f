package ampersheet.diagnostic;

import java.util.Objects;

/**
 * One fault, told so that its reader can mend it.
 *
 * @param problem what is wrong, one sentence
 * @param expected what was expected instead, one sentence, or empty
 * @param nextAction what to do now, one sentence in the imperative
 */
public record Diagnostic(Severity severity, Place place, String problem, String expected, String nextAction) {
  public Diagnostic {
    Objects.requireNonNull(severity);
    Objects.requireNonNull(place);
    Objects.requireNonNull(problem);
    Objects.requireNonNull(expected);
    Objects.requireNonNull(nextAction);
  }

  public static Diagnostic error(Place place, String problem, String expected, String nextAction) {
    return new Diagnostic(Severity.ERROR, place, problem, expected, nextAction);
  }

  public static Diagnostic warning(Place place, String problem, String expected, String nextAction) {
    return new Diagnostic(Severity.WARNING, place, problem, expected, nextAction);
  }

  /** Several lines: place and problem, the source line with a caret, what was expected, what to do. */
  public String print() {
    StringBuilder out = new StringBuilder();
    out.append(place).append(": ").append(severity == Severity.ERROR ? "error" : "warning").append(": ");
    out.append(problem).append('\n');
    if (!place.sourceLine().isEmpty()) {
      out.append("    ").append(place.sourceLine()).append('\n');
      if (place.column() > 0) {
        out.append("    ").append(indentLike(place.sourceLine(), place.column() - 1)).append("^\n");
      }
    }
    if (!expected.isEmpty()) {
      out.append("    expected: ").append(expected).append('\n');
    }
    if (!nextAction.isEmpty()) {
      out.append("    next: ").append(nextAction).append('\n');
    }
    return out.toString();
  }

  /** Blanks of the same printed width: a tab in the source line stays a tab. */
  private static String indentLike(String sourceLine, int characters) {
    StringBuilder indent = new StringBuilder();
    for (int i = 0; i < characters; i++) {
      indent.append(i < sourceLine.length() && sourceLine.charAt(i) == '\t' ? '\t' : ' ');
    }
    return indent.toString();
  }
}
