package ampersheet.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.page.PracticeSet.Variant;
import ampersheet.practice.Attempt;
import ampersheet.practice.Checked;
import ampersheet.practice.Course;
import ampersheet.practice.Form;
import ampersheet.practice.Hint;
import ampersheet.practice.LearnerRecord;
import ampersheet.practice.Practice;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Learners of three kinds go through a set of real problems on one day, by the rules that the page uses. */
class SimulatedLearnerTest {
    private static final long SEED = 20_261_129;
    private static final int DAY = 20_786;
    private static final int MOST_PROBLEMS = 400;
    private static final String[] SKILLS = {
        "series resistor for an indicator",
        "divider from preferred values",
        "LEDs side by side",
        "loaded divider",
        "junction temperature",
        "thermal budget"
    };
    private static final PracticeSet SET = set();
    private static final Course COURSE = SET.course("simulated");
    private static final Map<String, ProblemKey> KEYS = new TreeMap<>();

    private static PracticeSet set() {
        StringBuilder plan = new StringBuilder("title: Simulated\nseed: simulated\nproblems:\n");
        for (String skill : SKILLS) {
            plan.append("  - {skill: ").append(skill).append("}\n");
        }
        return PracticeSet.of(
                ProblemSet.of(
                        PlanReader.read("plan.yaml", plan.toString()),
                        new TemplateLibrary(List.of(TemplateFiles.builtIn()))),
                6);
    }

    private static ProblemKey key(Practice practice) {
        int skill = practice.skillIndex();
        int variant = practice.attempt().variant();
        return KEYS.computeIfAbsent(skill + "/" + variant, name -> {
            Variant shown = SET.skills().get(skill).variants().get(variant);
            return new PracticeProblem(shown.problem(), SET.set().plan(), false).key();
        });
    }

    /** The places that the page shows: every step, the blank ones, or what is asked. */
    private static List<String> places(Practice practice, ProblemKey key) {
        List<String> steps =
                key.working().steps().stream().map(step -> step.id()).toList();
        return key.answers().stream()
                .filter(answer -> {
                    int number = steps.indexOf(answer.step()) + 1;
                    return switch (practice.form().kind()) {
                        case FULL -> true;
                        case FADED -> number == 0 || practice.blankSteps().contains(number);
                        case BARE, FAULTY -> !answer.question().startsWith("step ");
                    };
                })
                .map(AnswerKey::question)
                .toList();
    }

    private static String right(AnswerKey answer) {
        return answer.acceptance() instanceof Acceptance.Choice choice
                ? choice.options().get((int) answer.expected()).text()
                : QuantityWriter.POINT
                        .plain(answer.expected(), answer.unit(), 6)
                        .text();
    }

    /** What somebody does who sits before a problem; at the end it is right. */
    private interface Learner {
        Practice solve(Practice practice, ProblemKey key, List<String> places);
    }

    private record Passed(Practice end, int problems, int helped, int slips) {}

    private static Passed settled(Learner learner) {
        Random random = new Random(SEED);
        Practice practice = Practice.of(COURSE, LearnerRecord.none(COURSE.set()), "simulated")
                .start("", DAY, random.nextInt(6));
        for (int problems = 1; ; problems++) {
            assertTrue(
                    problems <= MOST_PROBLEMS, "not settled after " + problems + " problems: " + practice.standings());
            ProblemKey key = key(practice);
            practice = learner.solve(practice, key, places(practice, key));
            assertTrue(
                    practice.attempt().isRight(),
                    practice.attempt() + " with " + practice.look(key, places(practice, key)));
            if (practice.settled() == COURSE.skills().size()) {
                int helped = (int) practice.record().attempts().values().stream()
                        .filter(Attempt::isHelped)
                        .count();
                int slips = practice.record().attempts().values().stream()
                        .mapToInt(attempt -> attempt.slips().size())
                        .sum();
                return new Passed(practice, problems, helped, slips);
            }
            practice = practice.goOn(DAY, random.nextInt(6));
        }
    }

    /** Looked at in the record itself, not by the rule that settles. */
    private static void assertProven(Practice end) {
        for (Course.Skill skill : COURSE.skills()) {
            Set<String> templates = new LinkedHashSet<>();
            for (Attempt attempt : end.record().attempts().values()) {
                boolean alone = attempt.form().equals(Form.BARE)
                        && attempt.slips().isEmpty()
                        && attempt.help().isEmpty()
                        && attempt.ending().isPresent();
                if (attempt.skill().equals(skill.name()) && alone) {
                    templates.add(attempt.template());
                }
            }
            assertTrue(templates.size() >= Math.min(2, skill.templates().size()), skill.name() + ": " + templates);
        }
    }

    private static Practice type(Practice practice, ProblemKey key, List<String> places, Map<String, String> instead) {
        Practice typed = practice;
        for (String place : places) {
            AnswerKey answer = key.answers().stream()
                    .filter(one -> one.question().equals(place))
                    .findFirst()
                    .orElseThrow();
            typed = typed.type(place, instead.getOrDefault(place, right(answer)));
        }
        return typed;
    }

    @Test
    void whoKnowsAllIsSettledAfterThreeProblemsOfEachSkill() {
        Passed done = settled((practice, key, places) -> {
            List<String> asked =
                    places.stream().filter(place -> !place.startsWith("step ")).toList();
            return type(practice, key, asked, Map.of()).check(key, places, "sure", DAY);
        });
        assertProven(done.end());
        System.out.println("knows all: " + done.problems() + " problems for " + SKILLS.length + " skills");
        assertTrue(done.problems() <= 4 * SKILLS.length, done.problems() + " problems");
        assertEquals(0, done.helped() + done.slips());
    }

    @Test
    void whoKnowsNothingIsSettledOnlyAfterHelpHasBecomeNeedless() {
        // A line is known once its hint was read to the end three times.
        Map<String, Integer> read = new TreeMap<>();
        Passed done = settled((from, key, places) -> {
            Practice practice = from;
            Map<String, String> known = new LinkedHashMap<>();
            for (AnswerKey answer : key.answers()) {
                boolean chosen = answer.acceptance() instanceof Acceptance.Choice;
                boolean learned = read.getOrDefault(practice.attempt().template() + answer.step(), 0) >= 3;
                if (places.contains(answer.question()) && (chosen || learned)) {
                    known.put(answer.question(), right(answer));
                }
            }
            for (String place : places) {
                practice = practice.type(place, known.getOrDefault(place, ""));
            }
            Set<String> seen = new LinkedHashSet<>();
            for (Optional<Hint> hint = practice.nextHint(key, places);
                    hint.isPresent();
                    hint = practice.nextHint(key, places)) {
                practice = practice.take(hint.get());
                if (hint.get().kind() == Hint.Kind.LINE) {
                    String step =
                            key.working().steps().get(hint.get().step() - 1).id();
                    if (seen.add(step)) {
                        read.merge(practice.attempt().template() + step, 1, Integer::sum);
                    }
                    for (AnswerKey answer : key.answers()) {
                        boolean copied = answer.step().equals(step) && places.contains(answer.question());
                        practice = copied ? practice.type(answer.question(), right(answer)) : practice;
                    }
                }
            }
            return type(practice, key, places, Map.of()).check(key, places, "unsure", DAY);
        });
        assertProven(done.end());
        System.out.println("knows nothing: " + done.problems() + " problems, help in " + done.helped());
        assertTrue(done.helped() >= 3 * SKILLS.length, done.helped() + " with help");
        assertTrue(done.problems() > done.helped() + 2 * SKILLS.length - 1, "all proofs without help");
    }

    @Test
    void oneMisconceptionIsNamedWhereItFirstShowsAndNothingSettlesUntilItIsGone() {
        List<String> tried = new ArrayList<>();
        for (String id : misconceptions()) {
            oneMisconception(id, tried);
        }
        assertTrue(tried.size() >= 12, tried.toString());
        tried.forEach(System.out::println);
    }

    /** Ids of modelled mistakes, of each template the first two that come up. */
    private static Set<String> misconceptions() {
        Set<String> ids = new LinkedHashSet<>();
        for (PracticeSet.Skill skill : SET.skills()) {
            for (PracticeSet.Practised practised : skill.templates()) {
                practised.template().mistakes().stream().limit(1).forEach(mistake -> ids.add(mistake.id()));
            }
        }
        return ids;
    }

    private void oneMisconception(String id, List<String> tried) {
        List<String> told = new ArrayList<>();
        List<Integer> showed = new ArrayList<>();
        Passed done = settled((practice, key, places) -> {
            Map<String, String> wrong = new LinkedHashMap<>();
            Optional<KnownMistake> mistake = Optional.empty();
            for (AnswerKey answer : key.answers()) {
                Optional<KnownMistake> here = answer.mistakes().stream()
                        .filter(one -> one.id().equals(id))
                        .findFirst();
                if (here.isPresent() && places.contains(answer.question()) && mistake.isEmpty()) {
                    mistake = here;
                    wrong.put(
                            answer.question(),
                            QuantityWriter.POINT
                                    .plain(here.get().value(), answer.unit(), 6)
                                    .text());
                }
            }
            if (mistake.isEmpty() || told.size() >= 2) {
                return type(practice, key, places, Map.of()).check(key, places, "", DAY);
            }
            Practice checked = type(practice, key, places, wrong).check(key, places, "sure", DAY);
            showed.add(1);
            String says = mistake.get().explanation();
            Checked look = checked.look(key, places);
            String said = look.places().stream()
                    .filter(place -> place.kind() == Checked.Kind.WRONG)
                    .map(Checked.Told::message)
                    .findFirst()
                    .orElse("nothing");
            assertTrue(said.endsWith(says), id + " is told at once: " + said + " instead of " + says);
            told.add(said);
            return type(checked, key, places, Map.of()).check(key, places, "", DAY);
        });
        assertProven(done.end());
        if (!showed.isEmpty()) {
            assertEquals(showed.size(), done.slips());
            assertEquals(id, done.end().mistakes().get(0).cause());
            tried.add(id + ": " + done.problems() + " problems, showed " + showed.size() + " times, named each time");
        }
    }
}
