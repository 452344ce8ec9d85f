package ampersheet.figure;

import ampersheet.chain.DataPath.Outcome.Traced;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says a panel in words: where the data goes, as the drawing shows it, without counting for the reader. */
final class ChainWords {
    /** Of more tiles in a straight row those in the middle are told together: they are all alike. */
    private static final int MOST_TOLD_ONE_BY_ONE = 12;

    private final Panel panel;
    private final Tile tile;
    private final Traced path;
    private final List<ChainFigure.Mark> marks;

    ChainWords(Panel panel, Traced path, List<ChainFigure.Mark> marks) {
        this.panel = panel;
        this.tile = panel.tile();
        this.path = path;
        this.marks = marks;
    }

    String summary() {
        int tiles = panel.places().size();
        return "A panel of " + English.count(tiles, "tile", "tiles") + (tiles == 1 ? " of " : ", each of ")
                + English.count(tile.columns(), "column", "columns") + " and "
                + English.count(tile.rows(), "row", "rows")
                + " of pixels, fed by a controller " + (panel.returnLine() ? "with" : "without") + " a return line.";
    }

    Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        int count = panel.places().size();
        for (int i = 0; i < count; i++) {
            Panel.Place place = panel.places().get(i);
            if (isLongRow() && i > 0 && i < count - 1) {
                if (i == 1) {
                    rows.add(List.of(
                            "1 to " + (count - 2),
                            Integer.toString(place.row()),
                            turned(place.quarterTurns()),
                            "the tile before it",
                            "the tile after it"));
                }
                continue;
            }
            int at = path.tileOrder().indexOf(i);
            boolean last = at == path.tileOrder().size() - 1;
            rows.add(List.of(
                    Integer.toString(place.column()),
                    Integer.toString(place.row()),
                    turned(place.quarterTurns()),
                    at == 0 ? "controller" : where(path.tileOrder().get(at - 1)),
                    !last ? where(path.tileOrder().get(at + 1)) : panel.returnLine() ? "return line" : "open"));
        }
        return new Figure.Table(List.of("Tile column", "Tile row", "Mounted", "Data comes from", "Data goes to"), rows);
    }

    List<String> walk() {
        List<String> sentences = new ArrayList<>();
        sentences.add("Columns are counted from 0 at the left, rows from 0 at the top.");
        sentences.add("In an upright tile the data enters on the " + side(tile.input())
                + " side; its first pixel is the one in the " + corner() + " corner.");
        sentences.add(order());
        sentences.add("After its last pixel it leaves on the " + side(tile.output()) + " side.");
        List<Integer> order = path.tileOrder();
        sentences.add("The controller feeds " + where(order.get(0)) + ".");
        if (isLongRow()) {
            sentences.add("From there the data goes through tile columns 1 to " + (order.size() - 1)
                    + ", one after another, all " + turned(panel.places().get(0).quarterTurns()) + ".");
        }
        for (int i = 1; i < order.size() && !isLongRow(); i++) {
            Panel.Place place = panel.places().get(order.get(i));
            sentences.add(
                    "From there the data goes to " + where(order.get(i)) + ", " + turned(place.quarterTurns()) + ".");
        }
        if (panel.returnLine()) {
            sentences.add("From the last tile the return line leads back through all tiles to the controller.");
        }
        for (ChainFigure.Mark mark : marks) {
            sentences.add("The pixel in column " + mark.x() + ", row " + mark.y() + " is marked"
                    + (mark.label().isEmpty() ? "." : " " + mark.label() + "."));
        }
        return sentences;
    }

    /** Many tiles side by side, passed from column 0 on, all lying the same way. */
    private boolean isLongRow() {
        List<Panel.Place> places = panel.places();
        for (int i = 0; i < places.size(); i++) {
            boolean inTurn = path.tileOrder().get(i) == i
                    && places.get(i).column() == i
                    && places.get(i).row() == places.get(0).row()
                    && places.get(i).quarterTurns() == places.get(0).quarterTurns();
            if (!inTurn) {
                return false;
            }
        }
        return places.size() > MOST_TOLD_ONE_BY_ONE;
    }

    private String order() {
        boolean rows = tile.along() == Tile.Along.ROWS;
        boolean fromLeft = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.BOTTOM_LEFT;
        boolean fromTop = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.TOP_RIGHT;
        String across = fromLeft ? "from left to right" : "from right to left";
        String down = fromTop ? "from top to bottom" : "from bottom to top";
        String line = rows ? "row" : "column";
        String way = "It passes " + line + " after " + line + ", " + (rows ? down : across) + "; the first " + line
                + " runs " + (rows ? across : down);
        return way
                + switch (tile.order()) {
                    case ALL_ONE_WAY -> ", and so does every other: all one way.";
                    case SERPENTINE -> ", the next one back, and so on, back and forth.";
                };
    }

    private String corner() {
        return tile.start().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String side(Tile.Side side) {
        return switch (side) {
            case NORTH -> "top";
            case EAST -> "right";
            case SOUTH -> "bottom";
            case WEST -> "left";
        };
    }

    private static String turned(int quarterTurns) {
        return switch (quarterTurns) {
            case 0 -> "upright";
            case 1 -> "rotated by a quarter clockwise";
            case 2 -> "upside down";
            default -> "rotated by a quarter anticlockwise";
        };
    }

    private String where(int place) {
        return "tile column " + panel.places().get(place).column() + ", row "
                + panel.places().get(place).row();
    }
}
