package ampersheet.figure;

/**
 * How a line is drawn. The thinnest is 1.4 px, 0.37 mm in print, so that a photocopy of a photocopy still shows it.
 *
 * @param width pixels
 * @param dashes lengths of dash and gap as for {@code stroke-dasharray}; empty for a solid line
 */
record Stroke(double width, String dashes) {
  static final Stroke LINE = new Stroke(1.5, "");
  static final Stroke FINE = new Stroke(1.4, "");
  static final Stroke STRONG = new Stroke(2.2, "");
  static final Stroke DASHED = new Stroke(1.4, "5 3");
  static final Stroke DOTTED = new Stroke(1.4, "1.5 3.5");
}
