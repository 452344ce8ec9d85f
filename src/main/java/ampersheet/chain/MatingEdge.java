package ampersheet.chain;

import ampersheet.chain.RegularPolygon.Spot;
import java.util.ArrayList;
import java.util.List;

/**
 * A tile with the same row of contacts on every side, by which it is pushed against others. On the plain sides the row
 * runs from left to right, as seen from outside; on the others it is mirrored.
 *
 * <p>What touches is found by laying one outline against the other and looking which contacts lie on each other.
 *
 * @param plainSides so many sides, from side 0 clockwise, carry the row as it is
 * @param contacts places in the row, evenly spread, numbered from 1
 * @param supply place of the supply contact; the same for the others; all four are different
 */
public record MatingEdge(int sides, int plainSides, int contacts, int supply, int ground, int output, int input)
    implements Assembly {
  private static final double SAME_PLACE = 1e-6;

  public enum Contact {
    SUPPLY, GROUND, OUTPUT, INPUT;

    /** Whether current flows that nothing limits: supply on ground, or an output on anything that holds a level. */
    boolean shorts(Contact other) {
      return switch (this) {
        case SUPPLY -> other == GROUND || other == OUTPUT;
        case GROUND -> other == SUPPLY || other == OUTPUT;
        case OUTPUT -> other != INPUT;
        case INPUT -> false;
      };
    }
  }

  public MatingEdge {
    List<Integer> places = List.of(supply, ground, output, input);
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
    return place == supply ? Contact.SUPPLY : place == ground ? Contact.GROUND : place == output ? Contact.OUTPUT
        : place == input ? Contact.INPUT : null;
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
    RegularPolygon tile = outline();
    RegularPolygon other = tile.against(its, tile, mine);
    List<Spot> here = spots(tile, mine);
    List<Spot> there = spots(other, its);
    for (int place = 1; place <= contacts; place++) {
      int touched = touched(here.get(place - 1), there);
      Contact one = at(place);
      Contact another = at(touched);
      if (one != null && another != null && one.shorts(another)) {
        return false;
      }
    }
    return true;
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
