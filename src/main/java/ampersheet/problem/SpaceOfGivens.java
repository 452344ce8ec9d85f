package ampersheet.problem;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * All combinations of values that a template's givens may take, numbered from 0: a number whose digits, one per given,
 * have as many values as the given has.
 *
 * <p>A given that no formula and no model uses is scenery: it is drawn, but two draws that differ in scenery only are
 * one variant, so scenery has no digit.
 */
final class SpaceOfGivens {
    private static final long LARGEST = 1L << 62;

    private final ProblemTemplate template;
    private final List<Digit> digits;
    private final long size;

    /** @param choices the values of a given, without repetitions: Double or String */
    private record Digit(Given given, List<?> choices, boolean scenery) {}

    SpaceOfGivens(ProblemTemplate template) {
        this.template = template;
        Set<String> used = UsedNames.of(template);
        List<Digit> found = new ArrayList<>();
        long product = 1;
        for (Given given : template.givens()) {
            List<?> choices = choices(given).stream().distinct().toList();
            boolean scenery = !used.contains(given.name());
            found.add(new Digit(given, choices, scenery));
            if (!scenery) {
                if (choices.size() > LARGEST / product) {
                    throw new DiagnosticException(Diagnostic.error(
                            Place.inFile(template.name()),
                            "the givens have more than " + LARGEST + " combinations",
                            "a space of givens that can be numbered",
                            "give some of the givens coarser steps"));
                }
                product *= choices.size();
            }
        }
        this.digits = List.copyOf(found);
        this.size = product;
    }

    long size() {
        return size;
    }

    /** The givens of one combination, in the template's order, with its constants. */
    Values values(long index) {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        long rest = index;
        for (Digit digit : digits) {
            int count = digit.choices().size();
            int choice;
            if (digit.scenery()) {
                choice = (int) Long.remainderUnsigned(index * 0x9e3779b97f4a7c15L >>> 17, count);
            } else {
                choice = (int) (rest % count);
                rest /= count;
            }
            put(digit.given(), digit.choices().get(choice), quantities, words);
        }
        return Values.of(withConstants(quantities), words);
    }

    private static List<?> choices(Given given) {
        if (given instanceof QuantityGiven quantity) {
            return quantity.values();
        }
        return ((WordGiven) given).values();
    }

    private static void put(Given given, Object choice, Map<String, Quantity> quantities, Map<String, String> words) {
        if (given instanceof QuantityGiven quantity) {
            quantities.put(
                    given.name(), new Quantity((Double) choice, quantity.unit().dimension()));
        } else {
            words.put(given.name(), (String) choice);
        }
    }

    private Map<String, Quantity> withConstants(Map<String, Quantity> quantities) {
        for (Constant constant : template.constants()) {
            quantities.put(
                    constant.name(), new Quantity(constant.si(), constant.unit().dimension()));
        }
        return quantities;
    }
}
