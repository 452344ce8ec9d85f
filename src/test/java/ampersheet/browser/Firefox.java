package ampersheet.browser;

import static org.junit.jupiter.api.Assumptions.abort;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * A second browser for tests, spoken to in the protocol that it brings along (WebDriver BiDi, a W3C draft), because its
 * driver is not to be had everywhere. Where it is not installed, a test that asks for it is skipped by name.
 */
public final class Firefox implements AutoCloseable {
    private static final List<Path> BROWSERS = List.of(Path.of("/usr/bin/firefox-esr"), Path.of("/usr/bin/firefox"));
    private static final String LISTENING = "listening on ws://";
    private static final int PATIENCE = 60;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Process process;
    private final BlockingQueue<JsonNode> received = new LinkedBlockingQueue<>();
    private WebSocket socket;
    private String tab;
    private int asked;

    private Firefox(Process process) {
        this.process = process;
    }

    /** Skips the test that calls it where there is no Firefox, or the checker was not compiled. */
    public static void need() {
        if (BROWSERS.stream().noneMatch(Files::isExecutable)) {
            abort("no Firefox in /usr/bin");
        }
        if (Firefox.class.getResource("/ampersheet/browser/checker.js") == null) {
            abort("the checker is not compiled for the browser");
        }
    }

    /** @param profile an empty folder */
    public static Firefox open(Path profile) throws IOException, InterruptedException {
        need();
        Path binary = BROWSERS.stream().filter(Files::isExecutable).findFirst().orElseThrow();
        Files.createDirectories(profile);
        Path said = profile.resolve("said.txt");
        Process process = new ProcessBuilder(
                        binary.toString(),
                        "--headless",
                        "--no-remote",
                        "--profile",
                        profile.toAbsolutePath().toString(),
                        "--remote-debugging-port=0",
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        Firefox firefox = new Firefox(process);
        try {
            firefox.connect(said);
        } catch (IOException | InterruptedException | RuntimeException e) {
            firefox.close();
            throw e;
        }
        return firefox;
    }

    /** @param said what the browser says on its streams */
    private void connect(Path said) throws IOException, InterruptedException {
        String address = "";
        for (int i = 0; address.isEmpty() && i < PATIENCE * 10; i++) {
            Thread.sleep(100);
            address = Files.readString(said)
                    .lines()
                    .filter(line -> line.contains(LISTENING))
                    .map(line -> line.substring(line.indexOf("ws://")).strip())
                    .findFirst()
                    .orElse("");
        }
        if (address.isEmpty()) {
            throw new IOException("Firefox did not say where it listens: " + Files.readString(said));
        }
        socket = HttpClient.newHttpClient()
                .newWebSocketBuilder()
                .buildAsync(URI.create(address + "/session"), new Messages())
                .join();
        ask("session.new", Map.of("capabilities", Map.of()));
        tab = ask("browsingContext.getTree", Map.of())
                .get("contexts")
                .get(0)
                .get("context")
                .asText();
    }

    private final class Messages implements WebSocket.Listener {
        private final StringBuilder message = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            message.append(data);
            if (last) {
                try {
                    received.add(JSON.readTree(message.toString()));
                } catch (IOException e) {
                    received.add(JSON.createObjectNode().put("id", asked).put("error", e.toString()));
                }
                message.setLength(0);
            }
            from.request(1);
            return null;
        }
    }

    private JsonNode ask(String method, Map<String, ?> parameters) throws InterruptedException {
        ObjectNode command = JSON.createObjectNode().put("id", ++asked).put("method", method);
        command.set("params", JSON.valueToTree(parameters));
        socket.sendText(command.toString(), true).join();
        while (true) {
            JsonNode answer = received.poll(PATIENCE, TimeUnit.SECONDS);
            if (answer == null) {
                throw new IllegalStateException("no answer to " + method);
            }
            if (answer.path("id").asInt(-1) == asked) {
                if (answer.has("error")) {
                    throw new IllegalStateException(method + ": " + answer);
                }
                return answer.get("result");
            }
        }
    }

    public void get(Path file) throws InterruptedException {
        get(file.toUri().toString());
    }

    public void get(String address) throws InterruptedException {
        ask("browsingContext.navigate", Map.of("context", tab, "url", address, "wait", "complete"));
    }

    public void reload() throws InterruptedException {
        ask("browsingContext.reload", Map.of("context", tab, "wait", "complete"));
    }

    /** A screen of so many CSS pixels. */
    public void screen(int width, int height) throws InterruptedException {
        ask(
                "browsingContext.setViewport",
                Map.of("context", tab, "viewport", Map.of("width", width, "height", height)));
    }

    /** What the statements return, as text. */
    public String run(String statements) throws InterruptedException {
        JsonNode result = ask(
                "script.evaluate",
                Map.of(
                        "expression",
                        "(() => {" + statements + "})()",
                        "target",
                        Map.of("context", tab),
                        "awaitPromise",
                        true,
                        "userActivation",
                        true));
        if (!result.get("type").asText().equals("success")) {
            throw new IllegalStateException(result.toString());
        }
        return result.get("result").path("value").asText();
    }

    /** Keys one after the other, to whatever has the focus. */
    public void press(String... keys) throws InterruptedException {
        List<Map<String, String>> actions = new ArrayList<>();
        for (String key : keys) {
            actions.add(Map.of("type", "keyDown", "value", key));
            actions.add(Map.of("type", "keyUp", "value", key));
        }
        ask(
                "input.performActions",
                Map.of("context", tab, "actions", List.of(Map.of("type", "key", "id", "keys", "actions", actions))));
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(PATIENCE, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
