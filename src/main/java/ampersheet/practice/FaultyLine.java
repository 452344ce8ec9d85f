package ampersheet.practice;

import ampersheet.answer.ProblemKey;
import ampersheet.language.Language;
import ampersheet.practice.Course.Faulty;
import ampersheet.practice.Course.Skill;
import java.util.List;
import java.util.Optional;

/**
 * The one wrong line of a worked solution: it is named first, and then mended. A learner has such problems only with
 * skills that are settled, because wrong examples help those who know the right ones.
 *
 * @param step its number, from 1
 * @param named the number that the learner named last; 0 before
 * @param meaning of the line that was named
 */
public record FaultyLine(int step, int named, String mistake, String meaning) {
    static final String NAMED = "line";

    static Optional<FaultyLine> of(Practice practice) {
        Attempt attempt = practice.attempt();
        Skill skill = practice.course().skills().get(practice.skillIndex());
        Faulty faulty = skill.faulty().get(attempt.variant());
        if (faulty == null) {
            return Optional.empty();
        }
        List<Course.Line> lines = skill.of(attempt.variant()).lines();
        int named = 0;
        for (int step = 1; step <= lines.size(); step++) {
            named = attempt.text(NAMED).equals(Integer.toString(step)) ? step : named;
        }
        named = attempt.ending().isPresent() ? faulty.step() : named;
        String meaning = named == 0 ? "" : lines.get(named - 1).meaning();
        return Optional.of(new FaultyLine(faulty.step(), named, faulty.mistake(), meaning));
    }

    /** The variant whose working comes next: of those mended least often, the first. */
    static Optional<Integer> next(Skill skill, LearnerRecord record) {
        Optional<Integer> next = Optional.empty();
        int least = Integer.MAX_VALUE;
        for (int variant : skill.faulty().keySet()) {
            int times = 0;
            for (Attempt attempt : record.attempts().values()) {
                boolean same = attempt.skill().equals(skill.name()) && attempt.variant() == variant;
                times += same && attempt.isFaulty() && attempt.ending().isPresent() ? 1 : 0;
            }
            if (times < least) {
                least = times;
                next = Optional.of(variant);
            }
        }
        return next;
    }

    public boolean isFound() {
        return named == step;
    }

    /** What is to be done, or what is found of the line that was named. */
    public String said(Language language) {
        Sentences sentences = new Sentences(language);
        return named == 0
                ? sentences.findTheLine()
                : isFound() ? sentences.found(step) : sentences.lineFollows(named, meaning);
    }

    String mended(ProblemKey key) {
        return new Sentences(key.language()).mended(Practice.told(mistake, key));
    }
}
