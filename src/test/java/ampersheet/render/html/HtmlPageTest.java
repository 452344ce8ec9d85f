package ampersheet.render.html;

import static ampersheet.render.html.Xhtml.attributes;
import static ampersheet.render.html.Xhtml.descendants;
import static ampersheet.render.html.Xhtml.elements;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.figure.Figure;
import ampersheet.figure.Pictures;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.render.Address;
import ampersheet.render.Golden;
import ampersheet.render.HostileTexts;
import ampersheet.render.SampleDocuments;
import ampersheet.render.Wording;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class HtmlPageTest {
    private static final String KEY_NOTICE = Languages.ENGLISH.say("print.key-notice");

    private static final List<Document> PAGES =
            List.of(SampleDocuments.sheet(), SampleDocuments.key(), SampleDocuments.index());

    /** Elements of MathML Core (W3C) that formulas may use; {@code mfenced} and {@code menclose} are not among them. */
    private static final Set<String> MATHML_CORE = Set.of(
            "math",
            "mrow",
            "mi",
            "mn",
            "mo",
            "mtext",
            "mspace",
            "mfrac",
            "msqrt",
            "mroot",
            "mstyle",
            "mpadded",
            "msub",
            "msup",
            "msubsup",
            "munder",
            "mover",
            "munderover",
            "mtable",
            "mtr",
            "mtd");

    private static final Set<String> MATHML_CORE_ATTRIBUTES = Set.of(
            "xmlns",
            "aria-label",
            "display",
            "displaystyle",
            "mathvariant",
            "class",
            "width",
            "stretchy",
            "lspace",
            "rspace",
            "form",
            "fence",
            "separator",
            "linethickness",
            "scriptlevel",
            "dir");

    private static final Set<String> ELEMENTS = Set.of(
            "html",
            "head",
            "meta",
            "title",
            "style",
            "body",
            "header",
            "main",
            "footer",
            "section",
            "h1",
            "h2",
            "h3",
            "h4",
            "h5",
            "h6",
            "p",
            "div",
            "span",
            "b",
            "strong",
            "em",
            "cite",
            "a",
            "code",
            "pre",
            "br",
            "hr",
            "ul",
            "ol",
            "li",
            "dl",
            "dt",
            "dd",
            "blockquote",
            "figure",
            "figcaption",
            "details",
            "summary",
            "table",
            "caption",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "svg",
            "g",
            "path",
            "circle",
            "rect",
            "text",
            "tspan",
            "desc");

    // Whole pages

    @Test
    void pagesAreTheOnesThatWereLookedAt() {
        assertAll(
                () -> Golden.assertSame("ampersheet/render/html/sheet.html", withoutStyle(SampleDocuments.sheet())),
                () -> Golden.assertSame("ampersheet/render/html/key.html", withoutStyle(SampleDocuments.key())),
                () -> Golden.assertSame("ampersheet/render/html/index.html", withoutStyle(SampleDocuments.index())));
    }

    /** The style sheet is a file of its own already. */
    private static String withoutStyle(Document document) {
        String html = HtmlPage.render(document);
        return html.substring(0, html.indexOf("<style>")) + html.substring(html.indexOf("</style>") + 9);
    }

    @Test
    void pagesAreWellFormedXmlWithLanguageAndLandmarks() throws Exception {
        for (Document document : PAGES) {
            org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(document));
            assertEquals("en", page.getDocumentElement().getAttribute("lang"));
            for (String landmark : List.of("header", "main", "footer")) {
                assertEquals(1, elements(page, landmark).size(), landmark);
            }
            assertFalse(elements(page, "title").get(0).getTextContent().isBlank());
        }
    }

    @Test
    void aPageHasOneFirstHeadingAndOneSecondForEachProblem() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(SampleDocuments.sheet()));
        assertEquals(1, elements(page, "h1").size());
        assertEquals(3, elements(page, "h2").size());
        for (Element section : elements(page, "section")) {
            String id = section.getAttribute("aria-labelledby");
            assertEquals(
                    1,
                    elements(page, "h2").stream()
                            .filter(h2 -> h2.getAttribute("id").equals(id))
                            .count(),
                    id);
        }
    }

    @Test
    void headingsNeverSkipALevel() throws Exception {
        for (Document document : PAGES) {
            int before = 0;
            for (Element element : elements(Xhtml.parse(HtmlPage.render(document)), "*")) {
                if (element.getLocalName().matches("h[1-6]")) {
                    int level = element.getLocalName().charAt(1) - '0';
                    assertTrue(
                            level <= before + 1, "h" + level + " after h" + before + ": " + element.getTextContent());
                    before = level;
                }
            }
        }
    }

    @Test
    void nothingIsFetchedAndNothingRuns() throws Exception {
        for (Document document : PAGES) {
            String html = HtmlPage.render(document);
            assertNothingFetchedOrRun(Xhtml.parse(html), document.title());
            assertTrue(html.contains("content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:;"));
        }
    }

    @Test
    void everyIdIsUniqueAndEveryReferenceMeetsOne() throws Exception {
        for (Document document : PAGES) {
            assertIdsUniqueAndMet(Xhtml.parse(HtmlPage.render(document)), document.title());
        }
    }

    @Test
    void theSameDocumentGivesTheSameBytes() {
        String html = HtmlPage.render(SampleDocuments.sheet());
        assertEquals(html, HtmlPage.render(SampleDocuments.sheet()));
        assertTrue(html.endsWith("</html>\n"));
        assertFalse(html.contains("\r"));
    }

    // Formulas

    @Test
    void formulasKeepToMathMlCore() throws Exception {
        int formulas = 0;
        for (Document document : PAGES) {
            for (Element math : elements(Xhtml.parse(HtmlPage.render(document)), "math")) {
                formulas++;
                for (Element element : descendants(math)) {
                    assertTrue(MATHML_CORE.contains(element.getLocalName()), element.getLocalName());
                    for (String attribute : attributes(element)) {
                        assertTrue(
                                MATHML_CORE_ATTRIBUTES.contains(attribute), element.getLocalName() + " " + attribute);
                    }
                    if (element.hasAttribute("mathvariant")) {
                        assertEquals("normal", element.getAttribute("mathvariant"), "the only variant of MathML Core");
                    }
                }
            }
        }
        assertTrue(formulas > 25, "only " + formulas + " formulas seen");
    }

    @Test
    void aStepShowsFormulaNumbersAndResultUnderEachOther() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(SampleDocuments.sheet()));
        List<Element> rows = descendants(elements(page, "mtable").get(1)).stream()
                .filter(e -> e.getLocalName().equals("mtr"))
                .toList();
        assertEquals(3, rows.size());
        assertEquals(List.of("R", "=", "VrIf"), cells(rows.get(0)));
        assertEquals(List.of("", "=", "7V16mA"), cells(rows.get(1)));
        assertEquals(List.of("", "=", "437.5Ω"), cells(rows.get(2)));
    }

    @Test
    void aRoundedResultIsOnlyAboutEqual() {
        String html = HtmlPage.render(SampleDocuments.sheet());
        assertTrue(html.contains("<mo>≈</mo>"), "104.255… mW was rounded");
        assertFalse(html.substring(0, html.indexOf("Ohm's law")).contains("<mo>≈</mo>"), "7 V is exact");
    }

    @Test
    void aLineThatWouldOnlyRepeatTheOneBeforeIsLeftOut() throws Exception {
        Notation nothing = new Notation(
                Map.of("n", new Symbol("n", "")), Map.of(), Map.of(), DecimalMarker.POINT, Languages.ENGLISH);
        StepBlock constant = new StepBlock(
                1,
                new Symbol("n", ""),
                "number of colours",
                Optional.empty(),
                Optional.of(FormulaReader.expression("3")),
                nothing,
                Optional.of(QuantityWriter.POINT.plain(3, Unit.parse("1"), 4)),
                "counting",
                "",
                "",
                UnitBox.ASKED,
                "");
        String html = HtmlPage.render(page(new Steps("", List.of(constant))));
        assertEquals(1, elements(Xhtml.parse(html), "mtr").size());
    }

    // Places and hiding

    @Test
    void aBlankStepGivesNothingAway() {
        StepBlock hidden = new StepBlock(
                1,
                new Symbol("X", ""),
                "what is wanted",
                Optional.of(FormulaReader.condition("secretC > 1 V")),
                Optional.of(FormulaReader.expression("secretA * secretB")),
                new Notation(
                        Map.of("secretA", new Symbol("secretA", ""), "secretB", new Symbol("secretB", "")),
                        Map.of(),
                        Map.of(),
                        DecimalMarker.POINT,
                        Languages.ENGLISH),
                Optional.empty(),
                "secret principle",
                "secret reason",
                "q1a",
                UnitBox.ASKED,
                "");
        String html = HtmlPage.render(page(new Steps("", List.of(hidden))));
        assertFalse(html.contains("secret"), html.substring(html.indexOf("<main>")));
        assertTrue(html.contains("What is wanted") && html.contains("q1a"));
    }

    @Test
    void everyPlaceToWriteSaysWhatItIsFor() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(SampleDocuments.sheet()));
        List<String> names = elements(page, "span").stream()
                .filter(span -> span.getAttribute("class").equals("blank"))
                .map(span -> span.getAttribute("aria-label"))
                .toList();
        assertEquals(
                List.of(
                        "Place to write q2a, resistance that sets the current",
                        "Place to write q2b, power the preferred resistor turns into heat",
                        "Place to write q2c: value and unit",
                        "Place to write q2d: in Ω",
                        "Place to write q3a: in °C",
                        "Place to write q3c",
                        "Place to write q3d: in % or as a fraction"),
                names);
        assertEquals(
                elements(page, "p").stream()
                        .filter(p -> p.getAttribute("class").equals("place"))
                        .count(),
                names.size());
    }

    @Test
    void aQuestionWithOptionsHasABoxForEach() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(
                page(new Question("q1a", "Which?", Optional.empty(), "", List.of("left", "right", "none")))));
        assertEquals(
                3,
                elements(page, "span").stream()
                        .filter(span -> span.getAttribute("class").equals("box"))
                        .count());
    }

    @Test
    void aCautionIsSignedAndNamedNotOnlyColoured() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(page(new Caution("Hot parts", "Let it cool."))));
        Element sign = elements(page, "span").stream()
                .filter(span -> span.getAttribute("class").equals("sign"))
                .findFirst()
                .orElseThrow();
        assertEquals("⚠", sign.getTextContent());
        assertEquals("true", sign.getAttribute("aria-hidden"), "the word says it to whoever hears the page");
        String text = elements(page, "main").get(0).getTextContent();
        assertTrue(
                text.indexOf("Caution:") < text.indexOf("Hot parts")
                        && text.indexOf("Hot parts") < text.indexOf("Let it cool."),
                text);
    }

    @Test
    void onlyAKeySaysThatItIsOne() {
        String key = HtmlPage.render(SampleDocuments.key());
        assertTrue(key.contains("<title>Key — not for handing out · "));
        assertEquals(
                4,
                key.split(KEY_NOTICE, -1).length,
                "in the title, at the head and at the foot; in the margin it is written in codes");
        assertFalse(HtmlPage.render(SampleDocuments.sheet()).contains(KEY_NOTICE));
    }

    @Test
    void aFigureIsDescribedInWordsWithHeadedTable() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(SampleDocuments.sheet()));
        assertEquals(2, elements(page, "figure").size());
        Element details = elements(page, "details").get(0);
        assertFalse(details.hasAttribute("open"));
        List<Element> heads = descendants(details).stream()
                .filter(e -> e.getLocalName().equals("th"))
                .toList();
        assertEquals(5 + 3, heads.size(), "five columns, three rows");
        heads.forEach(head -> assertTrue(
                head.getParentNode().getParentNode().getLocalName().equals("thead")
                        || head.getPreviousSibling() == null,
                "a browser takes what stands in the head for a column's, what stands first in a row for the row's"));
        assertTrue(details.getTextContent().contains("into the anode of LED D1"), details.getTextContent());
    }

    @Test
    void aWideDrawingTakesTheWidthOfThePageAndScrollsOnAPhone() {
        assertTrue(DrawingSize.of(Pictures.of(627, 282, "")).isWide());
        assertEquals(new DrawingSize(340, 230), DrawingSize.of(Pictures.of(340, 230, "")));
        String html = HtmlPage.render(page(
                new Givens(List.of()),
                new FigureBlock(new Figure(
                        Pictures.of(627, 282, "<svg></svg>"),
                        "wall",
                        "",
                        new Figure.Table(List.of(), List.of()),
                        List.of()))));
        assertTrue(html.contains("class=\"setting stacked\""));
        assertTrue(html.contains("class=\"drawing long\" tabindex=\"0\" role=\"group\" aria-labelledby=\"nothing-"));
    }

    @Test
    void aLongEquationTakesTheWidthOfThePageAndAFractionIsNoWiderThanItsWiderPart() {
        assertTrue(stepOf("alpha + bravo + charlie + delta + echo").contains("class=\"step wide\""));
        assertFalse(stepOf("(alpha + bravo + charlie) / (delta + echo)").contains("class=\"step wide\""));
    }

    private static String stepOf(String formula) {
        Notation letters = new Notation(
                Map.of(
                        "alpha",
                        new Symbol("alpha", ""),
                        "bravo",
                        new Symbol("bravo", ""),
                        "charlie",
                        new Symbol("charlie", ""),
                        "delta",
                        new Symbol("delta", ""),
                        "echo",
                        new Symbol("echo", "")),
                Map.of(),
                Map.of(),
                DecimalMarker.POINT,
                Languages.ENGLISH);
        return HtmlPage.render(page(new Steps(
                "",
                List.of(new StepBlock(
                        1,
                        new Symbol("x", ""),
                        "sum",
                        Optional.empty(),
                        Optional.of(FormulaReader.expression(formula)),
                        letters,
                        Optional.of(QuantityWriter.POINT.plain(3, Unit.parse("1"), 4)),
                        "",
                        "",
                        "",
                        UnitBox.ASKED,
                        "")))));
    }

    @Test
    void tablesThatBecomeCardsOnAPhoneKeepTheirRoles() throws Exception {
        org.w3c.dom.Document page = Xhtml.parse(HtmlPage.render(SampleDocuments.index()));
        for (Element element : descendants(elements(page, "table").get(0))) {
            switch (element.getLocalName()) {
                case "table" -> assertEquals("table", element.getAttribute("role"));
                case "thead", "tbody" -> assertEquals("rowgroup", element.getAttribute("role"));
                case "tr" -> assertEquals("row", element.getAttribute("role"));
                case "td" -> assertEquals("cell", element.getAttribute("role"));
                case "th" ->
                    assertEquals(
                            element.getAttribute("scope").equals("col") ? "columnheader" : "rowheader",
                            element.getAttribute("role"));
                default -> assertEquals("", element.getAttribute("role"));
            }
        }
    }

    // Paper

    @Test
    void paperSizeAndRunningSheetIdFollowTheDocument() {
        assertTrue(HtmlPage.render(SampleDocuments.sheet()).contains("size: A4;"));
        assertTrue(HtmlPage.render(SampleDocuments.key()).contains("size: letter;"));
        assertTrue(HtmlPage.render(SampleDocuments.sheet()).contains("content: \"Sheet 7KQ\\2d 4M2\\2d P\";"));
    }

    @Test
    void aProblemThatFitsOnAPageIsKeptWholeAndALongerOneIsNot() {
        Prose paragraph = new Prose("word ".repeat(100));
        assertTrue(HtmlPage.render(page(problem(paragraph))).contains("class=\"problem whole\""));
        assertFalse(
                HtmlPage.render(page(problem(Collections.nCopies(8, paragraph).toArray(Block[]::new))))
                        .contains("problem whole"));
    }

    @Test
    void theFirstProblemSharesItsPageWithWhatStandsAboveIt() {
        Prose paragraph = new Prose("word ".repeat(100));
        Block problem = problem(paragraph, paragraph, paragraph);
        assertTrue(HtmlPage.render(page(problem)).contains("problem whole"));
        assertFalse(HtmlPage.render(page(paragraph, paragraph, problem)).contains("problem whole"));
    }

    // Hostile

    @Test
    void hostileTextStaysText() throws Exception {
        for (int turn = 0; turn < HostileTexts.BY_HAND.size(); turn++) {
            List<String> texts = new ArrayList<>(HostileTexts.BY_HAND);
            Collections.rotate(texts, turn);
            assertHarmless(texts, "by hand, turned by " + turn);
        }
    }

    @Test
    void hostileTextPutTogetherAtRandomStaysText() throws Exception {
        for (long seed = 1; seed <= 60; seed++) {
            assertHarmless(HostileTexts.random(seed, 61), "seed " + seed);
        }
    }

    @Test
    void aLinkThatMayNotBeFollowedIsText() throws Exception {
        Table table = new Table(
                "",
                List.of("a", "b", "c"),
                List.of(List.of(
                        new Cell("bad", "javascript:alert(1)"),
                        new Cell("none", ""),
                        new Cell("fine", "sheets/a.html"))));
        List<Element> links = elements(Xhtml.parse(HtmlPage.render(page(table))), "a");
        assertEquals(
                List.of("fine"), links.stream().map(Element::getTextContent).toList());
    }

    private static void assertHarmless(List<String> texts, String which) throws Exception {
        for (Kind kind : Kind.values()) {
            Document document = SampleDocuments.hostile(kind, texts);
            org.w3c.dom.Document page;
            try {
                page = Xhtml.parse(HtmlPage.render(document));
            } catch (org.xml.sax.SAXException e) {
                throw new AssertionError(which + ": not well-formed: " + e.getMessage() + "\n" + texts, e);
            }
            assertNothingFetchedOrRun(page, which);
            assertEquals(1, elements(page, "h1").size(), which);
            assertEquals(
                    Wording.oneLine(document.title()),
                    elements(page, "h1").get(0).getTextContent(),
                    which);
            assertIdsUniqueAndMet(page, which);
        }
    }

    private static void assertNothingFetchedOrRun(org.w3c.dom.Document page, String which) {
        Set<String> fetching = Set.of(
                "src", "srcset", "style", "action", "formaction", "data", "xlink:href", "background", "poster", "ping");
        for (Element element : elements(page, "*")) {
            String name = element.getLocalName();
            assertTrue(ELEMENTS.contains(name) || MATHML_CORE.contains(name), which + ": element " + name);
            for (String attribute : attributes(element)) {
                assertFalse(attribute.startsWith("on") || fetching.contains(attribute), which + ": " + attribute);
                if (attribute.equals("href")) {
                    assertEquals("a", name, which);
                    assertTrue(
                            Address.isAllowed(element.getAttribute("href")),
                            which + ": " + element.getAttribute("href"));
                }
            }
        }
        assertEquals(1, elements(page, "style").size(), which);
        String style = elements(page, "style").get(0).getTextContent();
        for (String outside : List.of("url(", "@import", "expression(", "src:", "//")) {
            assertFalse(style.contains(outside), which + ": " + outside + " in the style sheet");
        }
    }

    private static void assertIdsUniqueAndMet(org.w3c.dom.Document page, String which) {
        Set<String> ids = new HashSet<>();
        for (Element element : elements(page, "*")) {
            String id = element.getAttribute("id");
            assertTrue(id.isEmpty() || ids.add(id), which + ": twice: " + id);
        }
        for (Element element : elements(page, "*")) {
            for (String reference : element.getAttribute("aria-labelledby").split(" ")) {
                assertTrue(reference.isEmpty() || ids.contains(reference), which + ": nobody is " + reference);
            }
        }
    }

    // Pieces

    private static Document page(Block... blocks) {
        return new Document(Kind.SHEET, Languages.ENGLISH, "Title", "", "7KQ-4M2-P", Paper.A4, List.of(blocks));
    }

    private static ProblemBlock problem(Block... blocks) {
        return new ProblemBlock("1", "A problem", List.of(), List.of(blocks));
    }

    private static List<String> cells(Element row) {
        return descendants(row).stream()
                .filter(e -> e.getLocalName().equals("mtd"))
                .map(e -> e.getTextContent().replaceAll("[\\s\u00a0\u202f\u2061\u2062]", ""))
                .toList();
    }
}
