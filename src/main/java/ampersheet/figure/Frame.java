package ampersheet.figure;

/**
 * A part's own axes: {@code u} along the part from its first to its last terminal, {@code v} across it.
 *
 * @param origin centre of the body, in pixels
 * @param ux direction of u in pixels, a unit vector with {@code uy}
 * @param mirrored false: seen along u, v points to the left, so upwards for a part that runs to the right
 * @param scale below 1 for a part drawn between ends that lie too close
 */
record Frame(Point origin, double ux, double uy, boolean mirrored, double scale) {
    static Frame between(Point from, Point to) {
        double length = from.distanceTo(to);
        Point middle = new Point((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
        return length == 0
                ? new Frame(middle, 1, 0, false, 1)
                : new Frame(middle, (to.x() - from.x()) / length, (to.y() - from.y()) / length, false, 1);
    }

    Frame scaled(double factor) {
        return new Frame(origin, ux, uy, mirrored, factor);
    }

    Frame movedAlong(double u) {
        return new Frame(at(u, 0), ux, uy, mirrored, scale);
    }

    /** The same frame with v pointing to the side on which {@code point} lies. */
    Frame facing(Point point) {
        return v(point) < 0 ? flipped() : this;
    }

    Frame flipped() {
        return new Frame(origin, ux, uy, !mirrored, scale);
    }

    Point at(double u, double v) {
        double across = mirrored ? -v : v;
        return origin.plus(scale * (u * ux + across * uy), scale * (u * uy - across * ux));
    }

    double u(Point point) {
        return ((point.x() - origin.x()) * ux + (point.y() - origin.y()) * uy) / scale;
    }

    double v(Point point) {
        double across = ((point.x() - origin.x()) * uy - (point.y() - origin.y()) * ux) / scale;
        return mirrored ? -across : across;
    }

    boolean vertical() {
        return Math.abs(uy) > Math.abs(ux);
    }
}
