package ampersheet.diagnostic;

import java.util.List;

/** Carries every fault found in an input, so that its reader can mend them all at once. */
public final class DiagnosticException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    /** Characters; more than anybody mends before looking again. {@link #diagnostics} has all. */
    private static final int MOST_PRINTED = 60_000;

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
        int printed = 0;
        while (printed < diagnostics.size() && out.length() < MOST_PRINTED) {
            out.append(diagnostics.get(printed).print());
            printed++;
        }
        if (printed < diagnostics.size()) {
            out.append("and ").append(diagnostics.size() - printed).append(" more; often they have one cause\n");
        }
        return out.toString();
    }
}
