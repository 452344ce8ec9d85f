package ampersheet.figure;

import ampersheet.chain.DataPath.Outcome.Traced;
import ampersheet.chain.DataPath.Stop;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Panels of many shapes with their data paths, places listed in the order of the data. */
final class Panels {
  private Panels() {}

  record Laid(Panel panel, Traced path, List<ChainFigure.Mark> marks) {}

  static Map<String, Laid> all() {
    Map<String, Laid> all = new LinkedHashMap<>();
    all.put("one small tile", snake(tile(4, 3, Tile.Order.SERPENTINE), 1, 1, true, new ChainFigure.Mark(2, 1, "?")));
    all.put("progressive", snake(tile(4, 3, Tile.Order.PROGRESSIVE), 1, 1, false, new ChainFigure.Mark(3, 2, "?")));
    all.put("one large tile", snake(tile(16, 12, Tile.Order.SERPENTINE), 1, 1, false, new ChainFigure.Mark(7, 5, "?")));
    all.put("odd tile", snake(tile(9, 9, Tile.Order.SERPENTINE), 1, 1, false, new ChainFigure.Mark(4, 4, "?")));
    all.put("two in a row", snake(tile(4, 4, Tile.Order.SERPENTINE), 2, 1, true, new ChainFigure.Mark(5, 1, "?")));
    all.put("two by two", snake(tile(4, 4, Tile.Order.SERPENTINE), 2, 2, true, new ChainFigure.Mark(1, 6, "P")));
    all.put("three by two", snake(tile(6, 5, Tile.Order.PROGRESSIVE), 3, 2, true));
    all.put("wall", snake(tile(8, 8, Tile.Order.SERPENTINE), 4, 3, true, new ChainFigure.Mark(13, 11, "?")));
    all.put("wide wall", snake(tile(8, 8, Tile.Order.SERPENTINE), 5, 4, true, new ChainFigure.Mark(35, 3, "?")));
    all.put("long strip", snake(tile(16, 1, Tile.Order.PROGRESSIVE), 11, 1, false));
    all.put("strip", snake(tile(8, 1, Tile.Order.PROGRESSIVE), 3, 1, true, new ChainFigure.Mark(9, 0, "?")));
    all.put("by columns", snake(new Tile(5, 4, Tile.Order.SERPENTINE, Tile.Corner.BOTTOM_RIGHT, Tile.Along.COLUMNS,
        Tile.Side.EAST, Tile.Side.WEST), 1, 1, true, new ChainFigure.Mark(0, 0, "last?")));
    all.put("far corner", snake(new Tile(4, 4, Tile.Order.PROGRESSIVE, Tile.Corner.TOP_RIGHT, Tile.Along.ROWS,
        Tile.Side.WEST, Tile.Side.SOUTH), 1, 1, true));
    Tile bend = new Tile(4, 4, Tile.Order.SERPENTINE, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST,
        Tile.Side.SOUTH);
    all.put("quarter turns", laid(bend, List.of(new Panel.Place(1, 0, 0), new Panel.Place(1, 1, 1),
        new Panel.Place(0, 1, 2)), true, new ChainFigure.Mark(6, 2, "?")));
    all.put("top fed", laid(new Tile(3, 5, Tile.Order.SERPENTINE, Tile.Corner.TOP_LEFT, Tile.Along.ROWS,
        Tile.Side.NORTH, Tile.Side.SOUTH), List.of(new Panel.Place(0, 0, 0), new Panel.Place(0, 1, 0)), true));
    return all;
  }

  private static Tile tile(int columns, int rows, Tile.Order order) {
    return new Tile(columns, rows, order, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST, Tile.Side.EAST);
  }

  private static Laid snake(Tile tile, int columns, int rows, boolean returns, ChainFigure.Mark... marks) {
    List<Panel.Place> places = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (int i = 0; i < columns; i++) {
        places.add(new Panel.Place(row % 2 == 0 ? i : columns - 1 - i, row, row % 2 == 0 ? 0 : 2));
      }
    }
    return laid(tile, places, returns, marks);
  }

  private static Laid laid(Tile tile, List<Panel.Place> places, boolean returns, ChainFigure.Mark... marks) {
    Panel panel = new Panel(tile, places, 0, returns, 24, 1.25e-6, 300e-6);
    List<Stop> stops = new ArrayList<>();
    List<Integer> order = new ArrayList<>();
    for (int place = 0; place < places.size(); place++) {
      order.add(place);
      for (int[] cell : cells(tile)) {
        int x = cell[0];
        int y = cell[1];
        int columns = tile.columns();
        int rows = tile.rows();
        for (int turn = 0; turn < places.get(place).quarterTurns(); turn++) {
          int turnedX = rows - 1 - y;
          y = x;
          x = turnedX;
          int swap = columns;
          columns = rows;
          rows = swap;
        }
        stops.add(new Stop(stops.size(), place, places.get(place).column() * tile.columns() + x,
            places.get(place).row() * tile.rows() + y));
      }
    }
    List<Integer> back = new ArrayList<>(order);
    Collections.reverse(back);
    return new Laid(panel, new Traced(stops, order, returns ? back : List.of()), List.of(marks));
  }

  private static List<int[]> cells(Tile tile) {
    boolean alongRows = tile.along() == Tile.Along.ROWS;
    int lines = alongRows ? tile.rows() : tile.columns();
    int length = alongRows ? tile.columns() : tile.rows();
    boolean left = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.BOTTOM_LEFT;
    boolean top = tile.start() == Tile.Corner.TOP_LEFT || tile.start() == Tile.Corner.TOP_RIGHT;
    List<int[]> cells = new ArrayList<>();
    for (int line = 0; line < lines; line++) {
      for (int i = 0; i < length; i++) {
        int along = tile.order() == Tile.Order.SERPENTINE && line % 2 == 1 ? length - 1 - i : i;
        int x = alongRows ? along : line;
        int y = alongRows ? line : along;
        cells.add(new int[] {left ? x : tile.columns() - 1 - x, top ? y : tile.rows() - 1 - y});
      }
    }
    return cells;
  }
}
