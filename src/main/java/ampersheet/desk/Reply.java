package ampersheet.desk;

import static ampersheet.source.Told.say;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** What the desk answers. */
record Reply(int status, byte[] body, Map<String, String> headers) {
    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; form-action 'self'; frame-src 'self'; base-uri 'none'; frame-ancestors 'none'";

    /** For pages that were made to be handed out: whoever wrote into one, nothing runs in it and it sends nothing. */
    private static final String OF_A_MADE_PAGE = "default-src 'none'; style-src 'unsafe-inline';"
            + " img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

    static final int FINE = 200;
    static final int NOT_FITTING = 422;
    static final int STALE = 409;
    static final int REFUSED = 403;
    static final int UNKNOWN = 404;
    static final int TOO_LARGE = 413;
    static final int TOO_SLOW = 408;
    static final int MALFORMED = 400;
    static final int BUSY = 503;
    static final int FAILED = 500;
    static final int ELSEWHERE = 303;

    private static Reply of(int status, String type, byte[] body, String policy) {
        Map<String, String> headers = new LinkedHashMap<>();
        headers.put("Content-Type", type);
        headers.put("Content-Security-Policy", policy);
        headers.put("X-Content-Type-Options", "nosniff");
        headers.put("Referrer-Policy", "same-origin");
        headers.put("Cross-Origin-Opener-Policy", "same-origin");
        headers.put("Cross-Origin-Resource-Policy", "same-origin");
        headers.put("Cache-Control", "no-store");
        return new Reply(status, body, headers);
    }

    static Reply page(int status, String html) {
        return of(status, "text/html; charset=utf-8", html.getBytes(StandardCharsets.UTF_8), POLICY);
    }

    /** A sentence and nothing else. */
    static Reply plain(int status, String sentence) {
        return of(
                status,
                "text/plain; charset=utf-8",
                (sentence + "\n").getBytes(StandardCharsets.UTF_8),
                "default-src 'none'; frame-ancestors 'none'");
    }

    static Reply unknown() {
        return plain(UNKNOWN, say("desk.address.unknown"));
    }

    static Reply to(String path) {
        return plain(ELSEWHERE, say("desk.address.next", "path", path)).with("Location", path);
    }

    /** One of the program's own files, which a browser may keep: its address says of which program it is. */
    static Reply own(String type, byte[] body) {
        return of(FINE, type, body, POLICY).with("Cache-Control", "private, max-age=3600");
    }

    /** A page that was made to be handed out. */
    static Reply made(byte[] html) {
        return of(FINE, "text/html; charset=utf-8", html, OF_A_MADE_PAGE);
    }

    /** A file to be kept. */
    static Reply download(String name, byte[] body) {
        return of(FINE, "application/octet-stream", body, "default-src 'none'; sandbox")
                .with(
                        "Content-Disposition",
                        "attachment; filename=\"" + name.replaceAll("[^A-Za-z0-9._-]", "_") + "\"");
    }

    /** A file that browsers show safely. */
    static Reply shown(String type, byte[] body) {
        return of(FINE, type, body, "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'self'");
    }

    Reply with(String header, String value) {
        Map<String, String> more = new LinkedHashMap<>(headers);
        more.put(header, value);
        return new Reply(status, body, more);
    }
}
