package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Attacks by whoever may not ask. After each the plan is what it was, and the desk answers. */
class DeskGateTest {
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
        assertEquals(403, OpenDesk.status(reply), reply);
        assertFalse(reply.contains("First evening"), reply);
    }

    private static String asking(String method, String path, String headers) throws IOException {
        return desk.raw(method + " " + path + " HTTP/1.1\r\n" + headers + "Connection: close\r\n\r\n");
    }

    private static String cookie() {
        return "Cookie: " + desk.cookie + "\r\n";
    }

    @Test
    void withoutTheSecretNothingIsShown() throws IOException {
        for (String path : List.of("/lessons", "/set", "/class", "/made/x", "/files/desk.css")) {
            refused(asking("GET", path, "Host: " + desk.host() + "\r\n"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0", "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA", "../lessons", "%00"})
    void aGuessedSecretOpensNothing(String guess) throws IOException {
        String reply = asking("GET", "/open/" + guess, "Host: " + desk.host() + "\r\n");
        assertTrue(OpenDesk.status(reply) == 404 || OpenDesk.status(reply) == 400, reply);
        assertFalse(reply.contains("Set-Cookie"), reply);
    }

    @Test
    void theFirstAddressDoesNotOpenUnderAnotherName() throws IOException {
        String path = desk.address().replaceAll("http://[^/]*", "");
        refused(asking("GET", path, "Host: attacker.example:" + desk.port + "\r\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"desk-%d=wrong", "desk-%d=", "other=%d", "desk-%d"})
    void anotherCookieIsNone(String cookie) throws IOException {
        refused(asking(
                "GET",
                "/set",
                "Host: " + desk.host() + "\r\nCookie: " + cookie.replace("%d", "" + desk.port) + "\r\n"));
    }

    /** A page of another origin whose name was made to lead here. */
    @ParameterizedTest
    @ValueSource(
            strings = {"attacker.example", "attacker.example:%d", "127.0.0.1", "127.0.0.1:1", "[::1]:%d", "0.0.0.0:%d"})
    void aHostOfAnotherNameIsRefused(String host) throws IOException {
        refused(asking("GET", "/set", "Host: " + host.replace("%d", "" + desk.port) + "\r\n" + cookie()));
    }

    @Test
    void aHostInTheRequestLineDoesNotStandInForTheDesks() throws IOException {
        String reply = asking("GET", "http://attacker.example/set", "Host: " + desk.host() + "\r\n" + cookie());
        assertTrue(OpenDesk.status(reply) == 403 || OpenDesk.status(reply) == 400, reply);
    }

    @Test
    void twoHostsOrNoneAreNoRequest() throws IOException {
        String two = "Host: " + desk.host() + "\r\nHost: attacker.example\r\n";
        assertEquals(400, OpenDesk.status(asking("GET", "/set", two + cookie())));
        assertEquals(400, OpenDesk.status(asking("GET", "/set", cookie())));
    }

    @ParameterizedTest
    @ValueSource(strings = {"http://attacker.example", "null", "https://127.0.0.1:%d", "http://127.0.0.1:1", ""})
    void aFormOfAnotherOriginChangesNothing(String origin) throws IOException {
        String head = "Host: " + desk.host() + "\r\n" + cookie()
                + (origin.isEmpty() ? "" : "Origin: " + origin.replace("%d", "" + desk.port) + "\r\n")
                + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 0\r\n";
        refused(asking("POST", "/set/undo", head));
    }

    @Test
    void aBrowserThatSaysCrossSiteIsBelieved() throws IOException {
        String from = "Host: " + desk.host() + "\r\n" + cookie() + "Sec-Fetch-Site: cross-site\r\n";
        refused(asking("GET", "/set", from));
        refused(asking("POST", "/set/undo", from + "Origin: http://" + desk.host() + "\r\nContent-Length: 0\r\n"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"PUT", "DELETE", "OPTIONS", "TRACE", "CONNECT", "PROPFIND"})
    void otherMethodsDoNothing(String method) throws IOException {
        String reply = asking(method, "/set", "Host: " + desk.host() + "\r\n" + cookie());
        assertTrue(OpenDesk.status(reply) >= 400 && OpenDesk.status(reply) < 500, reply);
        assertFalse(reply.contains("Access-Control"), reply);
    }

    @Test
    void whatChangesSomethingIsNeverDoneByAnAddress() throws IOException {
        for (String path : List.of("/set/undo", "/set/remove?at=0", "/give-out/make?what=pdf", "/take-in/mark")) {
            assertEquals(404, OpenDesk.status(desk.get(path)), path);
        }
    }

    @Test
    void theCookieIsStrictAndUnseenByScripts() throws IOException {
        String opened = desk.raw("GET " + desk.address().replaceAll("http://[^/]*", "") + " HTTP/1.1\r\nHost: "
                + desk.host() + "\r\nConnection: close\r\n\r\n");
        assertTrue(opened.contains("; HttpOnly; SameSite=Strict"), opened);
        String page = desk.get("/set");
        assertTrue(page.contains("script-src 'self'") && !page.contains("unsafe"), page);
        assertTrue(page.contains("frame-ancestors 'none'"), page);
        assertFalse(page.contains(desk.cookie.substring(desk.cookie.indexOf('=') + 1)), "the secret stands in a page");
    }

    @Test
    void fromTheNetworkThereIsNoDesk() throws IOException {
        for (NetworkInterface each : NetworkInterface.networkInterfaces().toList()) {
            for (java.net.InetAddress address : each.inetAddresses().toList()) {
                if (!address.isLoopbackAddress()) {
                    try (Socket socket = new Socket()) {
                        socket.connect(new InetSocketAddress(address, desk.port), 300);
                        throw new AssertionError("reached by " + address);
                    } catch (IOException refused) {
                        continue;
                    }
                }
            }
        }
    }
}
