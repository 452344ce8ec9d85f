package ampersheet.figure;

import ampersheet.chain.TileRow;
import java.util.List;

/** The row from its stop to its last edge; the gaps are drawn far too wide, so that they can be seen. */
final class RowDrawing {
  /** Of the tiles and gaps alone; the words on both sides need the rest of the page. */
  private static final double TILES_WIDTH = 450;
  private static final double WIDEST_TILE = 74;
  private static final double GAP = 10;
  private static final double HEIGHT = 44;
  private static final double HATCH = 8;
  private static final double HEAD = 7;

  private final TileRow row;
  private final Drawing drawing = new Drawing();

  RowDrawing(TileRow row) {
    this.row = row;
    double width = Math.min(WIDEST_TILE, TILES_WIDTH / row.tiles() - GAP);
    stop();
    for (int tile = 0; tile < row.tiles(); tile++) {
      double left = GAP + tile * (width + GAP);
      Box box = new Box(left, 0, left + width, HEIGHT);
      drawing.rectangle("tile " + (tile + 1), Stroke.LINE, box);
      drawing.words("tile " + (tile + 1), Lettering.plain("" + (tile + 1), Lettering.BODY), box.centre());
      Point joint = new Point(left - GAP / 2, -4);
      drawing.arrow("tile " + (tile + 1), Stroke.FINE, 6, joint.plus(0, -14), joint);
      if (width > 30 || tile % 2 == 0) {
        drawing.add("tile " + (tile + 1), new Shape.Words(symbol("± ", "e"), joint.plus(0, -20),
            Lettering.Anchor.MIDDLE, false));
      }
    }
    length(GAP, GAP + width);
    lastEdge(GAP + row.tiles() * (width + GAP) - GAP);
  }

  Drawing drawing() {
    return drawing;
  }

  private static Lettering symbol(String before, String letter) {
    List<Lettering.Run> runs = before.isEmpty() ? List.of(new Lettering.Run(letter, Lettering.Face.ITALIC))
        : List.of(new Lettering.Run(before, Lettering.Face.UPRIGHT), new Lettering.Run(letter, Lettering.Face.ITALIC));
    return new Lettering(runs, Lettering.BODY, false);
  }

  private void stop() {
    drawing.line("stop", Stroke.STRONG, new Point(0, -10), new Point(0, HEIGHT + 10));
    for (double y = -10; y <= HEIGHT + 2; y += 9) {
      drawing.line("stop", Stroke.FINE, new Point(0, y), new Point(-HATCH, y + HATCH));
    }
    drawing.add("stop", new Shape.Words(Lettering.plain("stop", Lettering.SMALL), new Point(-HATCH - 5, HEIGHT / 2 + 4),
        Lettering.Anchor.END, false));
  }

  private void length(double from, double to) {
    double y = HEIGHT + 16;
    for (double x : new double[] {from, to}) {
      drawing.line("length", Stroke.FINE, new Point(x, HEIGHT + 6), new Point(x, y + 5));
    }
    Point middle = new Point((from + to) / 2, y);
    drawing.arrow("length", Stroke.FINE, 6, middle, new Point(from, y));
    drawing.arrow("length", Stroke.FINE, 6, middle, new Point(to, y));
    drawing.add("length", new Shape.Words(symbol("", "l"), middle.plus(0, 17), Lettering.Anchor.MIDDLE, false));
  }

  private void lastEdge(double x) {
    drawing.line("last edge", Stroke.DASHED, new Point(x + 16, -10), new Point(x + 16, HEIGHT + 14));
    drawing.arrow("last edge", Stroke.FINE, HEAD, new Point(x + 16, HEIGHT + 9), new Point(x, HEIGHT + 9));
    drawing.arrow("last edge", Stroke.FINE, HEAD, new Point(x, HEIGHT + 9), new Point(x + 16, HEIGHT + 9));
    drawing.add("last edge", new Shape.Words(Lettering.plain("?", Lettering.BODY).inBold(), new Point(x + 8, HEIGHT + 30),
        Lettering.Anchor.MIDDLE, false));
    drawing.add("last edge", new Shape.Words(Lettering.plain("where it should be", Lettering.SMALL),
        new Point(x + 22, HEIGHT + 30), Lettering.Anchor.START, false));
  }
}
