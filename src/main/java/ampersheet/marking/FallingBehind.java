package ampersheet.marking;

import ampersheet.marking.MarkedWeeks.Learner;
import ampersheet.marking.MarkedWeeks.Worked;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * Who of a class falls behind in the weeks of a course, and in what. A problem counts as right where all its answers
 * are, since they hang together; how hard it was, the others tell: the share of them who had theirs right in the same
 * skill and week.
 *
 * <p>Three questions, each answered by the chance of a result as low as seen. In all: as if the learner were like the
 * others, corrected for the number of learners (Holm). In a skill, and in the later half of the weeks: as if she were
 * as good there as elsewhere, exactly, given how many she has right in all, whatever her level. Of a learner's skills
 * the lowest is looked at, and its chance is corrected for how many she has.
 */
final class FallingBehind {
    /** For fewer nobody's level can be told from chance. */
    static final int FEWEST = 8;

    private static final double IN_ALL = 0.05;
    /** Of learners without a gap about one in fifty is named by it, since few problems cannot tell more finely. */
    private static final double IN_PART = 0.05;

    private FallingBehind() {}

    /**
     * A learner who had better be looked at.
     *
     * @param right problems
     * @param expected as many as the others would have right of the same
     * @param all whether she is behind in all
     * @param skill in which she is behind what she does elsewhere; empty if there is none
     * @param lately whether she has been in the later half of the weeks
     */
    record Finding(String who, int right, double expected, int of, boolean all, String skill, boolean lately) {}

    /**
     * A problem as it was met.
     *
     * @param share of the others who had theirs right in the same skill and week, never quite none or all of them
     */
    private record Met(String skill, int week, boolean right, double share) {}

    /** In the order of the class. */
    static List<Finding> of(List<Learner> learners, int weeks) {
        List<Learner> present =
                learners.stream().filter(one -> !one.worked().isEmpty()).toList();
        if (present.size() < FEWEST) {
            return List.of();
        }
        Map<String, Proportion> shares = new TreeMap<>();
        present.forEach(learner -> shares(learner).forEach((key, share) -> shares.merge(key, share, MarkedWeeks::sum)));
        List<List<Met>> met = present.stream().map(one -> met(one, shares)).toList();
        List<Double> inAll =
                ExactTest.holm(met.stream().map(FallingBehind::lowInAll).toList());
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < present.size(); i++) {
            List<Met> problems = met.get(i);
            boolean all = inAll.get(i) < IN_ALL;
            String skill = lowest(problems);
            boolean lately = low(problems, problem -> problem.week() >= weeks / 2) < IN_PART;
            if (all || !skill.isEmpty() || lately) {
                findings.add(new Finding(
                        present.get(i).who(),
                        right(problems),
                        problems.stream().mapToDouble(Met::share).sum(),
                        problems.size(),
                        all,
                        skill,
                        lately));
            }
        }
        return findings;
    }

    private static String key(Worked problem) {
        return problem.week() + " " + problem.skill();
    }

    private static Map<String, Proportion> shares(Learner learner) {
        Map<String, Proportion> shares = new TreeMap<>();
        learner.worked()
                .forEach(problem ->
                        shares.merge(key(problem), new Proportion(problem.right() ? 1 : 0, 1), MarkedWeeks::sum));
        return shares;
    }

    private static List<Met> met(Learner learner, Map<String, Proportion> shares) {
        Map<String, Proportion> own = shares(learner);
        return learner.worked().stream()
                .map(problem -> {
                    Proportion all = shares.get(key(problem));
                    Proportion hers = own.get(key(problem));
                    double share = (all.of() - hers.of() + 0.5) / (all.all() - hers.all() + 1);
                    return new Met(problem.skill(), problem.week(), problem.right(), share);
                })
                .toList();
    }

    private static int right(List<Met> problems) {
        return (int) problems.stream().filter(Met::right).count();
    }

    private static double lowInAll(List<Met> problems) {
        double[] chances = chances(problems, problem -> true);
        double sum = 0;
        for (int count = 0; count <= right(problems); count++) {
            sum += chances[count];
        }
        return sum;
    }

    /** How likely each number of right ones is among those problems, for one who is like the others. */
    private static double[] chances(List<Met> problems, Predicate<Met> among) {
        double[] chances = {1};
        for (Met problem : problems) {
            if (among.test(problem)) {
                double[] longer = new double[chances.length + 1];
                for (int count = 0; count < chances.length; count++) {
                    longer[count] += chances[count] * (1 - problem.share());
                    longer[count + 1] += chances[count] * problem.share();
                }
                chances = longer;
            }
        }
        return chances;
    }

    /**
     * How likely it is to have fewer right among those problems, given how many there are in all; just as many count
     * half (the mid-p value), since so few problems would otherwise hardly ever tell.
     */
    private static double low(List<Met> problems, Predicate<Met> among) {
        double[] inside = chances(problems, among);
        double[] outside = chances(problems, among.negate());
        int seen = right(problems.stream().filter(among).toList());
        int all = right(problems);
        double low = 0;
        double sum = 0;
        for (int count = Math.max(0, all - outside.length + 1); count < inside.length && count <= all; count++) {
            double chance = inside[count] * outside[all - count];
            sum += chance;
            low += count < seen ? chance : count == seen ? chance / 2 : 0;
        }
        return low / sum;
    }

    private static String lowest(List<Met> problems) {
        Map<String, Double> chances = new LinkedHashMap<>();
        problems.forEach(problem -> chances.computeIfAbsent(
                problem.skill(), skill -> low(problems, other -> other.skill().equals(skill))));
        String lowest = "";
        double least = IN_PART / chances.size();
        for (Map.Entry<String, Double> chance : chances.entrySet()) {
            if (chance.getValue() < least) {
                least = chance.getValue();
                lowest = chance.getKey();
            }
        }
        return lowest;
    }
}
