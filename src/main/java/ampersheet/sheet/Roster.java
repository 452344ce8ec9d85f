package ampersheet.sheet;

import java.util.List;

/** A class: who sits where, in order of seat. */
public record Roster(List<Seat> seats) {
  public Roster {
    seats = List.copyOf(seats);
  }

  public int lastSeat() {
    return seats.stream().mapToInt(Seat::number).max().orElse(0);
  }

  /**
   * A place for one learner.
   *
   * @param number from 1, unique in the class
   * @param name as it is to be printed; empty for a sheet without a name
   */
  public record Seat(int number, String name) {}
}
