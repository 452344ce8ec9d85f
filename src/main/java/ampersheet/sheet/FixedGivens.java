package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.ChosenGivens;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Plan.Fixed;
import ampersheet.source.Told;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Givens that an entry of a plan fixes for everybody: its templates draw only what has them. A value must be one that
 * the template may draw, because only these were proven and looked over.
 */
final class FixedGivens {
    private static final double SAME = 1e-9;
    /** More values than these are told by their ends and by what lies next to the one written. */
    private static final int MOST_LISTED = 12;

    private static final int FIGURES = 6;

    private final ProblemTemplate template;
    private final List<Fixed> fixed;
    private final List<Diagnostic> faults;

    private FixedGivens(ProblemTemplate template, List<Fixed> fixed, List<Diagnostic> faults) {
        this.template = template;
        this.fixed = fixed;
        this.faults = faults;
    }

    /** The template with these givens only; what does not fit is added to {@code faults}. */
    static ProblemTemplate limit(ProblemTemplate template, List<Fixed> fixed, List<Diagnostic> faults) {
        return fixed.isEmpty() ? template : new FixedGivens(template, fixed, faults).limited();
    }

    /** The same for however they were spaced and ordered; empty if none is fixed. */
    static String told(List<Fixed> fixed) {
        Map<String, String> byName = new TreeMap<>();
        fixed.forEach(given -> byName.put(given.name(), unspaced(given.value())));
        StringBuilder told = new StringBuilder();
        byName.forEach((name, value) -> told.append(told.length() == 0 ? "" : ", ")
                .append(name)
                .append(" = ")
                .append(value));
        return told.toString();
    }

    private static String unspaced(String value) {
        StringBuilder out = new StringBuilder();
        String[] words = value.strip().split("\\s+");
        for (String word : words) {
            boolean number = out.length() > 0 && Character.isDigit(out.charAt(out.length() - 1));
            out.append(out.length() == 0 || number ? "" : " ").append(word);
        }
        return out.toString();
    }

    /** Whether two limited forms of one template may show the same numbers. */
    static boolean mayMeet(ProblemTemplate one, ProblemTemplate other) {
        for (int i = 0; i < one.givens().size(); i++) {
            List<?> values = values(one.givens().get(i));
            if (values(other.givens().get(i)).stream().noneMatch(values::contains)) {
                return false;
            }
        }
        return true;
    }

    private static List<?> values(Given given) {
        return given instanceof QuantityGiven quantity ? quantity.values() : ((WordGiven) given).values();
    }

    private ProblemTemplate limited() {
        List<Given> givens = new ArrayList<>(template.givens());
        for (Fixed one : fixed) {
            if (givens.stream().noneMatch(given -> given.name().equals(one.name()))) {
                faults.add(unknown(one));
            }
            givens.replaceAll(given -> given.name().equals(one.name()) ? limited(given, one) : given);
        }
        return template.withGivens(givens);
    }

    private Diagnostic unknown(Fixed one) {
        boolean constant =
                template.constants().stream().anyMatch(known -> known.name().equals(one.name()));
        String names =
                String.join(", ", template.givens().stream().map(Given::name).toList());
        return Diagnostic.error(
                one.place(),
                constant
                        ? say("plan.given.constant", "given", one.name(), "template", template.name())
                        : say("plan.given.unknown", "template", template.name(), "given", one.name()),
                say("plan.one-of", "names", names),
                say("plan.given.unknown.next", "template", template.name()));
    }

    private Given limited(Given given, Fixed one) {
        return given instanceof WordGiven word ? limited(word, one) : limited((QuantityGiven) given, one);
    }

    private Given limited(WordGiven word, Fixed one) {
        String value = one.value();
        if (word.values().contains(value)) {
            return new WordGiven(word.name(), word.meaning(), List.of(value), word.said());
        }
        String name = template.name();
        faults.add(Diagnostic.error(
                one.place(),
                say("plan.given.word-not-drawn", "template", name, "given", one.name(), "value", value),
                Told.either(word.values()),
                say("plan.given.word-not-drawn.next")));
        return word;
    }

    private Given limited(QuantityGiven quantity, Fixed one) {
        double si;
        try {
            si = ChosenGivens.read(template, Map.of(one.name(), one.value()))
                    .quantities()
                    .get(one.name())
                    .value();
        } catch (DiagnosticException unread) {
            String first = printed(quantity.values().get(0), quantity.unit());
            unread.diagnostics()
                    .forEach(fault -> faults.add(Diagnostic.error(
                            one.place(),
                            fault.problem(),
                            fault.expected(),
                            say("plan.given.unread.next", "given", one.name(), "value", first))));
            return quantity;
        }
        for (double value : quantity.values()) {
            if (Math.abs(value - si) <= SAME * Math.abs(value)) {
                return new QuantityGiven(
                        quantity.name(),
                        quantity.meaning(),
                        quantity.symbol(),
                        quantity.unit(),
                        List.of(value),
                        quantity.tolerance());
            }
        }
        String name = template.name();
        String value = printed(si, quantity.unit());
        faults.add(Diagnostic.error(
                one.place(),
                say("plan.given.not-drawn", "template", name, "given", one.name(), "value", value),
                drawn(quantity, si),
                say("plan.given.not-drawn.next")));
        return quantity;
    }

    private static String drawn(QuantityGiven given, double wanted) {
        List<Double> values = given.values().stream().distinct().sorted().toList();
        if (values.size() <= MOST_LISTED) {
            return say(
                    "plan.one-of",
                    "names",
                    String.join(
                            ", ",
                            values.stream()
                                    .map(value -> printed(value, given.unit()))
                                    .toList()));
        }
        List<String> nearest = new ArrayList<>();
        values.stream()
                .filter(value -> value < wanted)
                .reduce((first, later) -> later)
                .ifPresent(below -> nearest.add(printed(below, given.unit())));
        values.stream()
                .filter(value -> value > wanted)
                .findFirst()
                .ifPresent(above -> nearest.add(printed(above, given.unit())));
        return say(
                "plan.given.not-drawn.expected",
                "count",
                Integer.toString(values.size()),
                "least",
                printed(values.get(0), given.unit()),
                "most",
                printed(values.get(values.size() - 1), given.unit()),
                "nearest",
                Told.all(nearest));
    }

    private static String printed(double si, Unit unit) {
        return QuantityWriter.POINT.plain(si, unit, FIGURES).text();
    }
}
