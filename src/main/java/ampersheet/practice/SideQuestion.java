package ampersheet.practice;

import ampersheet.practice.Course.Line;
import ampersheet.practice.Course.Skill;
import ampersheet.practice.Course.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A closed question beside a problem: which rule gives a line that is left blank, or, once it is solved without help,
 * which way a value goes when a given is changed. It counts neither for nor against anything, and a learner may have
 * them no more. On one day none is asked twice of a template, whatever its numbers.
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
    static Optional<SideQuestion> of(Course course, Skill skill, Attempt attempt, LearnerRecord record) {
        List<Attempt> before = before(attempt, record);
        if (attempt.isOpen() && attempt.form().kind() == Form.Kind.FADED) {
            return rule(course, skill, attempt, before);
        }
        return isForTwin(attempt) ? twin(course, skill, attempt, before) : Optional.empty();
    }

    private static boolean isForTwin(Attempt attempt) {
        return attempt.isRight() && !attempt.isHelped() && !attempt.isFaulty();
    }

    /** Those of the template that were given on the same day, in their order. */
    private static List<Attempt> before(Attempt attempt, LearnerRecord record) {
        List<Attempt> before = new ArrayList<>();
        for (Attempt other : record.inOrder()) {
            boolean same =
                    other.skill().equals(attempt.skill()) && other.template().equals(attempt.template());
            if (same && other.day() == attempt.day() && attempt.given().isAfter(other.given())) {
                before.add(other);
            }
        }
        return before;
    }

    /** One of the blank lines for which the problem, or the skill, knows another rule, and that was not asked about. */
    private static Optional<SideQuestion> rule(Course course, Skill skill, Attempt attempt, List<Attempt> before) {
        Template template = skill.of(attempt.variant());
        Set<Integer> asked = new TreeSet<>();
        for (Attempt other : before) {
            if (other.form().kind() == Form.Kind.FADED) {
                step(skill, other, asked).ifPresent(asked::add);
            }
        }
        Optional<Integer> found = step(skill, attempt, asked);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        int step = found.get();
        Line line = template.lines().get(step - 1);
        String chosen = attempt.text(RULE);
        String said = chosen.isEmpty() ? "" : course.sentences().rule(course, template, step, chosen);
        boolean wrong = !chosen.isEmpty() && !chosen.equals(line.principle());
        return Optional.of(new SideQuestion(
                RULE,
                course.sentences().whichRule(step, line),
                choices(skill, template, step),
                line.principle(),
                wrong ? step : 0,
                chosen,
                said));
    }

    private static Optional<Integer> step(Skill skill, Attempt attempt, Set<Integer> asked) {
        Template template = skill.of(attempt.variant());
        List<Integer> steps = new ArrayList<>();
        for (int step : template.blank(attempt.form())) {
            if (step <= template.lines().size()
                    && !asked.contains(step)
                    && choices(skill, template, step).size() > 1) {
                steps.add(step);
            }
        }
        return steps.isEmpty()
                ? Optional.empty()
                : Optional.of(steps.get(attempt.variant() / skill.templates().size() % steps.size()));
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

    private static Optional<SideQuestion> twin(Course course, Skill skill, Attempt attempt, List<Attempt> before) {
        Optional<Twin> twin = skill.twin(attempt.variant());
        boolean asked = twin.isEmpty();
        for (Attempt other : before) {
            asked |= isForTwin(other) && skill.twin(other.variant()).equals(twin);
        }
        if (asked) {
            return Optional.empty();
        }
        List<Line> lines = skill.of(attempt.variant()).lines();
        List<String> choices = new ArrayList<>();
        String chosen = attempt.text(TWIN);
        for (Twin.Way way : Twin.Way.values()) {
            choices.add(course.sentences().choice(way));
        }
        String right = course.sentences().choice(twin.get().way());
        return Optional.of(new SideQuestion(
                TWIN,
                course.sentences().whichWay(twin.get(), lines),
                choices,
                right,
                0,
                chosen,
                chosen.isEmpty() ? "" : course.sentences().way(twin.get(), lines, chosen.equals(right))));
    }
}
