package ampersheet.desk;

import ampersheet.issue.CourseStart;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A desk for tests, asked by bytes of the test's own: a client that mends requests would hide what reaches the desk.
 */
final class OpenDesk implements AutoCloseable {
    static final Limits SMALL = new Limits(200_000, 600_000, 20, Duration.ofMillis(900), Duration.ofMillis(600));
    private static final int PATIENCE = 20_000;

    final Path folder;
    final List<String> failures = Collections.synchronizedList(new ArrayList<>());
    private final Desk desk;
    final int port;
    final String cookie;

    private OpenDesk(Path folder, Limits limits) throws IOException {
        this.folder = folder;
        this.desk = Desk.open(folder, new Desk.Settings(0, limits, System::nanoTime, failures::add));
        this.port = Integer.parseInt(address().replaceAll(".*:([0-9]+)/.*", "$1"));
        Matcher set = Pattern.compile("Set-Cookie: ([^;]*);")
                .matcher(raw("GET " + address().replaceAll("http://[^/]*", "") + " HTTP/1.1\r\nHost: " + host()
                        + "\r\nConnection: close\r\n\r\n"));
        this.cookie = set.find() ? set.group(1) : "";
    }

    static OpenDesk over(Path folder, Limits limits) throws IOException {
        return new OpenDesk(folder, limits);
    }

    /** With a small course in it. */
    static OpenDesk withCourse(Path folder, Limits limits) throws IOException {
        CourseStart.in(folder);
        return new OpenDesk(folder, limits);
    }

    String address() {
        return desk.address();
    }

    void awaitEnd() throws InterruptedException {
        desk.awaitEnd();
    }

    String host() {
        return "127.0.0.1:" + port;
    }

    /** Whatever comes back for these bytes until the other side ends, as Latin-1. */
    String raw(String request) throws IOException {
        return raw(request.getBytes(StandardCharsets.UTF_8));
    }

    String raw(byte[] request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), port)) {
            socket.setSoTimeout(PATIENCE);
            OutputStream out = socket.getOutputStream();
            try {
                out.write(request);
                out.flush();
            } catch (IOException closed) {
                // The desk has heard enough; what it said is read below.
            }
            return read(socket);
        }
    }

    static String read(Socket socket) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        byte[] buffer = new byte[8192];
        try {
            for (int n = socket.getInputStream().read(buffer);
                    n >= 0;
                    n = socket.getInputStream().read(buffer)) {
                all.write(buffer, 0, n);
            }
        } catch (SocketTimeoutException never) {
            return "no end: " + all.toString(StandardCharsets.UTF_8);
        } catch (IOException reset) {
            return all.toString(StandardCharsets.UTF_8);
        }
        return all.toString(StandardCharsets.UTF_8);
    }

    String get(String path) throws IOException {
        return get(path, "");
    }

    String get(String path, String moreHeaders) throws IOException {
        return raw("GET " + path + " HTTP/1.1\r\nHost: " + host() + "\r\nCookie: " + cookie
                + "\r\nConnection: close\r\n" + moreHeaders + "\r\n");
    }

    /** @param namesAndValues by turns */
    String post(String path, String... namesAndValues) throws IOException {
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            body.append(i == 0 ? "" : "&")
                    .append(encoded(namesAndValues[i]))
                    .append('=')
                    .append(encoded(namesAndValues[i + 1]));
        }
        return raw(postHead(path, "application/x-www-form-urlencoded", body.length()) + body);
    }

    String postHead(String path, String type, long length) {
        return "POST " + path + " HTTP/1.1\r\nHost: " + host() + "\r\nOrigin: http://" + host() + "\r\nCookie: "
                + cookie + "\r\nContent-Type: " + type + "\r\nContent-Length: " + length
                + "\r\nConnection: close\r\n\r\n";
    }

    /** Sends one file. */
    String send(String path, String name, String content) throws IOException {
        return send(path, name, content.getBytes(StandardCharsets.UTF_8));
    }

    /** Sends one file along with fields. @param namesAndValues by turns */
    String send(String path, String name, byte[] content, String... namesAndValues) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            body.writeBytes(("--parts\r\nContent-Disposition: form-data; name=\"" + namesAndValues[i] + "\"\r\n\r\n"
                            + namesAndValues[i + 1] + "\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        }
        body.writeBytes(("--parts\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + name
                        + "\"\r\nContent-Type: text/csv\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8));
        body.writeBytes(content);
        body.writeBytes("\r\n--parts--\r\n".getBytes(StandardCharsets.UTF_8));
        ByteArrayOutputStream request = new ByteArrayOutputStream();
        request.writeBytes(postHead(path, "multipart/form-data; boundary=parts", body.size())
                .getBytes(StandardCharsets.UTF_8));
        request.writeBytes(body.toByteArray());
        return raw(request.toByteArray());
    }

    /** Of a field of the page at this path. */
    String seen(String path) throws IOException {
        Matcher seen = Pattern.compile("name=\"seen\" value=\"([^\"]*)\"").matcher(get(path));
        return seen.find() ? seen.group(1) : "";
    }

    String plan() throws IOException {
        return Files.readString(folder.resolve("plan.yaml"));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** 0 where nothing came. */
    static int status(String reply) {
        Matcher line =
                Pattern.compile("HTTP/1\\.1 ([0-9]{3}).*", Pattern.DOTALL).matcher(reply);
        return line.matches() ? Integer.parseInt(line.group(1)) : 0;
    }

    @Override
    public void close() throws IOException {
        desk.close();
    }
}
