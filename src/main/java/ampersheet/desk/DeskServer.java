package ampersheet.desk;

import static ampersheet.source.Told.say;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/**
 * Takes requests from this machine and answers each by itself: what is quick at once, what computes in a short queue. A
 * request that fails harms no other.
 */
final class DeskServer implements AutoCloseable {
    private static final int THREADS = 12;
    private static final int ACCEPTED = 256;
    private static final int STOPPING = 2_000;

    private final Server server;
    private final ServerConnector connector;
    private final ThreadPoolExecutor computing;

    /** What the desk is to its server. */
    interface Desk {
        /** Whether the answer takes more than some milliseconds. */
        boolean computes(Call call);

        Reply answer(Call call);

        /** For a request that failed where it should not. */
        Reply failed(Throwable failure);

        /** When an answer has been sent. */
        void sent();
    }

    private DeskServer(Server server, ServerConnector connector, ThreadPoolExecutor computing) {
        this.server = server;
        this.connector = connector;
        this.computing = computing;
    }

    /** @throws IOException if the port is taken */
    static DeskServer open(int port) throws IOException {
        QueuedThreadPool threads = new QueuedThreadPool(THREADS, 4);
        threads.setName("desk");
        threads.setDaemon(true);
        Server server = new Server(threads);
        HttpConfiguration http = new HttpConfiguration();
        http.setSendServerVersion(false);
        http.setSendDateHeader(false);
        http.setRequestHeaderSize(Limits.HEADER_BYTES);
        ServerConnector connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
        connector.setHost("127.0.0.1");
        connector.setPort(port);
        connector.setAcceptQueueSize(ACCEPTED);
        connector.open();
        server.addConnector(connector);
        server.setStopTimeout(STOPPING);
        server.setErrorHandler((request, response, callback) -> {
            write(Reply.plain(response.getStatus(), say("desk.request.unanswered")), response, callback);
            return true;
        });
        ThreadPoolExecutor computing = new ThreadPoolExecutor(
                Limits.COMPUTING,
                Limits.COMPUTING,
                1,
                TimeUnit.MINUTES,
                new ArrayBlockingQueue<>(Limits.WAITING),
                work -> {
                    Thread thread = new Thread(work, "computing");
                    thread.setDaemon(true);
                    return thread;
                });
        return new DeskServer(server, connector, computing);
    }

    int port() {
        return connector.getLocalPort();
    }

    /** @throws IOException if the server does not start */
    void start(Gate gate, Desk desk, Limits limits, LongSupplier nanos) throws IOException {
        connector.setIdleTimeout(limits.idle().toMillis());
        server.setHandler(new Asked(gate, desk, limits, nanos, computing));
        Drips drips =
                new Drips(connector.getScheduler(), nanos, limits.bodyTime().toNanos());
        connector.addBean(drips);
        try {
            server.start();
            drips.begin();
        } catch (IOException failure) {
            throw failure;
        } catch (Exception failure) {
            throw new IOException(failure);
        }
    }

    @Override
    public void close() throws IOException {
        computing.shutdownNow();
        try {
            server.stop();
        } catch (TimeoutException stillComputed) {
            // A page that is still being made reaches nobody any more; all the rest has ended.
        } catch (Exception failure) {
            throw new IOException(failure);
        }
    }

    private static void write(Reply reply, Response response, Callback callback) {
        response.setStatus(reply.status());
        reply.headers().forEach((name, value) -> response.getHeaders().put(name, value));
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, reply.body().length);
        response.write(true, ByteBuffer.wrap(reply.body()), callback);
    }

    /** From a request to its answer. */
    private static final class Asked extends Handler.Abstract {
        private final Gate gate;
        private final Desk desk;
        private final Limits limits;
        private final LongSupplier nanos;
        private final Executor computing;
        private final AtomicInteger held = new AtomicInteger();

        Asked(Gate gate, Desk desk, Limits limits, LongSupplier nanos, Executor computing) {
            this.gate = gate;
            this.desk = desk;
            this.limits = limits;
            this.nanos = nanos;
            this.computing = computing;
        }

        @Override
        public boolean handle(Request request, Response response, Callback callback) {
            String method = request.getMethod();
            boolean post = method.equals("POST");
            String path = request.getHttpURI().getPath();
            Consumer<Reply> reply = answer -> write(
                    method.equals("HEAD") ? new Reply(answer.status(), new byte[0], answer.headers()) : answer,
                    response,
                    Callback.from(callback, desk::sent));
            if (!post && !method.equals("GET") && !method.equals("HEAD")) {
                reply.accept(Reply.plain(Reply.MALFORMED, say("desk.request.method")));
                return true;
            }
            Gate.Asking asking = new Gate.Asking(
                    post,
                    path == null ? "" : path,
                    header(request, "Host"),
                    header(request, "Origin"),
                    header(request, "Sec-Fetch-Site"),
                    header(request, "Cookie"));
            Reply stopped = gate.stops(asking).orElse(null);
            if (stopped != null) {
                reply.accept(stopped);
            } else if (post) {
                receive(request, asking.path(), reply);
            } else {
                answer(request, asking.path(), new Sent(Form.NONE, List.of()), post, reply, () -> {});
            }
            return true;
        }

        private static String header(Request request, String name) {
            String value = request.getHeaders().get(name);
            return value == null ? "" : value;
        }

        private void receive(Request request, String path, Consumer<Reply> reply) {
            if (request.getLength() > limits.bodyBytes()) {
                reply.accept(Reply.plain(
                        Reply.TOO_LARGE,
                        say("desk.request.large", "megabytes", Integer.toString(limits.bodyBytes() >> 20))));
                return;
            }
            Body[] body = new Body[1];
            body[0] = new Body(
                    request,
                    limits,
                    held,
                    nanos,
                    bytes -> {
                        try {
                            Sent sent = Sent.of(header(request, "Content-Type"), bytes, limits);
                            answer(request, path, sent, true, reply, body[0]::free);
                        } catch (Sent.NoForm unreadable) {
                            body[0].free();
                            reply.accept(Reply.plain(Reply.MALFORMED, unreadable.getMessage()));
                        }
                    },
                    reply);
            body[0].run();
        }

        private void answer(
                Request request, String path, Sent sent, boolean post, Consumer<Reply> reply, Runnable done) {
            Call call;
            try {
                Form query = Sent.query(request.getHttpURI().getQuery());
                call = new Call(
                        post,
                        path,
                        query,
                        sent.form(),
                        sent.uploads(),
                        !header(request, "HX-Request").isEmpty());
            } catch (Sent.NoForm unreadable) {
                done.run();
                reply.accept(Reply.plain(Reply.MALFORMED, unreadable.getMessage()));
                return;
            }
            Runnable work = () -> {
                Reply answer;
                try {
                    answer = desk.answer(call);
                } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
                    answer = desk.failed(failure);
                } finally {
                    done.run();
                }
                reply.accept(answer);
            };
            if (!desk.computes(call)) {
                work.run();
                return;
            }
            try {
                computing.execute(work);
            } catch (RejectedExecutionException full) {
                done.run();
                reply.accept(Reply.plain(Reply.BUSY, say("desk.request.busy")).with("Retry-After", "2"));
            }
        }
    }
}
