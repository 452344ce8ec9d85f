package ampersheet.diagnostic;

import java.util.List;

/** Carries every fault found in an input, so that its reader can mend them all at once. */
public final class DiagnosticException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final transient List<Diagnostic> diagnostics;

  public DiagnosticException(List<Diagnostic> diagnostics) {
    super(print(diagnostics));
    if (diagnostics.isEmpty()) {
      throw new IllegalArgumentException("an exception without a fault");
    }
    this.diagnostics = List.copyOf(diagnostics);
  }

  public DiagnosticException(Diagnostic diagnostic) {
    this(List.of(diagnostic));
  }

  public List<Diagnostic> diagnostics() {
    return diagnostics;
  }

  private static String print(List<Diagnostic> diagnostics) {
    StringBuilder out = new StringBuilder();
    for (Diagnostic diagnostic : diagnostics) {
      out.append(diagnostic.print());
    }
    return out.toString();
  }
}
