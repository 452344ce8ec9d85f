package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.formula.Step;
import ampersheet.page.PracticeSet.Skill;
import ampersheet.practice.Course;
import ampersheet.practice.LearnerRecord;
import ampersheet.practice.Practice;
import ampersheet.problem.Problem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.FadedForms;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.sheet.Support;
import ampersheet.source.Languages;
import ampersheet.template.Premises;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PracticeSetTest {
    private static final String PLAN = """
      title: Lanterns
      seed: practice
      problems:
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], count: 2}
      """;

    private static ProblemSet set() {
        return ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open());
    }

    private static String numbers(Problem problem) {
        return problem.template().name() + problem.givens().quantities();
    }

    @Test
    void everySkillHasItsVariantsAndAnExampleOfEachTemplateAllDifferent() {
        PracticeSet practice = PracticeSet.of(set(), 30);
        assertEquals(2, practice.skills().size());
        Set<String> seen = new HashSet<>();
        for (Skill skill : practice.skills()) {
            assertEquals(30, skill.variants().size());
            skill.templates().forEach(practised -> assertTrue(seen.add(numbers(practised.example()))));
            skill.variants()
                    .forEach(variant -> assertTrue(seen.add(numbers(variant.problem())), numbers(variant.problem())));
        }
        assertEquals(62, seen.size());
    }

    @Test
    void whatIsPractisedIsOnNoSheetOfTheClass() {
        Set<String> handedOut = new HashSet<>();
        SheetMaker maker = new SheetMaker(set());
        for (int seat = 1; seat <= 40; seat++) {
            maker.sheet(seat).problems().forEach(problem -> handedOut.add(numbers(problem.problem())));
        }
        assertEquals(80, handedOut.size());
        for (Skill skill : PracticeSet.of(set(), 40).skills()) {
            skill.variants().forEach(variant -> assertFalse(handedOut.contains(numbers(variant.problem()))));
            skill.templates().forEach(practised -> assertFalse(handedOut.contains(numbers(practised.example()))));
        }
    }

    @Test
    void everyAskedValueOfASetIsProven() {
        for (Skill skill : PracticeSet.of(set(), 20).skills()) {
            skill.variants()
                    .forEach(variant -> assertEquals(
                            List.of(),
                            variant.problem().answers().stream()
                                    .filter(answer -> !answer.agrees())
                                    .toList()));
        }
    }

    private static ProblemTemplate template(String name) {
        return BUILT_IN.template(name);
    }

    private static final TemplateLibrary BUILT_IN = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    private static final List<Optional<Support.Fade>> FADES = List.of(
            Optional.empty(), Optional.of(new Support.Fade.Forward(1)), Optional.of(new Support.Fade.Backward(1)));

    /** A skill of one template that says what comes before. */
    private static Map<String, List<ProblemTemplate>> skills(String... afterByTurns) {
        Map<String, List<ProblemTemplate>> skills = new LinkedHashMap<>();
        ProblemTemplate any = template("voltage-dividers/loaded-divider");
        for (int i = 0; i < afterByTurns.length; i += 2) {
            List<String> after = afterByTurns[i + 1].isEmpty() ? List.of() : List.of(afterByTurns[i + 1].split(" "));
            Premises premises = new Premises(List.of(), List.of(), List.of(), List.of(), after);
            skills.put(
                    afterByTurns[i],
                    List.of(new ProblemTemplate(
                            any.name(),
                            any.title(),
                            any.family(),
                            afterByTurns[i],
                            any.level(),
                            any.teaches(),
                            any.givens(),
                            any.constants(),
                            any.requirements(),
                            any.working(),
                            any.lines(),
                            any.asks(),
                            any.designs(),
                            any.mistakes(),
                            any.models(),
                            any.curve(),
                            any.proofs(),
                            any.cautions(),
                            premises,
                            any.words(),
                            any.fingerprint())));
        }
        return skills;
    }

    @Test
    void whatASkillBuildsOnIsFoundAmongTheSkillsOfTheSet() {
        SkillOrder order = SkillOrder.of(skills("a", "c elsewhere", "b", "a c", "c", ""));
        assertEquals(List.of(2), order.after("a"));
        assertEquals(List.of(0, 2), order.after("b"));
        assertEquals(List.of(), order.after("c"));
    }

    @Test
    void skillsThatBuildOnEachOtherInACircleAreRefusedWithTheCircle() {
        DiagnosticException refused = assertThrows(
                DiagnosticException.class, () -> SkillOrder.of(skills("z", "a", "a", "b", "b", "c", "c", "a")));
        assertTrue(
                refused.getMessage()
                        .contains("these skills build on each other in a circle: a after b after c after a"),
                refused.getMessage());
    }

    @Test
    void noFadedFormShowsTheLastAnswerOrALineFromWhichABlankOneCouldBeWorkedBack() {
        int forms = 0;
        for (String name : BUILT_IN.names()) {
            ProblemTemplate template = template(name);
            List<String> asked =
                    template.asks().stream().map(ProblemTemplate.Ask::of).toList();
            int last = 0;
            for (int i = 0; i < template.lines().size(); i++) {
                last = asked.contains(template.lines().get(i).id()) ? i + 1 : last;
            }
            for (Optional<Support.Fade> fade : FADES) {
                int before = 0;
                for (List<Integer> blank : FadedForms.of(template, fade)) {
                    forms++;
                    assertTrue(last == 0 || blank.contains(last), name + " shows its last answer: " + blank);
                    assertTrue(
                            blank.size() > before
                                    && blank.size() < template.lines().size(),
                            name + ": " + blank);
                    before = blank.size();
                    Set<String> open = new HashSet<>();
                    blank.forEach(
                            number -> open.add(template.lines().get(number - 1).id()));
                    for (Step step : template.working().steps()) {
                        assertTrue(
                                open.contains(step.id()) || step.uses().stream().noneMatch(open::contains),
                                name + " shows " + step.id() + " and leaves blank what it follows from: " + blank);
                    }
                }
            }
        }
        assertTrue(forms > 100, forms + " forms");
    }

    @Test
    void theCourseReadsBackAsItWasWritten() {
        Course course = PracticeSet.of(set(), 4).course("SET");
        assertEquals(course, Course.read(course.write(), Languages.ENGLISH, DecimalMarker.POINT));
    }

    // A design that fails

    @Test
    void ofADesignItIsToldWhatFailsByHowMuchWhichWayToGoAndWhetherPartsAreSwapped() {
        PracticeSet practice = PracticeSet.of(
                ProblemSet.of(
                        PlanReader.read(
                                "plan.yaml",
                                "title: T\nseed: design\nproblems:\n  - {template: voltage-dividers/design-pair}\n"),
                        BUILT_IN),
                3);
        Problem problem = practice.skills().get(0).variants().get(0).problem();
        ProblemKey key = new PracticeProblem(problem, practice.set().plan(), false).key();
        Course course = practice.course("SET");
        Practice start = Practice.of(course, LearnerRecord.none("SET"), "tab").start("", 0, 0);
        List<String> blanks = key.answers().stream()
                .filter(answer -> answer.acceptance() instanceof Acceptance.Designed)
                .map(AnswerKey::question)
                .toList();
        List<String> places = key.answers().stream().map(AnswerKey::question).toList();
        Practice asked = type(start, key, places.get(0), 1);
        double upper = expected(key, blanks.get(0));
        double lower = expected(key, blanks.get(1));
        Practice swapped = asked.type(blanks.get(0), lower + " ohm").type(blanks.get(1), upper + " ohm");
        assertTrue(hint(swapped, key, places).contains("right the other way round"), hint(swapped, key, places));
        Practice wide = type(type(asked, key, blanks.get(0), 10), key, blanks.get(1), 1);
        String told = hint(wide, key, places);
        assertTrue(
                told.startsWith("Wanted is V ≤ ")
                        && told.contains("is beyond what is wanted by ")
                        && told.contains("It comes nearer with a smaller " + blanks.get(0) + " or with a larger "
                                + blanks.get(1)),
                told);
    }

    private static double expected(ProblemKey key, String question) {
        return key.answers().stream()
                .filter(answer -> answer.question().equals(question))
                .findFirst()
                .orElseThrow()
                .expected();
    }

    private static Practice type(Practice practice, ProblemKey key, String question, double times) {
        return practice.type(question, expected(key, question) * times + " ohm");
    }

    private static String hint(Practice practice, ProblemKey key, List<String> places) {
        return practice.nextHint(key, places).orElseThrow().text();
    }

    @Test
    void signsThatNotEveryFirstCourseHasAreExplainedBesideTheLinesThatHaveThem() {
        String plan = PLAN.replace(
                "pool: [current-limiting/indicator, voltage-dividers/plain-divider], count: 2",
                "template: voltage-dividers/loaded-divider");
        String page = PracticePage.render(PracticeSet.of(
                ProblemSet.of(
                        PlanReader.read("plan.yaml", plan), new TemplateLibrary(List.of(TemplateFiles.builtIn()))),
                2));
        assertTrue(page.contains("a ∥ b: a and b in parallel"));
        assertFalse(page.contains("rounded down to a whole number"), "no line has that sign");
    }
}
