package ampersheet.figure;

import ampersheet.chain.TileRow;
import java.util.ArrayList;
import java.util.List;

/** The tiles of a row and where each can be off. */
record RowWords(TileRow row) implements AssemblyWords {
    @Override
    public String summary() {
        return "A row of " + English.count(row.tiles(), "tile", "tiles")
                + " of length l that begins at a stop; each is set " + "with an error of up to e to either side.";
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int tile = 1; tile <= row.tiles(); tile++) {
            rows.add(
                    List.of(Integer.toString(tile), tile == 1 ? "the stop" : "tile " + (tile - 1), "e to either side"));
        }
        return new Figure.Table(List.of("Tile", "Measured from", "Error"), rows);
    }

    @Override
    public List<String> walk() {
        return List.of(
                "The row begins at the stop on the left.",
                "The place of each tile is measured from the one before it, and the tile can be off by e to "
                        + "either side.",
                "Asked about is the right edge of the last tile: how far it is from where it would be without errors.");
    }
}
