package ampersheet.chain;

import ampersheet.quantity.Elementary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The net of a prism whose edges are all alike: a band of square tiles, numbered from 1 at the left, and two lids, each
 * joined to one tile of the band. What is drawn comes to lie outside. Which edges meet is found by folding the net in
 * space and looking which edges lie on each other.
 *
 * <p>Sides of a square are numbered clockwise from its top, those of a lid clockwise from where it is joined to the
 * band; both from 1, as they lie in the net.
 *
 * @param sides of a lid, and tiles of the band; the lids are tiles {@code sides + 1} (top) and {@code sides + 2}
 * @param top tile of the band that carries the upper lid, @param bottom the one that carries the lower lid
 * @param turned by how many of its sides each tile lies turned clockwise, in the order of the tiles; empty: none is
 * @param plain sides of a tile, numbered on the tile itself, that carry the plain row of contacts, the others carry the
 *     mirrored one; empty: no side has contacts
 */
public record PrismNet(int sides, int top, int bottom, List<Integer> turned, List<Integer> plain) implements Assembly {
    public static final int FEWEST_SIDES = 3;
    public static final int MOST_SIDES = 12;
    private static final double PI = 3.141592653589793;
    private static final double SAME_PLACE = 1e-6;

    public PrismNet {
        turned = List.copyOf(turned);
        plain = List.copyOf(plain);
        if (sides < FEWEST_SIDES || sides > MOST_SIDES) {
            throw new IllegalArgumentException(
                    "the lids of a net have " + FEWEST_SIDES + " to " + MOST_SIDES + " sides, not " + sides);
        }
        if (top < 1 || top > sides || bottom < 1 || bottom > sides) {
            throw new IllegalArgumentException(
                    "the band has tiles 1 to " + sides + ", none that is " + top + " or " + bottom + " to carry a lid");
        }
        if (!turned.isEmpty() && turned.size() != sides + 2) {
            throw new IllegalArgumentException(
                    "a net of " + (sides + 2) + " tiles cannot be turned by a list of " + turned.size());
        }
    }

    /** @param tile from 1, @param side as it lies in the net, from 1 */
    public record Place(int tile, int side) {}

    /** A point in space; the net lies where z is 0, and its outside is seen from where z is large. */
    private record Point(double x, double y, double z) {
        boolean isAt(Point other) {
            return Math.abs(x - other.x) < SAME_PLACE
                    && Math.abs(y - other.y) < SAME_PLACE
                    && Math.abs(z - other.z) < SAME_PLACE;
        }
    }

    public int tiles() {
        return sides + 2;
    }

    public int sidesOf(int tile) {
        return tile <= sides ? 4 : sides;
    }

    public boolean hasContacts() {
        return !plain.isEmpty();
    }

    /** The number on the tile itself of the side that lies there. */
    public int ownSide(Place place) {
        int by = turned.isEmpty() ? 0 : turned.get(place.tile() - 1);
        return Math.floorMod(place.side() - 1 - by, sidesOf(place.tile())) + 1;
    }

    public boolean isPlain(Place place) {
        return plain.contains(ownSide(place));
    }

    /**
     * Corners as they lie in the net, clockwise; side 1 runs from the first to the second. x to the right, y upwards.
     */
    public List<RegularPolygon.Spot> flat(int tile) {
        List<RegularPolygon.Spot> corners = new ArrayList<>();
        for (Point corner : corners(tile)) {
            corners.add(new RegularPolygon.Spot(corner.x(), corner.y()));
        }
        return corners;
    }

    private List<Point> corners(int tile) {
        boolean band = tile <= sides;
        double x = band ? tile - 1 : tile == sides + 1 ? top : bottom - 1;
        double y = tile <= sides + 1 ? 1 : 0;
        double heading = tile == sides + 1 ? PI : 0;
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < sidesOf(tile); i++) {
            corners.add(new Point(x, y, 0));
            x += Elementary.cos(heading);
            y += Elementary.sin(heading);
            heading -= 2 * PI / sidesOf(tile);
        }
        return corners;
    }

    /** Its corners after folding: about its own seam first, then about those that lead to tile 1. */
    private List<Point> folded(int tile) {
        double cos = Elementary.cos(2 * PI / sides);
        double sin = Elementary.sin(2 * PI / sides);
        List<Point> points = new ArrayList<>();
        for (Point corner : corners(tile)) {
            Point point = tile == sides + 1
                    ? new Point(corner.x(), 1, 1 - corner.y())
                    : tile == sides + 2 ? new Point(corner.x(), 0, corner.y()) : corner;
            int last = tile <= sides ? tile : tile == sides + 1 ? top : bottom;
            for (int seam = last - 1; seam >= 1; seam--) {
                point = aboutSeam(seam, point, cos, sin);
            }
            points.add(point);
        }
        return points;
    }

    /** Backwards about the right side of a tile of the band. */
    private static Point aboutSeam(int x, Point point, double cos, double sin) {
        double out = point.x() - x;
        return new Point(x + out * cos + point.z() * sin, point.y(), point.z() * cos - out * sin);
    }

    /**
     * Where the side that meets this one after folding lies in the net.
     *
     * @throws IllegalArgumentException if the net has no such place
     */
    public Place met(Place place) {
        if (place.tile() < 1 || place.tile() > tiles() || place.side() < 1 || place.side() > sidesOf(place.tile())) {
            throw new IllegalArgumentException("the net has no tile " + place.tile() + " with a side " + place.side());
        }
        return meeting(true).get(place);
    }

    /** Which sides lie on each other, in the folded net or in the flat one; in the order of the tiles. */
    private Map<Place, Place> meeting(boolean closed) {
        List<List<Point>> corners = new ArrayList<>();
        for (int tile = 1; tile <= tiles(); tile++) {
            corners.add(closed ? folded(tile) : corners(tile));
        }
        Map<Place, Place> meeting = new LinkedHashMap<>();
        for (int tile = 1; tile <= tiles(); tile++) {
            for (int side = 1; side <= sidesOf(tile); side++) {
                Place place = new Place(tile, side);
                Optional<Place> other = onto(place, corners);
                other.ifPresent(found -> meeting.put(place, found));
                if (closed && other.isEmpty()) {
                    throw new IllegalStateException("the folded net is open at " + place);
                }
            }
        }
        return meeting;
    }

    /** Neighbours run along their edge in opposite directions, since both show their outside. */
    private static Optional<Place> onto(Place place, List<List<Point>> corners) {
        List<Point> mine = corners.get(place.tile() - 1);
        Point from = mine.get(place.side() - 1);
        Point to = mine.get(place.side() % mine.size());
        for (int tile = 1; tile <= corners.size(); tile++) {
            List<Point> its = corners.get(tile - 1);
            for (int side = 1; side <= its.size(); side++) {
                boolean meets =
                        its.get(side - 1).isAt(to) && its.get(side % its.size()).isAt(from);
                if (tile != place.tile() && meets) {
                    return Optional.of(new Place(tile, side));
                }
            }
        }
        return Optional.empty();
    }

    /** Edges that are open in the flat net and closed by folding. */
    public int closedEdges() {
        return (meeting(true).size() - meeting(false).size()) / 2;
    }

    /** Edges where two plain sides meet, or two mirrored ones. */
    public int likeEdges() {
        int like = 0;
        for (Map.Entry<Place, Place> edge : meeting(true).entrySet()) {
            like += isPlain(edge.getKey()) == isPlain(edge.getValue()) ? 1 : 0;
        }
        return like / 2; // each was met from both its tiles
    }
}
