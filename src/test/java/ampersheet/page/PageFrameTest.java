package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.quantity.DecimalMarker;
import ampersheet.source.Languages;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class PageFrameTest {
    private static final String HOSTILE = "</script><script>alert(1)</script><!-- <script>";

    @BeforeEach
    void need() {
        assumeTrue(
                PageFrame.class.getResource("/ampersheet/browser/checker.js") != null,
                "the checker is not compiled for the browser");
    }

    private static String page() {
        String data = Json.write(json -> {
            json.writeStartObject();
            json.writeStringField("name", HOSTILE);
            json.writeEndObject();
        });
        return PageFrame.render(
                new PageFrame.Spoken(Languages.ENGLISH, DecimalMarker.POINT),
                HOSTILE,
                "practice",
                "",
                data,
                PageFrame.Script.PRACTICE);
    }

    private static String between(String page, String start, String end) {
        int from = page.indexOf(start) + start.length();
        return page.substring(from, page.indexOf(end, from));
    }

    @Test
    void dataCannotEndItsElementAndComesBackWhole() throws IOException {
        String page = page();
        assertFalse(page.contains("alert(1)</script>"), "what an author wrote would run");
        assertEquals(3, page.split("</script>", -1).length - 1);
        assertEquals(
                HOSTILE,
                new ObjectMapper()
                        .readTree(between(page, "id=\"data\">", "</script>"))
                        .get("name")
                        .asText());
        assertTrue(page.contains("<title>&lt;/script&gt;"));
    }

    @Test
    void onlyTheScriptNamedByItsHashMayRun() throws Exception {
        String page = page();
        String code = between(page, "</script>\n<script>", "</script>");
        String hash = Base64.getEncoder()
                .encodeToString(MessageDigest.getInstance("SHA-256").digest(code.getBytes(StandardCharsets.UTF_8)));
        assertEquals(
                "default-src 'none'; script-src 'sha256-" + hash
                        + "'; style-src 'unsafe-inline'; img-src data:; base-uri 'none';" + " form-action 'none'",
                between(page, "Content-Security-Policy\" content=\"", "\""));
    }
}
