package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.source.AsciiCase;
import java.util.List;
import java.util.stream.Stream;

/**
 * A class: who sits where, in order of seat.
 *
 * @param columns names of what else the class list tells of each learner, in its order
 * @param remarks how the list was read, where that did not go without saying
 */
public record Roster(List<Seat> seats, List<String> columns, List<Diagnostic> remarks) {
    private static final String ROOM = "room";
    /** A class of this size is kept packed. */
    private static final int LARGE = 1_000;

    public Roster {
        seats = kept(seats);
        columns = List.copyOf(columns);
        remarks = List.copyOf(remarks);
    }

    public Roster(List<Seat> seats) {
        this(seats, List.of(), List.of());
    }

    private static List<Seat> kept(List<Seat> seats) {
        if (seats.size() < LARGE) {
            return List.copyOf(seats);
        }
        if (seats instanceof PackedSeats) {
            return seats;
        }
        PackedSeats.Packing packing = new PackedSeats.Packing();
        seats.forEach(packing::add);
        return packing.done();
    }

    /** Of every file about a seat, never with a name: a name does not belong into a file system or an address. */
    public static String fileName(int seat) {
        String digits = Integer.toString(seat);
        return "seat-" + "0".repeat(Math.max(0, 3 - digits.length())) + digits;
    }

    public int lastSeat() {
        return seats.isEmpty() ? 0 : seats.get(seats.size() - 1).number();
    }

    /** Where this seat is, as the class list's column {@code room} tells it; empty if it does not. */
    public String room(Seat seat) {
        for (int i = 0; i < columns.size() && i < seat.further().size(); i++) {
            if (AsciiCase.small(columns.get(i)).equals(ROOM)) {
                return seat.further().get(i);
            }
        }
        return "";
    }

    /** The same class without one of its seats. */
    public Roster without(int seat) {
        return new Roster(seats.stream().filter(one -> one.number() != seat).toList(), columns, remarks);
    }

    /** The same with one more remark before the others. */
    public Roster remarking(Diagnostic remark) {
        return new Roster(
                seats,
                columns,
                Stream.concat(Stream.of(remark), remarks.stream()).toList());
    }

    /**
     * A place for one learner.
     *
     * @param number from 1, unique in the class
     * @param name as it is to be printed; empty for a sheet without a name
     * @param further what else the class list tells, a text for each of its further columns
     */
    public record Seat(int number, String name, List<String> further) {
        public Seat {
            further = List.copyOf(further);
        }

        public Seat(int number, String name) {
            this(number, name, List.of());
        }
    }
}
