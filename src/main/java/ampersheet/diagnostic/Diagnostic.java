package ampersheet.diagnostic;

import java.util.Objects;

/**
 * One fault, told so that its reader can mend it. What it quotes is {@link Printable}, wherever the fault is shown.
 *
 * @param problem what is wrong, one sentence
 * @param expected what was expected instead, one sentence, or empty
 * @param nextAction what to do now, one sentence in the imperative
 */
public record Diagnostic(Severity severity, Place place, String problem, String expected, String nextAction) {
    /** Characters of a source line that are printed. */
    private static final int LONGEST_LINE = 120;
    /** Longer than any sentence of the program, with the names it lists; what quotes more than that is cut. */
    private static final int LONGEST_SENTENCE = 4_000;

    public Diagnostic {
        Objects.requireNonNull(severity);
        Objects.requireNonNull(place);
        problem = Printable.line(problem, LONGEST_SENTENCE);
        expected = Printable.line(expected, LONGEST_SENTENCE);
        nextAction = Printable.line(nextAction, LONGEST_SENTENCE);
    }

    public static Diagnostic error(Place place, String problem, String expected, String nextAction) {
        return new Diagnostic(Severity.ERROR, place, problem, expected, nextAction);
    }

    public static Diagnostic warning(Place place, String problem, String expected, String nextAction) {
        return new Diagnostic(Severity.WARNING, place, problem, expected, nextAction);
    }

    /**
     * Several lines: place and problem, the source line (or the part around the caret) with a caret, what was expected,
     * what to do.
     */
    public String print() {
        StringBuilder out = new StringBuilder();
        out.append(place)
                .append(": ")
                .append(severity == Severity.ERROR ? "error" : "warning")
                .append(": ");
        out.append(problem).append('\n');
        if (!place.sourceLine().isEmpty()) {
            printLine(out);
        }
        if (!expected.isEmpty()) {
            out.append("    expected: ").append(expected).append('\n');
        }
        if (!nextAction.isEmpty()) {
            out.append("    next: ").append(nextAction).append('\n');
        }
        return out.toString();
    }

    /** The source line with its caret; of a long line the part around the caret. */
    private void printLine(StringBuilder out) {
        String line = place.sourceLine();
        int caret = place.column() - 1;
        String cut = "";
        if (line.length() > LONGEST_LINE) {
            int from = Math.max(0, Math.min(caret - LONGEST_LINE / 2, line.length() - LONGEST_LINE));
            int to = Math.min(line.length(), from + LONGEST_LINE);
            cut = from > 0 ? "… " : "";
            line = line.substring(from, to) + (to < line.length() ? " …" : "");
            caret = caret < 0 ? caret : caret - from;
        }
        out.append("    ").append(cut).append(Printable.columns(line)).append('\n');
        if (caret >= 0) {
            out.append("    ")
                    .append(" ".repeat(cut.length()))
                    .append(indentLike(line, caret))
                    .append("^\n");
        }
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
