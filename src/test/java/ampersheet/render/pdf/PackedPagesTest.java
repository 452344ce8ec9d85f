package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.render.pdf.Piece.Before;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** Pages hold 100, a row of columns 4 less; pages stand between bars, the left column before a slash. */
class PackedPagesTest {
    private final List<Piece> pieces = new ArrayList<>();
    private Document elements;
    private double used;

    @BeforeEach
    void begin() throws ParserConfigurationException {
        elements = DocumentBuilderFactory.newInstance().newDocumentBuilder().newDocument();
    }

    private void piece(String name, double height, Before before, boolean narrow, Map<String, Double> cautions) {
        pieces.add(new Piece(elements.createElement(name), used, used + height, before, narrow, cautions));
        used += height;
    }

    private void narrow(String name, double height, Before before) {
        piece(name, height, before, true, Map.of());
    }

    private void wide(String name, double height) {
        piece(name, height, Before.PROBLEM, false, Map.of());
    }

    private String planned() {
        return PackedPages.of(pieces, 100).stream()
                .map(page -> page.rows().stream().map(this::row).collect(Collectors.joining(" ")))
                .collect(Collectors.joining(" | "));
    }

    private String row(PackedPages.Row row) {
        List<String> names = new ArrayList<>();
        for (int i = row.from(); i < row.to(); i++) {
            names.add((i == row.right() && row.hasColumns() ? "/" : "")
                    + pieces.get(i).start().getTagName());
        }
        return String.join(" ", names);
    }

    @Test
    void anExampleAndItsTwinStandSideBySide() {
        wide("head", 20);
        narrow("example", 70, Before.PROBLEM);
        narrow("twin", 70, Before.TWIN);
        assertEquals("head example /twin", planned());
    }

    @Test
    void whatIsWideStandsBetweenRowsOfColumns() {
        narrow("a", 30, Before.PROBLEM);
        narrow("b", 30, Before.PROBLEM);
        wide("w", 20);
        narrow("c", 30, Before.PROBLEM);
        narrow("d", 30, Before.PROBLEM);
        assertEquals("a /b w c /d", planned());
    }

    @Test
    void aProblemIsPartedFromItsFigureOnlyWhereThatSavesAPage() {
        narrow("a", 90, Before.PROBLEM);
        narrow("words", 40, Before.PROBLEM);
        narrow("figure", 60, Before.FIGURE);
        assertEquals("a | words /figure", planned(), "a page more costs nothing here that is not there anyway");
        narrow("b", 90, Before.PROBLEM);
        assertEquals("a /words | figure /b", planned());
    }

    @Test
    void pagesAreAsFewAsHoldThePiecesAndTheRestIsKnown() {
        narrow("a", 40, Before.PROBLEM);
        narrow("b", 40, Before.PROBLEM);
        narrow("c", 40, Before.PROBLEM);
        assertEquals(1, PackedPages.of(pieces, 100).size());
        assertEquals(100 - 84, PackedPages.of(pieces, 100).get(0).rest(), 1e-9);
    }

    @Test
    void aCautionThatStandsAboveOnThePageTakesLess() {
        piece("a", 60, Before.PROBLEM, true, Map.of("hot", 30.0));
        piece("b", 60, Before.PROBLEM, true, Map.of("hot", 30.0));
        piece("c", 60, Before.PROBLEM, true, Map.of("hot", 30.0));
        assertEquals("a /b c", planned(), "60 + 4 beside 30 + 30 + 4");
    }

    @Test
    void aPieceLongerThanAPageHasOneForItself() {
        narrow("a", 20, Before.PROBLEM);
        wide("long", 150);
        narrow("b", 20, Before.PROBLEM);
        assertEquals("a | long | b", planned());
    }

    @Test
    void aPageThatGoesOnWithAProblemHasALineMoreToSaySo() {
        narrow("words", 90, Before.PROBLEM);
        narrow("first", 90, Before.REST);
        narrow("second", 80, Before.QUESTION);
        narrow("third", 80, Before.QUESTION);
        assertEquals("words /first | second /third", planned());
        assertEquals(100 - (15 + 80 + 4), PackedPages.of(pieces, 100).get(1).rest(), 1e-9);
    }
}
