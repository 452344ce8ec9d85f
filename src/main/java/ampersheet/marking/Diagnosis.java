package ampersheet.marking;

import ampersheet.marking.Standing.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * A cause found on one learner's sheet. One match may be chance, and even a real one may be gone tomorrow (VanLehn 1982
 * on how unstable procedural bugs are), so it is a hypothesis; only matches in two different problems make a pattern.
 *
 * @param problems their numbers on this sheet, in order
 */
record Diagnosis(Cause cause, List<Integer> problems) {
    private static final int LEAST_PROBLEMS_OF_A_PATTERN = 2;

    Diagnosis {
        problems = List.copyOf(problems);
    }

    boolean isPattern() {
        return problems.size() >= LEAST_PROBLEMS_OF_A_PATTERN;
    }

    /** Of the problems, for a list. */
    List<String> numbers() {
        return problems.stream().map(String::valueOf).toList();
    }

    /** In the order in which they first come up. */
    static List<Diagnosis> of(Standing standing) {
        Map<String, List<Outcome>> byCause = new LinkedHashMap<>();
        for (Outcome outcome : standing.outcomes()) {
            outcome.cause()
                    .ifPresent(cause -> byCause.computeIfAbsent(cause.id(), id -> new ArrayList<>())
                            .add(outcome));
        }
        List<Diagnosis> found = new ArrayList<>();
        byCause.forEach((id, outcomes) -> {
            TreeSet<Integer> problems = new TreeSet<>();
            outcomes.forEach(outcome -> problems.add(outcome.problem()));
            found.add(new Diagnosis(outcomes.get(0).cause().orElseThrow(), List.copyOf(problems)));
        });
        return found;
    }
}
