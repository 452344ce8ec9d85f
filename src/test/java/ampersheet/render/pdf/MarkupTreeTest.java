package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class MarkupTreeTest {
    private static Element paragraph(String inside) {
        String page = "<html xmlns=\"http://www.w3.org/1999/xhtml\"><head><title>t</title></head><body><p>" + inside
                + "</p></body></html>";
        return (Element) MarkupTree.of(new PrintMarkup.Print(page, List.of()))
                .nodes()
                .getElementsByTagName("p")
                .item(0);
    }

    @Test
    void punctuationStaysWithTheLastWordAndOutOfItsBoldLook() {
        Element strong = (Element) paragraph("a <strong>gap of 400</strong>, then")
                .getElementsByTagName("strong")
                .item(0);
        assertEquals("gap of ", strong.getFirstChild().getTextContent());
        Element kept = (Element) strong.getLastChild();
        assertEquals("kept", kept.getAttribute("class"));
        assertEquals("400,", kept.getTextContent());
        Element mark = (Element) kept.getLastChild();
        assertEquals("mark", mark.getAttribute("class"));
        assertEquals(",", mark.getTextContent());
        assertEquals(" then", strong.getNextSibling().getTextContent());
    }

    @Test
    void aNumberIsNotPartedFromItsUnit() {
        assertEquals("fuses of 1\u00a0A, 3.15\u00a0A or 8\u00a0A", MarkupTree.unitsKept("fuses of 1 A, 3.15 A or 8 A"));
        assertEquals("10⁻⁸\u00a0Ω·m at 20\u00a0°C, 5\u00a0%", MarkupTree.unitsKept("10⁻⁸ Ω·m at 20 °C, 5 %"));
        assertEquals("tile 3 at the left, 12 As", MarkupTree.unitsKept("tile 3 at the left, 12 As"));
        assertEquals("from 20\u00a0°C on", paragraph("from 20 °C on").getTextContent());
    }
}
