package ampersheet.render.pdf;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads the markup that is laid out, as a reader of the page would. */
final class Xhtml {
    private Xhtml() {}

    /** How often each letter is to be seen, numbers of lists included. */
    static void lettersOf(String xhtml, Map<String, Integer> letters) {
        try {
            Element html = DocumentBuilderFactory.newDefaultInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(xhtml)))
                    .getDocumentElement();
            letters((Element) html.getElementsByTagName("body").item(0), letters);
        } catch (SAXException | IOException | ParserConfigurationException broken) {
            throw new AssertionError(xhtml, broken);
        }
    }

    private static void letters(Element element, Map<String, Integer> letters) {
        if (List.of("title", "desc").contains(element.getTagName())) {
            return;
        }
        int number = 0;
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element child) {
                if (child.getTagName().equals("li") && element.getTagName().equals("ol")) {
                    String own = child.getAttribute("value");
                    number = own.isEmpty() ? number + 1 : Integer.parseInt(own);
                    count(number + ".", letters);
                }
                letters(child, letters);
            } else if (node.getNodeType() == Node.TEXT_NODE) {
                count(node.getTextContent(), letters);
            }
        }
    }

    static void count(String text, Map<String, Integer> letters) {
        text.codePoints()
                .filter(c -> !Character.isWhitespace(c) && !Character.isSpaceChar(c))
                .forEach(c -> letters.merge(Character.toString(c), 1, Integer::sum));
    }
}
