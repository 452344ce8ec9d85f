package ampersheet.render.markdown;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.FormulaReader;
import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.Golden;
import ampersheet.render.HostileTexts;
import ampersheet.render.LimitedMarkdown;
import ampersheet.render.SampleDocuments;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.source.Languages;
import com.vladsch.flexmark.ast.Heading;
import com.vladsch.flexmark.ast.HtmlBlockBase;
import com.vladsch.flexmark.ast.HtmlInlineBase;
import com.vladsch.flexmark.ast.Image;
import com.vladsch.flexmark.ast.IndentedCodeBlock;
import com.vladsch.flexmark.ast.Link;
import com.vladsch.flexmark.ext.tables.TableBlock;
import com.vladsch.flexmark.util.ast.Node;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MarkdownPageTest {
    private static final String KEY_NOTICE = Languages.ENGLISH.say("print.key-notice");

    @Test
    void aListingCannotEndItself() {
        String markdown = MarkdownPage.render(new Document(
                Document.Kind.KEY,
                Languages.ENGLISH,
                "T",
                "",
                "",
                Document.Paper.A4,
                List.of(new Document.Listing("As a netlist", "R1 a b 1k\n```\n# not a heading\n"))));
        assertTrue(markdown.contains("````\nR1 a b 1k\n```\n# not a heading\n````\n"), markdown);
    }

    @Test
    void pagesAreTheOnesThatWereLookedAt() {
        assertAll(
                () -> Golden.assertSame(
                        "ampersheet/render/markdown/sheet.md", MarkdownPage.render(SampleDocuments.sheet())),
                () -> Golden.assertSame(
                        "ampersheet/render/markdown/key.md", MarkdownPage.render(SampleDocuments.key())),
                () -> Golden.assertSame(
                        "ampersheet/render/markdown/index.md", MarkdownPage.render(SampleDocuments.index())));
    }

    @Test
    void anEquationIsOneLineOfText() {
        String markdown = MarkdownPage.render(SampleDocuments.sheet()).replace('\u00a0', ' ');
        assertTrue(markdown.contains("\n       R = V_r / I_f = 7 V / 16 mA = 437.5 Ω\n"), markdown);
        assertTrue(markdown.contains("\n    q3a  T_J = ____________  in °C\n"), markdown);
    }

    @Test
    void everyEquationAndPlaceIsReadAsCode() {
        List<Node> nodes = new ArrayList<>();
        collect(LimitedMarkdown.read(MarkdownPage.render(SampleDocuments.sheet())), nodes);
        long blocks = nodes.stream().filter(IndentedCodeBlock.class::isInstance).count();
        assertEquals(6 + 7, blocks, "six worked steps, seven places to write");
    }

    @Test
    void aPageEndsWithOneLineEndAndHasNoTrailingBlanks() {
        for (Document document : List.of(SampleDocuments.sheet(), SampleDocuments.key(), SampleDocuments.index())) {
            String markdown = MarkdownPage.render(document);
            assertTrue(markdown.endsWith("\n") && !markdown.endsWith("\n\n"));
            assertFalse(markdown.contains("\r") || markdown.contains("\n\n\n"));
            markdown.lines().forEach(line -> assertEquals(line.stripTrailing(), line));
        }
    }

    @Test
    void aBlankStepGivesNothingAway() {
        StepBlock hidden = new StepBlock(
                1,
                new Symbol("X", ""),
                "what is wanted",
                Optional.of(FormulaReader.condition("secretC > 1 V")),
                Optional.of(FormulaReader.expression("secretA * secretB")),
                new Notation(Map.of(), Map.of(), Map.of(), DecimalMarker.POINT, Languages.ENGLISH),
                Optional.empty(),
                "secret principle",
                "secret reason",
                "q1a",
                UnitBox.ASKED,
                "");
        String markdown = MarkdownPage.render(new Document(
                Kind.SHEET, Languages.ENGLISH, "Title", "", "", Paper.A4, List.of(new Steps("", List.of(hidden)))));
        assertFalse(markdown.contains("secret"), markdown);
        assertTrue(markdown.contains("    q1a  X = ____________\n"), markdown);
    }

    @Test
    void onlyAKeySaysThatItIsOne() {
        assertEquals(3, MarkdownPage.render(SampleDocuments.key()).split(KEY_NOTICE, -1).length, "at head and foot");
        assertFalse(MarkdownPage.render(SampleDocuments.sheet()).contains(KEY_NOTICE));
    }

    @Test
    void hostileTextStaysText() {
        for (int turn = 0; turn < HostileTexts.BY_HAND.size(); turn++) {
            List<String> texts = new ArrayList<>(HostileTexts.BY_HAND);
            Collections.rotate(texts, turn);
            assertHarmless(texts, "by hand, turned by " + turn);
        }
        for (long seed = 1; seed <= 60; seed++) {
            assertHarmless(HostileTexts.random(seed, 61), "seed " + seed);
        }
    }

    private static void assertHarmless(List<String> texts, String which) {
        String markdown = MarkdownPage.render(SampleDocuments.hostile(Kind.SHEET, texts));
        List<Node> nodes = new ArrayList<>();
        collect(LimitedMarkdown.read(markdown), nodes);
        int headings = 0;
        int tables = 0;
        for (Node node : nodes) {
            assertFalse(
                    node instanceof HtmlBlockBase || node instanceof HtmlInlineBase || node instanceof Image,
                    () -> which + ": " + node.getChars());
            if (node instanceof Link) {
                assertTrue(LimitedMarkdown.address(node).isPresent(), () -> which + ": " + node.getChars());
            }
            headings += node instanceof Heading heading && heading.getLevel() == 1 ? 1 : 0;
            tables += node instanceof TableBlock ? 1 : 0;
        }
        assertEquals(1, headings, which + "\n" + markdown);
        assertTrue(tables >= 3, which + ": figure, key and table of the page, but " + tables + "\n" + markdown);
    }

    private static void collect(Node node, List<Node> nodes) {
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            nodes.add(child);
            collect(child, nodes);
        }
    }
}
