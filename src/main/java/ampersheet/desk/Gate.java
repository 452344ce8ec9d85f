package ampersheet.desk;

import static ampersheet.source.Told.say;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.List;
import java.util.Optional;

/**
 * Who may ask. The server can be reached from this machine only, but any page in its browser can send requests there,
 * and any name can be made to lead there. So a request names this very host, carries the cookie that only the first
 * address gives, and, where it changes something, comes from a page of the desk.
 */
final class Gate {
    static final String OPENING = "/open/";
    private static final String LOOPBACK = "127.0.0.1";

    private final String secret;
    private final String session;
    private final int port;

    /**
     * @param secret that the first address holds
     * @param session that the cookie holds
     */
    Gate(String secret, String session, int port) {
        this.secret = secret;
        this.session = session;
        this.port = port;
    }

    /**
     * What of a request tells who asks; each empty where it is missing.
     *
     * @param host as the request names it
     * @param site what the browser says of the page that asks: {@code same-origin}, {@code cross-site} …
     */
    record Asking(boolean post, String path, String host, String origin, String site, String cookies) {}

    /** With which a browser opens the desk. */
    String address() {
        return origin() + OPENING + secret;
    }

    private String origin() {
        return "http://" + LOOPBACK + ":" + port;
    }

    private List<String> hosts() {
        return List.of(LOOPBACK + ":" + port, "localhost:" + port);
    }

    /** The answer to whoever may not ask, or has only just come in; empty for all others. */
    Optional<Reply> stops(Asking asking) {
        if (!hosts().contains(asking.host())) {
            return Optional.of(Reply.plain(Reply.REFUSED, say("desk.gate.host")));
        }
        if (asking.post() && !fromTheDesk(asking)) {
            return Optional.of(Reply.plain(Reply.REFUSED, say("desk.gate.change")));
        }
        if (!asking.post() && asking.path().startsWith(OPENING)) {
            return Optional.of(same(secret, asking.path().substring(OPENING.length())) ? opened() : Reply.unknown());
        }
        if (asking.site().equals("cross-site") || asking.site().equals("same-site")) {
            return Optional.of(Reply.plain(Reply.REFUSED, say("desk.gate.site")));
        }
        return isKnown(asking.cookies())
                ? Optional.empty()
                : Optional.of(Reply.plain(Reply.REFUSED, say("desk.gate.unknown")));
    }

    private boolean fromTheDesk(Asking asking) {
        boolean sameOrigin = hosts().stream().anyMatch(host -> asking.origin().equals("http://" + host))
                && asking.origin().equals("http://" + asking.host());
        return sameOrigin && (asking.site().isEmpty() || asking.site().equals("same-origin"));
    }

    /**
     * A page that goes on by itself: a cookie that is set along with a redirection is not yet sent with it by every
     * browser.
     */
    private Reply opened() {
        String html = "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>"
                + say("desk.gate.title") + "</title></head><body><p><a href=\"/lessons\">" + say("desk.gate.open")
                + "</a></p></body></html>";
        return Reply.page(Reply.FINE, html)
                .with("Set-Cookie", cookie() + "=" + session + "; Path=/; HttpOnly; SameSite=Strict")
                .with("Refresh", "0; url=/lessons");
    }

    /** Cookies know no ports: two desks at a time must not take each other's place. */
    private String cookie() {
        return "desk-" + port;
    }

    private boolean isKnown(String cookies) {
        for (String part : cookies.split(";")) {
            int equals = part.indexOf('=');
            if (equals > 0
                    && part.substring(0, equals).strip().equals(cookie())
                    && same(session, part.substring(equals + 1).strip())) {
                return true;
            }
        }
        return false;
    }

    /** In the same time wherever they differ. */
    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
