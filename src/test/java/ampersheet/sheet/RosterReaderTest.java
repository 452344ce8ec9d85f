package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.Roster.Seat;
import java.util.List;
import org.junit.jupiter.api.Test;

class RosterReaderTest {
    private static List<Seat> seats(String text) {
        return RosterReader.read("class.csv", text).seats();
    }

    private static DiagnosticException refusal(String text) {
        return assertThrows(DiagnosticException.class, () -> seats(text));
    }

    @Test
    void seatsAreReadInOrderOfTheirNumbers() {
        assertEquals(List.of(new Seat(1, "Ada"), new Seat(3, "Ben")), seats("seat,name\n3,Ben\n1,Ada\n"));
    }

    @Test
    void byteOrderMarkQuotesBlankLinesAndForeignLineEndsAreAccepted() {
        assertEquals(
                List.of(new Seat(1, "Lovelace, Ada"), new Seat(2, "the \"fox\"")),
                seats("\uFEFFseat,name\r\n\r\n1,\"Lovelace, Ada\"\r\n , \r\n2,\"the \"\"fox\"\"\"\r\n"));
    }

    @Test
    void semicolonsAreAcceptedAsSpreadsheetsOfSomeCountriesWriteThem() {
        assertEquals(List.of(new Seat(4, "Eda, Can")), seats("seat;name\n4;Eda, Can\n"));
    }

    @Test
    void tabsAreAcceptedAsInAnswerFiles() {
        assertEquals(List.of(new Seat(4, "Eda \"the\" Can")), seats("Seat\tName\n4\t\"Eda \"\"the\"\" Can\"\n"));
        assertEquals(
                List.of(new Seat(4, "Eda Can")),
                seats("seat,name\n4,Eda\tCan\n"),
                "where commas separate, a tab does not");
    }

    @Test
    void otherColumnsMayStandBetween() {
        Roster roster = RosterReader.read("class.csv", "Name,group,Seat\nEda,b,4\n");
        assertEquals(List.of(new Seat(4, "Eda", List.of("b"))), roster.seats());
        assertEquals(List.of("group"), roster.columns());
    }

    @Test
    void aNameMayBeEmpty() {
        assertEquals(List.of(new Seat(4, "")), seats("seat,name\n4,\n"));
    }

    @Test
    void aHostileNameIsText() {
        assertEquals(
                List.of(new Seat(1, "<script>alert(1)</script>"), new Seat(2, "=1+1"), new Seat(3, "../../x")),
                seats("seat,name\n1,<script>alert(1)</script>\n2,=1+1\n3,../../x\n"));
    }

    @Test
    void controlCharactersAndTurnedTextDoNotReachThePage() {
        assertEquals(List.of(new Seat(1, "Ada Bea")), seats("seat,name\n1,\"\u202EAda\nBea\u0007\"\n"));
    }

    @Test
    void allFaultsAreToldAtOnceWithTheirLines() {
        String told = refusal("seat,name\n1,Ada\n\n1,Ben\nzero,Cem\n0,Dee\n7\n").getMessage();
        assertTrue(told.contains("class.csv:4: error: seat 1 is taken twice: line 2 has it too"), told);
        assertTrue(told.contains("class.csv:5: error: “zero” is not a seat number"), told);
        assertTrue(told.contains("class.csv:6: error: “0” is not a seat number"), told);
        assertTrue(told.contains("class.csv:7: error: this line has one column"), told);
        assertEquals(
                4,
                refusal("seat,name\n1,Ada\n\n1,Ben\nzero,Cem\n0,Dee\n7\n")
                        .diagnostics()
                        .size());
    }

    @Test
    void theLineOfARecordIsWhereItBegins() {
        String told = refusal("seat,name\n1,\"Ada\nBea\"\nx,Cem\n").getMessage();
        assertTrue(told.contains("class.csv:4: error: “x” is not"), told);
    }

    @Test
    void tenThousandSeatsAreReadWithinASecond() {
        StringBuilder text = new StringBuilder("seat,name\n");
        for (int seat = 1; seat <= 10_000; seat++) {
            text.append(seat).append(",Learner ").append(seat).append('\n');
        }
        long before = System.nanoTime();
        assertEquals(10_000, seats(text.toString()).size());
        assertTrue(System.nanoTime() - before < 5_000_000_000L, "reading grows faster than the list");
    }
}
