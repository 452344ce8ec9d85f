package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import java.util.Arrays;
import java.util.List;

/**
 * Where each column and row of a schematic's grid lies, in pixels: apart as usual, and farther where labels need it.
 */
final class Spacing {
    static final double USUAL = 24;

    private final int left;
    private final int bottom;
    /** Width of the gap to the right of each column, height of the gap above each row. */
    private final double[] across;

    private final double[] up;

    /** @param gap between neighbouring columns and rows, in pixels */
    Spacing(List<GridPoint> points, double gap) {
        if (points.isEmpty()) {
            throw new IllegalArgumentException("a schematic without parts cannot be drawn");
        }
        left = points.stream().mapToInt(GridPoint::x).min().getAsInt();
        bottom = points.stream().mapToInt(GridPoint::y).min().getAsInt();
        across = new double[points.stream().mapToInt(GridPoint::x).max().getAsInt() - left];
        up = new double[points.stream().mapToInt(GridPoint::y).max().getAsInt() - bottom];
        Arrays.fill(across, gap);
        Arrays.fill(up, USUAL);
    }

    private Spacing(int left, int bottom, double[] across, double[] up) {
        this.left = left;
        this.bottom = bottom;
        this.across = across;
        this.up = up;
    }

    Spacing copy() {
        return new Spacing(left, bottom, across.clone(), up.clone());
    }

    Point pixel(GridPoint point) {
        return new Point(sum(across, point.x() - left), -sum(up, point.y() - bottom));
    }

    Box extent() {
        return new Box(0, -sum(up, up.length), sum(across, across.length), 0);
    }

    /** Widens the gaps from column {@code from} to column {@code to} by {@code pixels} together. */
    void widen(int from, int to, double pixels) {
        stretch(across, from - left, to - left, pixels);
    }

    /** Heightens the gaps from row {@code from} to row {@code to} by {@code pixels} together. */
    void heighten(int from, int to, double pixels) {
        stretch(up, from - bottom, to - bottom, pixels);
    }

    /** Distance of two columns, in pixels. */
    double between(int from, int to) {
        return sum(across, to - left) - sum(across, from - left);
    }

    int rightmost() {
        return left + across.length;
    }

    int topmost() {
        return bottom + up.length;
    }

    private static void stretch(double[] gaps, int from, int to, double pixels) {
        int first = Math.max(0, from);
        int end = Math.min(gaps.length, to);
        for (int i = first; i < end; i++) {
            gaps[i] += pixels / (end - first);
        }
    }

    private static double sum(double[] gaps, int count) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += gaps[i];
        }
        return sum;
    }
}
