package ampersheet.diagnostic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import org.junit.jupiter.api.Test;

class PrintableTest {
    @Test
    void whatActsIsSpelledOutAndTheRestStays() {
        assertEquals(
                "a[U+001B][31mb[U+202E]c[U+000A][U+0085][U+D83D]", Printable.line("a\u001B[31mb\u202Ec\n\u0085\uD83D"));
        assertEquals("é 4,7 kΩ\t\uD83D\uDE00 \u200F", Printable.line("é 4,7 kΩ\t\uD83D\uDE00 \u200F"));
        assertEquals("a\nb[U+000D]", Printable.lines("a\nb\r"));
    }

    @Test
    void aQuotedLineKeepsItsColumns() {
        String told = Diagnostic.error(
                        new Place("a\n.csv", 1, 4, "\u001B[2Jx"), "“\u001B” and\na.csv: error: forged", "", "Go on.")
                .print();
        assertEquals(
                "a[U+000A].csv:1:4: error: “[U+001B]” and[U+000A]a.csv: error: forged\n    \uFFFD[2Jx\n       ^\n "
                        + "   next: Go on.\n",
                told);
    }

    @Test
    void aMessageIsBoundedHoweverMuchItQuotes() {
        Diagnostic one = Diagnostic.error(
                new Place("x".repeat(9_000), 1, 0, "y".repeat(1 << 20)), "z".repeat(1 << 20), "", "Go on.");
        assertTrue(one.print().length() < 6_000, "" + one.print().length());
        String all = new DiagnosticException(Collections.nCopies(100_000, one)).getMessage();
        assertTrue(all.length() < 70_000 && all.contains(" more; often they have one cause"), "" + all.length());
    }
}
