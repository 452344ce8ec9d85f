package ampersheet.diagnostic;

/** How much a {@link Diagnostic} matters: an error stops the work, a warning does not. */
public enum Severity {
    ERROR,
    WARNING
}
