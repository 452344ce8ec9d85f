package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Printable;
import ampersheet.source.AsciiCase;
import ampersheet.source.Bounds;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * Puts files that were sent among the answers, each under a name made of what its sender calls it: letters, digits and
 * a few signs, so that no name leads anywhere. Nothing that lies there is written over.
 */
final class Received {
    private static final int LONGEST_NAME = 80;
    private static final int MOST_SAME = 1_000;
    private static final Set<String> KINDS = Set.of("csv", "tsv", "txt", "md", "xlsx", "ods");
    private static final Set<String> DEVICES = Set.of("con", "prn", "aux", "nul");

    private final Course course;

    Received(Course course) {
        this.course = course;
    }

    /**
     * What became of them, in sentences.
     *
     * @throws DiagnosticException if the folder cannot be written to; then those before are kept
     */
    synchronized List<String> keep(List<Call.Upload> uploads) {
        Path folder = course.files().answers();
        course.requireFolder(folder);
        List<String> told = new ArrayList<>();
        int kept = 0;
        int same = 0;
        try {
            Files.createDirectories(folder);
            for (Call.Upload upload : uploads) {
                String name = name(upload.name());
                if (!KINDS.contains(ending(name))) {
                    told.add(
                            ending(name).startsWith("htm")
                                    ? say("desk.received.page", "name", Printable.line(name))
                                    : say("desk.received.other", "name", Printable.line(name)));
                } else if (put(folder, name, upload.bytes())) {
                    kept++;
                } else {
                    same++;
                }
            }
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile("answers"),
                    say("desk.received.refused", "failure", String.valueOf(failure.getMessage())),
                    say("desk.received.refused.expected"),
                    say("desk.received.refused.next")));
        }
        if (kept > 0) {
            told.add(0, count("desk.received.kept", kept));
        }
        if (same > 0) {
            told.add(count("desk.received.same", same));
        }
        return uploads.isEmpty() ? List.of(say("desk.file.unchosen")) : told;
    }

    /** False if the very same file is there. */
    private static boolean put(Path folder, String name, byte[] bytes) throws IOException {
        int dot = name.lastIndexOf('.');
        for (int i = 1; i <= MOST_SAME; i++) {
            Path file = folder.resolve(i == 1 ? name : name.substring(0, dot) + "-" + i + name.substring(dot));
            if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    && Files.size(file) == bytes.length
                    && Arrays.equals(Files.readAllBytes(file), bytes)) {
                return false;
            }
            Path part = Files.createTempFile(folder, ".ampersheet-received-", ".part");
            try {
                Files.write(part, bytes, StandardOpenOption.SYNC);
                claim(part, file);
                return true;
            } catch (FileAlreadyExistsException taken) {
                continue; // by another hand-in of the same name
            } finally {
                Files.deleteIfExists(part);
            }
        }
        throw new IOException(say("desk.received.many", "most", Integer.toString(MOST_SAME), "name", name));
    }

    /** Takes a name only if nobody has it. */
    private static void claim(Path part, Path file) throws IOException {
        try {
            Files.createLink(file, part);
        } catch (UnsupportedOperationException noLinks) {
            Files.move(part, file);
        }
    }

    /** Of what a sender calls it, what may be a name here. */
    static String name(String sent) {
        String last = sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
        StringBuilder name = new StringBuilder();
        last.codePoints().forEach(c -> {
            boolean plain = Character.isLetterOrDigit(c) || " ._-()".indexOf(c) >= 0;
            name.appendCodePoint(plain ? c : '-');
        });
        String clean = name.toString().strip().replaceAll("^[.]+", "").replaceAll("[. ]+$", "");
        int dot = clean.lastIndexOf('.');
        String stem = dot < 0 ? clean : clean.substring(0, dot);
        String ending = dot < 0 ? "" : clean.substring(dot);
        if (stem.length() > LONGEST_NAME) {
            stem = stem.substring(0, stem.offsetByCodePoints(0, LONGEST_NAME / 2));
        }
        boolean device =
                DEVICES.contains(AsciiCase.small(stem)) || AsciiCase.small(stem).matches("(com|lpt)[0-9].*");
        return (stem.isEmpty() || device ? "answers-" + stem : stem) + (ending.length() > LONGEST_NAME ? "" : ending);
    }

    /** Of a table as a spreadsheet wrote it; read as a file is, from a copy that nobody else can read. */
    static String table(byte[] bytes) {
        Path copy = null;
        try {
            copy = Files.createTempFile("ampersheet-table-", ".part");
            Files.write(copy, bytes);
            return SourceFile.foreign(copy, Bounds.WRITTEN, SourceFile.Links.REFUSED)
                    .text();
        } catch (Unread unread) {
            throw new DiagnosticException(unread.told(say("desk.file.sent"), say("desk.file.table")));
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(say("desk.file.sent")),
                    say("desk.received.unread", "failure", String.valueOf(failure.getMessage())),
                    say("desk.received.unread.expected"),
                    say("desk.received.unread.next")));
        } finally {
            if (copy != null) {
                copy.toFile().delete();
            }
        }
    }

    private static String ending(String name) {
        int dot = name.lastIndexOf('.');
        return dot < 0 ? "" : AsciiCase.small(name.substring(dot + 1));
    }
}
