package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A class that is kept packed. */
class LargeRosterTest {
    private static final int SEATS = 3_000;

    private static String list(List<Integer> seats) {
        StringBuilder list = new StringBuilder("seat,name,room\n");
        seats.forEach(seat -> list.append(seat)
                .append(",\"Ada, ")
                .append(seat)
                .append("\u00e4\u4e00\",hall ")
                .append(seat / 500)
                .append('\n'));
        return list.toString();
    }

    @Test
    void everySeatIsReadAsFromASmallListWhateverTheOrderItIsAskedForIn() {
        Roster roster = RosterReader.read(
                "class.csv", list(IntStream.rangeClosed(1, SEATS).boxed().toList()));
        assertEquals(SEATS, roster.seats().size());
        assertEquals(SEATS, roster.lastSeat());
        Random random = new Random(4);
        for (int i = 0; i < 400; i++) {
            int seat = 1 + random.nextInt(SEATS);
            assertEquals(
                    new Roster.Seat(seat, "Ada, " + seat + "\u00e4\u4e00", List.of("hall " + seat / 500)),
                    roster.seats().get(seat - 1));
            assertEquals("hall " + seat / 500, roster.room(roster.seats().get(seat - 1)));
        }
        assertEquals(new ArrayList<>(roster.seats()), roster.seats());
    }

    @Test
    void seatsThatStandInAnyOrderComeInTheirOrder() {
        List<Integer> seats = new ArrayList<>();
        for (int seat = SEATS; seat >= 1; seat--) {
            seats.add(seat % 2 == 0 ? seat : SEATS - seat);
        }
        List<Integer> mixed = seats.stream().distinct().filter(seat -> seat > 0).toList();
        Roster roster = RosterReader.read("class.csv", list(mixed));
        assertEquals(
                mixed.stream().sorted().toList(),
                roster.seats().stream().map(Roster.Seat::number).toList());
    }

    @Test
    void aListPastedBelowItselfIsToldAtOnce() {
        List<Integer> seats = IntStream.rangeClosed(1, 20_000).boxed().toList();
        List<Integer> twice = new ArrayList<>(seats);
        twice.addAll(seats);
        String list = list(twice);
        String told = assertTimeoutPreemptively(
                        Duration.ofSeconds(20),
                        () -> assertThrows(DiagnosticException.class, () -> RosterReader.read("class.csv", list)))
                .getMessage();
        assertTrue(told.contains("class.csv:20002"), told);
        assertTrue(told.contains("seat 1 is taken twice: line 2 has it too"), told);
        assertTrue(told.contains("seat 2 is taken twice: line 3 has it too"), told);
    }

    @Test
    void aSeatThatIsTakenTwiceIsToldWithBothLines() {
        String list = list(IntStream.rangeClosed(1, SEATS).boxed().toList()) + "1500,Bo,hall\n";
        String told = assertThrows(DiagnosticException.class, () -> RosterReader.read("class.csv", list))
                .getMessage();
        assertTrue(told.contains("seat 1500 is taken twice: line 1501 has it too"), told);
    }
}
