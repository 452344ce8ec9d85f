package ampersheet.chain;

import ampersheet.quantity.Elementary;
import java.util.ArrayList;
import java.util.List;

/**
 * A tile's outline: equal sides, equal angles; x to the right, y upwards. Sides are numbered clockwise from 0. Seen
 * from outside, a side runs from its left end to its right end.
 *
 * @param corners clockwise; side i runs from corner i + 1, its left end, to corner i, its right end
 */
public record RegularPolygon(List<Spot> corners) {
    private static final double PI = 3.141592653589793;

    public RegularPolygon {
        corners = List.copyOf(corners);
    }

    /** A point of the plane, in the unit of the side. */
    public record Spot(double x, double y) {
        Spot minus(Spot other) {
            return new Spot(x - other.x, y - other.y);
        }

        /** A share of the way to {@code other}: 0 here, 1 there. */
        public Spot towards(Spot other, double share) {
            return new Spot(x + (other.x - x) * share, y + (other.y - y) * share);
        }

        public double distanceTo(Spot other) {
            double dx = other.x - x;
            double dy = other.y - y;
            return Math.sqrt(dx * dx + dy * dy);
        }
    }

    /** Around the origin; the middle of side 0 lies straight to the left. */
    static RegularPolygon of(int sides, double side) {
        double radius = side / (2 * Elementary.sin(PI / sides));
        List<Spot> corners = new ArrayList<>();
        for (int i = 0; i < sides; i++) {
            double angle = PI + PI / sides - 2 * PI * i / sides; // clockwise
            corners.add(new Spot(radius * Elementary.cos(angle), radius * Elementary.sin(angle)));
        }
        return new RegularPolygon(corners);
    }

    public int sides() {
        return corners.size();
    }

    Spot leftEnd(int side) {
        return corners.get(Math.floorMod(side + 1, sides()));
    }

    Spot rightEnd(int side) {
        return corners.get(Math.floorMod(side, sides()));
    }

    public Spot middle(int side) {
        return leftEnd(side).towards(rightEnd(side), 0.5);
    }

    public Spot centre() {
        double x = 0;
        double y = 0;
        for (Spot corner : corners) {
            x += corner.x();
            y += corner.y();
        }
        return new Spot(x / sides(), y / sides());
    }

    /** This outline turned and moved until its side {@code side} lies against {@code otherSide} of {@code other}. */
    RegularPolygon against(int side, RegularPolygon other, int otherSide) {
        Spot from = leftEnd(side);
        Spot onto = other.rightEnd(otherSide);
        Spot along = rightEnd(side).minus(from);
        Spot wanted = other.leftEnd(otherSide).minus(onto);
        double square = along.x() * along.x() + along.y() * along.y();
        double cos = (along.x() * wanted.x() + along.y() * wanted.y()) / square;
        double sin = (along.x() * wanted.y() - along.y() * wanted.x()) / square;
        List<Spot> moved = new ArrayList<>();
        for (Spot corner : corners) {
            Spot arm = corner.minus(from);
            moved.add(new Spot(onto.x() + arm.x() * cos - arm.y() * sin, onto.y() + arm.x() * sin + arm.y() * cos));
        }
        return new RegularPolygon(moved);
    }
}
