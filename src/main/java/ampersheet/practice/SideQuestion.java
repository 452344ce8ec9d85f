package ampersheet.practice;

import ampersheet.practice.Course.Line;
import ampersheet.practice.Course.Skill;
import ampersheet.practice.Course.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A closed question beside a problem: which rule gives a line that is left blank, or, once it is solved without help,
 * which way a value goes when a given is changed. It counts neither for nor against anything, and a learner may have
 * them no more.
 *
 * @param name under which the answer is kept
 * @param right one of the choices
 * @param step the line that shows the reason, from 1; 0 for none
 * @param chosen empty while it is not answered
 * @param said of what was chosen; empty while nothing is
 */
public record SideQuestion(
        String name, String text, List<String> choices, String right, int step, String chosen, String said) {
    static final String RULE = "rule";
    static final String TWIN = "twin";

    private static final int MOST_RULES = 4;

    public SideQuestion {
        choices = List.copyOf(choices);
    }

    /** The one beside a problem as it stands; never two at once. */
    static Optional<SideQuestion> of(Course course, Skill skill, Attempt attempt) {
        if (attempt.isOpen() && attempt.form().kind() == Form.Kind.FADED) {
            return rule(course, skill, attempt);
        }
        boolean solved = attempt.isRight() && !attempt.isHelped() && !attempt.isFaulty();
        return solved ? twin(skill, attempt) : Optional.empty();
    }

    /** One of the blank lines for which the problem, or the skill, knows another rule; by turns with the variants. */
    private static Optional<SideQuestion> rule(Course course, Skill skill, Attempt attempt) {
        Template template = skill.of(attempt.variant());
        List<Integer> steps = new ArrayList<>();
        for (int step : template.blank(attempt.form())) {
            if (step <= template.lines().size()
                    && choices(skill, template, step).size() > 1) {
                steps.add(step);
            }
        }
        if (steps.isEmpty()) {
            return Optional.empty();
        }
        int step = steps.get(attempt.variant() / skill.templates().size() % steps.size());
        Line line = template.lines().get(step - 1);
        String chosen = attempt.text(RULE);
        String said = chosen.isEmpty() ? "" : Sentences.rule(course, template, step, chosen);
        boolean wrong = !chosen.isEmpty() && !chosen.equals(line.principle());
        return Optional.of(new SideQuestion(
                RULE,
                Sentences.whichRule(step, line),
                choices(skill, template, step),
                line.principle(),
                wrong ? step : 0,
                chosen,
                said));
    }

    /** Of this problem first; in the order of their letters, so that the place tells nothing. */
    private static List<String> choices(Skill skill, Template template, int step) {
        Line asked = template.lines().get(step - 1);
        TreeSet<String> choices = new TreeSet<>();
        choices.add(asked.principle());
        List<Template> sources = new ArrayList<>();
        sources.add(template);
        sources.addAll(skill.templates());
        for (Template source : sources) {
            for (Line line : source.lines()) {
                if (choices.size() < MOST_RULES && !asked.also().contains(line.principle())) {
                    choices.add(line.principle());
                }
            }
        }
        return new ArrayList<>(choices);
    }

    private static Optional<SideQuestion> twin(Skill skill, Attempt attempt) {
        Optional<Twin> twin = skill.twin(attempt.variant());
        if (twin.isEmpty()) {
            return Optional.empty();
        }
        List<Line> lines = skill.of(attempt.variant()).lines();
        List<String> choices = new ArrayList<>();
        String chosen = attempt.text(TWIN);
        for (Twin.Way way : Twin.Way.values()) {
            choices.add(way.choice());
        }
        String right = twin.get().way().choice();
        return Optional.of(new SideQuestion(
                TWIN,
                Sentences.whichWay(twin.get(), lines),
                choices,
                right,
                0,
                chosen,
                chosen.isEmpty() ? "" : Sentences.way(twin.get(), lines, chosen.equals(right))));
    }
}
