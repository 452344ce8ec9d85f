package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Attacks by what is sent, too much of it, too slowly, or in no form. */
class DeskBodiesTest {
    private static final String FORM = "application/x-www-form-urlencoded";

    @TempDir
    private static Path folder;

    private static OpenDesk desk;
    private static String plan;

    @BeforeAll
    static void open() throws IOException {
        desk = OpenDesk.withCourse(folder, OpenDesk.SMALL);
        plan = Files.readString(folder.resolve("plan.yaml"));
    }

    @AfterAll
    static void close() throws IOException {
        desk.close();
    }

    @AfterEach
    void nothingIsLost() throws IOException {
        assertEquals(plan, Files.readString(folder.resolve("plan.yaml")));
        assertEquals(200, OpenDesk.status(desk.get("/help")));
        assertEquals(List.of(), desk.failures);
    }

    private static void refused(String reply) {
        int status = OpenDesk.status(reply);
        assertTrue(status == 0 || status >= 400 && status < 500 || status == 505, reply);
    }

    @Test
    void aHeadThatIsTooLongIsRefused() throws IOException {
        refused(desk.get("/set", "X-Long: " + "a".repeat(20_000) + "\r\n"));
        refused(desk.get("/" + "a".repeat(20_000)));
        refused(desk.get("/set", "X-Many: a\r\n".repeat(2_000)));
    }

    @Test
    void aHeadThatDoesNotComeToItsEndIsGivenUp() throws IOException {
        assertTrue(timed("GET /set HTTP/1.1\r\nHost: " + desk.host() + "\r\n") < 8_000);
    }

    @Test
    void aHeadInDripsIsGivenUp() throws IOException {
        assertTrue(dripped("GET /set HTTP/1.1\r\nHost: " + desk.host() + "\r\n", "X-a: b\r\n", 200) < 12_000);
    }

    @Test
    void aBodyLargerThanItMayBeIsRefusedBeforeItComes() throws IOException {
        assertEquals(413, OpenDesk.status(desk.raw(desk.postHead("/set/text", FORM, 10_000_000_000L))));
    }

    @Test
    void aBodyThatGoesOnIsCutOff() throws IOException {
        String head = desk.postHead("/set/text", FORM, 0).replace("Content-Length: 0", "Transfer-Encoding: chunked");
        String chunk = "4000\r\n" + "a".repeat(0x4000) + "\r\n";
        refused(desk.raw(head + chunk.repeat(40)));
    }

    @Test
    void aBodyThatStopsIsGivenUp() throws IOException {
        assertTrue(timed(desk.postHead("/set/text", FORM, 1_000) + "text=") < 8_000);
    }

    @Test
    void aBodyInDripsIsGivenUpAsAWhole() throws IOException {
        assertTrue(dripped(desk.postHead("/set/text", FORM, 100_000) + "text=", "a", 100) < 8_000);
    }

    @Test
    void manySlowBodiesKeepNobodyElseWaiting() throws IOException {
        List<Socket> slow = new ArrayList<>();
        try {
            for (int i = 0; i < 60; i++) {
                Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), desk.port);
                slow.add(socket);
                socket.getOutputStream()
                        .write((desk.postHead("/set/text", FORM, 1_000) + "text=").getBytes(StandardCharsets.UTF_8));
                socket.getOutputStream().flush();
            }
            long begun = System.nanoTime();
            assertEquals(200, OpenDesk.status(desk.get("/help")));
            assertTrue(System.nanoTime() - begun < 3_000_000_000L, "slow bodies hold the desk up");
        } finally {
            for (Socket socket : slow) {
                socket.close();
            }
        }
    }

    @Test
    void tooManyFilesAtOnceAreRefused() throws IOException {
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < 30; i++) {
            body.append("--parts\r\nContent-Disposition: form-data; name=\"file\"; filename=\"f")
                    .append(i)
                    .append(".csv\"\r\n\r\na\r\n");
        }
        body.append("--parts--\r\n");
        refused(desk.raw(desk.postHead("/take-in/files", "multipart/form-data; boundary=parts", body.length()) + body));
        assertEquals(0, names("answers"));
    }

    @Test
    void partsThatDoNotFitTogetherAreNoForm() throws IOException {
        for (String body :
                List.of("--parts", "garbage", "--parts\r\n\r\n", "--parts\r\nContent-Disposition: x\r\n\r\na")) {
            refused(desk.raw(
                    desk.postHead("/take-in/files", "multipart/form-data; boundary=parts", body.length()) + body));
        }
        refused(desk.raw(desk.postHead("/take-in/files", "multipart/form-data", 0)));
    }

    @Test
    void whatIsNoFormIsRefused() throws IOException {
        for (String type : List.of("application/json", "text/plain", "", "text/xml")) {
            refused(desk.raw(desk.postHead("/set/text", type, 2) + "{}"));
        }
    }

    @Test
    void aFormOfBytesThatAreNoTextIsRefused() throws IOException {
        String body = "text=%ff%fe%zz&seen=%";
        refused(desk.raw(desk.postHead("/set/text", FORM, body.length()) + body));
    }

    @Test
    void aFormOfThousandsOfFieldsIsRefused() throws IOException {
        String body = "a=1&".repeat(20_000) + "b=" + "&c".repeat(9_000);
        refused(desk.raw(desk.postHead("/set/text", FORM, body.length()) + body));
    }

    @Test
    void aRequestSmuggledBehindAnotherIsNone() throws IOException {
        String head = desk.postHead("/set/undo", FORM, 4).replace("\r\n\r\n", "\r\nTransfer-Encoding: chunked\r\n\r\n");
        refused(desk.raw(head + "0\r\n\r\nPOST /set/remove HTTP/1.1\r\n\r\n"));
    }

    @Test
    void bytesThatAreNoRequestEndTheConnection() throws IOException {
        refused(desk.raw("\u0000\u0001\u0002\r\n\r\n"));
        refused(desk.raw("GET\r\n\r\n"));
        refused(desk.raw("GET /set HTTP/9.9\r\n\r\n"));
    }

    @Test
    void aPlanThatSwellsIsRefusedAsText() throws IOException {
        String seen = desk.seen("/set");
        for (String swelling : List.of(
                "title: &a [x,x]\nproblems: [*a,*a]\n",
                "a: ".repeat(20_000),
                "[".repeat(50_000),
                "- ".repeat(50_000))) {
            refused(desk.post("/set/text", "seen", seen, "text", swelling));
        }
    }

    private static int names(String of) {
        String[] names = folder.resolve(of).toFile().list();
        return names == null ? 0 : names.length;
    }

    /** Milliseconds until the desk ends the connection. */
    private static long timed(String begun) throws IOException {
        long from = System.nanoTime();
        refused(desk.raw(begun));
        return (System.nanoTime() - from) / 1_000_000;
    }

    private static long dripped(String begun, String drop, int most) throws IOException {
        long from = System.nanoTime();
        try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), desk.port)) {
            socket.setSoTimeout(100);
            OutputStream out = socket.getOutputStream();
            out.write(begun.getBytes(StandardCharsets.UTF_8));
            for (int i = 0; i < most; i++) {
                try {
                    out.write(drop.getBytes(StandardCharsets.UTF_8));
                    out.flush();
                    if (socket.getInputStream().read() < 0) {
                        break;
                    }
                } catch (java.net.SocketTimeoutException quiet) {
                    continue;
                } catch (IOException closed) {
                    break;
                }
            }
        }
        return (System.nanoTime() - from) / 1_000_000;
    }
}
