package ampersheet.render.qti;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/**
 * Scores an item as the poorest platform might: it reads no declarations, no attribute but identifiers, knows true and
 * false and nothing between, takes two numbers for equal only if they are the same, whatever tolerance is meant, and
 * knows no variable of the platform's own.
 */
final class PoorInterpreter {
    private final List<Element> conditions;

    PoorInterpreter(String xml) throws Exception {
        conditions = ItemInterpreter.children(ItemInterpreter.children(ItemInterpreter.read(xml)).stream()
                .filter(child -> ItemInterpreter.name(child).equals("response-processing"))
                .findFirst()
                .orElseThrow());
    }

    /** Values of the outcomes as text; one that was never set is missing. */
    Map<String, String> score(Map<String, String> responses) {
        Map<String, String> variables = new HashMap<>(responses);
        for (Element condition : conditions) {
            for (Element branch : ItemInterpreter.children(condition)) {
                List<Element> parts = ItemInterpreter.children(branch);
                boolean tested = !ItemInterpreter.name(branch).equals("response-else");
                if (!tested || holds(parts.get(0), variables)) {
                    for (Element rule : parts.subList(tested ? 1 : 0, parts.size())) {
                        variables.put(rule.getAttribute("identifier"), value(child(rule, 0), variables));
                    }
                    break;
                }
            }
        }
        return variables;
    }

    private static Element child(Element of, int at) {
        return ItemInterpreter.children(of).get(at);
    }

    private static boolean holds(Element of, Map<String, String> variables) {
        List<Element> parts = ItemInterpreter.children(of);
        boolean all = true;
        boolean any = false;
        return switch (ItemInterpreter.name(of)) {
            case "and" -> {
                for (Element part : parts) {
                    all &= holds(part, variables);
                }
                yield all;
            }
            case "or" -> {
                for (Element part : parts) {
                    any |= holds(part, variables);
                }
                yield any;
            }
            case "not" -> !holds(parts.get(0), variables);
            case "is-null" -> value(parts.get(0), variables) == null;
            case "match", "equal" -> {
                String first = value(parts.get(0), variables);
                yield first != null && first.equals(value(parts.get(1), variables));
            }
            case "gte" -> number(parts.get(0), variables) >= number(parts.get(1), variables);
            case "lte" -> number(parts.get(0), variables) <= number(parts.get(1), variables);
            default -> throw new IllegalArgumentException("not understood: " + of.getLocalName());
        };
    }

    /** Not a number for nothing, so that no comparison with it holds. */
    private static double number(Element of, Map<String, String> variables) {
        String value = value(of, variables);
        return value == null ? Double.NaN : Double.parseDouble(value);
    }

    private static String value(Element of, Map<String, String> variables) {
        return switch (ItemInterpreter.name(of)) {
            case "variable" -> variables.get(of.getAttribute("identifier"));
            case "base-value" -> of.getTextContent();
            case "sum" -> {
                double sum = 0;
                for (Element part : ItemInterpreter.children(of)) {
                    String text = value(part, variables);
                    sum += text == null ? 0 : Double.parseDouble(text);
                }
                yield Double.toString(sum);
            }
            default -> throw new IllegalArgumentException("not understood: " + of.getLocalName());
        };
    }
}
