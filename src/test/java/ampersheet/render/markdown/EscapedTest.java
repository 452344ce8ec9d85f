package ampersheet.render.markdown;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.render.HostileTexts;
import ampersheet.render.LimitedMarkdown;
import ampersheet.render.Wording;
import com.vladsch.flexmark.ast.HtmlEntity;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ast.Text;
import com.vladsch.flexmark.util.ast.Node;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class EscapedTest {
    @Test
    void whatTheTradeWritesNeedsNoBackslashes() {
        for (String plain : List.of(
                "V_s = 4.7 kΩ",
                "θ_JA ≤ 65 K/W (typical)",
                "R1 || R2",
                "a > b",
                "50 % & more",
                "yes / no",
                "20 °C ± 2 K",
                "plus at node A",
                "4.7 kΩ")) {
            assertEquals(plain, Escaped.start(plain));
        }
    }

    @Test
    void whatMarkdownWouldReadIsEscaped() {
        assertEquals("\\[x\\](y)", Escaped.text("[x](y)"));
        assertEquals("\\<b>", Escaped.text("<b>"));
        assertEquals("\\# one", Escaped.start("# one"));
        assertEquals("1\\. one", Escaped.start("1. one"));
        assertEquals("\\- one", Escaped.start("- one"));
        assertEquals("C \\#", Escaped.text("C #"));
        assertEquals("a\\|b", Escaped.cell("a|b"));
        assertEquals("\\_a\\_ b_c", Escaped.text("_a_ b_c"));
    }

    @Test
    void anyTextComesBackUnchangedThroughAParser() {
        List<String> texts = new ArrayList<>(HostileTexts.BY_HAND);
        for (long seed = 1; seed <= 40; seed++) {
            texts.addAll(HostileTexts.random(seed, 100));
        }
        int seen = 0;
        for (String text : texts) {
            String line = Wording.oneLine(text).strip();
            if (!line.isEmpty()) {
                Node only = LimitedMarkdown.read(Escaped.start(text)).getFirstChild();
                assertEquals(Paragraph.class, only.getClass(), "text: " + text);
                assertEquals(line, plain(only), "text: " + text);
                seen++;
            }
        }
        assertEquals(true, seen > 3000, "texts seen: " + seen);
    }

    private static String plain(Node node) {
        StringBuilder plain = new StringBuilder();
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            assertEquals(
                    true,
                    child instanceof Text || child instanceof HtmlEntity,
                    node.getChars().toString());
            plain.append(child.getChars().unescape());
        }
        return plain.toString();
    }
}
