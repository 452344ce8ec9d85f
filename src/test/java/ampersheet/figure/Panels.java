package ampersheet.figure;

import ampersheet.chain.DataPath.Outcome.Traced;
import ampersheet.chain.Panel;
import ampersheet.chain.Snaking;
import ampersheet.chain.Tile;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Panels of many shapes with their data paths. */
final class Panels {
    private Panels() {}

    record Laid(Panel panel, Traced path, List<ChainFigure.Mark> marks) {}

    static Map<String, Laid> all() {
        Map<String, Laid> all = new LinkedHashMap<>();
        all.put(
                "one small tile",
                snake(tile(4, 3, Tile.Order.SERPENTINE), 1, 1, true, new ChainFigure.Mark(2, 1, "?")));
        all.put("progressive", snake(tile(4, 3, Tile.Order.ALL_ONE_WAY), 1, 1, false, new ChainFigure.Mark(3, 2, "?")));
        all.put(
                "one large tile",
                snake(tile(16, 12, Tile.Order.SERPENTINE), 1, 1, false, new ChainFigure.Mark(7, 5, "?")));
        all.put("odd tile", snake(tile(9, 9, Tile.Order.SERPENTINE), 1, 1, false, new ChainFigure.Mark(4, 4, "?")));
        all.put("two in a row", snake(tile(4, 4, Tile.Order.SERPENTINE), 2, 1, true, new ChainFigure.Mark(5, 1, "?")));
        all.put("two by two", snake(tile(4, 4, Tile.Order.SERPENTINE), 2, 2, true, new ChainFigure.Mark(1, 6, "P")));
        all.put("three by two", snake(tile(6, 5, Tile.Order.ALL_ONE_WAY), 3, 2, true));
        all.put("wall", snake(tile(8, 8, Tile.Order.SERPENTINE), 4, 3, true, new ChainFigure.Mark(13, 11, "?")));
        all.put("wide wall", snake(tile(8, 8, Tile.Order.SERPENTINE), 5, 4, true, new ChainFigure.Mark(35, 3, "?")));
        all.put("long strip", snake(tile(16, 1, Tile.Order.ALL_ONE_WAY), 11, 1, false));
        all.put("strip", snake(tile(8, 1, Tile.Order.ALL_ONE_WAY), 3, 1, true, new ChainFigure.Mark(9, 0, "?")));
        all.put(
                "by columns",
                snake(
                        new Tile(
                                5,
                                4,
                                Tile.Order.SERPENTINE,
                                Tile.Corner.BOTTOM_RIGHT,
                                Tile.Along.COLUMNS,
                                Tile.Side.EAST,
                                Tile.Side.WEST),
                        1,
                        1,
                        true,
                        new ChainFigure.Mark(0, 0, "last?")));
        all.put(
                "far corner",
                snake(
                        new Tile(
                                4,
                                4,
                                Tile.Order.ALL_ONE_WAY,
                                Tile.Corner.TOP_RIGHT,
                                Tile.Along.ROWS,
                                Tile.Side.WEST,
                                Tile.Side.SOUTH),
                        1,
                        1,
                        true));
        Tile bend = new Tile(
                4, 4, Tile.Order.SERPENTINE, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST, Tile.Side.SOUTH);
        all.put(
                "quarter turns",
                laid(
                        bend,
                        List.of(new Panel.Place(1, 0, 0), new Panel.Place(1, 1, 1), new Panel.Place(0, 1, 2)),
                        true,
                        new ChainFigure.Mark(6, 2, "?")));
        all.put(
                "rows anew",
                laid(
                        tile(5, 3, Tile.Order.ALL_ONE_WAY),
                        List.of(
                                new Panel.Place(0, 0, 0),
                                new Panel.Place(1, 0, 0),
                                new Panel.Place(0, 1, 0),
                                new Panel.Place(1, 1, 0)),
                        true));
        all.put(
                "columns anew",
                laid(
                        new Tile(
                                3,
                                4,
                                Tile.Order.SERPENTINE,
                                Tile.Corner.TOP_LEFT,
                                Tile.Along.ROWS,
                                Tile.Side.NORTH,
                                Tile.Side.SOUTH),
                        List.of(
                                new Panel.Place(0, 0, 0),
                                new Panel.Place(0, 1, 0),
                                new Panel.Place(1, 0, 0),
                                new Panel.Place(1, 1, 0)),
                        true));
        for (int quarters : new int[] {1, 3}) {
            all.put("cabled, turned " + quarters, cabled(tile(4, 4, Tile.Order.SERPENTINE), 4, 3, 1, 1, quarters));
            all.put(
                    "cabled at the top, turned " + quarters,
                    cabled(tile(6, 6, Tile.Order.ALL_ONE_WAY), 4, 2, 2, 0, quarters));
        }
        all.put(
                "top fed",
                laid(
                        new Tile(
                                3,
                                5,
                                Tile.Order.SERPENTINE,
                                Tile.Corner.TOP_LEFT,
                                Tile.Along.ROWS,
                                Tile.Side.NORTH,
                                Tile.Side.SOUTH),
                        List.of(new Panel.Place(0, 0, 0), new Panel.Place(0, 1, 0)),
                        true));
        return all;
    }

    private static Tile tile(int columns, int rows, Tile.Order order) {
        return new Tile(columns, rows, order, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST, Tile.Side.EAST);
    }

    private static Laid cabled(Tile tile, int columns, int rows, int turnedColumn, int turnedRow, int quarters) {
        List<Panel.Place> places = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                places.add(new Panel.Place(column, row, column == turnedColumn && row == turnedRow ? quarters : 0));
            }
        }
        Panel panel = new Panel(tile, places, 0, false, 24, 1.25e-6, 300e-6, true);
        return new Laid(panel, ChainFigure.trace(panel), List.of());
    }

    private static Laid snake(Tile tile, int columns, int rows, boolean returns, ChainFigure.Mark... marks) {
        return laid(tile, Snaking.places(columns, rows), returns, marks);
    }

    private static Laid laid(Tile tile, List<Panel.Place> places, boolean returns, ChainFigure.Mark... marks) {
        Panel panel = new Panel(tile, places, 0, returns, 24, 1.25e-6, 300e-6, false);
        return new Laid(panel, ChainFigure.trace(panel), List.of(marks));
    }
}
