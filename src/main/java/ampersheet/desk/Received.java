package ampersheet.desk;

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
                    told.add("“" + Printable.line(name)
                            + "” is not taken in: answers come as tables (.csv, .xlsx, .ods) "
                            + "or filled-in sheets (.md)."
                            + (ending(name).startsWith("htm")
                                    ? " This is the page itself; the learner saves the answers from it."
                                    : ""));
                } else if (put(folder, name, upload.bytes())) {
                    kept++;
                } else {
                    same++;
                }
            }
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile("answers"),
                    "the files cannot be kept: " + failure.getMessage(),
                    "a folder that may be written to, and room on the disk",
                    "Mend that and send them again; what was kept is whole."));
        }
        if (kept > 0) {
            told.add(0, kept + (kept == 1 ? " file is" : " files are") + " among the answers now.");
        }
        if (same > 0) {
            told.add(same + (same == 1 ? " file was" : " files were") + " there already.");
        }
        return uploads.isEmpty() ? List.of("No file was chosen.") : told;
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
        throw new IOException("there are " + MOST_SAME + " files called " + name);
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
            throw new DiagnosticException(unread.told("the file you sent", "a table: CSV, .xlsx or .ods"));
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile("the file you sent"),
                    "it cannot be kept for reading: " + failure.getMessage(),
                    "room on the disk",
                    "Make room, and send it again."));
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
