package ampersheet.marking;

import ampersheet.marking.Standing.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Whether variants of one problem that look harder were solved less often. With one variant for each learner there is
 * nothing to compare but groups of equal difficulty.
 *
 * @param difficulty of the group
 * @param solved learners of the group with full marks in the problem
 * @param others the same of all other groups of this problem
 * @param chance how often chance alone gives such a difference, corrected for the number of comparisons
 */
record Fairness(String template, String difficulty, Proportion solved, Proportion others, double chance) {
    private static final int LEAST_LEARNERS = 5;
    static final double UNLIKELY = 0.05;

    /** Of the variants of a problem, those whose groups are too small to be compared, together. */
    record Few(int groups, Proportion solved) {}

    boolean isUnequal() {
        return chance < UNLIKELY;
    }

    /** The share that this group, too, would have solved if difficulty did not matter. */
    double expected() {
        return (double) (solved.of() + others.of()) / (solved.all() + others.all());
    }

    /** Groups of at least five learners, each against the others of the same problem. */
    static List<Fairness> of(List<Standing> standings) {
        return corrected(compared(solved(standings)));
    }

    /** What the groups that {@link #of} leaves out have solved, by template. */
    static Map<String, Few> few(List<Standing> standings) {
        Map<String, Few> few = new TreeMap<>();
        solved(standings).forEach((template, groups) -> {
            List<List<Boolean>> small = groups.values().stream()
                    .filter(group -> group.size() < LEAST_LEARNERS)
                    .toList();
            if (!small.isEmpty()) {
                few.put(
                        template,
                        new Few(
                                small.size(),
                                proportion(small.stream().flatMap(List::stream).toList())));
            }
        });
        return few;
    }

    /** Whether each learner solved a problem, by template and difficulty. */
    private static Map<String, Map<String, List<Boolean>>> solved(List<Standing> standings) {
        Map<String, Map<String, List<Boolean>>> solved = new TreeMap<>();
        for (Standing standing : standings) {
            Map<Integer, List<Outcome>> byProblem = new LinkedHashMap<>();
            standing.outcomes()
                    .forEach(outcome -> byProblem
                            .computeIfAbsent(outcome.problem(), number -> new ArrayList<>())
                            .add(outcome));
            byProblem.values().forEach(outcomes -> {
                if (outcomes.stream().allMatch(outcome -> outcome.credit().isAnswered())) {
                    solved.computeIfAbsent(outcomes.get(0).item().template(), name -> new TreeMap<>())
                            .computeIfAbsent(outcomes.get(0).difficulty(), group -> new ArrayList<>())
                            .add(outcomes.stream()
                                    .allMatch(outcome -> outcome.credit().isFull()));
                }
            });
        }
        return solved;
    }

    private static List<Fairness> compared(Map<String, Map<String, List<Boolean>>> solved) {
        List<Fairness> compared = new ArrayList<>();
        solved.forEach((template, groups) -> {
            Proportion all =
                    proportion(groups.values().stream().flatMap(List::stream).toList());
            groups.forEach((difficulty, group) -> {
                Proportion here = proportion(group);
                Proportion others = new Proportion(all.of() - here.of(), all.all() - here.all());
                if (here.all() >= LEAST_LEARNERS && others.all() >= LEAST_LEARNERS) {
                    compared.add(new Fairness(
                            template,
                            difficulty,
                            here,
                            others,
                            ExactTest.twoSided(
                                    here.of(), here.all() - here.of(), others.of(), others.all() - others.of())));
                }
            });
        });
        return compared;
    }

    private static List<Fairness> corrected(List<Fairness> compared) {
        List<Double> chances =
                ExactTest.holm(compared.stream().map(Fairness::chance).toList());
        List<Fairness> corrected = new ArrayList<>();
        for (int i = 0; i < compared.size(); i++) {
            Fairness one = compared.get(i);
            corrected.add(new Fairness(one.template(), one.difficulty(), one.solved(), one.others(), chances.get(i)));
        }
        return corrected;
    }

    private static Proportion proportion(List<Boolean> solved) {
        return new Proportion((int) solved.stream().filter(one -> one).count(), solved.size());
    }
}
