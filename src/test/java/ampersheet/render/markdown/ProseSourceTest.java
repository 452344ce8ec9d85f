package ampersheet.render.markdown;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class ProseSourceTest {
    @Test
    void proseStaysAsItWasWritten() {
        String prose = "A *light* and **9 V**:\n\n- one\n- two\n\n| a | b |\n| - | - |\n| 1 | 2 |\n\n`code` "
                + "[x](https://example.org)";
        assertEquals(prose, ProseSource.harmless(prose + "\n"));
    }

    @Test
    void backslashesThatProtectNothingAreTakenOut() {
        assertEquals(
                "It gives **4.7 kΩ**, 50 % (\\*).",
                ProseSource.harmless("It gives **4\\.7 kΩ**\\, 50 \\% \\(\\*\\)\\."));
    }

    @Test
    void backslashesThatProtectSomethingStay() {
        for (String prose : List.of("1\\. no list", "\\- no list", "a \\<b\\>", "\\[a\\](b)", "`a\\.b`", "1\\) x")) {
            assertEquals(prose, ProseSource.harmless(prose));
        }
    }

    @Test
    void htmlHeadingsPicturesAndBadLinksAreEscaped() {
        assertEquals("\\<script>alert(1)\\</script>", ProseSource.harmless("<script>alert(1)</script>"));
        assertEquals("a \\<b>c\\</b>", ProseSource.harmless("a <b>c</b>"));
        assertEquals("\\# Big", ProseSource.harmless("# Big"));
        assertEquals("Big\n\\===", ProseSource.harmless("Big\n==="));
        assertEquals("\\[x](javascript:a)", ProseSource.harmless("[x](javascript:a)"));
        assertEquals("\\<!-- x", ProseSource.harmless("<!-- x"));
        assertEquals("\\<javascript:a>", ProseSource.harmless("<javascript:a>"));
    }

    @Test
    void aPictureFromTheWebIsALinkAndOneFromElsewhereIsText() {
        assertEquals("\\![x](https://example.org/x.png)", ProseSource.harmless("![x](https://example.org/x.png)"));
        assertEquals("\\!\\[x](data:image/png,x)", ProseSource.harmless("![x](data:image/png,x)"));
    }

    @Test
    void anOpenCodeBlockIsClosed() {
        assertEquals("```\ncode\n```", ProseSource.harmless("```\ncode"));
        assertEquals("~~~~\ncode\n~~~~", ProseSource.harmless("~~~~\ncode\n"));
    }

    @Test
    void absurdProseEndsSoon() {
        for (String bomb : List.of(
                ">".repeat(4000) + "x",
                "- ".repeat(3000) + "x",
                "<a ".repeat(4000),
                "<b>".repeat(3000),
                "![".repeat(2000) + "x" + "](y)".repeat(2000),
                "[a](javascript:b) ".repeat(500),
                "# a\n".repeat(500))) {
            String harmless = assertTimeoutPreemptively(Duration.ofSeconds(20), () -> ProseSource.harmless(bomb));
            assertFalse(
                    harmless.isEmpty()
                            || harmless.startsWith("#")
                            || harmless.startsWith("<b>")
                            || harmless.startsWith("[a]("),
                    harmless.substring(0, 20));
        }
    }
}
