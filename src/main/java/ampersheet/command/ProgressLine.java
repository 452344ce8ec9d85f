package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.issue.Progress;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * One line on a terminal that tells how many are made, how fast and how long the rest takes. Runs that are done at once
 * show none. May be told by several threads.
 */
final class ProgressLine implements Progress {
    private static final long FIRST = TimeUnit.SECONDS.toNanos(1);
    private static final long EACH = TimeUnit.MILLISECONDS.toNanos(200);
    private static final double SECOND = TimeUnit.SECONDS.toNanos(1);
    private static final int SECONDS_A_MINUTE = 60;

    private final SafeStream terminal;
    private final LongSupplier clock;
    private String making = "";
    private long begun;
    private long shown;
    private int made;

    /** @param clock in nanoseconds, from any moment */
    ProgressLine(SafeStream terminal, LongSupplier clock) {
        this.terminal = terminal;
        this.clock = clock;
        this.begun = clock.getAsLong();
    }

    @Override
    public synchronized void made(String of, int seats) {
        long now = clock.getAsLong();
        if (!of.equals(making)) {
            begun = making.isEmpty() ? begun : now; // the first of all took its time from the beginning
            making = of;
            made = 0;
            shown = begun + FIRST - EACH;
        }
        made++;
        if (made >= seats) {
            terminal.pass("");
        } else if (now - shown >= EACH) {
            terminal.pass(line(seats, Math.max(1, now - begun) / SECOND));
            shown = now;
        }
    }

    private String line(int seats, double seconds) {
        double rate = made / seconds;
        return say(
                "command.progress",
                "made",
                Integer.toString(made),
                "all",
                Integer.toString(seats),
                "what",
                making,
                "rate",
                rate >= 1
                        ? say("command.progress.a-second", "rate", decimal(rate))
                        : say("command.progress.a-minute", "rate", decimal(rate * SECONDS_A_MINUTE)),
                "left",
                left(Math.round((seats - made) / rate)));
    }

    private static String left(long seconds) {
        long minutes = seconds / SECONDS_A_MINUTE;
        if (minutes == 0) {
            return say("command.progress.seconds", "seconds", Long.toString(seconds));
        }
        return minutes < SECONDS_A_MINUTE
                ? say(
                        "command.progress.minutes",
                        "minutes",
                        Long.toString(minutes),
                        "seconds",
                        Long.toString(seconds % SECONDS_A_MINUTE))
                : say(
                        "command.progress.hours",
                        "hours",
                        Long.toString(minutes / SECONDS_A_MINUTE),
                        "minutes",
                        Long.toString(minutes % SECONDS_A_MINUTE));
    }

    private static String decimal(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
