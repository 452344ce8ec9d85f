package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import ampersheet.diagnostic.DiagnosticException;
import java.util.List;
import org.junit.jupiter.api.Test;

class PastedClassTest {
    private static List<String> read(String pasted) {
        Roster roster = PastedClass.read(pasted);
        assertEquals(
                roster.seats(),
                RosterReader.read("class.csv", PastedClass.written(roster)).seats(),
                "what is written is read as the same");
        return roster.seats().stream()
                .map(seat -> seat.number() + " " + seat.name() + (seat.further().isEmpty() ? "" : " " + seat.further()))
                .toList();
    }

    @Test
    void namesAloneGetSeatsInTheirOrderCommasAndAll() {
        assertEquals(List.of("1 Ayo", "2 Lena, who sings", "3 O\"Neil"), read("Ayo\nLena, who sings\n\nO\"Neil\n"));
    }

    @Test
    void columnsOfASpreadsheetAreReadWithAndWithoutHeadings() {
        assertEquals(List.of("3 Ayo", "7 Bo"), read("3\tAyo\n7\tBo\n"));
        assertEquals(List.of("3 Ayo [blue]", "7 Bo [red]"), read("seat\tname\tgroup\n3\tAyo\tblue\n7\tBo\tred\n"));
        assertEquals(List.of("1 Ayo [blue]", "2 Bo [red]"), read("Group,Name\nblue,Ayo\nred,Bo\n"));
        assertEquals(List.of("1 Ayo [blue]", "2 Bo [red]"), read("Ayo\tblue\nBo\tred\n"));
        assertEquals(List.of("3 Ayo", "7 Bo"), read("3;Ayo\n7;Bo\n"));
    }

    @Test
    void theListThatTheCommandsReadIsReadHereToo() {
        assertEquals(List.of("1 Ayo", "2 Liv, the captain"), read("seat,name\n1,Ayo\n2,\"Liv, the captain\"\n"));
    }

    @Test
    void namesThatAreFormulasStayNames() {
        assertEquals(List.of("1 =1+1", "2 @home"), read("=1+1\n@home\n"));
    }

    @Test
    void nobodyIsNoClassAndASeatTakenTwiceIsTold() {
        assertThrows(DiagnosticException.class, () -> PastedClass.read(" \n\n"));
        assertThrows(DiagnosticException.class, () -> PastedClass.read("1\tAyo\n1\tBo\n"));
    }
}
