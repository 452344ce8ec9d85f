package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import ampersheet.problem.Attempt;
import ampersheet.problem.ChosenGivens;
import ampersheet.problem.Draws;
import ampersheet.problem.Refusal;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whatever numbers of the right kind somebody gives to {@code work}: it prints a worked problem, or says in a sentence
 * why these cannot be worked. 4 random combinations of each template, 10 000 with {@code -Pdeep}.
 */
class LegalGivensTest {
    private static final int MOST_UNTIL_ONE_IS_WORKED = 40;

    private static final int COMBINATIONS =
            Integer.getInteger("ampersheet.combinations", Boolean.getBoolean("ampersheet.deep") ? 10_000 : 4);
    private static final TemplateFiles FILES = TemplateFiles.builtIn();
    private static final double[] FACTORS = {1e-3, 0.01, 0.1, 0.5, 0.9, 1.1, 2, 10, 100, 1e3, 1e6};

    static Stream<String> templates() {
        return ChosenTemplates.of(FILES).stream();
    }

    @ParameterizedTest
    @MethodSource("templates")
    void anyLegalGivensAreWorkedOrRefusedInWords(String name) {
        ProblemTemplate template = TemplateReader.read(FILES, name);
        Draws draws = new Draws(new Workshop(template), "legal");
        List<String> faults = new ArrayList<>();
        int worked = 0;
        // Of few it may happen that each is refused.
        for (int seed = 0;
                (seed < COMBINATIONS || worked == 0 && seed < MOST_UNTIL_ONE_IS_WORKED) && faults.size() < 3;
                seed++) {
            ChosenGivens chosen = chosen(template, new Random(seed * 7919L + name.hashCode()));
            try {
                Attempt attempt = draws.work(chosen);
                String told = attempt instanceof Attempt.Refused refused
                        ? refused.detail()
                        : told((Attempt.Worked) attempt, seed);
                if (told.isBlank() || told.contains("NaN") || told.contains("Infinity") || told.contains("null")) {
                    faults.add("seed " + seed + " " + chosen + ": prints " + told);
                }
                worked += attempt instanceof Attempt.Worked ? 1 : 0;
            } catch (RuntimeException | StackOverflowError | OutOfMemoryError crash) {
                faults.add("seed " + seed + " " + chosen + ": " + crash + " at "
                        + List.of(crash.getStackTrace()).subList(0, 3));
            }
        }
        if (COMBINATIONS > 100) {
            System.out.println(
                    name + ": " + worked + " of " + COMBINATIONS + " combinations worked, the others refused");
        }
        assertEquals(List.of(), faults);
        assertFalse(worked == 0, "none of the combinations could be worked");
    }

    /** Found by 10 000 combinations: the second route was 0/0, and the problem went out without one. */
    @Test
    void whatDividesNothingByNothingIsRefused() {
        Draws draws = new Draws(new Workshop(TemplateReader.read(FILES, "voltage-dividers/loaded-divider")), "legal");
        Map<String, Quantity> dead = new LinkedHashMap<>(Map.of("Vs", new Quantity(0, Dimension.VOLTAGE)));
        for (String resistor : List.of("R1", "R2", "RL")) {
            dead.put(resistor, new Quantity(1_000, Dimension.RESISTANCE));
        }
        Attempt attempt = draws.work(new ChosenGivens(dead, Map.of()));
        assertEquals(
                Refusal.MODEL_UNSOLVED,
                assertInstanceOf(Attempt.Refused.class, attempt).reason());
    }

    /** Printing takes twice as long as working: of many combinations, each tenth is printed. */
    private static String told(Attempt.Worked worked, int seed) {
        return COMBINATIONS <= 100 || seed % 10 == 0
                ? new WorkedText(worked, DecimalMarker.POINT).print(seed % 4 == 0)
                : worked.problem().answers().toString();
    }

    private static ChosenGivens chosen(ProblemTemplate template, Random random) {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        for (Given given : template.givens()) {
            if (given instanceof WordGiven word) {
                words.put(
                        word.name(),
                        word.values().get(random.nextInt(word.values().size())));
            } else if (given instanceof QuantityGiven quantity) {
                double drawn =
                        quantity.values().get(random.nextInt(quantity.values().size()));
                quantities.put(
                        given.name(),
                        new Quantity(
                                changed(drawn, quantity, random),
                                quantity.unit().dimension()));
            }
        }
        return new ChosenGivens(quantities, words);
    }

    /** Mostly what may be drawn, since one number out of its range is enough to meet; else any number of its kind. */
    private static double changed(double drawn, QuantityGiven quantity, Random random) {
        double other = switch (random.nextInt(36)) {
            case 0 -> 0;
            case 1 -> -drawn;
            case 2, 3 -> drawn * FACTORS[random.nextInt(FACTORS.length)];
            case 4 -> quantity.unit().toSi(random.nextInt(100));
            case 5 -> drawn * (1 + random.nextDouble());
            default -> drawn;
        };
        boolean count =
                quantity.unit().symbol().isEmpty() && quantity.values().stream().allMatch(one -> one == Math.rint(one));
        return count && random.nextInt(20) > 0 ? Math.rint(other) : other;
    }
}
