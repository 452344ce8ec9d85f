package ampersheet.render.qti;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Scores an item as the poorest platform might: it reads no declarations, no attribute but identifiers, knows true and
 * false and nothing between, takes two numbers for equal only if they are the same, whatever tolerance is meant, and
 * knows no variable of the platform's own.
 */
final class PoorInterpreter {
    private final List<ReadElement> conditions;

    PoorInterpreter(String xml) throws Exception {
        conditions = ReadElement.of(xml).child("response-processing").children();
    }

    /** Values of the outcomes as text; one that was never set is missing. */
    Map<String, String> score(Map<String, String> responses) {
        Map<String, String> variables = new HashMap<>(responses);
        for (ReadElement condition : conditions) {
            for (ReadElement branch : condition.children()) {
                List<ReadElement> parts = branch.children();
                boolean tested = !branch.name().equals("response-else");
                if (!tested || holds(parts.get(0), variables)) {
                    for (ReadElement rule : parts.subList(tested ? 1 : 0, parts.size())) {
                        variables.put(rule.identifier(), value(rule.child(0), variables));
                    }
                    break;
                }
            }
        }
        return variables;
    }

    private static boolean holds(ReadElement of, Map<String, String> variables) {
        List<ReadElement> parts = of.children();
        boolean all = true;
        boolean any = false;
        return switch (of.name()) {
            case "and" -> {
                for (ReadElement part : parts) {
                    all &= holds(part, variables);
                }
                yield all;
            }
            case "or" -> {
                for (ReadElement part : parts) {
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
            default -> throw new IllegalArgumentException("not understood: " + of.name());
        };
    }

    /** Not a number for nothing, so that no comparison with it holds. */
    private static double number(ReadElement of, Map<String, String> variables) {
        String value = value(of, variables);
        return value == null ? Double.NaN : Double.parseDouble(value);
    }

    private static String value(ReadElement of, Map<String, String> variables) {
        return switch (of.name()) {
            case "variable" -> variables.get(of.identifier());
            case "base-value" -> of.text();
            case "sum" -> {
                double sum = 0;
                for (ReadElement part : of.children()) {
                    String text = value(part, variables);
                    sum += text == null ? 0 : Double.parseDouble(text);
                }
                yield Double.toString(sum);
            }
            default -> throw new IllegalArgumentException("not understood: " + of.name());
        };
    }
}
