package ampersheet.render.qti;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Scores an item as a platform would, from its XML alone and by the words of the format, in either version: a
 * comparison with nothing is nothing and counts as false, and so does its contrary.
 */
final class ItemInterpreter {
    private final ReadElement item;
    private final Map<String, String> types = new TreeMap<>();
    private final Map<String, Object> defaults = new TreeMap<>();

    ItemInterpreter(String xml) throws Exception {
        item = ReadElement.of(xml);
        for (ReadElement child : item.children()) {
            if (child.name().equals("response-declaration")) {
                types.put(child.identifier(), type(child));
            } else if (child.name().equals("outcome-declaration")) {
                types.put(child.identifier(), type(child));
                if (!child.children().isEmpty()) {
                    String text = child.child("default-value").child("value").text();
                    defaults.put(child.identifier(), value(type(child), text));
                }
            }
        }
    }

    private static String type(ReadElement of) {
        return of.attributes().get("base-type");
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
        for (ReadElement condition : item.child("response-processing").children()) {
            process(condition, variables);
        }
        return variables;
    }

    private void process(ReadElement condition, Map<String, Object> variables) {
        for (ReadElement branch : condition.children()) {
            List<ReadElement> parts = branch.children();
            boolean otherwise = branch.name().equals("response-else");
            if (otherwise || holds(parts.get(0), variables)) {
                parts.subList(otherwise ? 0 : 1, parts.size()).forEach(rule -> {
                    if (!rule.name().equals("set-outcome-value")) {
                        throw new IllegalArgumentException(rule.name());
                    }
                    variables.put(
                            rule.identifier(),
                            evaluate(rule.child(0), variables).orElseThrow());
                });
                return;
            }
        }
    }

    private boolean holds(ReadElement of, Map<String, Object> variables) {
        return Boolean.TRUE.equals(evaluate(of, variables).orElse(null));
    }

    private Optional<Object> evaluate(ReadElement of, Map<String, Object> variables) {
        List<ReadElement> parts = of.children();
        switch (of.name()) {
            case "variable":
                if (!types.containsKey(of.identifier()) && !of.identifier().equals("numAttempts")) {
                    throw new IllegalArgumentException("not declared: " + of.identifier());
                }
                return Optional.ofNullable(variables.get(of.identifier()));
            case "base-value":
                return Optional.of(value(type(of), of.text()));
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
                for (ReadElement part : parts) {
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
                throw new IllegalArgumentException("an element nobody told of: " + of.name());
        }
    }

    private Optional<List<Object>> both(List<ReadElement> parts, Map<String, Object> variables) {
        Optional<Object> first = evaluate(parts.get(0), variables);
        Optional<Object> second = evaluate(parts.get(1), variables);
        return first.isPresent() && second.isPresent()
                ? Optional.of(List.of(first.get(), second.get()))
                : Optional.empty();
    }
}
