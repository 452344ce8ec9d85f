package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The template guide is there for who has only the archive. */
class DeskGuideTest {
    @TempDir
    private Path folder;

    @Test
    void helpLeadsToTheGuideAndNoWordOfItIsLost() throws IOException {
        Limits patient = new Limits(200_000, 600_000, 20, Duration.ofSeconds(10), Duration.ofSeconds(10));
        String page;
        try (OpenDesk desk = OpenDesk.over(folder, patient)) {
            assertTrue(desk.get("/help").contains("href=\"/help/guide\""));
            page = desk.get("/help/guide");
        }
        assertEquals(200, OpenDesk.status(page), page);
        String guide = page.substring(page.indexOf("<div class=\"guide\">"), page.indexOf("</main>"));
        String written = Files.readString(Path.of("problem-templates/README.md"))
                .replaceAll("(?m)^```.*$", "")
                .replaceAll("\\[([^\\]\\n]+)\\]\\([^)\\n]*\\)", "$1");
        String shown = unescaped(guide.replaceAll("<[^>]*>", ""));
        assertEquals(letters(written), letters(shown));
        Matcher contents = Pattern.compile("<a href=\"#(guide-[^\"]*)\">").matcher(page);
        int headings = 0;
        while (contents.find()) {
            headings++;
            assertTrue(guide.contains(" id=\"" + contents.group(1) + "\""), contents.group(1));
        }
        assertTrue(headings > 5, headings + " headings");
    }

    private static String unescaped(String html) {
        return html.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
    }

    private static String letters(String text) {
        return text.replaceAll("[^\\p{L}\\p{Nd}=<>&/+]", "");
    }

    @Test
    void signsOfTheGuideAreWordsOnItsPage() {
        Map<String, Object> values = Guide.of("# One\n\nA **stressed** word, `x < 1` and <b>no tag</b>.\n\n"
                + "- first\n- second\n\n| a | b |\n| --- | ---: |\n| `c` | d |\n\n```yaml\n{x: \"<i>\"}\n```\n");
        values.put("place", "help");
        values.put("status", 200);
        values.put("program", "1");
        values.put("folder", "f");
        values.put("path", "/f");
        values.put("alone", true);
        values.put("notices", List.of());
        values.put("places", List.of());
        String page = new Pages().fill("guide", values);
        assertFalse(page.contains("<b>") || page.contains("<i>"), page);
        for (String shown : new String[] {
            "<h2 id=\"guide-one\">One</h2>",
            "<p>A <strong>stressed</strong> word, <code>x &lt; 1</code> and &lt;b&gt;no tag&lt;/b&gt;.</p>",
            "<ul><li>first</li><li>second</li></ul>",
            "<th scope=\"col\">b</th>",
            "<td><code>c</code></td><td>d</td>",
            "<pre tabindex=\"0\" role=\"group\" aria-label=\"As it is written\">{x: &quot;&lt;i&gt;&quot;}</pre>"
        }) {
            assertTrue(page.contains(shown), shown + " in " + page);
        }
    }
}
