package ampersheet.render.qti;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * An element of an item, with the names of both versions made one: {@code response-else-if} for
 * {@code qti-response-else-if} and {@code responseElseIf}.
 */
record ReadElement(String name, Map<String, String> attributes, String text, List<ReadElement> children) {
    static ReadElement of(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return of(factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement());
    }

    private static ReadElement of(Element element) {
        String name = element.getLocalName();
        Map<String, String> attributes = new TreeMap<>();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Node attribute = element.getAttributes().item(i);
            attributes.put(hyphened(attribute.getNodeName()), attribute.getNodeValue());
        }
        List<ReadElement> children = new ArrayList<>();
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element child) {
                children.add(of(child));
            }
        }
        return new ReadElement(
                name.startsWith("qti-") ? name.substring("qti-".length()) : hyphened(name),
                attributes,
                element.getTextContent(),
                children);
    }

    private static String hyphened(String name) {
        return name.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
    }

    String identifier() {
        return attributes.get("identifier");
    }

    ReadElement child(int at) {
        return children.get(at);
    }

    ReadElement child(String named) {
        return children.stream()
                .filter(child -> child.name.equals(named))
                .findFirst()
                .orElseThrow();
    }
}
