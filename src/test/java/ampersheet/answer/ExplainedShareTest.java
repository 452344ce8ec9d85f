package ampersheet.answer;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Quantity;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * What everybody types sooner or later: at every place that can be blank, each modelled mistake, each given and the
 * value of each other step, whole (with four figures, its own unit). A learner who does so must be told more than that
 * it is wrong.
 */
class ExplainedShareTest {
    private static final int DRAWS = 20;
    private static final String SEED = "explained";
    private static final double LEAST_EXPLAINED = 0.95;
    private static final Set<Rung> UNEXPLAINED =
            Set.of(Rung.UNREADABLE, Rung.AMBIGUOUS, Rung.NEAR_MISS, Rung.UNEXPLAINED);

    private int wrong;
    private int explained;
    private final Map<String, List<String>> unexplained = new LinkedHashMap<>();

    @OnlyDeep
    @Test
    void almostEveryMistakeAndMisplacedValueAtEveryPlaceIsExplained() {
        TemplateFiles templates = TemplateFiles.builtIn();
        for (String name : ChosenTemplates.of(templates)) {
            Draws draws = new Draws(new Workshop(TemplateReader.read(templates, name)), SEED);
            for (int draw = 0; draw < DRAWS; draw++) {
                ask(draws.draw(draw));
            }
        }
        double share = (double) explained / wrong;
        System.out.printf(java.util.Locale.ROOT, "explained: %d of %d, %.1f %%%n", explained, wrong, 100 * share);
        assertTrue(share >= LEAST_EXPLAINED, () -> share + " explained, seed " + SEED + "; not so: " + unexplained);
    }

    private void ask(Problem problem) {
        SheetProblem alone = SheetProblem.alone(problem, DecimalMarker.POINT);
        int steps = problem.template().lines().size();
        SheetProblem blank =
                new SheetProblem(1, new Support.Faded(new Support.Fade.Forward(steps)), false, alone.plan(), problem);
        ProblemKey key = blank.key();
        for (AnswerKey place : key.answers()) {
            if (place.acceptance() instanceof Acceptance.Within || place.acceptance() instanceof Acceptance.Count) {
                for (KnownMistake mistake : place.mistakes()) {
                    type(
                            problem,
                            key,
                            place,
                            place.unit().fromSi(mistake.value()),
                            place.unit().symbol(),
                            mistake.id());
                }
                problem.values().quantities().forEach((name, value) -> misplaced(problem, key, place, name, value));
            }
        }
    }

    /**
     * A value of another kind is told by its unit, which is another matter. Of quarter turns and the like, 0 to 3, each
     * is the value of something: to say of what would be a guess.
     */
    private void misplaced(Problem problem, ProblemKey key, AnswerKey place, String name, Quantity value) {
        boolean offered = value.dimension().equals(place.unit().dimension()) && !name.equals(place.step());
        boolean oneOfFew = place.acceptance() instanceof Acceptance.Count && place.expected() < 4 && value.value() < 4;
        if (offered && !oneOfFew) {
            type(
                    problem,
                    key,
                    place,
                    place.unit().fromSi(value.value()),
                    place.unit().symbol(),
                    name);
        }
    }

    private void type(Problem problem, ProblemKey key, AnswerKey place, double value, String unit, String what) {
        String typed = String.format(java.util.Locale.ROOT, "%.4g", value) + (unit.equals("1") ? "" : " " + unit);
        if (place.acceptance() instanceof Acceptance.Count && value == Math.rint(value)) {
            typed = Long.toString(Math.round(value));
        }
        String written = typed;
        Judge.judge(key, Map.of(place.question(), written)).stream()
                .filter(verdict -> verdict.question().equals(place.question()))
                .filter(verdict -> verdict.rung() != Rung.CORRECT && verdict.rung() != Rung.UNIT_MISSING)
                .forEach(verdict -> {
                    wrong++;
                    if (UNEXPLAINED.contains(verdict.rung())) {
                        unexplained
                                .computeIfAbsent(problem.template().name(), first -> new ArrayList<>())
                                .add(place.step() + " " + written + " (" + what + ") " + verdict.rung());
                    } else {
                        explained++;
                    }
                });
    }
}
