package ampersheet.desk;

import ampersheet.sheet.Roster;
import java.util.List;
import java.util.stream.IntStream;

/** Seats of whom nobody has given the names. */
final class Seats {
    private Seats() {}

    /** Seats 1 to this one. */
    static Roster withoutNames(int last) {
        return new Roster(IntStream.rangeClosed(1, last)
                .mapToObj(number -> new Roster.Seat(number, ""))
                .toList());
    }

    /** The same seats, so that a name that no font sets is in nobody's way. */
    static Roster withoutNames(List<Roster.Seat> seats) {
        return new Roster(
                seats.stream().map(seat -> new Roster.Seat(seat.number(), "")).toList());
    }
}
