package ampersheet.render.qti;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Scores an item as a platform would, from its XML alone and by the words of the format: a comparison with nothing is
 * nothing and counts as false, and {@code qti-equal} with an absolute tolerance asks whether the second value lies from
 * the first less the one tolerance to the first plus the other, ends included.
 */
final class ItemInterpreter {
    private final Element item;
    private final Map<String, String> types = new TreeMap<>();
    private final Map<String, Object> correct = new TreeMap<>();
    private final Map<String, Object> defaults = new TreeMap<>();

    ItemInterpreter(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        item = factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
        for (Element child : children(item)) {
            String name = child.getAttribute("identifier");
            if (child.getLocalName().equals("qti-response-declaration")) {
                types.put(name, child.getAttribute("base-type"));
                correct.put(name, value(child));
            } else if (child.getLocalName().equals("qti-outcome-declaration")) {
                types.put(name, child.getAttribute("base-type"));
                if (!children(child).isEmpty()) {
                    defaults.put(name, value(child));
                }
            }
        }
    }

    private Object value(Element declaration) {
        String text = children(children(declaration).get(0)).get(0).getTextContent();
        return declaration.getAttribute("base-type").equals("float") ? (Object) Double.valueOf(text) : text;
    }

    /** Values of the outcomes for these responses; one that is missing was left open. */
    Map<String, Object> score(Map<String, String> responses) {
        Map<String, Object> variables = new TreeMap<>(defaults);
        responses.forEach((name, text) ->
                variables.put(name, types.get(name).equals("float") ? (Object) Double.valueOf(text) : text));
        for (Element condition : children(child(item, "qti-response-processing"))) {
            process(condition, variables);
        }
        return variables;
    }

    private void process(Element condition, Map<String, Object> variables) {
        for (Element branch : children(condition)) {
            List<Element> parts = children(branch);
            boolean otherwise = branch.getLocalName().equals("qti-response-else");
            if (otherwise
                    || Boolean.TRUE.equals(evaluate(parts.get(0), variables).orElse(null))) {
                parts.subList(otherwise ? 0 : 1, parts.size()).forEach(rule -> {
                    if (!rule.getLocalName().equals("qti-set-outcome-value")) {
                        throw new IllegalArgumentException(rule.getLocalName());
                    }
                    variables.put(
                            rule.getAttribute("identifier"),
                            evaluate(children(rule).get(0), variables).orElseThrow());
                });
                return;
            }
        }
    }

    private Optional<Object> evaluate(Element of, Map<String, Object> variables) {
        List<Element> parts = children(of);
        switch (of.getLocalName()) {
            case "qti-variable":
                return Optional.ofNullable(variables.get(of.getAttribute("identifier")));
            case "qti-correct":
                return Optional.ofNullable(correct.get(of.getAttribute("identifier")));
            case "qti-base-value":
                return Optional.of(
                        of.getAttribute("base-type").equals("float")
                                ? (Object) Double.valueOf(of.getTextContent())
                                : of.getTextContent());
            case "qti-is-null":
                return Optional.of(evaluate(parts.get(0), variables).isEmpty());
            case "qti-not":
                return evaluate(parts.get(0), variables).map(value -> !(Boolean) value);
            case "qti-and":
                return Optional.of(parts.stream()
                        .allMatch(part ->
                                Boolean.TRUE.equals(evaluate(part, variables).orElse(null))));
            case "qti-or":
                return Optional.of(parts.stream()
                        .anyMatch(part ->
                                Boolean.TRUE.equals(evaluate(part, variables).orElse(null))));
            case "qti-sum":
                double sum = 0;
                for (Element part : parts) {
                    sum += (Double) evaluate(part, variables).orElseThrow();
                }
                return Optional.of(sum);
            case "qti-match":
                return both(parts, variables).map(pair -> pair.get(0).equals(pair.get(1)));
            case "qti-divide":
                return both(parts, variables)
                        .filter(pair -> (Double) pair.get(1) != 0)
                        .map(pair -> (Double) pair.get(0) / (Double) pair.get(1));
            case "qti-equal":
                return both(parts, variables).map(pair -> equal(of, (Double) pair.get(0), (Double) pair.get(1)));
            default:
                throw new IllegalArgumentException("an element nobody told of: " + of.getLocalName());
        }
    }

    private static boolean equal(Element of, double first, double second) {
        if (!of.getAttribute("tolerance-mode").equals("absolute")) {
            throw new IllegalArgumentException(of.getAttribute("tolerance-mode"));
        }
        String[] tolerance = of.getAttribute("tolerance").split(" ");
        return second >= first - Double.parseDouble(tolerance[0]) && second <= first + Double.parseDouble(tolerance[1]);
    }

    private Optional<List<Object>> both(List<Element> parts, Map<String, Object> variables) {
        Optional<Object> first = evaluate(parts.get(0), variables);
        Optional<Object> second = evaluate(parts.get(1), variables);
        return first.isPresent() && second.isPresent()
                ? Optional.of(List.of(first.get(), second.get()))
                : Optional.empty();
    }

    private static Element child(Element of, String name) {
        return children(of).stream()
                .filter(child -> child.getLocalName().equals(name))
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
