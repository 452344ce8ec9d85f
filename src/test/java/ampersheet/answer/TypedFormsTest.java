package ampersheet.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.problem.AnswerKeys;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Every form of {@code typed-forms.txt}, for every question of every template. */
class TypedFormsTest {
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 4 : 1;
    /** Of the wrong values only each so manyth, another one for each question, unless {@code -Pdeep} asks for all. */
    private static final int EVERY = Boolean.getBoolean("ampersheet.deep") ? 1 : 5;

    private static final int LEAST_FORMS = 400;
    private static final double[] WRONG_BY = {-1, 10, 0.1, 100, 0.01, 1e3, 1e-3, 1e6, 1e-6, 1.37, 0.61, 1.1, 0.9};
    private static final Map<String, List<ProblemKey>> KEYS = new TreeMap<>();

    @BeforeAll
    static void draw() {
        TemplateFiles files = TemplateFiles.builtIn();
        for (String name : files.names()) {
            Draws draws = new Draws(new Workshop(TemplateReader.read(files, name)), "typed forms");
            List<ProblemKey> keys = new ArrayList<>();
            for (int draw = 0; draw < DRAWS; draw++) {
                keys.add(AnswerKeys.keyOf(draws.draw(draw), "q1", draw % 2 == 0));
            }
            KEYS.put(name, keys);
        }
    }

    private static Rung rung(ProblemKey problem, AnswerKey key, String text) {
        return Judge.judge(problem, TypedForms.withPartners(problem, key, text)).stream()
                .filter(verdict -> verdict.question().equals(key.question()))
                .findFirst()
                .orElseThrow()
                .rung();
    }

    @Test
    void aRightAnswerIsRightInEveryForm() {
        TreeSet<String> forms = new TreeSet<>();
        Map<String, Integer> kinds = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        int typedAnswers = 0;
        for (Map.Entry<String, List<ProblemKey>> template : KEYS.entrySet()) {
            for (ProblemKey problem : template.getValue()) {
                for (AnswerKey key : problem.answers()) {
                    if (key.acceptance() instanceof Acceptance.Choice) {
                        continue;
                    }
                    for (TypedForms.Typed typed : TypedForms.of(key, key.expected())) {
                        if (typed.bare() && !key.unitPrinted()) {
                            continue;
                        }
                        typedAnswers++;
                        if (forms.add(typed.kind() + " | " + typed.form())) {
                            kinds.merge(typed.kind(), 1, Integer::sum);
                        }
                        Rung rung = rung(problem, key, typed.text());
                        if (rung != Rung.CORRECT) {
                            wrong.add(template.getKey() + " " + key.question() + " = " + key.expected() + " "
                                    + key.unit().symbol() + ": “" + typed.text() + "” is " + rung);
                        }
                    }
                }
            }
        }
        System.out.println(typedAnswers + " right answers in " + TypedForms.count() + " forms, " + forms.size()
                + " forms of a kind of question: " + kinds);
        assertEquals(List.of(), wrong.stream().limit(20).toList(), wrong.size() + " of " + typedAnswers);
        assertTrue(forms.size() >= LEAST_FORMS, forms.size() + " forms: " + kinds);
    }

    @Test
    void aWrongAnswerIsRightInNone() {
        List<String> right = new ArrayList<>();
        int typedAnswers = 0;
        int turn = 0;
        for (Map.Entry<String, List<ProblemKey>> template : KEYS.entrySet()) {
            for (ProblemKey problem : template.getValue()) {
                for (AnswerKey key : problem.answers()) {
                    if (key.acceptance() instanceof Acceptance.Choice
                            || key.acceptance() instanceof Acceptance.Designed) {
                        continue;
                    }
                    for (double value : wrongValues(key)) {
                        if (turn++ % EVERY != 0) {
                            continue;
                        }
                        boolean hundredfold = key.acceptance().accepts(key.expected(), value * 100)
                                || key.acceptance().accepts(key.expected(), value / 100);
                        for (TypedForms.Typed typed : TypedForms.of(key, value)) {
                            boolean percentTyped =
                                    typed.text().contains("%") || typed.text().contains("p");
                            boolean judgedByValue = key.isShare() && hundredfold && !percentTyped;
                            typedAnswers++;
                            if (!judgedByValue && rung(problem, key, typed.text()) == Rung.CORRECT) {
                                right.add(template.getKey() + " " + key.question() + " = " + key.expected() + " "
                                        + key.unit().symbol() + ": “" + typed.text() + "” is right");
                            }
                        }
                    }
                }
            }
        }
        System.out.println(typedAnswers + " wrong answers typed");
        assertEquals(List.of(), right.stream().limit(20).toList(), right.size() + " of " + typedAnswers);
        assertFalse(typedAnswers < 100_000 / EVERY, "only " + typedAnswers);
    }

    /** Over the givens' and steps' own names as a sheet tells them. */
    @Test
    void noMessageOfASlipTellsTheAnswer() {
        TemplateFiles files = TemplateFiles.builtIn();
        int slips = 0;
        for (String name : files.names()) {
            ProblemKey problem = SheetProblem.alone(
                            new Draws(new Workshop(TemplateReader.read(files, name)), "typed forms").draw(0),
                            DecimalMarker.POINT)
                    .key();
            for (AnswerKey key : problem.answers()) {
                for (UsualSlip slip : UsualSlips.of(problem, key)) {
                    slips++;
                    String answer = QuantityWriter.POINT
                            .rounded(key.expected(), key.unit(), Math.max(3, key.figures()))
                            .number();
                    assertFalse(slip.says().contains(answer), () -> name + ": " + slip.says());
                    assertFalse(
                            slip.says().contains("This is the the ")
                                    || slip.says().contains("null"),
                            slip::says);
                    boolean named = problem.givens().quantities().keySet().stream()
                            .noneMatch(id -> slip.says().contains("This is " + id + ","));
                    assertTrue(named, slip::says);
                }
            }
        }
        assertTrue(slips > 500, slips + " slips");
    }

    /** Well outside: a form is rounded to the figures asked for and one more. */
    private static List<Double> wrongValues(AnswerKey key) {
        List<Double> values = new ArrayList<>();
        key.mistakes().forEach(mistake -> values.add(mistake.value()));
        for (double factor : WRONG_BY) {
            double number =
                    (key.unit().offset() == 0 ? key.expected() : key.unit().fromSi(key.expected())) * factor;
            values.add(key.unit().offset() == 0 ? number : key.unit().toSi(number));
        }
        values.removeIf(value -> Math.abs(value - key.expected())
                <= 1.5 * key.acceptance().band(key.expected()) + 1e-6 * Math.abs(key.expected()));
        return values;
    }
}
