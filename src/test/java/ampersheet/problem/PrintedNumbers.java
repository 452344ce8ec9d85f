package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.LinkedHashMap;
import java.util.Map;

/** A problem that readers had before them on paper, made again from the numbers that were printed. */
public final class PrintedNumbers {
    private PrintedNumbers() {}

    /** @param numbers by given, in SI units; words with underscores for blanks */
    public static Problem worked(ProblemTemplate template, Map<String, String> numbers) {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        for (Given given : template.givens()) {
            String number = numbers.get(given.name());
            assertTrue(number != null, template.name() + ": no number for " + given.name());
            if (given instanceof QuantityGiven quantity) {
                quantities.put(
                        given.name(),
                        new Quantity(Double.parseDouble(number), quantity.unit().dimension()));
            } else {
                words.put(given.name(), number.replace('_', ' '));
            }
        }
        Attempt attempt = new Draws(new Workshop(template), "reader").work(new ChosenGivens(quantities, words));
        return assertInstanceOf(Attempt.Worked.class, attempt, template.name()).problem();
    }
}
