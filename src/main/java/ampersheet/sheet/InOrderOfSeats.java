package ampersheet.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Seats as a class list brings them: packed as they come where they come in order, as large lists do. */
final class InOrderOfSeats {
    private PackedSeats.Packing packing = new PackedSeats.Packing();
    private int last;
    private int size;
    /** Where they do not come in order. */
    private final List<Roster.Seat> mixed = new ArrayList<>();

    void add(Roster.Seat seat) {
        if (mixed.isEmpty() && seat.number() > last) {
            packing.add(seat);
        } else {
            if (mixed.isEmpty()) {
                mixed.addAll(packing.done());
                packing = new PackedSeats.Packing();
            }
            mixed.add(seat);
        }
        last = seat.number();
        size++;
    }

    int size() {
        return size;
    }

    List<Roster.Seat> all() {
        if (mixed.isEmpty()) {
            return packing.done();
        }
        mixed.sort(Comparator.comparingInt(Roster.Seat::number));
        return mixed;
    }
}
