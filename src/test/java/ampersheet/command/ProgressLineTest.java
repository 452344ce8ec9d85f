package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.Progress;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** What somebody at a terminal sees of a command that takes long. */
class ProgressLineTest {
    private final ByteArrayOutputStream seen = new ByteArrayOutputStream();
    private final SafeStream terminal = new SafeStream(new PrintStream(seen, true, StandardCharsets.UTF_8));
    private long milliseconds;

    private ProgressLine line() {
        return new ProgressLine(terminal, () -> TimeUnit.MILLISECONDS.toNanos(milliseconds));
    }

    private String seen() {
        terminal.flush();
        return seen.toString(StandardCharsets.UTF_8);
    }

    private static void make(ProgressLine line, int count, String of, int seats) {
        for (int i = 0; i < count; i++) {
            line.made(of, seats);
        }
    }

    @Test
    void countRateAndTimeLeftStandOnOneLine() {
        ProgressLine line = line();
        make(line, 19, "sheets", 1_000);
        assertEquals("", seen(), "nothing in the first second");
        milliseconds = 2_000;
        line.made("sheets", 1_000);
        assertEquals("\r20 of 1000 sheets, 10.0 a second, 1 min 38 s left", seen());
    }

    @Test
    void aSlowRateIsToldByTheMinuteAndALongTimeInHours() {
        ProgressLine line = line();
        milliseconds = 90_000;
        make(line, 3, "handouts", 10_000);
        assertTrue(seen().startsWith("\r1 of 10000 handouts, 0.7 a minute, 249 h 58 min left"), seen());
    }

    @Test
    void itIsRenewedAFewTimesASecondAndGoneWhenAllAreMade() {
        ProgressLine line = line();
        for (int i = 0; i < 500; i++) {
            milliseconds += 10;
            line.made("sheets", 500);
        }
        List<String> shown = List.of(seen().split("\r"));
        assertTrue(shown.size() > 15 && shown.size() < 30, shown.size() + " lines");
        assertTrue(seen().endsWith(" \r"), "the last is taken away");
        terminal.print("500 sheets\n");
        assertTrue(seen().endsWith("\r500 sheets\n"), seen());
    }

    @Test
    void whatIsSaidMeanwhileStandsOnALineOfItsOwn() {
        ProgressLine line = line();
        milliseconds = 2_000;
        line.made("sheets", 10);
        terminal.print("error: no room\n");
        String told = seen().substring(seen().indexOf("left") + 4);
        assertTrue(told.matches("\r +\rerror: no room\n"), told);
    }

    @Test
    void nothingIsShownWhereNobodyWatches() {
        PrintStream out = new PrintStream(seen, true, StandardCharsets.UTF_8);
        Streams unwatched = new Streams(new BufferedReader(new StringReader("")), out, out);
        assertEquals(Progress.UNWATCHED, unwatched.progress());
        assertFalse(new Streams(unwatched.in(), out, out, true).progress() == Progress.UNWATCHED);
    }
}
