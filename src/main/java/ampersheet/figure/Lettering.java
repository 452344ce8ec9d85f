package ampersheet.figure;

import ampersheet.formula.Symbol;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One line of text in runs: quantity symbols italic, their subscripts upright and lowered, all else upright (SI
 * Brochure, 5.4.1 and 5.3: symbols of quantities italic, of units roman).
 *
 * @param size height of an em in pixels
 */
public record Lettering(List<Run> runs, double size, boolean bold) {
    /** Times and what is as wide as it, else whatever serif there is. */
    static final String FAMILY = "Times New Roman, Liberation Serif, Nimbus Roman, Times, serif";

    static final double BODY = 15;
    static final double SMALL = 12;
    /** Of the em. */
    static final double DIGIT_HEIGHT = 0.68;

    /** Which point of the line lies where it is put. */
    public enum Anchor {
        START,
        MIDDLE,
        END
    }

    public enum Face {
        UPRIGHT,
        ITALIC,
        SUBSCRIPT
    }

    public record Run(String text, Face face) {}

    /**
     * A run as it is set, or several that look alike and follow each other on the line.
     *
     * @param size of its letters; @param lowered below the baseline of the line, in pixels as is the size
     */
    public record Span(String text, double size, boolean italic, boolean subscript, double lowered) {}

    public Lettering {
        runs = List.copyOf(runs);
    }

    static Lettering plain(String text, double size) {
        return new Lettering(List.of(new Run(text, Face.UPRIGHT)), size, false);
    }

    /** A symbol, where there is one, and the text after it. */
    static Lettering of(Label.Line line, double size) {
        List<Run> runs = new ArrayList<>();
        line.symbol().ifPresent(symbol -> runs.addAll(symbol(symbol)));
        if (!line.text().isEmpty()) {
            runs.add(new Run((runs.isEmpty() ? "" : "\u00A0") + line.text(), Face.UPRIGHT));
        }
        return new Lettering(runs, size, false);
    }

    /**
     * The lines of a label: its name, unless a symbol says it already (R1 and R₁), then its values.
     *
     * @param named false where the name stands elsewhere
     */
    static List<Lettering> block(Label label, boolean named) {
        List<Lettering> lines = new ArrayList<>();
        boolean said = label.lines().stream()
                .flatMap(line -> line.symbol().stream())
                .anyMatch(symbol -> !label.name().isEmpty() && symbol.equals(Symbol.of(label.name()))
                        || (symbol.letters() + symbol.subscript()).equals(label.name()));
        if (named && !label.name().isEmpty() && !said) {
            lines.add(plain(label.name(), BODY));
        }
        label.lines().forEach(line -> lines.add(of(line, BODY)));
        return lines;
    }

    static List<Run> symbol(Symbol symbol) {
        List<Run> runs = new ArrayList<>();
        String letters = symbol.letters();
        if (letters.startsWith("Δ") && letters.length() > 1) {
            runs.add(new Run("Δ", Face.UPRIGHT));
            letters = letters.substring(1);
        }
        runs.add(new Run(letters, letters.codePointCount(0, letters.length()) == 1 ? Face.ITALIC : Face.UPRIGHT));
        if (!symbol.subscript().isEmpty()) {
            runs.add(new Run(symbol.subscript(), Face.SUBSCRIPT));
        }
        return runs;
    }

    Lettering inBold() {
        return new Lettering(runs, size, true);
    }

    double width() {
        double em = 0;
        for (Run run : runs) {
            double part = advance(run.text());
            em += run.face() == Face.SUBSCRIPT ? part * subscriptSize() / size : part;
        }
        return em * size * (bold ? 1.08 : 1);
    }

    double ascent() {
        return 0.74 * size;
    }

    double descent() {
        boolean lowered = false;
        boolean digits = true;
        for (Run run : runs) {
            lowered = lowered || run.face() == Face.SUBSCRIPT;
            digits = digits && isDigits(run.text());
        }
        if (digits && !lowered) {
            return 0.02 * size; // nothing of them is below the line
        }
        return (lowered ? 0.42 : 0.22) * size;
    }

    private static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            if (letter != '?' && (letter < '0' || letter > '9')) {
                return false;
            }
        }
        return !text.isEmpty();
    }

    /** Of the characters that nearly all labels are made of. */
    private static final double[] COMMON = new double[0x400];

    static {
        for (int c = 0; c < COMMON.length; c++) {
            COMMON[c] = measured(c);
        }
    }

    private static double advance(String text) {
        double ems = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            ems += advance(text.codePointAt(i));
        }
        return ems;
    }

    private double subscriptSize() {
        return Math.max(SMALL, 0.75 * size);
    }

    /** What is set, with nothing else in it. */
    String text() {
        return runs.stream().map(Run::text).collect(Collectors.joining());
    }

    /**
     * What is set with one look each, from left to right. Upright runs on the line join; after a subscript a new one
     * begins.
     */
    public List<Span> spans() {
        List<Span> spans = new ArrayList<>();
        double drop = Decimals.rounded(0.22 * size);
        boolean joins = false;
        boolean low = false;
        for (Run run : runs) {
            boolean subscript = run.face() == Face.SUBSCRIPT;
            boolean plain = run.face() == Face.UPRIGHT && !low;
            double letters = Decimals.rounded(subscript ? subscriptSize() : size);
            Span span = new Span(run.text(), letters, run.face() == Face.ITALIC, subscript, subscript ? drop : 0);
            if (plain && joins) {
                Span before = spans.remove(spans.size() - 1);
                span = new Span(before.text() + run.text(), letters, false, false, 0);
            }
            spans.add(span);
            joins = plain;
            low = subscript;
        }
        return spans;
    }

    /**
     * Width of a character in ems, as in a wide serif face: the reader's face is not known, and a box that is too wide
     * only leaves a little more white.
     */
    private static double advance(int c) {
        return c < COMMON.length ? COMMON[c] : measured(c);
    }

    private static double measured(int c) {
        if (c >= '0' && c <= '9') {
            return 0.64;
        }
        if ("iljI.,:;'|! \u00A0\u202F\u2009".indexOf(c) >= 0) {
            return c == 'I' ? 0.40 : 0.32;
        }
        if ("frtJ()[]/-°".indexOf(c) >= 0) {
            return 0.45;
        }
        if ("mwMW%@—…".indexOf(c) >= 0) {
            return 1.02;
        }
        if ("ABCDEFGHKNOPQRSTUVXYZÄÖÜΩΔΘ".indexOf(c) >= 0) {
            return 0.80;
        }
        if ("=+−×<>≤≥≈±~".indexOf(c) >= 0) {
            return 0.84;
        }
        return c < 0x2E80 ? 0.64 : 1.02;
    }
}
