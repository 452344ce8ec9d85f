package ampersheet.render.pdf;

import ampersheet.render.Markup;
import java.io.IOException;
import java.io.StringReader;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Sets formulas, given as the MathML of the formula room, in boxes that a page setter without MathML can lay out:
 * fractions stand on each other, radicands under a line.
 */
final class MathBoxes {
    private static final String INVISIBLE_TIMES = "\u2062";
    private static final String APPLIED = "\u2061";
    private static final String SIGNS_BETWEEN = "=≈+−×⋅<≤>≥≠∥mod";

    private static final String FENCES = "()[]⌊⌋⌈⌉|";
    /** Up to so many lines have signs of their own height; print.css has them. */
    private static final int MOST_LINES = 6;

    private final Markup markup;
    private final DocumentBuilder xml;

    MathBoxes(Markup markup) {
        this.markup = markup;
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            xml = factory.newDocumentBuilder();
        } catch (ParserConfigurationException missing) {
            throw new IllegalStateException("every Java platform reads XML", missing);
        }
    }

    /** @param mathMl children of a {@code math} element */
    void write(String mathMl) {
        try {
            children(xml.parse(new InputSource(new StringReader("<math>" + mathMl + "</math>")))
                    .getDocumentElement());
        } catch (SAXException | IOException broken) {
            throw new IllegalStateException("the formula room wrote MathML that cannot be read: " + mathMl, broken);
        }
    }

    private void children(Element parent) {
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                element(element);
            }
        }
    }

    private void element(Element element) {
        String text = element.getTextContent();
        switch (element.getTagName()) {
            case "mrow" -> children(element);
            case "mn", "mtext" -> markup.text(text);
            case "mi" -> letters(element, text);
            case "mo" -> sign(element, text);
            case "msub" -> script(element, "sub");
            case "msup" -> script(element, "sup");
            case "mfrac" -> {
                markup.open("span", "class", "fraction").open("span", "class", "above");
                child(element, 0);
                markup.close("span").open("span", "class", "below");
                child(element, 1);
                markup.close("span").close("span");
            }
            case "msqrt" -> {
                tall("√", lines(element));
                markup.open("span", "class", "radicand");
                children(element);
                markup.close("span");
            }
            default ->
                throw new IllegalStateException("a formula on paper cannot have the element " + element.getTagName());
        }
    }

    /** Quantity symbols are italic, names of functions and units upright (SI Brochure 5.4.1). */
    private void letters(Element element, String text) {
        boolean italic = text.codePointCount(0, text.length()) == 1
                && !element.getAttribute("mathvariant").equals("normal");
        if (italic) {
            markup.element("i", text);
        } else {
            markup.text(text);
        }
    }

    private void sign(Element element, String text) {
        if (FENCES.contains(text)) {
            tall(text, lines((Element) element.getParentNode()));
        } else if (text.equals(INVISIBLE_TIMES)) {
            markup.text("\u2009");
        } else if (text.equals(",")) {
            markup.text(", ");
        } else if (isBetween(element, text)) {
            markup.text(" " + text + " ");
        } else if (!text.equals(APPLIED)) {
            markup.text(text);
        }
    }

    /** As high as what it holds. */
    private void tall(String sign, int lines) {
        if (lines == 1) {
            markup.text(sign);
        } else {
            markup.open("span", "class", "tall lines-" + lines).text(sign).close("span");
        }
    }

    /** How many lines stand above each other in fractions. */
    private static int lines(Element element) {
        int most = 1;
        int all = 0;
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element inner) {
                int lines = lines(inner);
                most = Math.max(most, lines);
                all += lines;
            }
        }
        return Math.min(element.getTagName().equals("mfrac") ? all : most, MOST_LINES);
    }

    private static boolean isBetween(Element element, String text) {
        return SIGNS_BETWEEN.contains(text) && element.getPreviousSibling() != null && !element.hasAttribute("form");
    }

    private void script(Element element, String tag) {
        child(element, 0);
        int lines = lines(part(element, 0));
        if (lines == 1) {
            markup.open(tag);
        } else {
            markup.open(tag, "class", "beside-" + lines);
        }
        child(element, 1);
        markup.close(tag);
    }

    private void child(Element parent, int index) {
        element(part(parent, index));
    }

    private static Element part(Element parent, int index) {
        int at = 0;
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element && at++ == index) {
                return element;
            }
        }
        throw new IllegalStateException(parent.getTagName() + " without its part " + index);
    }
}
