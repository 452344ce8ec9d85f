package ampersheet.command;

import ampersheet.diagnostic.Printable;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * Passes text on to a terminal without anything that the terminal would obey: titles, answers and paths are other
 * people's.
 */
final class SafeStream extends PrintStream {
    private int passing;

    SafeStream(PrintStream to) {
        super(to, false, StandardCharsets.UTF_8);
    }

    @Override
    public synchronized void print(String text) {
        pass("");
        super.print(Printable.lines(String.valueOf(text)));
    }

    /**
     * A line that the next one, or whatever is printed next, takes the place of. Only for a terminal.
     *
     * @param line empty to take the last one away
     */
    synchronized void pass(String line) {
        if (passing == 0 && line.isEmpty()) {
            return;
        }
        String shown = Printable.line(line);
        super.print('\r');
        super.print(shown + " ".repeat(Math.max(0, passing - shown.length())));
        if (shown.isEmpty()) {
            super.print('\r');
        }
        passing = shown.length();
        flush();
    }
}
