package ampersheet.desk;

import static ampersheet.source.Told.say;

import java.io.ByteArrayOutputStream;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;

/**
 * Collects what is sent, without a thread that waits for it: no more than its limits, and no longer. However slowly it
 * comes, it costs nobody else anything.
 */
final class Body implements Runnable {
    private final Request request;
    private final Limits limits;
    private final AtomicInteger held;
    private final LongSupplier nanos;
    private final Consumer<byte[]> whole;
    private final Consumer<Reply> refused;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final long begun;
    private int counted;

    /**
     * @param held bytes of all bodies that are being collected
     * @param nanos a clock
     * @param whole takes the body; what it holds is given free when {@link #free} is called
     */
    Body(
            Request request,
            Limits limits,
            AtomicInteger held,
            LongSupplier nanos,
            Consumer<byte[]> whole,
            Consumer<Reply> refused) {
        this.request = request;
        this.limits = limits;
        this.held = held;
        this.nanos = nanos;
        this.whole = whole;
        this.refused = refused;
        this.begun = nanos.getAsLong();
    }

    /** Takes what has come, and asks to be called again when more has. */
    @Override
    public void run() {
        while (true) {
            Content.Chunk chunk = request.read();
            if (chunk == null) {
                request.demand(this);
                return;
            }
            if (Content.Chunk.isFailure(chunk)) {
                stop(Reply.plain(Reply.TOO_SLOW, say("desk.request.unended")));
                return;
            }
            boolean fits = take(chunk);
            boolean last = chunk.isLast();
            chunk.release();
            if (!fits) {
                stop(Reply.plain(
                        Reply.TOO_LARGE,
                        say("desk.request.large", "megabytes", Integer.toString(limits.bodyBytes() >> 20))));
                return;
            }
            if (nanos.getAsLong() - begun > limits.bodyTime().toNanos()) {
                stop(Reply.plain(Reply.TOO_SLOW, say("desk.request.slow")));
                return;
            }
            if (last) {
                whole.accept(bytes.toByteArray());
                return;
            }
        }
    }

    private boolean take(Content.Chunk chunk) {
        int length = chunk.remaining();
        counted += length;
        if (held.addAndGet(length) > limits.allBodyBytes() || counted > limits.bodyBytes()) {
            return false;
        }
        byte[] part = new byte[length];
        chunk.get(part, 0, length);
        bytes.write(part, 0, length);
        return true;
    }

    private void stop(Reply reply) {
        free();
        refused.accept(reply);
    }

    /** Called once when nothing of the body is needed any more. */
    void free() {
        held.addAndGet(-counted);
        counted = 0;
        bytes.reset();
    }
}
