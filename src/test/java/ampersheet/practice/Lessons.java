package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.practice.Course.Skill;
import ampersheet.practice.Course.Template;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A small course for tests: three steps in each problem, all of the same numbers; b and c are asked for. */
final class Lessons {
    static final int MONDAY = 20_000;
    static final List<String> FULL = List.of("step 1", "a", "b");
    static final List<String> BARE = List.of("a", "b");

    private Lessons() {}

    /** @param skills names; the skill called B* comes after the one before it */
    static Course course(String... skills) {
        List<Skill> all = new ArrayList<>();
        for (int i = 0; i < skills.length; i++) {
            List<Template> templates =
                    List.of(template("family/" + skills[i] + "-one"), template("family/" + skills[i] + "-two"));
            all.add(new Skill(
                    skills[i],
                    templates,
                    List.of(0, 1, 0, 1, 0, 1),
                    skills[i].endsWith("*") ? List.of(i - 1) : List.of()));
        }
        return new Course("SET-1", all, Languages.ENGLISH);
    }

    private static Template template(String name) {
        return new Template(name, 3, List.of(List.of(3), List.of(2, 3)));
    }

    /** 8.2 V − 2 V = 6.2 V across R; 6.2 V / 15.5 mA = 400 Ω; 6.2 V × 15.5 mA = 96.1 mW. */
    static ProblemKey key() {
        Map<String, Quantity> givens = new LinkedHashMap<>();
        givens.put("Vs", new Quantity(8.2, Dimension.VOLTAGE));
        givens.put("Vf", new Quantity(2, Dimension.VOLTAGE));
        givens.put("If", new Quantity(0.0155, Dimension.CURRENT));
        Working working = new Working(List.of(
                Step.of("Vr", FormulaReader.expression("Vs - Vf")),
                Step.of("R", FormulaReader.expression("Vr / If")),
                Step.of("P", FormulaReader.expression("Vr * If"))));
        Acceptance within = new Acceptance.Within(0.02, 0);
        return new ProblemKey(
                List.of(
                        new AnswerKey("step 1", "Vr", 6.2, Unit.parse("V"), 3, false, within, List.of()),
                        new AnswerKey(
                                "a",
                                "R",
                                400,
                                Unit.parse("ohm"),
                                3,
                                false,
                                within,
                                List.of(new KnownMistake(
                                        "no-forward-voltage",
                                        8.2 / 0.0155,
                                        "You put the whole supply across the resistor."))),
                        new AnswerKey("b", "P", 0.0961, Unit.parse("mW"), 3, false, within, List.of())),
                Values.of(givens, Map.of()),
                working,
                List.of(),
                Languages.ENGLISH);
    }

    static Practice start(Course course) {
        return Practice.of(course, LearnerRecord.none(course.set()), "tab").start("", MONDAY, 0);
    }

    static List<String> places(Practice practice) {
        return switch (practice.form().kind()) {
            case FULL -> FULL;
            case FADED -> practice.form().blanks() == 1 ? List.of("b") : BARE;
            case BARE, FAULTY -> BARE;
        };
    }

    static Practice answer(Practice practice, Map<String, String> typed, String sure, int day) {
        Practice after = practice;
        for (Map.Entry<String, String> one : typed.entrySet()) {
            after = after.type(one.getKey(), one.getValue());
        }
        return after.check(key(), places(practice), sure, day);
    }

    /** Every place right. */
    static Practice solve(Practice practice, int day) {
        return answer(practice, Map.of("step 1", "6.2 V", "a", "400 ohm", "b", "96.1 mW"), "", day);
    }

    /** The answers right and no step on the way. */
    static Practice straight(Practice practice, int day) {
        return answer(practice, Map.of("a", "400 ohm", "b", "96.1 mW"), "", day);
    }

    static Practice wrong(Practice practice, String sure, int day) {
        return answer(practice, Map.of("step 1", "6.2 V", "a", "529 ohm", "b", "1 W"), sure, day);
    }
}
