package ampersheet.figure;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A figure's SVG as the JDK's own XML parser reads it. */
final class SvgText {
    private SvgText() {}

    static Element parse(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            return factory.newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg)))
                    .getDocumentElement();
        } catch (Exception notWellFormed) {
            throw new AssertionError("not well formed: " + svg, notWellFormed);
        }
    }

    static List<Element> elements(Element root) {
        List<Element> elements = new ArrayList<>(List.of(root));
        NodeList all = root.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            elements.add((Element) all.item(i));
        }
        return elements;
    }
}
