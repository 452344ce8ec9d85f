package ampersheet.marking;

import ampersheet.marking.Standing.Item;
import ampersheet.marking.Standing.Outcome;
import ampersheet.sheet.Roster;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Something worth taking up again with a class: a mistake that several learners met, or a question that many have wrong
 * in ways that nothing explains.
 *
 * @param cause the mistake; empty where nothing explains it
 * @param item the question where it was met most often
 * @param there how many learners met it at that question
 * @param answers how many it explains, for each learner
 * @param where each question where it was met, in the order of the plan
 */
record TakeUp(Optional<Cause> cause, Item item, int there, Map<Roster.Seat, Integer> answers, List<Item> where) {
    /** Nobody can keep more in mind for one lesson. */
    static final int MOST = 3;

    private static final int LEAST_LEARNERS = 2;
    /** Of the class, for a known mistake. */
    private static final double LEAST_SHARE = 0.05;
    /** Of the class, where nothing explains what is wrong: a slip may lie behind each. */
    private static final double LEAST_UNEXPLAINED = 0.15;

    TakeUp {
        where = List.copyOf(where);
    }

    List<Roster.Seat> learners() {
        return List.copyOf(answers.keySet());
    }

    int count() {
        return answers.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** What most learners met first; at most {@link #MOST}. */
    static List<TakeUp> of(ClassResults results) {
        Map<String, Gathered> gathered = new TreeMap<>();
        for (Standing standing : results.standings()) {
            for (Outcome outcome : standing.outcomes()) {
                if (outcome.isWrong()) {
                    String id = outcome.cause().map(Cause::id).orElse("unexplained " + outcome.item());
                    gathered.computeIfAbsent(id, same -> new Gathered(outcome.cause()))
                            .add(standing.seat(), outcome.item());
                }
            }
        }
        int learners = results.standings().size();
        List<TakeUp> found = new ArrayList<>();
        gathered.values().forEach(one -> found.add(one.takeUp(results)));
        found.removeIf(one -> one.answers().size()
                < Math.max(LEAST_LEARNERS, learners * (one.cause().isPresent() ? LEAST_SHARE : LEAST_UNEXPLAINED)));
        found.sort(Comparator.comparingInt((TakeUp one) -> -one.answers().size())
                .thenComparing(one -> -one.count())
                .thenComparing(one -> one.cause().map(Cause::modelled).orElse(false) ? 0 : 1));
        return List.copyOf(found.subList(0, Math.min(MOST, found.size())));
    }

    /** Who should work together: each learner with what she met most often, and of equals with what comes first. */
    static List<List<Roster.Seat>> groups(List<TakeUp> things) {
        List<List<Roster.Seat>> groups = new ArrayList<>();
        things.forEach(thing -> groups.add(new ArrayList<>()));
        Map<Roster.Seat, Integer> best = new TreeMap<>(Comparator.comparingInt(Roster.Seat::number));
        for (int i = 0; i < things.size(); i++) {
            int thing = i;
            things.get(i).answers().forEach((seat, times) -> {
                Integer before = best.get(seat);
                if (before == null || times > things.get(before).answers().get(seat)) {
                    best.put(seat, thing);
                }
            });
        }
        best.forEach((seat, thing) -> groups.get(thing).add(seat));
        return groups;
    }

    /** While the class is gone through. */
    private static final class Gathered {
        private final Optional<Cause> cause;
        private final Map<Roster.Seat, Integer> answers = new LinkedHashMap<>();
        private final Map<Item, Integer> items = new LinkedHashMap<>();

        Gathered(Optional<Cause> cause) {
            this.cause = cause;
        }

        void add(Roster.Seat seat, Item item) {
            answers.merge(seat, 1, Integer::sum);
            items.merge(item, 1, Integer::sum);
        }

        TakeUp takeUp(ClassResults results) {
            List<Item> where =
                    results.items().keySet().stream().filter(items::containsKey).toList();
            Item most = where.get(0);
            for (Item item : where) {
                most = items.get(item) > items.get(most) ? item : most;
            }
            return new TakeUp(cause, most, items.get(most), answers, where);
        }
    }
}
