package ampersheet.figure;

import ampersheet.chain.Tile;

/** A side of a tile as it lies in the panel, clockwise from the top. */
enum Compass {
    NORTH(0, -1),
    EAST(1, 0),
    SOUTH(0, 1),
    WEST(-1, 0);

    /** Unit step outwards through this side, y downwards. */
    final int dx;

    final int dy;

    Compass(int dx, int dy) {
        this.dx = dx;
        this.dy = dy;
    }

    /** Where a side of a tile comes to lie after quarter turns clockwise. */
    static Compass of(Tile.Side side, int quarterTurns) {
        return values()[(side.ordinal() + quarterTurns) % 4];
    }

    Compass opposite() {
        return values()[(ordinal() + 2) % 4];
    }

    boolean horizontal() {
        return dy == 0;
    }

    Point middle(Box box) {
        return new Point(box.centre().x() + dx * box.width() / 2, box.centre().y() + dy * box.height() / 2);
    }

    /** {@code distance} outwards. */
    Point from(Point point, double distance) {
        return point.plus(dx * distance, dy * distance);
    }

    /** {@code distance} to the left of someone who goes out through this side. */
    Point left(Point point, double distance) {
        return point.plus(dy * distance, -dx * distance);
    }

    /** How far outwards a point lies. */
    double along(Point point) {
        return point.x() * dx + point.y() * dy;
    }
}
