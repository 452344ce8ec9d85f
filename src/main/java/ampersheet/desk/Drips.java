package ampersheet.desk;

import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * Ends connections on which something keeps coming and no request ever becomes whole. Each byte is a sign of life to
 * the server's own limit, which so sees only those that have gone quiet.
 */
final class Drips implements Connection.Listener, Runnable {
    private static final int LOOKS = 4;

    private final Scheduler scheduler;
    private final LongSupplier nanos;
    private final long most;
    private final AtomicLong numbers = new AtomicLong();
    private final Map<Long, Watched> watched = new ConcurrentSkipListMap<>();

    private static final class Watched {
        private final Connection connection;
        private long bytes;
        private long messages;
        private long since;

        Watched(Connection connection, long now) {
            this.connection = connection;
            this.since = now;
        }
    }

    /** @param most nanoseconds in which a request must be whole */
    Drips(Scheduler scheduler, LongSupplier nanos, long most) {
        this.scheduler = scheduler;
        this.nanos = nanos;
        this.most = most;
    }

    @Override
    public void onOpened(Connection connection) {
        watched.put(numbers.incrementAndGet(), new Watched(connection, nanos.getAsLong()));
    }

    @Override
    public void onClosed(Connection connection) {
        watched.values().removeIf(one -> one.connection == connection);
    }

    void begin() {
        scheduler.schedule(this, Math.max(1, most / LOOKS / 1_000_000), TimeUnit.MILLISECONDS);
    }

    @Override
    public void run() {
        long now = nanos.getAsLong();
        for (Watched one : watched.values()) {
            long bytes = one.connection.getBytesIn();
            long messages = one.connection.getMessagesIn();
            if (bytes == one.bytes || messages != one.messages) {
                one.since = now;
            } else if (now - one.since > most) {
                one.connection.close();
            }
            one.bytes = bytes;
            one.messages = messages;
        }
        begin();
    }
}
