package ampersheet.practice;

import ampersheet.practice.Course.Skill;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which skill and which problem come next. Skills come mixed: of those that are due or not settled, the one that was
 * longest not given, so that each is met in the first round. A skill waits for those it builds on until each was once
 * solved.
 */
public final class Schedule {
    /** More problems than any skill takes whose forms are all gone through, from the example to the question alone. */
    private static final int MOST_LEFT = 20;

    private static final String FORESEEN = "foreseen";

    private Schedule() {}

    /** Why a problem is given. */
    public enum Why {
        /** Not settled yet. */
        OPEN,
        /** Settled, and its day has come. */
        DUE,
        /** Settled, and given so that the only skill that is not has another one in between. */
        BETWEEN,
        /** All are settled and none is due. */
        AHEAD_OF_TIME
    }

    /**
     * @param skill index in the course
     * @param open the attempt to go on with; empty: a new problem
     * @param variant of the skill
     */
    public record Next(int skill, Optional<Attempt> open, int variant, Form form, Why why) {}

    /** @param chance any number, the same for the same next problem */
    static Next next(Course course, LearnerRecord record, int day, int chance) {
        List<Standing> standings = standings(course, record);
        List<Integer> candidates = candidates(course, standings, day);
        Why why = Why.OPEN;
        if (candidates.size() == 1 && waitsForAnother(course, record, candidates.get(0), standings)) {
            why = Why.BETWEEN;
            candidates = settled(standings);
        }
        if (candidates.isEmpty()) {
            why = Why.AHEAD_OF_TIME;
            for (int i = 0; i < course.skills().size(); i++) {
                candidates.add(i);
            }
        }
        int skill = longestAgo(course, record, candidates);
        if (standings.get(skill).isDue(day)) {
            why = Why.DUE;
        }
        return of(course, record, skill, chance, why);
    }

    /** The next problem of a skill: one left open, else a new one. */
    static Next of(Course course, LearnerRecord record, int skill, int chance, Why why) {
        Optional<Attempt> open = record.open(course.skills().get(skill).name());
        if (open.isPresent()
                && open.get().variant() < course.skills().get(skill).variants().size()) {
            return new Next(skill, open, open.get().variant(), open.get().form(), why);
        }
        return another(course, record, skill, chance, why);
    }

    /** A new problem of a skill. */
    static Next another(Course course, LearnerRecord record, int skill, int chance, Why why) {
        Skill of = course.skills().get(skill);
        Standing standing = Standing.of(of, record);
        int template = template(of, standing, record);
        int variant = variant(of, template, record, chance);
        Form form = record.support()
                .form()
                .map(chosen -> shown(of, template, chosen))
                .orElseGet(() -> of.templates().get(template).formFor(standing.blanks()));
        return new Next(skill, Optional.empty(), variant, form, why);
    }

    /**
     * How many problems of a skill, the present one with them if it is open, settle it if each is right at once and
     * without help, on days of their own; empty where, in the form that the learner chose, none ever does.
     */
    static OptionalInt untilSettled(Course course, LearnerRecord record, int skill, Attempt present) {
        Skill of = course.skills().get(skill);
        LearnerRecord after = record;
        Attempt attempt = present;
        int day = present.day();
        for (int problems = present.isOpen() ? 1 : 0; problems <= MOST_LEFT; problems++) {
            if (attempt.isOpen()) {
                attempt = attempt.ended(
                        new Attempt.Ending(after.next(FORESEEN), ++day, Attempt.Way.RIGHT, Attempt.Sureness.UNSAID));
                after = after.with(attempt);
            }
            if (Standing.of(of, after).isSettled()) {
                return OptionalInt.of(problems);
            }
            Next next = another(course, after, skill, 0, Why.OPEN);
            attempt = Attempt.begun(
                    FORESEEN + problems,
                    of.name(),
                    of.of(next.variant()).name(),
                    next.variant(),
                    after.next(FORESEEN),
                    ++day,
                    next.form());
        }
        return OptionalInt.empty();
    }

    private static Form shown(Skill skill, int template, Form.Kind chosen) {
        return switch (chosen) {
            case FULL -> Form.FULL;
            case FADED -> skill.templates().get(template).middle();
            case BARE, FAULTY -> Form.BARE; // a wrong line is offered and never chosen as support
        };
    }

    static List<Standing> standings(Course course, LearnerRecord record) {
        List<Standing> standings = new ArrayList<>();
        course.skills().forEach(skill -> standings.add(Standing.of(skill, record)));
        return standings;
    }

    private static List<Integer> candidates(Course course, List<Standing> standings, int day) {
        List<Integer> candidates = new ArrayList<>();
        for (int i = 0; i < standings.size(); i++) {
            boolean open = !standings.get(i).isSettled() && isReady(course, standings, i);
            if (open || standings.get(i).isDue(day)) {
                candidates.add(i);
            }
        }
        return candidates;
    }

    /** Whether of all that a skill builds on something was solved. */
    static boolean isReady(Course course, List<Standing> standings, int skill) {
        for (int before : course.skills().get(skill).after()) {
            if (standings.get(before).right() == 0) {
                return false;
            }
        }
        return true;
    }

    private static int longestAgo(Course course, LearnerRecord record, List<Integer> candidates) {
        int found = candidates.get(0);
        Optional<Moment> least = latest(course, record, found);
        for (int candidate : candidates) {
            Optional<Moment> latest = latest(course, record, candidate);
            boolean earlier =
                    least.isPresent() && (latest.isEmpty() || least.get().isAfter(latest.get()));
            if (earlier) {
                found = candidate;
                least = latest;
            }
        }
        return found;
    }

    /** Whether a skill was the last one worked on, and its next proof counts only after another one. */
    private static boolean waitsForAnother(Course course, LearnerRecord record, int skill, List<Standing> standings) {
        List<Attempt> ended = record.ended();
        boolean wasLast = !ended.isEmpty()
                && ended.get(ended.size() - 1)
                        .skill()
                        .equals(course.skills().get(skill).name());
        return wasLast
                && !standings.get(skill).isSettled()
                && !standings.get(skill).proofs().isEmpty()
                && !settled(standings).isEmpty();
    }

    private static List<Integer> settled(List<Standing> standings) {
        List<Integer> settled = new ArrayList<>();
        for (int i = 0; i < standings.size(); i++) {
            if (standings.get(i).isSettled()) {
                settled.add(i);
            }
        }
        return settled;
    }

    private static Optional<Moment> latest(Course course, LearnerRecord record, int skill) {
        Optional<Moment> latest = Optional.empty();
        for (Attempt attempt : record.attempts().values()) {
            if (attempt.skill().equals(course.skills().get(skill).name())) {
                Moment at = attempt.ending().map(Attempt.Ending::at).orElse(attempt.given());
                latest = Optional.of(latest.map(at::orLater).orElse(at));
            }
        }
        return latest;
    }

    /** By turns; for a proof, one that is not proven yet. */
    private static int template(Skill skill, Standing standing, LearnerRecord record) {
        int found = -1;
        Moment least = Moment.NEVER;
        for (int i = 0; i < skill.templates().size(); i++) {
            String name = skill.templates().get(i).name();
            boolean provenAlready = standing.proven().contains(name)
                    && standing.proven().size() < skill.templates().size();
            if (!skill.variants().contains(i) || provenAlready) {
                continue;
            }
            Moment latest = Moment.NEVER;
            for (Attempt attempt : record.attempts().values()) {
                if (attempt.skill().equals(skill.name()) && attempt.template().equals(name)) {
                    latest = latest.orLater(attempt.given());
                }
            }
            if (found < 0 || least.isAfter(latest)) {
                found = i;
                least = latest;
            }
        }
        return found < 0 ? skill.variants().get(0) : found;
    }

    /** Of those given least often, one by chance. */
    private static int variant(Skill skill, int template, LearnerRecord record, int chance) {
        List<Integer> fewest = new ArrayList<>();
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < skill.variants().size(); i++) {
            if (skill.variants().get(i) != template) {
                continue;
            }
            int times = 0;
            for (Attempt attempt : record.attempts().values()) {
                times += attempt.skill().equals(skill.name()) && attempt.variant() == i ? 1 : 0;
            }
            if (times < least) {
                least = times;
                fewest.clear();
            }
            if (times == least) {
                fewest.add(i);
            }
        }
        return fewest.get(Math.floorMod(chance, fewest.size()));
    }
}
