package ampersheet.command;

import java.io.PrintStream;
import java.io.Writer;

/** Passes text on to a stream, with a line feed for every line end whatever the system's own is. */
final class WithLineFeeds extends Writer {
    private final PrintStream to;

    WithLineFeeds(PrintStream to) {
        this.to = to;
    }

    @Override
    public void write(char[] characters, int offset, int length) {
        to.print(new String(characters, offset, length).replace("\r", ""));
    }

    @Override
    public void flush() {
        to.flush();
    }

    @Override
    public void close() {
        to.flush();
    }
}
