package ampersheet.chain;

import ampersheet.chain.RegularPolygon.Spot;
import java.util.ArrayList;
import java.util.List;

/**
 * Tiles with a data line and a return line at every side. Arms of tiles stand on sides of a first tile, which the
 * controller feeds at its side 0. Sides are numbered clockwise.
 *
 * <p>A tile passes the data on at the next side, clockwise from where it came in, at which another tile sits; what
 * comes back there on the return line goes on to the next such side, and after the last one back through the side it
 * first came in by. So the data meets every tile once, and there is one chain however the tiles branch.
 *
 * <p>Within an arm the tiles go straight on. A triangle has no opposite side: there the arm leaves by the next side
 * clockwise and by the one after it in turn, which also makes a straight strip.
 *
 * @param sides of every tile: 3, 4 or 6
 * @param sideLength metres
 * @param arms in any order; no two on one side
 */
public record BranchedTiles(int sides, double sideLength, List<Arm> arms) implements Assembly {
    private static final double TOUCHING = 1e-6;

    /** @param at side of the first tile, from 1; @param tiles how many, 0 where there is none */
    public record Arm(int at, int tiles) {}

    /**
     * @param arm index in {@link #arms}, -1 for the first tile
     * @param number within its arm, from 1
     * @param entry side at which the data first comes in
     */
    public record Placed(int arm, int number, RegularPolygon outline, int entry) {}

    /** The data crosses from one tile into another, by index in {@link #tiles}. */
    public record Crossing(int from, int to, boolean returning) {}

    public BranchedTiles {
        arms = List.copyOf(arms);
        if (sides != 3 && sides != 4 && sides != 6) {
            throw new IllegalArgumentException("tiles with " + sides + " sides leave gaps; needs 3, 4 or 6");
        }
        for (Arm arm : arms) {
            if (arm.at() < 1
                    || arm.at() >= sides
                    || arms.stream().filter(other -> other.at() == arm.at()).count() > 1) {
                throw new IllegalArgumentException("no arm can stand on side " + arm.at() + " of a tile with " + sides
                        + " sides: side 0 is the controller's, and each side takes one arm");
            }
        }
    }

    /** The first tile, then the arms, each from the inside out. */
    public List<Placed> tiles() {
        List<Placed> placed = new ArrayList<>();
        placed.add(new Placed(-1, 0, RegularPolygon.of(sides, sideLength), 0));
        for (int arm = 0; arm < arms.size(); arm++) {
            RegularPolygon before = placed.get(0).outline();
            int leaving = arms.get(arm).at();
            for (int number = 1; number <= arms.get(arm).tiles(); number++) {
                RegularPolygon next = RegularPolygon.of(sides, sideLength).against(0, before, leaving);
                placed.add(new Placed(arm, number, next, 0));
                before = next;
                leaving = sides == 3 ? 2 - number % 2 : sides / 2;
            }
        }
        return placed;
    }

    /** Two tiles that lie on one place, or an empty text. */
    public String fault() {
        List<Placed> placed = tiles();
        for (int i = 0; i < placed.size(); i++) {
            for (int j = 0; j < i; j++) {
                double apart = placed.get(i)
                        .outline()
                        .centre()
                        .distanceTo(placed.get(j).outline().centre());
                if (apart < TOUCHING * sideLength) {
                    return "tile " + placed.get(i).number() + " of arm "
                            + (placed.get(i).arm() + 1) + " would lie on tile "
                            + placed.get(j).number() + " of arm "
                            + (placed.get(j).arm() + 1);
                }
            }
        }
        return "";
    }

    /** The crossings of the data, in order, from the first tile round all others and back to it. */
    public List<Crossing> walk() {
        List<Crossing> crossings = new ArrayList<>();
        through(0, tiles(), crossings);
        return crossings;
    }

    private void through(int here, List<Placed> placed, List<Crossing> crossings) {
        for (int side = placed.get(here).entry() + 1; side < sides; side++) {
            int next = fedAt(placed.get(here).outline().middle(side), placed);
            if (next >= 0) {
                crossings.add(new Crossing(here, next, false));
                through(next, placed, crossings);
                crossings.add(new Crossing(next, here, true));
            }
        }
    }

    /** The tile that has its input there, or -1. */
    private int fedAt(Spot there, List<Placed> placed) {
        for (int i = 1; i < placed.size(); i++) {
            Placed tile = placed.get(i);
            if (tile.outline().middle(tile.entry()).distanceTo(there) < TOUCHING * sideLength) {
                return i;
            }
        }
        return -1;
    }

    /** Sides of all tiles on which neither a tile nor the controller sits. */
    public int openSides() {
        List<Placed> placed = tiles();
        int open = 0;
        for (Placed tile : placed) {
            for (int side = 0; side < sides; side++) {
                open += side == tile.entry() || fedAt(tile.outline().middle(side), placed) >= 0 ? 0 : 1;
            }
        }
        return open;
    }

    /** How many tiles the data has met before that one; -1 if there is no such tile. */
    public int turn(int arm, int number) {
        List<Placed> placed = tiles();
        int turn = 0;
        for (Crossing crossing : walk()) {
            if (!crossing.returning()) {
                turn++;
                Placed reached = placed.get(crossing.to());
                if (reached.arm() == arm && reached.number() == number) {
                    return turn;
                }
            }
        }
        return -1;
    }

    /** Metres from the centre of the first tile round all others and back to it, from centre to centre. */
    public double way() {
        List<Placed> placed = tiles();
        double way = 0;
        for (Crossing crossing : walk()) {
            Spot from = placed.get(crossing.from()).outline().centre();
            way += from.distanceTo(placed.get(crossing.to()).outline().centre());
        }
        return way;
    }

    /** Side of the first tile at which the data comes home last; -1 without arms. */
    public int lastSide() {
        List<Crossing> walk = walk();
        if (walk.isEmpty()) {
            return -1;
        }
        Placed last = tiles().get(walk.get(walk.size() - 1).from());
        return arms.get(last.arm()).at();
    }
}
