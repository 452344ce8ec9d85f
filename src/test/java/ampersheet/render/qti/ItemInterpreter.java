package ampersheet.render.qti;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Scores an item as a platform would, from its XML alone and by the words of the format, in either version: a
 * comparison with nothing is nothing and counts as false, and so does its contrary.
 */
final class ItemInterpreter {
    private final Element item;
    private final Map<String, String> types = new TreeMap<>();
    private final Map<String, Object> defaults = new TreeMap<>();

    ItemInterpreter(String xml) throws Exception {
        item = read(xml);
        for (Element child : children(item)) {
            String identifier = child.getAttribute("identifier");
            if (name(child).equals("response-declaration")) {
                types.put(identifier, attribute(child, "base-type"));
            } else if (name(child).equals("outcome-declaration")) {
                types.put(identifier, attribute(child, "base-type"));
                if (!children(child).isEmpty()) {
                    String text = children(children(child).get(0)).get(0).getTextContent();
                    defaults.put(identifier, value(attribute(child, "base-type"), text));
                }
            }
        }
    }

    static Element read(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
    }

    private static Object value(String type, String text) {
        return type.equals("float") || type.equals("integer") ? (Object) Double.valueOf(text) : text;
    }

    /** Values of the outcomes for these responses at the first attempt; one that is missing was left open. */
    Map<String, Object> score(Map<String, String> responses) {
        return score(responses, 1);
    }

    Map<String, Object> score(Map<String, String> responses, int attempt) {
        Map<String, Object> variables = new TreeMap<>(defaults);
        variables.put("numAttempts", (double) attempt);
        responses.forEach((name, text) -> variables.put(name, value(types.get(name), text)));
        for (Element condition : children(child(item, "response-processing"))) {
            process(condition, variables);
        }
        return variables;
    }

    private void process(Element condition, Map<String, Object> variables) {
        for (Element branch : children(condition)) {
            List<Element> parts = children(branch);
            boolean otherwise = name(branch).equals("response-else");
            if (otherwise || holds(parts.get(0), variables)) {
                parts.subList(otherwise ? 0 : 1, parts.size()).forEach(rule -> {
                    if (!name(rule).equals("set-outcome-value")) {
                        throw new IllegalArgumentException(name(rule));
                    }
                    variables.put(
                            rule.getAttribute("identifier"),
                            evaluate(children(rule).get(0), variables).orElseThrow());
                });
                return;
            }
        }
    }

    private boolean holds(Element of, Map<String, Object> variables) {
        return Boolean.TRUE.equals(evaluate(of, variables).orElse(null));
    }

    private Optional<Object> evaluate(Element of, Map<String, Object> variables) {
        List<Element> parts = children(of);
        switch (name(of)) {
            case "variable":
                if (!types.containsKey(of.getAttribute("identifier"))
                        && !of.getAttribute("identifier").equals("numAttempts")) {
                    throw new IllegalArgumentException("not declared: " + of.getAttribute("identifier"));
                }
                return Optional.ofNullable(variables.get(of.getAttribute("identifier")));
            case "base-value":
                return Optional.of(value(attribute(of, "base-type"), of.getTextContent()));
            case "is-null":
                return Optional.of(evaluate(parts.get(0), variables).isEmpty());
            case "not":
                return evaluate(parts.get(0), variables).map(value -> !(Boolean) value);
            case "and":
                return Optional.of(parts.stream().allMatch(part -> holds(part, variables)));
            case "or":
                return Optional.of(parts.stream().anyMatch(part -> holds(part, variables)));
            case "sum":
                double sum = 0;
                for (Element part : parts) {
                    sum += (Double) evaluate(part, variables).orElseThrow();
                }
                return Optional.of(sum);
            case "match":
                return both(parts, variables).map(pair -> pair.get(0).equals(pair.get(1)));
            case "gte":
                return both(parts, variables).map(pair -> (Double) pair.get(0) >= (Double) pair.get(1));
            case "lte":
                return both(parts, variables).map(pair -> (Double) pair.get(0) <= (Double) pair.get(1));
            default:
                throw new IllegalArgumentException("an element nobody told of: " + of.getLocalName());
        }
    }

    private Optional<List<Object>> both(List<Element> parts, Map<String, Object> variables) {
        Optional<Object> first = evaluate(parts.get(0), variables);
        Optional<Object> second = evaluate(parts.get(1), variables);
        return first.isPresent() && second.isPresent()
                ? Optional.of(List.of(first.get(), second.get()))
                : Optional.empty();
    }

    // Names of both versions

    /** {@code response-else-if} for {@code qti-response-else-if} and {@code responseElseIf}. */
    static String name(Element of) {
        String name = of.getLocalName();
        return name.startsWith("qti-") ? name.substring("qti-".length()) : hyphened(name);
    }

    private static String attribute(Element of, String name) {
        for (int i = 0; i < of.getAttributes().getLength(); i++) {
            if (hyphened(of.getAttributes().item(i).getNodeName()).equals(name)) {
                return of.getAttributes().item(i).getNodeValue();
            }
        }
        return "";
    }

    private static String hyphened(String name) {
        return name.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
    }

    private static Element child(Element of, String name) {
        return children(of).stream()
                .filter(child -> name(child).equals(name))
                .findFirst()
                .orElseThrow();
    }

    static List<Element> children(Element of) {
        List<Element> children = new ArrayList<>();
        for (Node node = of.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }
}
