package ampersheet.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.SourceFile.Links;
import ampersheet.source.Unread.Why;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SourceFileTest {
    private static final Bounds SMALL = new Bounds(100, 5, 8);

    @TempDir
    private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("file"), text, StandardCharsets.UTF_8);
    }

    private Why refused(Path file, Links links) {
        return assertThrows(Unread.class, () -> SourceFile.text(file, SMALL, links))
                .why();
    }

    @Test
    void aTextWithinItsBoundsIsReadAsItIs() throws IOException, Unread {
        assertEquals("a,b\r\nü\n", SourceFile.text(file("a,b\r\nü\n"), SMALL, Links.REFUSED));
    }

    @Test
    void bytesLinesAndCellsAreBounded() throws IOException {
        assertEquals(Why.TOO_LARGE, refused(file("x".repeat(101)), Links.FOLLOWED));
        assertEquals(Why.TOO_LARGE, refused(file("\n".repeat(6)), Links.FOLLOWED));
        assertEquals(Why.TOO_LARGE, refused(file("\r".repeat(6)), Links.FOLLOWED));
        assertEquals(Why.TOO_LARGE, refused(file(",;".repeat(5)), Links.FOLLOWED));
    }

    @Test
    void aFileOfGigabytesIsNotRead() throws IOException {
        Path huge = folder.resolve("huge");
        try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
            file.setLength(1L << 40);
        }
        assertEquals(Why.TOO_LARGE, refused(huge, Links.FOLLOWED));
    }

    @Test
    void otherThanTextInUtf8IsRefused() throws IOException {
        Path file = folder.resolve("file");
        Files.write(file, new byte[] {(byte) 0xFF, (byte) 0xFE, 'a', 0});
        assertEquals(Why.UTF_16, refused(file, Links.FOLLOWED));
        Files.write(file, new byte[] {'a', (byte) 0xE9});
        assertEquals(Why.NOT_UTF_8, refused(file, Links.FOLLOWED));
    }

    @Test
    void whatIsNoOrdinaryFileIsNotOpened() {
        assertEquals(Why.FOLDER, refused(folder, Links.FOLLOWED));
        assertEquals(Why.MISSING, refused(folder.resolve("none"), Links.FOLLOWED));
        assumeTrue(Files.exists(Path.of("/dev/zero")), "this system has no such device");
        assertEquals(Why.NO_ORDINARY_FILE, refused(Path.of("/dev/zero"), Links.FOLLOWED));
    }

    @Test
    void aLinkIsFollowedOnlyWhereTheUserNamedIt() throws IOException, Unread {
        Path link = Files.createSymbolicLink(folder.resolve("link"), file("a"));
        assertEquals("a", SourceFile.text(link, SMALL, Links.FOLLOWED));
        assertEquals(Why.LINK, refused(link, Links.REFUSED));
    }

    @Test
    void exhaustedMemoryIsToldWithWhatWasTooLarge() {
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> WithinMemory.of("plan.yaml", () -> {
                            throw new OutOfMemoryError("Java heap space");
                        }))
                .getMessage();
        assertTrue(
                told.startsWith("plan.yaml: error: this is too large for the memory that the program may use"), told);
        told = assertThrows(DiagnosticException.class, () -> WithinMemory.of("plan.yaml", () -> endless(1)))
                .getMessage();
        assertTrue(told.startsWith("plan.yaml: error: this is nested too deeply"), told);
    }

    private static int endless(int depth) {
        return endless(depth + 1) + 1;
    }

    @Test
    void aThousandFaultsAreTheFirstHundredAndANumber() {
        FaultList faults = new FaultList("a.csv");
        for (int i = 1; i <= 1000; i++) {
            faults.add(Diagnostic.error(new Place("a.csv", i, 0, ""), "this is wrong", "", "Mend it."));
        }
        FaultList all = new FaultList("a.csv");
        all.add(faults);
        assertEquals(101, all.list().size());
        assertEquals(
                "there are 900 more faults in this file", all.list().get(100).problem());
    }
}
