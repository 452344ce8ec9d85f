package ampersheet.practice;

import ampersheet.practice.Course.Skill;
import ampersheet.practice.Course.Template;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Where a learner stands with one skill: what follows from her attempts at it, in the order in which they ended.
 *
 * <p>A skill is settled by two problems solved bare, right at once and without help: on two templates where the skill
 * has two, and the second on a later day or after a problem of another skill. Whatever goes wrong takes back what was
 * proven; what goes wrong in a settled skill before it is due, in extra practice, only brings it back the next day.
 * Once settled it is due again after even gaps (expanding ones do no better: Latimier, Peyre, Ramus 2021, Educ Psychol
 * Rev 33:959).
 *
 * @param blanks how many steps the next problem leaves blank; {@link #ALL} for the question alone, one less than that
 *     for the last form before it, and so on: templates differ in how many forms they have
 * @param proofs bare successes that count so far
 * @param due the day from which the skill comes back; empty until it is settled
 * @param given problems given
 * @param right of these, solved in the end
 * @param atOnce of these, without slip or help
 * @param slips wrong answers
 * @param helped problems in which help was taken
 */
public record Standing(
        int blanks, List<Attempt> proofs, OptionalInt due, int given, int right, int atOnce, int slips, int helped) {
    /** Days from one time to the next that a settled skill is looked at again. */
    public static final int GAP = 3;

    static final int ALL = 1000;
    static final int PROOFS = 2;

    private static final Standing NOTHING_DONE = new Standing(0, List.of(), OptionalInt.empty(), 0, 0, 0, 0, 0);

    public Standing {
        proofs = List.copyOf(proofs);
    }

    public boolean isSettled() {
        return due.isPresent();
    }

    public boolean isDue(int day) {
        return due.isPresent() && due.getAsInt() <= day;
    }

    static Standing of(Skill skill, LearnerRecord record) {
        List<Attempt> all = record.ended();
        Standing standing = NOTHING_DONE;
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).skill().equals(skill.name())) {
                standing = standing.after(all.get(i), all.subList(0, i), skill);
            }
        }
        int given = 0;
        int slips = 0;
        int helped = 0;
        for (Attempt attempt : record.attempts().values()) {
            if (attempt.skill().equals(skill.name()) && !attempt.isFaulty()) {
                given++;
                slips += attempt.slips().size();
                helped += attempt.isHelped() ? 1 : 0;
            }
        }
        return new Standing(
                standing.blanks, standing.proofs, standing.due, given, standing.right, standing.atOnce, slips, helped);
    }

    private Standing after(Attempt attempt, List<Attempt> before, Skill skill) {
        boolean wrong = attempt.wentWrong();
        boolean extra = wrong && due.isPresent() && !isDue(attempt.day());
        int next = extra ? blanks : blanksAfter(attempt, skill);
        List<Attempt> counted = new ArrayList<>(wrong && !extra ? List.of() : proofs);
        OptionalInt dueNext = !wrong
                ? due
                : extra ? OptionalInt.of(Math.min(due.getAsInt(), attempt.day() + 1)) : OptionalInt.empty();
        if (attempt.isProof()) {
            counted.add(attempt);
            int today = attempt.ending().orElseThrow().day();
            boolean settlesNow = due.isEmpty() && settles(counted, before, skill);
            if (settlesNow || isDue(today)) {
                dueNext = OptionalInt.of(today + GAP);
            }
        }
        return new Standing(
                next,
                counted,
                dueNext,
                0,
                right + (attempt.isRight() ? 1 : 0),
                atOnce + (attempt.isClean() ? 1 : 0),
                0,
                0);
    }

    /** Whether the last of these and another of them are two that settle. */
    private static boolean settles(List<Attempt> proofs, List<Attempt> before, Skill skill) {
        Attempt last = proofs.get(proofs.size() - 1);
        for (Attempt earlier : proofs.subList(0, proofs.size() - 1)) {
            boolean differ = !skill.hasSeveralTemplates() || !earlier.template().equals(last.template());
            if (differ
                    && (last.day() > earlier.ending().orElseThrow().day() || isOtherBetween(earlier, last, before))) {
                return true;
            }
        }
        return false;
    }

    private static boolean isOtherBetween(Attempt earlier, Attempt last, List<Attempt> before) {
        Moment from = earlier.ending().orElseThrow().at();
        for (Attempt other : before) {
            boolean worked = other.ending().orElseThrow().way() != Attempt.Way.GIVEN_UP;
            if (worked
                    && !other.skill().equals(last.skill())
                    && other.ending().get().at().isAfter(from)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Less support with what is right at once: twice as many blank steps, or the question alone to who needs none of
     * them. More after each problem that went wrong: one form back, however it went wrong.
     */
    private int blanksAfter(Attempt attempt, Skill skill) {
        Template template = attempt.variant() < skill.variants().size()
                ? skill.of(attempt.variant())
                : skill.templates().get(0);
        boolean bare = attempt.form().kind() == Form.Kind.BARE;
        int had = attempt.form().blanks();
        if (attempt.wentWrong() || bare && attempt.isHelped()) {
            int back = template.formsBeforeBare(attempt.form()) + 1;
            return back > template.faded().size() ? 0 : ALL - back;
        }
        if (attempt.isHelped()) {
            return had;
        }
        if (bare || attempt.ending().orElseThrow().way() == Attempt.Way.STRAIGHT) {
            return ALL;
        }
        Form next = template.formWithAtLeast(Math.max(had + 1, 2 * had));
        return next.kind() == Form.Kind.BARE ? ALL : next.blanks();
    }

    /** Templates on which a bare success counts already. */
    Set<String> proven() {
        Set<String> names = new LinkedHashSet<>();
        for (Attempt proof : proofs) {
            names.add(proof.template());
        }
        return names;
    }
}
