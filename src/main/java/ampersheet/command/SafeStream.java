package ampersheet.command;

import ampersheet.diagnostic.Printable;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * Passes text on to a terminal without anything that the terminal would obey: titles, answers and paths are other
 * people's.
 */
final class SafeStream extends PrintStream {
    SafeStream(PrintStream to) {
        super(to, false, StandardCharsets.UTF_8);
    }

    @Override
    public void print(String text) {
        super.print(Printable.lines(String.valueOf(text)));
    }
}
