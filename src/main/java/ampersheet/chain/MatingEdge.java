package ampersheet.chain;

import ampersheet.chain.RegularPolygon.Spot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A tile with the same row of contacts on every side, by which it is pushed against others. On the plain sides the row
 * runs from left to right, as seen from outside; on the others it is mirrored.
 *
 * <p>What touches is found by laying one outline against the other and looking which contacts lie on each other.
 *
 * @param plainSides so many sides, from side 0 clockwise, carry the row as it is
 * @param contacts places in the row, evenly spread, numbered from 1
 * @param supplies places of the supply contacts, in ascending order, none twice; the same for the grounds; no two
 *     contacts share a place
 */
public record MatingEdge(
        int sides, int plainSides, int contacts, List<Integer> supplies, List<Integer> grounds, int output, int input)
        implements Assembly {
    private static final double SAME_PLACE = 1e-6;

    public enum Contact {
        SUPPLY,
        GROUND,
        OUTPUT,
        INPUT;

        /** Whether current flows that nothing limits: supply on ground, or an output on anything that holds a level. */
        boolean shorts(Contact other) {
            return switch (this) {
                case SUPPLY -> other == GROUND || other == OUTPUT;
                case GROUND -> other == SUPPLY || other == OUTPUT;
                case OUTPUT -> other != INPUT;
                case INPUT -> false;
            };
        }

        /** What it has to meet. */
        Contact partner() {
            return switch (this) {
                case SUPPLY, GROUND -> this;
                case OUTPUT -> INPUT;
                case INPUT -> OUTPUT;
            };
        }
    }

    /**
     * What is wrong where two sides meet, the gravest first. Both tiles are taken as switched on; a tile without a
     * supply of its own takes what current it gets.
     */
    public enum Fault {
        /** A supply contact meets a ground contact. */
        SHORT,
        /** An output meets another output, a supply or a ground, and drives against it. */
        OUTPUT_FORCED,
        /** Only one of supply and ground is joined, and the current of the tile finds its way through a data pin. */
        FED_THROUGH_DATA,
        /** Supply or ground is not joined, and no current flows. */
        NO_POWER,
        /** Supply and ground are joined, but not each output with the other tile's input. */
        NO_DATA
    }

    /** Two contacts that lie on each other, the first on the one tile, the second on the other. */
    private record Touch(Contact mine, Contact its) {
        /** Whether it is these two, whichever tile carries which. */
        boolean joins(Contact one, Contact another) {
            return mine == one && its == another || mine == another && its == one;
        }
    }

    public MatingEdge {
        supplies = supplies.stream().distinct().sorted().toList();
        grounds = grounds.stream().distinct().sorted().toList();
        List<Integer> places = new ArrayList<>(supplies);
        places.addAll(grounds);
        places.add(output);
        places.add(input);
        for (int place : places) {
            if (place < 1 || place > contacts) {
                throw new IllegalArgumentException("no place " + place + " among " + contacts + " contacts");
            }
        }
        if (places.stream().distinct().count() < places.size()) {
            throw new IllegalArgumentException("two contacts share one place: " + places);
        }
        if (sides < 3 || plainSides < 1 || plainSides > sides) {
            throw new IllegalArgumentException(plainSides + " of " + sides + " sides cannot carry the plain row");
        }
    }

    /** The contact at a place of the row, or null where there is none. */
    public Contact at(int place) {
        return supplies.contains(place)
                ? Contact.SUPPLY
                : grounds.contains(place)
                        ? Contact.GROUND
                        : place == output ? Contact.OUTPUT : place == input ? Contact.INPUT : null;
    }

    /** With room for one place more than there are, so that no contact sits in a corner. */
    public RegularPolygon outline() {
        return RegularPolygon.of(sides, contacts + 1);
    }

    public boolean isPlain(int side) {
        return side < plainSides;
    }

    /** The number of the place that lies on {@code place} when two plain sides meet. */
    public int touched(int place) {
        RegularPolygon mine = outline();
        RegularPolygon other = mine.against(0, mine, 0);
        return touched(spots(mine, 0).get(place - 1), spots(other, 0));
    }

    /** Pairs of sides, one of each tile, that may meet without a short; side 1 on side 2 and 2 on 1 are two pairs. */
    public int safePairs() {
        int safe = 0;
        for (int mine = 0; mine < sides; mine++) {
            for (int its = 0; its < sides; its++) {
                safe += mayMeet(mine, its) ? 1 : 0;
            }
        }
        return safe;
    }

    private boolean mayMeet(int mine, int its) {
        return touches(mine, its).stream().noneMatch(touch -> touch.mine().shorts(touch.its()));
    }

    /**
     * The gravest fault where side {@code mine} of one tile meets side {@code its} of another; empty where the pair
     * works: supply meets supply, ground meets ground, each output meets the other tile's input, and nothing meets what
     * it must not.
     */
    public Optional<Fault> fault(int mine, int its) {
        List<Touch> touches = touches(mine, its);
        boolean supplyJoined = touch(touches, Contact.SUPPLY, Contact.SUPPLY);
        boolean groundJoined = touch(touches, Contact.GROUND, Contact.GROUND);
        boolean outputForced = touch(touches, Contact.OUTPUT, Contact.OUTPUT)
                || touch(touches, Contact.OUTPUT, Contact.SUPPLY)
                || touch(touches, Contact.OUTPUT, Contact.GROUND);
        if (touch(touches, Contact.SUPPLY, Contact.GROUND)) {
            return Optional.of(Fault.SHORT);
        } else if (outputForced) {
            return Optional.of(Fault.OUTPUT_FORCED);
        } else if (supplyJoined != groundJoined
                && inputLeads(touches, supplyJoined ? Contact.GROUND : Contact.SUPPLY)) {
            return Optional.of(Fault.FED_THROUGH_DATA);
        } else if (!supplyJoined || !groundJoined) {
            return Optional.of(Fault.NO_POWER);
        }
        boolean allData = touches.stream()
                        .filter(touch -> touch.mine() == Contact.OUTPUT && touch.its() == Contact.INPUT
                                || touch.mine() == Contact.INPUT && touch.its() == Contact.OUTPUT)
                        .count()
                == 2;
        return allData ? Optional.empty() : Optional.of(Fault.NO_DATA);
    }

    /**
     * Whether the protection diodes of an input replace the rail that is missing: an output drives both to supply and
     * to ground.
     */
    private static boolean inputLeads(List<Touch> touches, Contact missing) {
        return touch(touches, Contact.INPUT, Contact.OUTPUT) || touch(touches, Contact.INPUT, missing);
    }

    private static boolean touch(List<Touch> touches, Contact one, Contact another) {
        return touches.stream().anyMatch(touch -> touch.joins(one, another));
    }

    /** Pairs of sides, one of each tile, that work; side 1 on side 2 and 2 on 1 are two pairs. */
    public int workingPairs() {
        return pairs(fault -> fault.isEmpty());
    }

    /** Pairs of sides on which something is harmed: a short, a forced output, a tile fed through a data pin. */
    public int harmfulPairs() {
        return pairs(fault -> fault.isPresent() && fault.get().compareTo(Fault.FED_THROUGH_DATA) <= 0);
    }

    private int pairs(Predicate<Optional<Fault>> asked) {
        int pairs = 0;
        for (int mine = 0; mine < sides; mine++) {
            for (int its = 0; its < sides; its++) {
                pairs += asked.test(fault(mine, its)) ? 1 : 0;
            }
        }
        return pairs;
    }

    /**
     * Contacts of a plain side that meet no partner on another plain side: their like, or input and output each other.
     */
    public int unmatched() {
        RegularPolygon tile = outline();
        List<Spot> here = spots(tile, 0);
        List<Spot> there = spots(tile.against(0, tile, 0), 0);
        int unmatched = 0;
        for (int place = 1; place <= contacts; place++) {
            Contact contact = at(place);
            unmatched += contact == null || at(touched(here.get(place - 1), there)) == contact.partner() ? 0 : 1;
        }
        return unmatched;
    }

    /** The contacts that lie on each other; places where one side or both are bare are left out. */
    private List<Touch> touches(int mine, int its) {
        RegularPolygon tile = outline();
        RegularPolygon other = tile.against(its, tile, mine);
        List<Spot> here = spots(tile, mine);
        List<Spot> there = spots(other, its);
        List<Touch> touches = new ArrayList<>();
        for (int place = 1; place <= contacts; place++) {
            Contact one = at(place);
            Contact another = at(touched(here.get(place - 1), there));
            if (one != null && another != null) {
                touches.add(new Touch(one, another));
            }
        }
        return touches;
    }

    /** Where the places of the row lie, from place 1. */
    private List<Spot> spots(RegularPolygon outline, int side) {
        List<Spot> spots = new ArrayList<>();
        Spot first = isPlain(side) ? outline.leftEnd(side) : outline.rightEnd(side);
        Spot last = isPlain(side) ? outline.rightEnd(side) : outline.leftEnd(side);
        for (int place = 1; place <= contacts; place++) {
            spots.add(first.towards(last, place / (contacts + 1.0)));
        }
        return spots;
    }

    private static int touched(Spot spot, List<Spot> others) {
        for (int i = 0; i < others.size(); i++) {
            if (others.get(i).distanceTo(spot) < SAME_PLACE) {
                return i + 1;
            }
        }
        throw new IllegalStateException("no contact lies at " + spot + " among " + others);
    }
}
