package ampersheet.desk;

import ampersheet.render.html.Fragment;
import ampersheet.source.Languages;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/** The program's own files that the desk's pages ask for: styles and scripts. */
final class OwnFiles {
    private static final String CSS = "text/css; charset=utf-8";
    private static final String JAVASCRIPT = "text/javascript; charset=utf-8";
    private static final Map<String, String> BESIDE =
            Map.of("htmx.js", JAVASCRIPT, "desk.js", JAVASCRIPT, "desk.css", CSS);

    private final Map<String, Reply> replies = new TreeMap<>();
    private final String version;

    OwnFiles() {
        StringBuilder all = new StringBuilder();
        String sheet = Fragment.style(Languages.ENGLISH);
        all.append(sheet);
        replies.put("sheet.css", Reply.own(CSS, sheet.getBytes(StandardCharsets.UTF_8)));
        new TreeMap<>(BESIDE).forEach((name, type) -> {
            byte[] bytes = bytes(name);
            all.append(new String(bytes, StandardCharsets.UTF_8));
            replies.put(name, Reply.own(type, bytes));
        });
        version = Course.version(all.toString());
    }

    private static byte[] bytes(String name) {
        try (InputStream in = OwnFiles.class.getResourceAsStream("files/" + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return in.readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Stands in their addresses: the port is the folder's, so that a browser knows those of an earlier program. */
    String version() {
        return version;
    }

    Reply named(String name) {
        return replies.getOrDefault(name, Reply.unknown());
    }
}
