package ampersheet.practice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * All that a learner did in one set. What is known of her follows from it and is kept nowhere else.
 *
 * @param set of which course
 * @param attempts by id
 * @param support chosen by the learner, and when
 * @param aside whether she has questions beside the problems, and since when
 */
public record LearnerRecord(String set, Map<String, Attempt> attempts, Chosen support, Aside aside) {
    /** @param form empty: as it goes */
    public record Chosen(Moment at, Optional<Form.Kind> form) {
        private Chosen orLater(Chosen other) {
            int order = at.compareTo(other.at);
            boolean mine = order > 0 || order == 0 && written().compareTo(other.written()) >= 0;
            return mine ? this : other;
        }

        String written() {
            return form.map(Form.Kind::word).orElse("auto");
        }
    }

    /** @param asked whether there are any; at first there are */
    public record Aside(Moment at, boolean asked) {
        static final Aside AT_FIRST = new Aside(Moment.NEVER, true);

        /** Of two that were said at one moment, the one with questions. */
        private Aside orLater(Aside other) {
            int order = at.compareTo(other.at);
            return order > 0 || order == 0 && asked ? this : other;
        }
    }

    public LearnerRecord {
        attempts = Collections.unmodifiableMap(new TreeMap<>(attempts));
    }

    public static LearnerRecord none(String set) {
        return new LearnerRecord(set, Map.of(), new Chosen(Moment.NEVER, Optional.empty()), Aside.AT_FIRST);
    }

    /**
     * Everything that either knows. The same in whichever order records are joined, and however often.
     *
     * @throws UnfitText if they are of two sets
     */
    public LearnerRecord joined(LearnerRecord other) {
        if (!set.equals(other.set)) {
            throw new UnfitText("practice.record.other-set", "its", other.set, "set", set);
        }
        Map<String, Attempt> all = new TreeMap<>(attempts);
        other.attempts.forEach((id, attempt) -> all.merge(id, attempt, Attempt::joined));
        return new LearnerRecord(set, all, support.orLater(other.support), aside.orLater(other.aside));
    }

    LearnerRecord with(Attempt attempt) {
        Map<String, Attempt> all = new TreeMap<>(attempts);
        all.put(attempt.id(), attempt);
        return new LearnerRecord(set, all, support, aside);
    }

    LearnerRecord with(Chosen chosen) {
        return new LearnerRecord(set, attempts, chosen, aside);
    }

    LearnerRecord with(Aside chosen) {
        return new LearnerRecord(set, attempts, support, chosen);
    }

    /** Later than all that is in it. */
    Moment next(String writer) {
        int most = Math.max(support.at().count(), aside.at().count());
        for (Attempt attempt : attempts.values()) {
            most = Math.max(
                    most, Math.max(attempt.shown().count(), attempt.checked().count()));
            most = Math.max(most, attempt.given().count());
            for (Attempt.Typed typed : attempt.typed().values()) {
                most = Math.max(most, typed.at().count());
            }
            for (Attempt.Slip slip : attempt.slips()) {
                most = Math.max(most, slip.at().count());
            }
            if (attempt.ending().isPresent()) {
                most = Math.max(most, attempt.ending().get().at().count());
            }
        }
        return new Moment(most + 1, writer);
    }

    /** In the order given. */
    List<Attempt> inOrder() {
        TreeMap<Moment, List<Attempt>> byMoment = new TreeMap<>();
        attempts.values().forEach(attempt -> put(byMoment, attempt.given(), attempt));
        return flat(byMoment);
    }

    /**
     * Those that ended, in the order in which they did; without the workings with a wrong line, which count nothing.
     */
    List<Attempt> ended() {
        TreeMap<Moment, List<Attempt>> byMoment = new TreeMap<>();
        for (Attempt attempt : attempts.values()) {
            if (attempt.ending().isPresent() && !attempt.isFaulty()) {
                put(byMoment, attempt.ending().get().at(), attempt);
            }
        }
        return flat(byMoment);
    }

    private static void put(TreeMap<Moment, List<Attempt>> byMoment, Moment moment, Attempt attempt) {
        if (!byMoment.containsKey(moment)) {
            byMoment.put(moment, new ArrayList<>());
        }
        byMoment.get(moment).add(attempt);
    }

    private static List<Attempt> flat(TreeMap<Moment, List<Attempt>> byMoment) {
        List<Attempt> all = new ArrayList<>();
        byMoment.values().forEach(all::addAll);
        return all;
    }

    /** The latest of a skill that is still open. */
    Optional<Attempt> open(String skill) {
        Optional<Attempt> found = Optional.empty();
        for (Attempt attempt : inOrder()) {
            if (attempt.skill().equals(skill) && attempt.isOpen() && !attempt.isFaulty()) {
                found = Optional.of(attempt);
            }
        }
        return found;
    }
}
