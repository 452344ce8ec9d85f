package ampersheet.figure;

/** In CSS pixels (1/96 inch); x to the right, y downwards. */
public record Point(double x, double y) {
    Point plus(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }

    double distanceTo(Point other) {
        double dx = other.x - x;
        double dy = other.y - y;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** On the way to {@code other}, {@code distance} from here. */
    Point towards(Point other, double distance) {
        double length = distanceTo(other);
        return length == 0 ? this : plus((other.x - x) * distance / length, (other.y - y) * distance / length);
    }
}
