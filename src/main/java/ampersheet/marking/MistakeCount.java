package ampersheet.marking;

import ampersheet.marking.Standing.Outcome;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * How often a cause was met in a problem. Blank places are no mistakes and are not among the wrong answers, nor is what
 * could not be read.
 *
 * @param learners who met it at least once
 * @param matches answers that it explains
 * @param wrong all wrong answers to this problem
 */
record MistakeCount(String template, Cause cause, int learners, int matches, int wrong) {

    double share() {
        return (double) matches / wrong;
    }

    /**
     * @param template of the problem
     * @param found most frequent first
     * @param unexplained wrong answers without a cause
     */
    record OfProblem(String template, List<MistakeCount> found, int wrong, int unexplained) {
        OfProblem {
            found = List.copyOf(found);
        }
    }

    /** By problem, in the order of their names. */
    static List<OfProblem> of(List<Standing> standings) {
        Map<String, Map<String, List<Met>>> met = new TreeMap<>();
        Map<String, Integer> wrong = new TreeMap<>();
        Map<String, Integer> explained = new TreeMap<>();
        for (Standing standing : standings) {
            for (Outcome outcome : standing.outcomes()) {
                String template = outcome.item().template();
                if (outcome.isWrong()) {
                    wrong.merge(template, 1, Integer::sum);
                    outcome.cause().ifPresent(cause -> {
                        explained.merge(template, 1, Integer::sum);
                        met.computeIfAbsent(template, name -> new LinkedHashMap<>())
                                .computeIfAbsent(cause.id(), id -> new ArrayList<>())
                                .add(new Met(standing.seat().number(), cause));
                    });
                }
            }
        }
        List<OfProblem> problems = new ArrayList<>();
        wrong.forEach((template, count) -> {
            List<MistakeCount> found = new ArrayList<>();
            met.getOrDefault(template, Map.of()).forEach((id, all) -> {
                TreeSet<Integer> seats = new TreeSet<>();
                all.forEach(one -> seats.add(one.seat()));
                found.add(new MistakeCount(template, all.get(0).cause(), seats.size(), all.size(), count));
            });
            found.sort(Comparator.comparingInt(MistakeCount::matches)
                    .reversed()
                    .thenComparing(one -> one.cause().id()));
            problems.add(new OfProblem(template, found, count, count - explained.getOrDefault(template, 0)));
        });
        return problems;
    }

    private record Met(int seat, Cause cause) {}
}
