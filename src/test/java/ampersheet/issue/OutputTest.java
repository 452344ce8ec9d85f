package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.render.pdf.PdfBook;
import ampersheet.render.pdf.Profile;
import ampersheet.source.Languages;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputTest {
    private static final Output.Terms NONE = Output.Terms.NONE;

    @TempDir
    private Path folder;

    private static List<String> names(Path in) throws IOException {
        try (Stream<Path> entries = Files.list(in)) {
            return entries.map(entry -> entry.getFileName().toString()).sorted().toList();
        }
    }

    private static String told(org.junit.jupiter.api.function.Executable run) {
        return assertThrows(DiagnosticException.class, run).getMessage();
    }

    @Test
    void aSecondRunIntoOneFolderIsToldAndTheFirstGoesOn() throws IOException {
        try (Output first = Output.folder(folder, NONE)) {
            assertTrue(told(() -> Output.folder(folder, NONE)).contains("another run is writing here now"));
            first.write(folder.resolve("index.html"), "<!DOCTYPE html>");
            first.finish();
        }
        assertEquals(List.of("index.html"), names(folder), "the lock is gone");
        Output.folder(folder, NONE).close();
        try (Output one = Output.file(folder.resolve("one.pdf"), ".pdf", NONE);
                Output two = Output.file(folder.resolve("two.pdf"), ".pdf", NONE)) {
            assertEquals(folder, one.folder(), "two files of one folder may be written at a time");
            assertTrue(told(() -> Output.file(folder.resolve("two.pdf"), ".pdf", NONE))
                    .contains("two.pdf"));
            two.finish();
        }
    }

    @Test
    void aNameMayHoldABackslashWhereTheSystemLetsItBeALetter() {
        assumeTrue(java.io.File.separatorChar == '/', "here it divides folders");
        Path file = folder.resolve("in\\out.pdf");
        try (Output output = Output.file(file, ".pdf", NONE)) {
            output.write(file, "%PDF-");
            output.finish();
        }
        assertTrue(Files.exists(file));
    }

    @Test
    void aLockThatARunLeftBehindHoldsNobodyUp() throws IOException {
        Files.write(folder.resolve(".ampersheet.lock"), new byte[77]);
        try (Output output = Output.folder(folder, NONE)) {
            output.write(folder.resolve("index.html"), "<!DOCTYPE html>");
        }
        assertEquals(List.of("index.html"), names(folder));
    }

    @Test
    void partsHaveNamesOfTheirOwnAndArePrivateAndFilesAreAsAnyOther() throws IOException {
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView("posix"), "this system has no such permissions");
        Set<String> parts = new TreeSet<>();
        Set<String> permissions = new TreeSet<>();
        for (int run = 0; run < 2; run++) {
            try (Output output = Output.folder(folder, NONE)) {
                int now = run;
                output.write(folder.resolve("index.html"), to -> {
                    to.write(("<!DOCTYPE html>" + now).getBytes(StandardCharsets.UTF_8));
                    for (String name : names(folder)) {
                        if (name.endsWith(".part")) {
                            parts.add(name);
                            permissions.add(
                                    PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(name))));
                        }
                    }
                });
            }
        }
        assertEquals(2, parts.size(), "not the process number, which two containers have in common: " + parts);
        assertEquals(Set.of("rw-------"), permissions);
        Path any = Files.writeString(folder.resolve("any"), "");
        assertEquals(Files.getPosixFilePermissions(any), Files.getPosixFilePermissions(folder.resolve("index.html")));
        Files.setPosixFilePermissions(folder.resolve("index.html"), PosixFilePermissions.fromString("rw-rw----"));
        try (Output output = Output.folder(folder, NONE)) {
            assertTrue(output.write(folder.resolve("index.html"), "<!DOCTYPE html>3"));
        }
        assertEquals(
                "rw-rw----",
                PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("index.html"))));
    }

    @Test
    void whatAKilledRunWasWritingIsRemovedByTheNextAndNothingElse() throws IOException {
        List<String> left = new ArrayList<>();
        try (Output output = Output.folder(folder, NONE)) {
            output.write(folder.resolve("keys/seat-001.md"), to -> {
                to.write('#');
                left.addAll(names(folder.resolve("keys")));
            });
        }
        assertEquals(1, left.size());
        Files.createDirectories(folder.resolve("sheets"));
        Files.writeString(folder.resolve("keys").resolve(left.get(0)), "# Key");
        Files.writeString(folder.resolve("sheets/.seat-001.html.4711.part"), "of a version before");
        Files.writeString(folder.resolve("sheets/.notes.4711.part"), "of somebody else");
        Files.writeString(folder.resolve(".ampersheet-ffffffff-4711.part"), "of a run that writes another file");
        Output.folder(folder, NONE).close();
        assertEquals(List.of("seat-001.md"), names(folder.resolve("keys")));
        assertEquals(List.of(".notes.4711.part"), names(folder.resolve("sheets")));
        assertEquals(List.of(".ampersheet-ffffffff-4711.part", "keys", "sheets"), names(folder));
    }

    @Test
    void aFolderThatIsClearedUnderWayIsNoSuccess() throws IOException {
        try (Output output = Output.folder(folder, NONE)) {
            output.write(folder.resolve("sheets/seat-001.md"), "# Sheet");
            Files.delete(folder.resolve("sheets/seat-001.md"));
            String told = told(output::finish);
            assertTrue(
                    told.contains("somebody removed what this run had written") && told.contains("sheets/seat-001.md"),
                    told);
        }
    }

    @Test
    void aRunThatWritesNothingLeavesNoFolder() throws IOException {
        Path made = folder.resolve("out");
        Output.folder(made, NONE).close();
        assertFalse(Files.exists(made));
        Files.createDirectories(made);
        Output.folder(made, NONE).close();
        assertTrue(Files.exists(made), "that was there");
    }

    @Test
    void aDeviceIsNeverWrittenOver() throws IOException {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device), "this system has no such file");
        for (boolean replace : List.of(false, true)) {
            String told = InTheWay.of(device, ".pdf", new Output.Terms(List.of(), replace, false, place -> {}), true)
                    .orElseThrow()
                    .print();
            assertTrue(told.contains("this is a device or a pipe"), told);
        }
    }

    @Test
    void anEmptyFileMayBeTaken() throws IOException {
        Path empty = Files.createFile(folder.resolve("made-before"));
        assertTrue(InTheWay.of(empty, ".pdf", NONE, false).isEmpty());
        Path table = Files.writeString(folder.resolve("marks.csv"), "\ufeffseat,name,sheet,marks\n");
        assertTrue(InTheWay.of(table, ".csv", NONE, false).isEmpty());
        assertTrue(InTheWay.of(table, ".pdf", NONE, false).isPresent(), "a table is no place for a PDF");
        Path list = Files.writeString(folder.resolve("names.csv"), "seat,name\n1,Ada\n");
        assertTrue(InTheWay.of(list, ".csv", NONE, false).isPresent(), "a class list is none of our tables");
    }

    @Test
    void noRoomForAWorkingFileIsToldAsSuch() {
        String told = told(() ->
                new PdfBook("T", Languages.ENGLISH, Profile.REGULAR, Optional.empty(), folder.resolve("nowhere")));
        assertTrue(told.contains("the working file for the PDF could not be written here"), told);
    }

    @Test
    void theWorkingFileOfAPdfHasNoNameThatCouldStay() throws IOException {
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView("posix"),
                "elsewhere the name goes with the program");
        try (PdfBook book = new PdfBook("T", Languages.ENGLISH, Profile.REGULAR, Optional.empty(), folder)) {
            assertEquals(0, book.sides());
            assertEquals(List.of(), names(folder));
        }
    }

    @Test
    void whileAnIssueIsWrittenItsManifestSaysSo() throws IOException {
        Set<String> files = Set.of("index.html", "sheets/seat-001.html");
        try (Output output = Output.folder(folder, NONE)) {
            IssuedFolder issue = IssuedFolder.open(output, folder, "A7K3M", files);
            issue.begin();
        }
        assertEquals(
                "file,issue\nindex.html,A7K3M unfinished\nsheets/seat-001.html,A7K3M unfinished\n",
                Files.readString(folder.resolve("manifest.csv")));
        try (Output output = Output.folder(folder, NONE)) {
            IssuedFolder issue = IssuedFolder.open(output, folder, "A7K3M", files);
            issue.begin();
            issue.end(List.of());
        }
        assertEquals(
                "file,issue\nindex.html,A7K3M\nsheets/seat-001.html,A7K3M\n",
                Files.readString(folder.resolve("manifest.csv")));
    }
}
