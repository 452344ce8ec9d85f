package ampersheet.figure;

import ampersheet.language.Language;
import java.util.List;

/**
 * A drawing with its description for those who cannot see it.
 *
 * @param picture its shapes, and their SVG; ids in that unique by {@code idPrefix}
 * @param title one line
 * @param summary one sentence: what it is and how many of what
 * @param table the description as a table (for a circuit: component, value, from, to, polarity)
 * @param walk sentences that lead through the figure, from the source back to it, along the data, from hot to cold
 */
public record Figure(Picture picture, String title, String summary, Table table, List<String> walk) {
    /** In pixels; fits a page of A4 with its margins. */
    public static final double PAGE_WIDTH = 640;

    public Figure {
        walk = List.copyOf(walk);
    }

    /**
     * How a figure comes onto a page.
     *
     * @param idPrefix makes ids unique in the page
     * @param widest width in pixels that is not exceeded where the drawing stays legible
     * @param language of its words
     */
    public record Setting(String idPrefix, double widest, Language language) {}

    /** See {@link Picture#svg()}. */
    public String svg() {
        return picture.svg();
    }

    public record Table(List<String> head, List<List<String>> rows) {
        public Table {
            head = List.copyOf(head);
            rows = rows.stream().map(List::copyOf).toList();
        }
    }
}
