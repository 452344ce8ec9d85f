package ampersheet.figure;

import ampersheet.chain.DataPath.Outcome.Traced;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** Says a panel in words: where the data goes, as the drawing shows it, without counting for the reader. */
final class ChainWords {
    /** Of more tiles in a straight row those in the middle are told together: they are all alike. */
    private static final int MOST_TOLD_ONE_BY_ONE = 12;

    private final Panel panel;
    private final Tile tile;
    private final Traced path;
    private final List<ChainFigure.Mark> marks;
    private final Language language;

    ChainWords(Panel panel, Traced path, List<ChainFigure.Mark> marks, Language language) {
        this.panel = panel;
        this.tile = panel.tile();
        this.path = path;
        this.marks = marks;
        this.language = language;
    }

    String summary() {
        return language.count(
                panel.returnLine()
                        ? "figure.chain.summary-with-return-line"
                        : "figure.chain.summary-without-return-line",
                panel.places().size(),
                "columns",
                language.count("figure.chain.columns", tile.columns()),
                "rows",
                language.count("figure.chain.rows", tile.rows()));
    }

    Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        int count = panel.places().size();
        for (int i = 0; i < count; i++) {
            if (isLongRow() && i > 0 && i < count - 1) {
                if (i == 1) {
                    rows.add(middle(panel.places().get(i), count - 2));
                }
            } else {
                rows.add(row(i));
            }
        }
        return new Figure.Table(
                List.of(
                        language.say("figure.chain.head.column"),
                        language.say("figure.chain.head.row"),
                        language.say("figure.chain.head.mounted"),
                        language.say("figure.chain.head.from"),
                        language.say("figure.chain.head.to")),
                rows);
    }

    /** Of a long row, all tiles but the ends. */
    private List<String> middle(Panel.Place one, int last) {
        return List.of(
                language.say("figure.chain.range", "first", "1", "last", number(last)),
                number(one.row()),
                turned(one.quarterTurns()),
                language.say("figure.chain.tile-before"),
                language.say("figure.chain.tile-after"));
    }

    private List<String> row(int tile) {
        Panel.Place place = panel.places().get(tile);
        List<Integer> order = path.tileOrder();
        int at = order.indexOf(tile);
        String from = at == 0 ? language.say("figure.chain.controller") : where(order.get(at - 1));
        String to = at < order.size() - 1
                ? where(order.get(at + 1))
                : language.say(panel.returnLine() ? "figure.chain.return-line" : "figure.chain.open");
        return List.of(number(place.column()), number(place.row()), turned(place.quarterTurns()), from, to);
    }

    List<String> walk() {
        List<String> sentences = new ArrayList<>();
        sentences.add(language.say("figure.chain.counted"));
        sentences.add(language.say("figure.chain.enters", "side", side(tile.input()), "corner", corner()));
        sentences.add(order());
        sentences.add(language.say("figure.chain.leaves", "side", side(tile.output())));
        List<Integer> order = path.tileOrder();
        Panel.Place first = panel.places().get(order.get(0));
        sentences.add(language.say("figure.chain.feeds", "column", number(first.column()), "row", number(first.row())));
        if (isLongRow()) {
            sentences.add(language.say(
                    "figure.chain.goes-through",
                    "last",
                    number(order.size() - 1),
                    "turned",
                    turned(panel.places().get(0).quarterTurns())));
        }
        for (int i = 1; i < order.size() && !isLongRow(); i++) {
            Panel.Place place = panel.places().get(order.get(i));
            sentences.add(language.say(
                    "figure.chain.goes-on",
                    "column",
                    number(place.column()),
                    "row",
                    number(place.row()),
                    "turned",
                    turned(place.quarterTurns())));
        }
        if (panel.returnLine()) {
            sentences.add(language.say("figure.chain.leads-back"));
        }
        for (ChainFigure.Mark mark : marks) {
            sentences.add(language.say(
                    mark.label().isEmpty() ? "figure.chain.marked" : "figure.chain.marked-with",
                    "column",
                    number(mark.x()),
                    "row",
                    number(mark.y()),
                    "label",
                    mark.label()));
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
        boolean fromLeft = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.BOTTOM_LEFT;
        boolean fromTop = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.TOP_RIGHT;
        String across = language.say(fromLeft ? "figure.chain.to-the-right" : "figure.chain.to-the-left");
        String down = language.say(fromTop ? "figure.chain.downwards" : "figure.chain.upwards");
        boolean oneWay = tile.order() == Tile.Order.ALL_ONE_WAY;
        return switch (tile.along()) {
            case ROWS ->
                language.say(
                        oneWay ? "figure.chain.rows-one-way" : "figure.chain.rows-back-and-forth",
                        "onwards",
                        down,
                        "first",
                        across);
            case COLUMNS ->
                language.say(
                        oneWay ? "figure.chain.columns-one-way" : "figure.chain.columns-back-and-forth",
                        "onwards",
                        across,
                        "first",
                        down);
        };
    }

    private String corner() {
        return language.say(
                switch (tile.start()) {
                    case TOP_LEFT -> "figure.chain.corner.top-left";
                    case TOP_RIGHT -> "figure.chain.corner.top-right";
                    case BOTTOM_LEFT -> "figure.chain.corner.bottom-left";
                    case BOTTOM_RIGHT -> "figure.chain.corner.bottom-right";
                });
    }

    private String side(Tile.Side side) {
        return language.say(
                switch (side) {
                    case NORTH -> "figure.chain.side.top";
                    case EAST -> "figure.chain.side.right";
                    case SOUTH -> "figure.chain.side.bottom";
                    case WEST -> "figure.chain.side.left";
                });
    }

    private String turned(int quarterTurns) {
        return language.say(
                switch (quarterTurns) {
                    case 0 -> "figure.chain.turned.0";
                    case 1 -> "figure.chain.turned.1";
                    case 2 -> "figure.chain.turned.2";
                    default -> "figure.chain.turned.3";
                });
    }

    private String where(int place) {
        Panel.Place at = panel.places().get(place);
        return language.say("figure.chain.tile", "column", number(at.column()), "row", number(at.row()));
    }

    private static String number(int number) {
        return Integer.toString(number);
    }
}
