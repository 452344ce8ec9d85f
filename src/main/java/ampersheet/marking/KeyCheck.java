package ampersheet.marking;

import ampersheet.language.Saying;
import ampersheet.marking.ItemScores.Score;
import ampersheet.marking.Standing.Item;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Which keys of a sheet are to be looked at. With a wrong key those who know more are wrong, and all in one way; or
 * more answers than usual are wrong in ways that nothing explains; or hardly anybody is right. A question that tells
 * nothing has stronger learners among the wrong ones nearly every second time, and a sheet has many questions: the mere
 * sign would accuse a right key in every second class. So each of the three is tested over all questions of the sheet
 * together (Holm's correction). With all keys right, at most two classes of thirty in a hundred are told to look at
 * one.
 *
 * @param reason as it stands in the report
 * @param chance how often chance alone gives what was seen, corrected for the number of questions
 */
record KeyCheck(Saying reason, double chance) {
    /** For the whole sheet. That they must outnumber the right ones besides makes chance four times rarer. */
    private static final double STRONGER = 0.04;

    private static final double UNEXPLAINED = 0.005;
    private static final double HARDLY_ANYBODY = 0.005;
    /** With a right key and the usual mistakes known, no more answers of a class are unexplained. */
    private static final double MOST_UNEXPLAINED = 1.0 / 3;
    /** A question that fewer of a class can do is worth a look, whatever is wrong with it. */
    private static final double HARDEST = 0.25;

    /** The questions whose keys should be checked, in their order; those that too few answered are not tested. */
    static Map<Item, KeyCheck> of(Map<Item, ItemScores> items) {
        Map<Item, ItemScores> tested = new LinkedHashMap<>(items);
        tested.values().removeIf(scores -> scores.scores().size() < ClassResults.LEAST_LEARNERS);
        Map<Item, KeyCheck> found = new LinkedHashMap<>();
        find(
                tested,
                KeyCheck::strongerAreWrong,
                STRONGER,
                scores -> Saying.of("report.questions.check-stronger"),
                found);
        find(
                tested,
                KeyCheck::unexplained,
                UNEXPLAINED,
                scores -> Saying.of(
                        "report.questions.check-unexplained",
                        "some",
                        Integer.toString(countUnexplained(scores)),
                        "all",
                        Integer.toString(scores.scores().size())),
                found);
        find(
                tested,
                KeyCheck::hardlyAnybody,
                HARDLY_ANYBODY,
                scores -> Saying.of(
                        "report.questions.check-hardly-anybody",
                        "some",
                        Integer.toString(scores.facility().of()),
                        "all",
                        Integer.toString(scores.scores().size())),
                found);
        return found;
    }

    private static void find(
            Map<Item, ItemScores> tested,
            ToDoubleFunction<ItemScores> test,
            double level,
            Function<ItemScores, Saying> reason,
            Map<Item, KeyCheck> found) {
        List<Double> chances =
                ExactTest.holm(tested.values().stream().map(test::applyAsDouble).toList());
        int i = 0;
        for (Map.Entry<Item, ItemScores> one : tested.entrySet()) {
            double chance = chances.get(i++);
            if (chance < level) {
                found.putIfAbsent(one.getKey(), new KeyCheck(reason.apply(one.getValue()), chance));
            }
        }
    }

    /**
     * How often those who are wrong in the most frequent way are by chance so much stronger elsewhere than all others.
     * Which way that is says nothing of who they are, so that nothing is chosen to fit.
     */
    private static double strongerAreWrong(ItemScores scores) {
        Map<String, Integer> ways = new TreeMap<>();
        scores.scores().stream()
                .filter(score -> !score.right())
                .forEach(score -> ways.merge(score.cause(), 1, Integer::sum));
        String way = "";
        for (Map.Entry<String, Integer> one : ways.entrySet()) {
            way = one.getValue() > ways.getOrDefault(way, 0) ? one.getKey() : way;
        }
        if (ways.getOrDefault(way, 0) < Math.max(1, scores.facility().of())) {
            return 1;
        }
        String most = way;
        return RankTest.higher(
                scores.scores().stream()
                        .map(score -> !score.right() && score.cause().equals(most))
                        .toList(),
                scores.scores().stream().map(Score::rest).toList());
    }

    private static int countUnexplained(ItemScores scores) {
        return (int) scores.scores().stream()
                .filter(score -> !score.right() && score.cause().isEmpty())
                .count();
    }

    private static double unexplained(ItemScores scores) {
        int count = countUnexplained(scores);
        return 1
                - new BinomialDistribution(null, scores.scores().size(), MOST_UNEXPLAINED)
                        .cumulativeProbability(count - 1);
    }

    /** How often so few are right at a question that a quarter of all can do. */
    private static double hardlyAnybody(ItemScores scores) {
        Proportion right = scores.facility();
        return new BinomialDistribution(null, right.all(), HARDEST).cumulativeProbability(right.of());
    }
}
