package ampersheet.render.html;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.helpers.DefaultHandler;

/** A page read by the strict parser of the JDK. */
final class Xhtml {
    private Xhtml() {}

    static Document parse(String page) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setNamespaceAware(true);
        DocumentBuilder builder = factory.newDocumentBuilder();
        builder.setErrorHandler(new DefaultHandler());
        builder.setEntityResolver((publicId, systemId) -> {
            throw new AssertionError("the page asks for " + systemId);
        });
        return builder.parse(new InputSource(new StringReader(page)));
    }

    static List<Element> elements(Document page, String name) {
        NodeList found = page.getElementsByTagNameNS("*", name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    /** The element itself and all in it. */
    static List<Element> descendants(Element element) {
        List<Element> all = new ArrayList<>();
        all.add(element);
        for (org.w3c.dom.Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inner) {
                all.addAll(descendants(inner));
            }
        }
        return all;
    }

    static List<String> attributes(Element element) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            names.add(element.getAttributes().item(i).getNodeName());
        }
        return names;
    }
}
