package ampersheet.answer;

/**
 * A wrong method and the value it gives with this problem's numbers.
 *
 * @param id unique in its template
 * @param value in coherent SI units, to within 1e-11
 * @param explanation one or two sentences for the learner: what was probably done, and what to do instead
 */
public record KnownMistake(String id, double value, String explanation) {
    private static final double TWO_TO_36 = 68719476736.0;
    /** Beyond, the scale would leave what numbers hold; no quantity is so small or large. */
    private static final double SMALLEST = 1e-250;

    private static final double LARGEST = 1e300;

    public KnownMistake {
        value = shortened(value);
    }

    /** Digits beyond never tell which mistake was made, and a page holds thousands of them. */
    private static double shortened(double value) {
        double scale = 1;
        double size = Math.abs(value);
        if (!(size >= SMALLEST && size <= LARGEST)) {
            return value;
        }
        for (; size * scale < TWO_TO_36; scale *= 2) {
            // Doubling is exact, and so is taking it back.
        }
        for (; size * scale >= 2 * TWO_TO_36; scale /= 2) {
            // The same for what is larger.
        }
        double whole = Math.floor(size * scale + 0.5) / scale;
        return value < 0 ? -whole : whole;
    }
}
