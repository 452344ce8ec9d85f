package ampersheet.figure;

import java.util.List;

/** What bars and intervals have in common: rows one below the other, with their names to the left, over one scale. */
final class RowChart {
    static final double WIDTH = 420;
    private static final double PITCH = 22;
    private static final double GAP = 10;
    private static final double TICK = 5;
    /** A longer name would leave no room for what is drawn. */
    private static final int LONGEST_NAME = 34;

    private final Drawing drawing = new Drawing();
    private final double to;
    private final Scale scale;
    private final List<String> names;

    /** @param steps of the scale, at most */
    RowChart(String axis, double to, int steps, List<String> names) {
        if (names.isEmpty() || !(to > 0)) {
            throw new IllegalArgumentException("a chart needs a row and a scale: " + names + ", " + to);
        }
        this.to = to;
        this.scale = new Scale(0, to, steps);
        this.names = List.copyOf(names);
        frame(axis);
    }

    Drawing drawing() {
        return drawing;
    }

    Scale scale() {
        return scale;
    }

    double x(double value) {
        return value / to * WIDTH;
    }

    /** The middle of a row. */
    double y(int row) {
        return PITCH * (row + 0.5);
    }

    void text(String part, String text, double x, double y, Lettering.Anchor anchor) {
        drawing.add(part, new Shape.Words(Lettering.plain(text, Lettering.SMALL), new Point(x, y + 4), anchor, false));
    }

    private void frame(String axis) {
        double bottom = PITCH * names.size() + 2;
        drawing.line("axis", Stroke.LINE, new Point(0, 0), new Point(0, bottom));
        drawing.line("axis", Stroke.LINE, new Point(0, bottom), new Point(WIDTH, bottom));
        for (double tick : scale.ticks()) {
            drawing.line("axis", Stroke.FINE, new Point(x(tick), bottom), new Point(x(tick), bottom + TICK));
            text("axis", scale.print(tick), x(tick), bottom + TICK + 9, Lettering.Anchor.MIDDLE);
        }
        drawing.add(
                "axis",
                new Shape.Words(
                        Lettering.plain(axis, Lettering.BODY),
                        new Point(WIDTH, bottom + 38),
                        Lettering.Anchor.END,
                        false));
        for (int row = 0; row < names.size(); row++) {
            text("names", shortened(names.get(row)), -GAP, y(row), Lettering.Anchor.END);
        }
    }

    private static String shortened(String name) {
        return name.codePointCount(0, name.length()) <= LONGEST_NAME
                ? name
                : name.substring(0, name.offsetByCodePoints(0, LONGEST_NAME - 1))
                                .stripTrailing() + "…";
    }
}
