package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SurroundingsTest {
    private static final Surroundings PLAIN = new Surroundings("ANSI_X3.4-1968", "US-ASCII", "/home/ada", false);
    private static final Surroundings LATIN = new Surroundings("ISO-8859-1", "ISO-8859-1", "/home/ada", false);
    private static final Surroundings WIDE = new Surroundings("UTF-8", "UTF-8", "/home/zo\u00eb", false);

    @TempDir
    private Path folder;

    private static byte[] line(String... words) {
        return (String.join("\0", words) + "\0").getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void argumentsAreReadAsTheyWereTyped() {
        String[] given = {"check", "q2a=1.714 k\ufffd\ufffd"};
        Optional<String[]> typed =
                PLAIN.typed(given, line("java", "-jar", "ampersheet.jar", "check", "q2a=1.714 k\u03a9"));
        assertArrayEquals(new String[] {"check", "q2a=1.714 k\u03a9"}, typed.orElseThrow());
        assertArrayEquals(
                new String[] {"1 k\u03a9"},
                LATIN.typed(new String[] {"1 k\u00ce\u00a9"}, line("java", "1 k\u03a9"))
                        .orElseThrow());
    }

    @Test
    void wordsThatCameFromElsewhereAreNotMistakenForThem() {
        assertTrue(PLAIN.typed(new String[] {"1 k\ufffd\ufffd"}, line("java", "@arguments"))
                .isEmpty());
        assertTrue(PLAIN.typed(new String[] {"check", "1 k\ufffd\ufffd"}, line("x"))
                .isEmpty());
        assertTrue(
                LATIN.typed(new String[] {"Zo\u00eb"}, new byte[] {'Z', 'o', (byte) 0xeb, 0})
                        .isEmpty(),
                "not UTF-8");
    }

    @Test
    void whereEveryLetterIsLetThroughNothingIsChanged() {
        String[] given = {"q2a=1.714 k\u03a9"};
        assertSame(given, WIDE.arguments(given));
        WIDE.require();
        assertTrue(WIDE.unopenable("zo\u00eb.csv").isEmpty());
        String[] english = {"q2a=1.714k"};
        assertSame(english, PLAIN.arguments(english));
    }

    @Test
    void lostLettersAreNeverJudged() {
        WrongUsage refused =
                assertThrows(WrongUsage.class, () -> PLAIN.arguments(new String[] {"q2a=1.714 k\ufffd\ufffd"}));
        assertTrue(
                refused.getMessage().contains("Set LC_ALL=C.UTF-8 and run the same command again"),
                refused.getMessage());
    }

    @Test
    void namesThatCannotBeOpenedAreToldWithWhatToSet() throws IOException {
        assertTrue(PLAIN.unopenable("zo\u00eb/plan.yaml").orElseThrow().print().contains("LC_ALL=C.UTF-8"));
        assertTrue(PLAIN.unopenable("plan.yaml").isEmpty());
        Surroundings lost = new Surroundings("ANSI_X3.4-1968", "US-ASCII", "/home/zo\ufffd\ufffd", false);
        assertTrue(assertThrows(WrongUsage.class, lost::require).getMessage().contains("no file in it can be opened"));
        Files.writeString(folder.resolve("ada.csv"), "");
        PLAIN.requireReadableNames(folder);
        Files.writeString(folder.resolve("zo\u00eb.csv"), "");
        assertTrue(assertThrows(WrongUsage.class, () -> PLAIN.requireReadableNames(folder))
                .getMessage()
                .contains("files in this folder"));
        WIDE.requireReadableNames(folder);
    }

    @Test
    void anEncodingThatBreaksPdfIsRefused() {
        Surroundings utf16 = new Surroundings("UTF-8", "UTF-16", "/", false);
        assertTrue(assertThrows(WrongUsage.class, utf16::require)
                .getMessage()
                .startsWith("-Dfile.encoding=UTF-16: error: "));
        assertEquals(
                1, java.util.stream.Stream.of(PLAIN).peek(Surroundings::require).count());
    }
}
