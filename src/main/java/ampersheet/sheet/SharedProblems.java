package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Which problems more than one of a class has, where the plan lets problems come again, and who they are. */
public final class SharedProblems {
    private static final int MOST_TOLD = 4;

    private final SheetMaker maker;
    private final Roster roster;
    private final int lastSeat;
    private final BitSet seats = new BitSet();

    /** @param maker that has been {@linkplain SheetMaker#prepare(int) prepared} for all of the class */
    public SharedProblems(SheetMaker maker, Roster roster) {
        this.maker = maker;
        this.roster = roster;
        this.lastSeat = roster.lastSeat();
        roster.seats().forEach(seat -> seats.set(seat.number()));
    }

    /**
     * A problem of somebody's sheet.
     *
     * @param number on that sheet, from 1
     * @param seats of the others of the class that have it
     */
    public record Shared(int number, List<Integer> seats) {
        public Shared {
            seats = List.copyOf(seats);
        }
    }

    /** Of this seat, in the order of its sheet. */
    List<Shared> of(int seat) {
        if (!maker.repeatsBy(lastSeat)) {
            return List.of();
        }
        List<Shared> shared = new ArrayList<>();
        List<List<Integer>> also = maker.alsoAt(seat, lastSeat);
        for (int i = 0; i < also.size(); i++) {
            List<Integer> here = also.get(i).stream().filter(seats::get).toList();
            if (!here.isEmpty()) {
                shared.add(new Shared(i + 1, here));
            }
        }
        return shared;
    }

    /** No two of the class whose numbers differ by less have a problem in common. */
    long nearest() {
        return maker.nearest(lastSeat);
    }

    /** @throws DiagnosticException if two have a problem in common whom the class list puts into one room */
    void requireInOtherRooms() {
        List<Diagnostic> faults = new ArrayList<>();
        Rooms rooms = new Rooms(roster, lastSeat);
        for (Roster.Seat seat : roster.seats()) {
            String room = roster.room(seat);
            if (room.isEmpty()) {
                continue;
            }
            for (Shared shared : of(seat.number())) {
                shared.seats().stream()
                        .filter(other -> other > seat.number() && rooms.areOne(other, seat.number()))
                        .forEach(other -> faults.add(inOneRoom(seat.number(), shared.number(), other, room)));
            }
            if (faults.size() >= MOST_TOLD) {
                break;
            }
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults.subList(0, Math.min(MOST_TOLD, faults.size())));
        }
    }

    /** Which room each seat is in, by numbers: none has 0. */
    private static final class Rooms {
        private final int[] of;

        Rooms(Roster roster, int lastSeat) {
            Map<String, Integer> numbers = new TreeMap<>();
            of = new int[lastSeat + 1];
            for (Roster.Seat seat : roster.seats()) {
                String room = roster.room(seat);
                if (!room.isEmpty()) {
                    of[seat.number()] = numbers.computeIfAbsent(room, first -> numbers.size() + 1);
                }
            }
        }

        boolean areOne(int seat, int other) {
            return of[seat] == of[other];
        }
    }

    private Diagnostic inOneRoom(int seat, int problem, int other, String room) {
        return Diagnostic.error(
                Place.inFile(maker.plan().file()),
                say(
                        "plan.room.shared",
                        "seat",
                        Integer.toString(seat),
                        "other",
                        Integer.toString(other),
                        "room",
                        room,
                        "problem",
                        Integer.toString(problem)),
                say("plan.room.shared.expected", "nearest", Long.toString(nearest())),
                say("plan.room.shared.next"));
    }
}
