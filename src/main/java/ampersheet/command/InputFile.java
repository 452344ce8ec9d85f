package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.source.Bounds;
import ampersheet.source.ForeignText;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.nio.file.Path;

/** Reads a file named on the command line. */
final class InputFile {
    private InputFile() {}

    /**
     * Text in UTF-8 within the bounds of what people write.
     *
     * @param what it should be, for messages: {@code command.file.plan}
     * @throws WrongUsage if it is no file that can be read
     * @throws DiagnosticException if it is too large or not UTF-8
     */
    static String read(Path file, String what) {
        return read(
                file,
                what,
                Bounds.WRITTEN.told(),
                () -> SourceFile.text(file, Bounds.WRITTEN, SourceFile.Links.FOLLOWED));
    }

    /** A table within the same bounds, in whatever encoding a spreadsheet wrote it. */
    static ForeignText table(Path file, String what) {
        return foreign(file, what, Bounds.WRITTEN);
    }

    /** A table that an earlier run of marking wrote, or that a spreadsheet made of it. */
    static ForeignText marked(Path file, String what) {
        return foreign(file, what, Bounds.MARKED);
    }

    /** A class list, which may be of more seats than anybody types. */
    static ForeignText classList(Path file) {
        return foreign(file, say("command.file.class-list"), Bounds.CLASS_LIST);
    }

    private static ForeignText foreign(Path file, String what, Bounds bounds) {
        return read(file, what, bounds.told(), () -> SourceFile.foreign(file, bounds, SourceFile.Links.FOLLOWED));
    }

    /** The same for what is no text. @param most bytes */
    static byte[] bytes(Path file, String what, int most) {
        return read(
                file, what, most / 1_000_000 + " MB", () -> SourceFile.bytes(file, most, SourceFile.Links.FOLLOWED));
    }

    @FunctionalInterface
    private interface Reading<T> {
        T read() throws Unread;
    }

    private static <T> T read(Path file, String what, String most, Reading<T> reading) {
        try {
            return reading.read();
        } catch (Unread other) {
            throw switch (other.why()) {
                case TOO_LARGE ->
                    new DiagnosticException(
                            other.told(shown(file), say("command.file.at-most", "what", what, "most", most)));
                case UTF_16, NOT_UTF_8 -> new DiagnosticException(other.told(shown(file), say("command.file.utf-8")));
                case MISSING, FOLDER, LINK, NO_ORDINARY_FILE, UNREADABLE ->
                    new WrongUsage(
                            shown(file),
                            other.getMessage(),
                            say("command.file.path", "what", what),
                            other.why().nextAction());
            };
        }
    }

    /** With forward slashes on every system. */
    static String shown(Path file) {
        return Printable.line(file.toString().replace('\\', '/'));
    }
}
