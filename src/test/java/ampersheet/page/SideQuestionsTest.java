package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.practice.Course;
import ampersheet.practice.LearnerRecord;
import ampersheet.practice.Practice;
import ampersheet.practice.RecordText;
import ampersheet.practice.SideQuestion;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.source.Languages;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What is asked beside a problem and counts for nothing, by the rules that the page uses. */
class SideQuestionsTest {
    private static final int DAY = 20_786;
    private static final String PLAN = """
      title: Beside
      seed: beside
      problems:
        - {template: current-limiting/one-indicator}
        - {template: voltage-dividers/loaded-divider}
      """;
    private static final PracticeSet SET = PracticeSet.of(
            ProblemSet.of(PlanReader.read("plan.yaml", PLAN), new TemplateLibrary(List.of(TemplateFiles.builtIn()))),
            6);
    private static final Course COURSE = SET.course("beside");

    private static Practice begun() {
        Practice practice =
                Practice.of(COURSE, LearnerRecord.none("beside"), "tab").start("", DAY, 0);
        return practice.skillIndex() == 0 ? practice : practice.choose(0, DAY, 0);
    }

    private static Practice faded() {
        return begun().support("faded");
    }

    private static Practice solved(Practice practice) {
        PracticeSet.Variant shown = SET.skills()
                .get(practice.skillIndex())
                .variants()
                .get(practice.attempt().variant());
        var key = new PracticeProblem(shown.problem(), SET.set().plan(), false).key();
        List<String> places = new ArrayList<>();
        Practice typed = practice;
        for (AnswerKey answer : key.answers()) {
            places.add(answer.question());
            typed = typed.type(
                    answer.question(),
                    QuantityWriter.POINT
                            .plain(answer.expected(), answer.unit(), 6)
                            .text());
        }
        return typed.check(key, places, "", DAY);
    }

    @Test
    void aFadedProblemAsksForTheRuleOfOneOfItsBlankLines() {
        assertTrue(begun().sideQuestion().isEmpty(), "not beside the example");
        SideQuestion asked = faded().sideQuestion().orElseThrow();
        assertTrue(asked.text().startsWith("Which rule gives step "), asked.text());
        assertTrue(
                asked.choices().size() >= 2 && asked.choices().contains(asked.right()),
                asked.choices().toString());
        assertEquals(new ArrayList<>(new TreeSet<>(asked.choices())), asked.choices(), "the place tells nothing");
        assertTrue(asked.said().isEmpty());
    }

    @Test
    void aWrongRuleIsToldWhatItDoesAndWhichGivesTheLine() {
        SideQuestion asked = faded().sideQuestion().orElseThrow();
        for (String choice : asked.choices()) {
            SideQuestion told = faded().answerAside(choice).sideQuestion().orElseThrow();
            assertEquals(choice, told.chosen());
            if (choice.equals(asked.right())) {
                assertTrue(told.said().startsWith("Right. The rule “" + choice), told.said());
                assertEquals(0, told.step());
            } else {
                assertTrue(told.said().startsWith("Not that one. The rule “" + choice), told.said());
                assertTrue(told.step() > 0, "the name of the right rule and its reason follow");
            }
        }
    }

    @Test
    void theFirstAnswerStands() {
        SideQuestion asked = faded().sideQuestion().orElseThrow();
        Practice wrong = faded().answerAside(asked.choices().get(0))
                .answerAside(asked.choices().get(1));
        assertEquals(asked.choices().get(0), wrong.sideQuestion().orElseThrow().chosen());
        assertEquals(
                "", faded().answerAside("no rule").sideQuestion().orElseThrow().chosen());
    }

    @Test
    void neitherRightNorWrongCountsForAnything() {
        Practice plain = solved(faded());
        for (String choice : faded().sideQuestion().orElseThrow().choices()) {
            Practice answered = solved(faded().answerAside(choice));
            assertEquals(plain.standing(), answered.standing());
            assertTrue(answered.attempt().isClean());
            for (String way : plain.sideQuestion().orElseThrow().choices()) {
                assertEquals(plain.standing(), answered.answerAside(way).standing());
                assertTrue(answered.answerAside(way).mistakes().isEmpty());
            }
        }
    }

    @Test
    void whatIsSolvedWithoutHelpAsksWhichWayAValueGoes() {
        Practice bare = begun().support("bare").another(DAY, 0);
        Practice done = solved(bare);
        SideQuestion asked = done.sideQuestion().orElseThrow();
        assertTrue(asked.text().startsWith("Suppose one value were "), asked.text());
        assertEquals(List.of("It rises", "It falls", "It stays as it is"), asked.choices());
        for (String way : asked.choices()) {
            String said = done.answerAside(way).sideQuestion().orElseThrow().said();
            assertTrue(said.startsWith(way.equals(asked.right()) ? "Right. " : "Not so. "), said);
            assertTrue(said.contains(" step ") || said.contains(" in no line "), said);
        }
        assertTrue(done.goOn(DAY, 0).attempt().isOpen(), "nothing is held up");
    }

    @Test
    void onOneDayNoQuestionComesTwiceOfATemplateAndOnTheNextItMay() {
        for (String support : List.of("faded", "bare")) {
            Practice practice = begun().support(support);
            List<String> asked = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                practice.sideQuestion().ifPresent(question -> asked.add(question.text()));
                practice = solved(practice);
                practice.sideQuestion().ifPresent(question -> asked.add(question.text()));
                practice = practice.another(DAY, 0);
            }
            assertEquals(new LinkedHashSet<>(asked).size(), asked.size(), asked.toString());
            assertTrue(asked.size() >= (support.equals("faded") ? 3 : 1), asked.toString());
            Practice tomorrow = practice.another(DAY + 1, 0);
            tomorrow = support.equals("faded") ? tomorrow : solved(tomorrow);
            assertTrue(tomorrow.sideQuestion().isPresent());
        }
    }

    @Test
    void whoHadHelpIsNotAskedMore() {
        Practice helped = begun().support("bare").another(DAY, 0).lookAtExample();
        assertTrue(solved(helped).sideQuestion().isEmpty());
        assertTrue(begun().showSolution(DAY).sideQuestion().isEmpty());
    }

    @Test
    void whoWantsNoneHasNoneAndTheRecordKeepsThat() {
        Practice none = faded().askAside(false);
        assertTrue(none.sideQuestion().isEmpty());
        assertTrue(solved(none).sideQuestion().isEmpty());
        LearnerRecord read = RecordText.read(RecordText.write(none.record()));
        assertEquals(none.record(), read);
        Practice other = Practice.of(COURSE, faded().record(), "other").joined(read);
        assertFalse(other.record().aside().asked(), "what was chosen later counts");
        assertTrue(none.askAside(true).sideQuestion().isPresent());
    }

    @Test
    void anAnswerIsKeptAndForgottenWithTheProblem() {
        String right = faded().sideQuestion().orElseThrow().right();
        LearnerRecord read =
                RecordText.read(RecordText.write(faded().answerAside(right).record()));
        assertEquals(
                right,
                Practice.of(COURSE, read, "tab")
                        .start("", DAY, 0)
                        .sideQuestion()
                        .map(SideQuestion::chosen)
                        .orElse(right));
    }

    @Test
    void aCourseIsReadAsItWasWritten() {
        assertEquals(COURSE, Course.read(COURSE.write(), Languages.ENGLISH, DecimalMarker.POINT));
    }

    /**
     * Of every template, with all the rules of its skill. Judged by the library itself: what two templates call by two
     * names, in formulas of one shape, is both.
     */
    @Test
    void noRuleThatIsOfferedAsWrongGivesTheLineAsWell() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        Map<String, List<Problem>> bySkill = new LinkedHashMap<>();
        Map<String, Set<String>> byShape = new TreeMap<>();
        for (String name : ChosenTemplates.of(TemplateFiles.builtIn())) {
            ProblemTemplate template = library.template(name);
            Problem problem = new Draws(new Workshop(template), "rules").draw(0);
            bySkill.computeIfAbsent(template.skill(), skill -> new ArrayList<>())
                    .add(problem);
            for (int i = 0; i < template.lines().size(); i++) {
                byShape.computeIfAbsent(shape(problem, i), shape -> new TreeSet<>())
                        .add(template.lines().get(i).principle());
            }
        }
        int lines = 0;
        int asked = 0;
        List<String> quarrels = new ArrayList<>();
        for (List<Problem> problems : bySkill.values()) {
            Set<String> rules = new TreeSet<>();
            problems.forEach(problem -> problem.template().lines().forEach(line -> rules.add(line.principle())));
            for (Problem problem : problems) {
                List<Course.Line> all = PracticeCourse.lines(problem, rules);
                for (int i = 0; i < all.size(); i++) {
                    Set<String> offered = new TreeSet<>(rules);
                    all.get(i).also().forEach(offered::remove);
                    offered.remove(all.get(i).principle());
                    lines++;
                    asked += offered.isEmpty() ? 0 : 1;
                    Set<String> alike = new TreeSet<>(byShape.get(shape(problem, i)));
                    alike.retainAll(offered);
                    // These say which values go into a formula, or whence a difference comes, not which formula.
                    alike.removeAll(Set.of("worst case at a corner", "preferred values"));
                    if (!alike.isEmpty()) {
                        quarrels.add(problem.template().name() + ", step " + (i + 1) + ", "
                                + all.get(i).principle() + ": " + alike);
                    }
                }
            }
        }
        System.out.println(asked + " of " + lines + " lines can be asked for");
        assertEquals(List.of(), quarrels);
        assertTrue(asked * 2 > lines, asked + " of " + lines);
    }

    /** The formula with what each name is in its place; of a line that is a name or a number alone, the line itself. */
    private static String shape(Problem problem, int line) {
        Step step = problem.template().working().steps().get(line);
        StringBuilder out = new StringBuilder();
        for (Step.Case each : step.cases()) {
            boolean plain = each.is().parts().isEmpty();
            out.append(plain ? problem.template().name() + line : shape(each.is(), problem.values()))
                    .append(';');
        }
        return out.toString();
    }

    private static String shape(Expression expression, Values values) {
        if (expression instanceof Expression.Name name) {
            Quantity quantity = values.quantities().get(name.id());
            return quantity == null ? name.id() : quantity.dimension().toString();
        }
        StringBuilder out = new StringBuilder(expression.getClass().getSimpleName());
        if (expression instanceof Expression.Call call) {
            out.append(call.function());
        } else if (expression instanceof Expression.Constant constant) {
            out.append(constant.unit().dimension());
        }
        expression
                .parts()
                .forEach(part -> out.append('(').append(shape(part, values)).append(')'));
        return out.toString();
    }

    /** Lines that a teacher would quarrel about. */
    @Test
    void aRuleThatIsPartOfALineIsNotCalledWrong() {
        assertTrue(
                also("current-limiting/indicator-tolerance", 1).contains("Kirchhoff's voltage law"), "(Vs - Vf) / R");
        assertTrue(also("current-limiting/one-indicator", 4).contains("Joule heating"), "V ^ 2 / R");
        assertTrue(also("voltage-dividers/loaded-divider", 2).contains("Ohm's law"), "a divider");
    }

    private static List<String> also(String template, int step) {
        ProblemTemplate read = new TemplateLibrary(List.of(TemplateFiles.builtIn())).template(template);
        Set<String> rules =
                Set.of("Kirchhoff's voltage law", "Ohm's law", "Joule heating", "electrical power", "voltage divider");
        Problem problem = new Draws(new Workshop(read), "rules").draw(0);
        return PracticeCourse.lines(problem, rules).get(step - 1).also();
    }
}
