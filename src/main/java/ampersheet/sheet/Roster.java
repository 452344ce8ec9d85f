package ampersheet.sheet;

import java.util.List;

/** A class: who sits where, in order of seat. */
public record Roster(List<Seat> seats) {
    public Roster {
        seats = List.copyOf(seats);
    }

    /** Of every file about a seat, never with a name: a name does not belong into a file system or an address. */
    public static String fileName(int seat) {
        String digits = Integer.toString(seat);
        return "seat-" + "0".repeat(Math.max(0, 3 - digits.length())) + digits;
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
