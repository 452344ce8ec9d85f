package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.practice.Twin;
import ampersheet.practice.Twin.Way;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What becomes of a value when a given is changed, over the templates. */
class TwinsTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    /** Every so many templates in the ordinary run. */
    private static final int SHARE = DEEP ? 1 : 6;

    private static final int DRAWS = DEEP ? 8 : 4;

    private static List<ProblemTemplate> templates() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        List<String> names = ChosenTemplates.of(TemplateFiles.builtIn());
        List<ProblemTemplate> some = new ArrayList<>();
        for (int i = 0; i < names.size(); i += Math.min(SHARE, names.size())) {
            some.add(library.template(names.get(i)));
        }
        return some;
    }

    @Test
    void eachKeyIsWhatAFreshSolveOfTheChangedProblemGives() {
        Map<Way, Integer> ways = new TreeMap<>();
        List<String> without = new ArrayList<>();
        for (ProblemTemplate template : templates()) {
            Draws draws = new Draws(new Workshop(template), "twins");
            Twins twins = new Twins(new Workshop(template));
            int found = 0;
            for (int which = 0; which < DRAWS; which++) {
                Problem problem = draws.draw(which);
                Optional<Twin> twin = twins.of(problem, which);
                if (twin.isPresent()) {
                    found++;
                    ways.merge(twin.get().way(), 1, Integer::sum);
                    assertEquals(freshly(problem, twin.get()), twin.get().way(), template.name() + " " + twin.get());
                }
            }
            if (found < DRAWS) {
                without.add(template.name() + " " + found);
            }
            if (!template.designs().isEmpty()) {
                assertEquals(0, found, template.name() + " is a design");
            }
        }
        System.out.println("twins: " + ways + ", fewer than " + DRAWS + " for " + without);
        assertTrue(ways.size() == 3, "each way comes up: " + ways);
    }

    /** By typing the changed given into a fresh workshop, as on the command line, and asking the models alone. */
    private static Way freshly(Problem problem, Twin twin) {
        ProblemTemplate template = problem.template();
        String asked = template.lines().get(twin.asked() - 1).id();
        assertTrue(template.asks().stream()
                .anyMatch(ask -> ask instanceof QuantityAsk && ask.of().equals(asked)));
        String given = template.givens().stream()
                .filter(one -> one.meaning().equals(twin.given()))
                .map(Given::name)
                .findFirst()
                .orElseThrow();
        Quantity old = problem.givens().quantity(given);
        Quantity changed = new Quantity(old.value() * twin.change().factor(), old.dimension());
        ChosenGivens chosen = new ChosenGivens(new LinkedHashMap<>(Map.of(given, changed)), Map.of());
        Attempt attempt = new Workshop(template).workChosen(chosen.putInto(problem.givens()));
        Unit unit = template.line(asked).unit();
        double before = unit.fromSi(second(problem, asked));
        double after = unit.fromSi(
                second(assertInstanceOf(Attempt.Worked.class, attempt).problem(), asked));
        double change = (after - before) / before;
        assertTrue(Math.abs(change) > 0.0499 || Math.abs(change) < 1e-3, twin + " changes by " + change);
        return Math.abs(change) < 1e-3 ? Way.STAYS : change > 0 ? Way.RISES : Way.FALLS;
    }

    private static double second(Problem problem, String asked) {
        return problem.answers().stream()
                .filter(answer -> answer.of().equals(asked))
                .findFirst()
                .orElseThrow()
                .second();
    }
}
