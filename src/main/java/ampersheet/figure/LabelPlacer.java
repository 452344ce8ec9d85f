package ampersheet.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Puts blocks of text where nothing else is: the first free of several spots. */
final class LabelPlacer {
    private static final double CLEARANCE = 2;
    private static final double LEADING = 1.22;

    private final Drawing drawing;

    LabelPlacer(Drawing drawing) {
        this.drawing = drawing;
    }

    enum Side {
        RIGHT,
        LEFT,
        ABOVE,
        BELOW
    }

    /** A place for a block: it touches {@code at} with the middle of the side that faces back. */
    record Spot(Point at, Side side) {}

    /**
     * Puts the lines at the first free spot; at the least crowded one if none is free.
     *
     * @return index of the spot; more than there are spots if none was free
     */
    int place(String part, List<Lettering> lines, List<Spot> spots) {
        return place(part, lines, spots, spot -> true);
    }

    /**
     * The same, if a spot that is free is also {@code good}.
     *
     * @return index of the spot; the number of spots if a free one was taken that is not good, one more if none was
     *     free
     */
    int place(String part, List<Lettering> lines, List<Spot> spots, Predicate<Spot> good) {
        double width = width(lines);
        double height = height(lines);
        for (int i = 0; i < spots.size(); i++) {
            if (drawing.isFree(box(width, height, spots.get(i)).grown(CLEARANCE)) && good.test(spots.get(i))) {
                write(part, lines, spots.get(i));
                return i;
            }
        }
        Spot best = spots.get(0);
        int least = Integer.MAX_VALUE;
        for (Spot spot : spots) {
            int crowd = drawing.crowd(box(width, height, spot).grown(CLEARANCE));
            if (crowd < least) {
                best = spot;
                least = crowd;
            }
        }
        write(part, lines, best);
        return spots.size() + (least > 0 ? 1 : 0);
    }

    /** The centre of the first free square of that size, if any is. */
    Optional<Point> free(double size, List<Point> centres) {
        return centres.stream()
                .filter(centre -> drawing.isFree(Box.centred(centre, size, size).grown(CLEARANCE)))
                .findFirst();
    }

    /**
     * Spots around a body, nearest first, then moved along its sides, then farther away.
     *
     * @param sides in order of preference
     */
    static List<Spot> around(Box body, double gap, double reach, Side... sides) {
        List<Spot> spots = new ArrayList<>();
        for (double distance = gap; distance <= reach; distance += 5) {
            for (double slide = 0; slide <= 32 && slide <= 6 * distance; slide += 8) {
                for (Side side : sides) {
                    spots.add(beside(body, side, distance, slide));
                    if (slide > 0) {
                        spots.add(beside(body, side, distance, -slide));
                    }
                }
            }
        }
        return spots;
    }

    private static Spot beside(Box body, Side side, double distance, double slide) {
        Point centre = body.centre();
        return new Spot(
                switch (side) {
                    case RIGHT -> new Point(body.right() + distance, centre.y() + slide);
                    case LEFT -> new Point(body.left() - distance, centre.y() + slide);
                    case ABOVE -> new Point(centre.x() + slide, body.top() - distance);
                    case BELOW -> new Point(centre.x() + slide, body.bottom() + distance);
                },
                side);
    }

    private static double width(List<Lettering> lines) {
        return lines.stream().mapToDouble(Lettering::width).max().orElse(0);
    }

    private static double height(List<Lettering> lines) {
        double height = lines.get(0).ascent();
        for (int i = 1; i < lines.size(); i++) {
            height += lines.get(i).size() * LEADING;
        }
        return height + lines.get(lines.size() - 1).descent();
    }

    static Box box(List<Lettering> lines, Spot spot) {
        return box(width(lines), height(lines), spot);
    }

    private static Box box(double width, double height, Spot spot) {
        Point at = spot.at();
        return switch (spot.side()) {
            case RIGHT -> Box.centred(at.plus(width / 2, 0), width, height);
            case LEFT -> Box.centred(at.plus(-width / 2, 0), width, height);
            case ABOVE -> Box.centred(at.plus(0, -height / 2), width, height);
            case BELOW -> Box.centred(at.plus(0, height / 2), width, height);
        };
    }

    private void write(String part, List<Lettering> lines, Spot spot) {
        Box box = box(lines, spot);
        Lettering.Anchor anchor = switch (spot.side()) {
            case RIGHT -> Lettering.Anchor.START;
            case LEFT -> Lettering.Anchor.END;
            case ABOVE, BELOW -> Lettering.Anchor.MIDDLE;
        };
        double x = switch (anchor) {
            case START -> box.left();
            case MIDDLE -> box.centre().x();
            case END -> box.right();
        };
        double y = box.top() + lines.get(0).ascent();
        for (int i = 0; i < lines.size(); i++) {
            y += i == 0 ? 0 : lines.get(i).size() * LEADING;
            drawing.add(part, new Shape.Words(lines.get(i), new Point(x, y), anchor, false));
        }
    }
}
