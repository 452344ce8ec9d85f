package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class ProseMarkupTest {
    @Test
    void paragraphsEmphasisCodeAndBreaks() {
        assertEquals(
                "<p>A <em>b</em> <strong>c</strong> <code>d &lt; e</code><br/>\nf</p>\n",
                html("A *b* **c** `d < e`\\\nf"));
    }

    @Test
    void valuesPutInWithEscapedMarksReadAsTheyAre() {
        assertEquals(
                "<p>It gives <strong>4.7\u00a0kΩ</strong> &lt;b&gt;.</p>\n", html("It gives **4\\.7 kΩ** \\<b\\>\\."));
    }

    @Test
    void tightAndLooseLists() {
        assertEquals("<ul><li>a</li>\n<li>b</li>\n</ul>", html("- a\n- b"));
        assertEquals("<ol start=\"3\"><li><p>a</p>\n</li>\n<li><p>b</p>\n</li>\n</ol>\n", html("3. a\n\n4. b"));
    }

    @Test
    void tablesHaveHeadedColumns() {
        String html = html("| a | b |\n| --- | ---: |\n| c | 1 |\n");
        assertTrue(
                html.contains("<th scope=\"col\" class=\"left\">a</th><th scope=\"col\" class=\"right\">b</th>"), html);
        assertTrue(html.contains("<td class=\"left\">c</td><td class=\"right\">1</td>"), html);
    }

    @Test
    void aHeadingIsOnlyBold() {
        assertEquals("<p><strong>Big</strong></p>\n", html("# Big"));
        assertEquals("<p><strong>Big</strong></p>\n", html("Big\n==="));
    }

    @Test
    void htmlIsShownAsText() {
        assertEquals("<p>&lt;div onclick=&quot;x&quot;&gt;</p>", html("<div onclick=\"x\">"));
        assertEquals("<p>a &lt;b&gt;c&lt;/b&gt; &amp; é</p>\n", html("a <b>c</b> &amp; &eacute;"));
    }

    @Test
    void picturesAreTheirWordsAndBadLinksTheirText() {
        assertEquals("<p>alt text</p>\n", html("![alt text](https://example.org/x.png)"));
        assertEquals(
                "<p>x y <a href=\"https://example.org/\">z</a></p>\n",
                html("[x](javascript:alert%281%29) [y](java&#115;cript:a) [z](https://example.org/)"));
        assertEquals("<p>a</p>\n", html("[a]\n\n[a]: data:text/html,x"));
        assertEquals("<p>[not] a link</p>\n", html("[not] a link"));
    }

    @Test
    void aPromptIsOneLine() {
        Markup markup = new Markup();
        ProseMarkup.writeLine("What is **R**?", markup);
        assertEquals("What is <strong>R</strong>?", markup.toString());
        Markup list = new Markup();
        ProseMarkup.writeLine("- a\n- b", list);
        assertEquals("- a - b", list.toString());
    }

    @Test
    void absurdNestingIsPlainTextAndEndsSoon() {
        for (String bomb : List.of(
                ">".repeat(4000) + "x",
                "- ".repeat(3000) + "x",
                "*".repeat(4000) + "x" + "*".repeat(4000),
                "*a ".repeat(2000) + "b*".repeat(2000),
                "![".repeat(2000) + "x" + "](y)".repeat(2000))) {
            String html = assertTimeoutPreemptively(Duration.ofSeconds(20), () -> html(bomb));
            assertFalse(
                    html.contains("<blockquote>") || html.contains("<ul>") || html.contains("<em>"),
                    html.substring(0, 80));
        }
    }

    private static String html(String prose) {
        Markup markup = new Markup();
        ProseMarkup.write(prose, markup);
        return markup.toString();
    }
}
