package ampersheet.figure;

import java.util.List;

/**
 * A drawing with its description for those who cannot see it.
 *
 * @param svg a complete {@code <svg>} element with width, height, viewBox, role="img", title and desc; ids unique by
 *     {@code idPrefix}
 * @param title one line
 * @param summary one sentence: what it is and how many of what
 * @param table the description as a table (for a circuit: component, value, from, to, polarity)
 * @param walk sentences that lead through the figure, from the source back to it, along the data, from hot to cold
 */
public record Figure(String svg, String title, String summary, Table table, List<String> walk) {
  /** In pixels; fits a page of A4 with its margins. */
  public static final double PAGE_WIDTH = 640;

  public Figure {
    walk = List.copyOf(walk);
  }

  public record Table(List<String> head, List<List<String>> rows) {
    public Table {
      head = List.copyOf(head);
      rows = rows.stream().map(List::copyOf).toList();
    }
  }
}
