package ampersheet.figure;

import ampersheet.chain.TileRow;
import java.util.ArrayList;
import java.util.List;

/** The tiles of a row and where each can be off. */
record RowWords(TileRow row) implements AssemblyWords {
  @Override
  public String summary() {
    return "A row of " + English.count(row.tiles(), "tile", "tiles") + " of length l that begins at a stop; each is set "
        + "with an error of up to e to either side.";
  }

  @Override
  public Figure.Table table() {
    List<List<String>> rows = new ArrayList<>();
    for (int tile = 1; tile <= row.tiles(); tile++) {
      rows.add(List.of(Integer.toString(tile), tile == 1 ? "the stop" : "tile " + (tile - 1), "e to either side"));
    }
    return new Figure.Table(List.of("Tile", "Set against", "Error"), rows);
  }

  @Override
  public List<String> walk() {
    return List.of("The row begins at the stop on the left.",
        "Each tile is set against the one before it, and can be off by e to either side.",
        "Asked about is the right edge of the last tile, against the place where it would be without errors.");
  }
}
