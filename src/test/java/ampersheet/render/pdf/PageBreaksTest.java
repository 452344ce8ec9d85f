package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.render.pdf.PageBreaks.Kind;
import ampersheet.render.pdf.Piece.Before;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** Pages hold 100; the first is the front of a leaf, so the second and third lie side by side. */
class PageBreaksTest {
    private final List<Piece> pieces = new ArrayList<>();
    private Document elements;
    private double used;

    @BeforeEach
    void begin() throws ParserConfigurationException {
        elements = DocumentBuilderFactory.newInstance().newDocumentBuilder().newDocument();
    }

    private void piece(String name, double height, Before before) {
        pieces.add(new Piece(elements.createElement(name), used, used + height, before, false, Map.of()));
        used += height;
    }

    private String planned() {
        return String.join(
                " ",
                PageBreaks.of(pieces, 100).starts().stream()
                        .map(start -> start.element().getTagName()
                                + (start.kind() == Kind.NEXT_PAGE ? "" : "-" + start.kind()))
                        .toList());
    }

    @Test
    void problemsFollowEachOtherWhileThereIsRoom() {
        piece("head", 20, Before.PROBLEM);
        piece("first", 40, Before.PROBLEM);
        piece("second", 40, Before.PROBLEM);
        piece("third", 40, Before.PROBLEM);
        assertEquals("third", planned());
    }

    @Test
    void aProblemOfTwoPagesLiesOnASpread() {
        piece("head", 20, Before.PROBLEM);
        piece("opening", 60, Before.PROBLEM);
        piece("questions", 60, Before.REST);
        assertEquals("opening questions", planned());
    }

    @Test
    void aPageStaysEmptyRatherThanThatALeafIsTurnedInAProblem() {
        piece("head", 90, Before.PROBLEM);
        piece("one", 90, Before.PROBLEM);
        piece("opening", 60, Before.PROBLEM);
        piece("questions", 60, Before.REST);
        assertEquals("one opening-LEFT_PAGE questions", planned());
    }

    @Test
    void noPageStaysEmptyInAProblem() {
        piece("opening", 90, Before.PROBLEM);
        for (int step = 1; step <= 5; step++) {
            piece("step" + step, 45, step == 1 ? Before.REST : Before.QUESTION);
        }
        piece("next", 90, Before.PROBLEM);
        assertEquals("step1 step3 step5 next", planned());
    }

    @Test
    void aTwinLiesBesideItsExampleOnASpread() {
        piece("head", 20, Before.PROBLEM);
        piece("example", 70, Before.PROBLEM);
        piece("twin", 70, Before.TWIN);
        assertEquals("example twin", planned());
    }

    /** Words, then the figure with what is asked: not the words and the figure's givens here, the figure overleaf. */
    @Test
    void whereWordsAndFigureNeedTwoPagesTheyFaceEachOther() {
        piece("head", 30, Before.PROBLEM);
        piece("words", 60, Before.PROBLEM);
        piece("figure", 70, Before.FIGURE);
        piece("question", 25, Before.REST);
        assertEquals("words figure", planned());
    }

    @Test
    void whatIsLongerThanAPageTakesAsManyAsItNeeds() {
        piece("table", 150, Before.PROBLEM);
        piece("opening", 60, Before.PROBLEM);
        piece("questions", 60, Before.REST);
        assertEquals("opening-LEFT_PAGE questions", planned());
    }
}
