package ampersheet.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;

/**
 * Where the best of several rounds counts: a learner has after each hand-in what would count if it were the last, and
 * the round after which she had most is taken. So a later one with gaps loses nothing, and one that is worse does not
 * hurt.
 */
final class HandInRounds {
    private HandInRounds() {}

    /**
     * The hand-ins up to the best round; all where they have no order, or where the instructor said which one counts.
     *
     * @param marks what some of them, taken together, earn
     */
    static List<HandIn> best(List<HandIn> handIns, ToIntFunction<List<HandIn>> marks) {
        Optional<List<HandIn>> ordered = ordered(handIns);
        if (ordered.isEmpty() || handIns.stream().anyMatch(HandIn::isChosen)) {
            return handIns;
        }
        List<HandIn> best = ordered.get();
        int most = -1;
        for (int i = 1; i <= handIns.size(); i++) {
            List<HandIn> upTo = ordered.get().subList(0, i);
            int here = marks.applyAsInt(upTo.stream().map(HandIn::trial).toList());
            if (here >= most) {
                most = here;
                best = upTo;
            }
        }
        return List.copyOf(best);
    }

    /** The oldest first; empty if two contradict each other and none is the newer. */
    private static Optional<List<HandIn>> ordered(List<HandIn> handIns) {
        List<HandIn> left = new ArrayList<>(handIns);
        List<HandIn> ordered = new ArrayList<>();
        while (!left.isEmpty()) {
            Optional<HandIn> oldest = left.stream()
                    .filter(one -> left.stream().noneMatch(other -> other != one && other.isBefore(one)))
                    .findFirst();
            boolean torn = oldest.isEmpty()
                    || left.stream()
                            .anyMatch(other -> other != oldest.get()
                                    && other.contradicts(oldest.get())
                                    && !oldest.get().isBefore(other));
            if (torn) {
                return Optional.empty();
            }
            ordered.add(oldest.get());
            left.remove(oldest.get());
        }
        return Optional.of(ordered);
    }
}
