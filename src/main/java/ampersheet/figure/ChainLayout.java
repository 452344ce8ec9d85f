package ampersheet.figure;

import ampersheet.chain.DataPath;
import ampersheet.chain.DataPath.Outcome.Traced;
import ampersheet.chain.DataPath.Stop;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.circuit.GridPoint;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/** Where the tiles of a panel, their pixels and their ports lie on the page, at one distance between pixels. */
final class ChainLayout {
    static final double OUTER_RIM = 6;
    private static final double ELLIPSIS = 44;
    /** Where columns are left out at three places, the width of a page is dear. */
    private static final double ELLIPSIS_OF_MANY = 30;

    private static final int MANY = 3;
    static final double NUMBER_ROOM = 24;
    private static final double ROW_NUMBER_ROOM = 15;
    private static final double COLUMN_GAP = 5;
    /** Of the letters themselves. */
    private static final double NUMBER_HEIGHT = 0.72 * Lettering.SMALL;
    /** Either line of a port lies so far from its middle. */
    private static final double PORT = 5.5;

    /** From here on there is room for a head on every line between two pixels. */
    private static final double DOTTED = 18;

    /** A wall of more pixels is a pattern, and a ring for each would only be heavier. */
    private static final int MOST_RINGS = 300;

    private static final double CROWDED = 6;
    /** There a line leads back between any two. */
    private static final double CROWDED_ONE_WAY = 8;
    /** Of the pitch: so that more white than black is left between rows. */
    private static final double DOT = 0.19;

    private static final double SMALLEST_DOT = 1.2;
    private static final double LARGEST_DOT = 2.3;
    private static final double ROW_GAP = 16;
    private static final double ROW_GAP_WITH_LINES = 28;
    private static final double ROW_GAP_WITH_CABLES = 36;
    /** Between lines of one row, each with its numbers. */
    private static final double LINE_GAP = 58;
    /** Closer than this only where a page is narrow, because its drawings are enlarged. */
    private static final double CLOSE_PITCH = 5;

    final Panel panel;
    final Tile tile;
    final Traced path;
    final List<ChainFigure.Mark> marks;
    /** Pixels of the page between pixels of the panel. */
    final double pitch;
    /** After so many tiles a single row goes on in a line below. */
    final int tilesInLine;
    /** Whether the controller stands over the first tile instead of beside it. */
    final boolean controllerAbove;

    final double innerRim;
    final double margin;
    final double gap;
    /** What is more between two columns with others left out between them. */
    private double ellipsis;

    final Map<Integer, Box> boxes = new LinkedHashMap<>();
    final Map<Integer, List<Stop>> stopsOf = new LinkedHashMap<>();
    /** Of all tiles drawn. */
    final Box extent;

    private final boolean elided;
    private final double port;
    final Numbering columnNumbers;
    final Numbering rowNumbers;
    /** From the middle of a side to its ports: level with no number. */
    private final double portAcross;

    private final double portDown;
    private final double rowGap;
    /** Tiles drawn, by column and row of tiles. */
    private final Map<GridPoint, Box> boxAt = new LinkedHashMap<>();

    ChainLayout(Panel panel, Traced path, List<ChainFigure.Mark> marks, ChainFigure.Way way, double pitch) {
        this.panel = panel;
        this.tile = panel.tile();
        this.path = path;
        this.marks = marks;
        this.pitch = pitch;
        this.elided = way.elided();
        this.tilesInLine = way.tilesInLine();
        this.controllerAbove = way.controllerAbove(panel, pitch) && firstInput().horizontal();
        this.innerRim = panel.returnLine() ? OUTER_RIM + 5 : OUTER_RIM;
        this.port = panel.returnLine() ? PORT : 0;
        this.margin = innerRim + Math.max(pitch < CLOSE_PITCH ? 5 : 7, Math.min(14, pitch * 0.55));
        this.gap = pitch >= 18 ? 30 : 18;
        Lettering widest =
                Lettering.plain(Integer.toString(lastColumn()), Lettering.SMALL).inBold();
        this.columnNumbers = new Numbering(tile.columns(), pitch, widest.width() / 2, widest.width() + COLUMN_GAP);
        this.rowNumbers = new Numbering(tile.rows(), pitch, NUMBER_HEIGHT / 2, ROW_NUMBER_ROOM);
        double beyond = margin - innerRim - port;
        this.portAcross = columnNumbers.port(marked(mark -> mark.x(), tile.columns()), beyond, lines(Compass.NORTH));
        this.portDown = rowNumbers.port(marked(mark -> mark.y(), tile.rows()), beyond, lines(Compass.WEST));
        this.rowGap = panel.cabled()
                ? ROW_GAP_WITH_CABLES
                : path.links().stream().allMatch(DataPath.Link::isShort) ? ROW_GAP : ROW_GAP_WITH_LINES;
        path.stops()
                .forEach(stop -> stopsOf.computeIfAbsent(stop.place(), p -> new ArrayList<>())
                        .add(stop));
        placeTiles();
        Box all = boxes.values().iterator().next();
        for (Box box : boxes.values()) {
            all = all.with(box);
        }
        this.extent = all;
    }

    /** From one column shown to the next where others are left out between them. */
    double leftOut() {
        return gap + ellipsis;
    }

    private Compass firstInput() {
        return Compass.of(tile.input(), panel.places().get(panel.first()).quarterTurns());
    }

    private double tileWidth() {
        return 2 * margin + (tile.columns() - 1) * pitch;
    }

    private double tileHeight() {
        return 2 * margin + (tile.rows() - 1) * pitch;
    }

    /** How often columns are left out between two that are shown. */
    private int jumps(List<Integer> shown) {
        int jumps = 0;
        for (int i = 1; i < shown.size(); i++) {
            jumps += elided && i % tilesInLine != 0 && shown.get(i) != shown.get(i - 1) + 1 ? 1 : 0;
        }
        return jumps;
    }

    private void placeTiles() {
        Set<Integer> columns = new TreeSet<>();
        panel.places().forEach(place -> columns.add(place.column()));
        List<Integer> shown = new ArrayList<>(elided ? shownColumns(columns) : columns);
        ellipsis = jumps(shown) < MANY ? ELLIPSIS : ELLIPSIS_OF_MANY;
        Map<Integer, Double> left = new LinkedHashMap<>();
        double x = 0;
        for (int i = 0; i < shown.size(); i++) {
            boolean first = i % tilesInLine == 0;
            x = first ? 0 : x;
            boolean jump = elided && !first && shown.get(i) != shown.get(i - 1) + 1;
            int steps = first ? 0 : elided ? 1 : shown.get(i) - shown.get(i - 1);
            x += steps * (tileWidth() + gap) + (jump ? ellipsis : 0);
            left.put(shown.get(i), x);
        }
        for (int i = 0; i < panel.places().size(); i++) {
            Panel.Place place = panel.places().get(i);
            if (left.containsKey(place.column())) {
                int line = shown.indexOf(place.column()) / tilesInLine;
                double y = place.row() * (tileHeight() + rowGap) + line * (tileHeight() + LINE_GAP);
                double at = left.get(place.column());
                Box box = new Box(at, y, at + tileWidth(), y + tileHeight());
                boxes.put(i, box);
                boxAt.put(new GridPoint(place.column(), place.row()), box);
            }
        }
    }

    /** The first, the last and those with a mark; of a single row the second too. */
    private Set<Integer> shownColumns(Set<Integer> columns) {
        List<Integer> all = new ArrayList<>(columns);
        Set<Integer> shown = new TreeSet<>(List.of(all.get(0), all.get(all.size() - 1)));
        if (panel.places().stream()
                .allMatch(place -> place.row() == panel.places().get(0).row())) {
            shown.add(all.get(1));
        }
        marks.forEach(mark -> shown.add(mark.x() / tile.columns()));
        return shown;
    }

    /** Only then a tile's corner tells something. */
    boolean anyTurned() {
        return panel.places().stream().anyMatch(place -> place.quarterTurns() != 0);
    }

    static List<Point> corners(Box box) {
        return List.of(
                new Point(box.left(), box.top()),
                new Point(box.right(), box.top()),
                new Point(box.right(), box.bottom()),
                new Point(box.left(), box.bottom()));
    }

    String name(int place) {
        return "tile " + panel.places().get(place).column() + " "
                + panel.places().get(place).row();
    }

    Compass input(int place) {
        return Compass.of(tile.input(), panel.places().get(place).quarterTurns());
    }

    Compass output(int place) {
        return Compass.of(tile.output(), panel.places().get(place).quarterTurns());
    }

    /** Between its ports. */
    Point middle(int place, Compass side) {
        Point middle = side.middle(boxes.get(place));
        return side.horizontal() ? middle.plus(0, portDown) : middle.plus(portAcross, 0);
    }

    /** In each tile, counted from its first; a tile without a mark is one of them. */
    private Collection<Set<Integer>> marked(ToIntFunction<ChainFigure.Mark> at, int pixels) {
        Map<Integer, Set<Integer>> marked = new LinkedHashMap<>(Map.of(-1, Set.of()));
        marks.forEach(mark -> marked.computeIfAbsent(at.applyAsInt(mark) / pixels, t -> new TreeSet<>())
                .add(at.applyAsInt(mark) % pixels));
        return marked.values();
    }

    /** Those of a port that meet the numbers on that side, as they lie on either side of its middle. */
    private double[] lines(Compass side) {
        boolean none = IntStream.range(0, panel.places().size())
                .noneMatch(place -> input(place) == side || output(place) == side);
        return none ? new double[0] : port > 0 ? new double[] {-port, port} : new double[] {0};
    }

    Point dataIn(int place) {
        Compass flow = input(place).opposite();
        return flow.left(middle(place, input(place)), port);
    }

    Point returnOut(int place) {
        Compass flow = input(place).opposite();
        return flow.left(middle(place, input(place)), -port);
    }

    Point dataOut(int place) {
        return output(place).left(middle(place, output(place)), port);
    }

    Point returnIn(int place) {
        return output(place).left(middle(place, output(place)), -port);
    }

    double radius() {
        return dotted() ? Math.min(LARGEST_DOT, Math.max(SMALLEST_DOT, DOT * pitch)) : Math.min(7, 0.27 * pitch);
    }

    /** Close together or very many, pixels are dots on the line instead of circles between its pieces. */
    boolean dotted() {
        return pitch < DOTTED || panel.places().size() * tile.columns() * tile.rows() > MOST_RINGS;
    }

    /** Where all lines inside a tile would be a blot, only the first line of pixels is drawn. */
    boolean crowded() {
        return pitch < (tile.order() == Tile.Order.ALL_ONE_WAY ? CROWDED_ONE_WAY : CROWDED);
    }

    Point pixel(int x, int y) {
        int column = x / tile.columns();
        int row = y / tile.rows();
        Box box = boxAt.get(new GridPoint(column, row));
        if (box == null) {
            throw new IllegalArgumentException("no tile is drawn at column " + x + ", row " + y);
        }
        return new Point(
                box.left() + margin + (x - column * tile.columns()) * pitch,
                box.top() + margin + (y - row * tile.rows()) * pitch);
    }

    int columnsAsTurned(int place) {
        return panel.places().get(place).quarterTurns() % 2 == 0 ? tile.columns() : tile.rows();
    }

    int rowsAsTurned(int place) {
        return panel.places().get(place).quarterTurns() % 2 == 0 ? tile.rows() : tile.columns();
    }

    boolean linesAreRows(int place) {
        return tile.along() == Tile.Along.ROWS == (panel.places().get(place).quarterTurns() % 2 == 0);
    }

    private int lastColumn() {
        return panel.places().stream()
                .mapToInt(place -> place.column() * tile.columns() + tile.columns() - 1)
                .max()
                .orElseThrow();
    }

    /** Where all pixels lie in one row, it needs no number. */
    boolean hasRows() {
        return tile.rows() > 1 || panel.places().stream().anyMatch(place -> place.row() > 0);
    }

    /** Without points that lie on the one before. */
    static Point[] distinct(List<Point> points) {
        List<Point> distinct = new ArrayList<>();
        for (Point point : points) {
            if (distinct.isEmpty() || distinct.get(distinct.size() - 1).distanceTo(point) > 0.01) {
                distinct.add(point);
            }
        }
        return distinct.toArray(new Point[0]);
    }
}
