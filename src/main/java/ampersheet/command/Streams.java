package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.Progress;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * Where a command reads and writes; UTF-8, whatever the machine's own encoding. Nothing that is written acts on a
 * terminal, and no line that is read is longer than anybody types.
 */
record Streams(BufferedReader in, SafeStream out, SafeStream err, boolean watched) {
    private static final int LONGEST_LINE = 10_000;

    /** @param watched whether somebody sits at a terminal and sees what is said */
    Streams(BufferedReader in, PrintStream out, PrintStream err, boolean watched) {
        this(in, new SafeStream(out), new SafeStream(err), watched);
    }

    /** Nobody watches. */
    Streams(BufferedReader in, PrintStream out, PrintStream err) {
        this(in, out, err, false);
    }

    /** How far a long command is, while it is at work; silent if nobody watches. */
    Progress progress() {
        return watched ? new ProgressLine(err, System::nanoTime) : Progress.UNWATCHED;
    }

    /** Always a line feed, on every system. */
    void line(String text) {
        out.print(text);
        out.print('\n');
    }

    /** Lines that end in line feeds. */
    void text(String lines) {
        out.print(lines);
    }

    /**
     * Empty at the end of what was typed.
     *
     * @throws DiagnosticException if the line does not end
     */
    Optional<String> readLine() {
        out.flush();
        try {
            StringBuilder line = new StringBuilder();
            int c = in.read();
            if (c < 0) {
                return Optional.empty();
            }
            for (; c >= 0 && c != '\n'; c = in.read()) {
                if (line.length() == LONGEST_LINE) {
                    throw new DiagnosticException(Diagnostic.error(
                            Place.inFile(say("command.typed")),
                            say("command.typed.too-long", "most", Integer.toString(LONGEST_LINE)),
                            say("command.typed.too-long.expected"),
                            say("command.typed.too-long.next")));
                }
                line.append((char) c);
            }
            int end = line.length();
            return Optional.of(end > 0 && line.charAt(end - 1) == '\r' ? line.substring(0, end - 1) : line.toString());
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}
