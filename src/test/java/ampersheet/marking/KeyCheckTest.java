package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.marking.Standing.Item;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Classes of thirty by a usual model of answers (Rasch 1960): a learner of ability a gets a question of difficulty d
 * right with the odds e^(a - d). Abilities are spread by one around zero; questions are so hard that 30 to 95 % can do
 * them.
 */
class KeyCheckTest {
    private static final long SEED = 16L;
    private static final int LEARNERS = 30;
    private static final int CLASSES = Boolean.getBoolean("ampersheet.deep") ? 20_000 : 250;

    /** What is wrong with the key of the first question. */
    private enum Fault {
        NONE,
        /** It takes what a wrong idea gives that half of those hold who cannot do the question. */
        WRONG_IDEA,
        /** The same, and what is right is among the known mistakes. */
        EXCHANGED,
        /** It is what nobody gets. */
        NOBODY,
        /** Questions tell nothing of ability, as in a class of equals. */
        TELLS_NOTHING
    }

    private static Map<Item, ItemScores> simulated(Random random, int questions, Fault fault) {
        double[] hard = new double[questions];
        for (int q = 0; q < questions; q++) {
            hard[q] = -2.9 + 3.7 * random.nextDouble();
        }
        boolean[][] right = new boolean[LEARNERS][questions];
        String[][] causes = new String[LEARNERS][questions];
        int[] sums = new int[LEARNERS];
        for (int learner = 0; learner < LEARNERS; learner++) {
            double ability = fault == Fault.TELLS_NOTHING ? 0 : random.nextGaussian();
            for (int q = 0; q < questions; q++) {
                boolean can = random.nextDouble() < 1 / (1 + Math.exp(hard[q] - ability));
                boolean key = q > 0 || fault == Fault.NONE || fault == Fault.TELLS_NOTHING;
                boolean idea = !can && random.nextBoolean();
                right[learner][q] = key ? can : idea && fault != Fault.NOBODY;
                // Of what cannot be done half is a known mistake.
                causes[learner][q] =
                        can ? fault == Fault.EXCHANGED ? "right" : "" : idea || random.nextBoolean() ? "idea" : "";
                sums[learner] += right[learner][q] ? 1 : 0;
            }
        }
        Map<Item, ItemScores> items = new LinkedHashMap<>();
        for (int q = 0; q < questions; q++) {
            List<ItemScores.Score> scores = new ArrayList<>();
            for (int learner = 0; learner < LEARNERS; learner++) {
                int here = right[learner][q] ? 1 : 0;
                scores.add(new ItemScores.Score(
                        right[learner][q],
                        (double) sums[learner] / questions,
                        (double) (sums[learner] - here) / (questions - 1),
                        causes[learner][q]));
            }
            items.put(new Item(q, "t", "s" + q), new ItemScores(scores, 0));
        }
        return items;
    }

    private static double share(int questions, Fault fault, boolean ofTheWrongKey) {
        Random random = new Random(SEED + 100 * questions + fault.ordinal());
        int told = 0;
        for (int i = 0; i < CLASSES; i++) {
            Map<Item, ItemScores> items = simulated(random, questions, fault);
            Map<Item, KeyCheck> found = KeyCheck.of(items);
            told += (ofTheWrongKey ? found.containsKey(items.keySet().iterator().next()) : !found.isEmpty()) ? 1 : 0;
        }
        return (double) told / CLASSES;
    }

    @Test
    void withAllKeysRightAtMostTwoClassesInAHundredAreToldToCheckOne() {
        for (int questions : new int[] {4, 10, 30}) {
            for (Fault fault : List.of(Fault.NONE, Fault.TELLS_NOTHING)) {
                double share = share(questions, fault, false);
                assertTrue(share <= 0.02, questions + " questions, " + fault + ", seed " + SEED + ": " + share);
            }
        }
    }

    /** Why the sign alone is no test: it is that of chance. */
    @Test
    void theMereSignWouldAccuseEveryThirdClass() {
        Random random = new Random(SEED);
        int accused = 0;
        for (int i = 0; i < CLASSES; i++) {
            accused += simulated(random, 10, Fault.TELLS_NOTHING).values().stream()
                            .anyMatch(scores -> scores.discrimination() < 0)
                    ? 1
                    : 0;
        }
        assertTrue(accused > CLASSES / 3, "seed " + SEED + ": " + accused);
    }

    @Test
    void aWrongKeyIsFoundInMostClasses() {
        for (int questions : new int[] {4, 10}) {
            for (Fault fault : List.of(Fault.WRONG_IDEA, Fault.NOBODY)) {
                double share = share(questions, fault, true);
                assertTrue(share > 0.65, questions + " questions, " + fault + ", seed " + SEED + ": " + share);
            }
        }
    }

    /**
     * One that has changed places with a known mistake looks like a class that makes it: only where the stronger
     * learners are clearly stronger is it told here, and the report says where more learners make a mistake than are
     * right.
     */
    @Test
    void aKeyExchangedWithAKnownMistakeIsFoundSometimes() {
        double share = share(10, Fault.EXCHANGED, true);
        assertTrue(share > 0.08, "seed " + SEED + ": " + share);
    }

    /** Five learners, the two highest in the group: one of the ten pairs; equals count as one height. */
    @Test
    void theRankTestCountsAllGroups() {
        List<Boolean> in = List.of(false, false, false, true, true);
        assertEquals(0.1, RankTest.higher(in, List.of(0.1, 0.2, 0.3, 0.4, 0.5)), 1e-12);
        assertEquals(0.1, RankTest.higher(in, List.of(0.1, 0.2, 0.3, 0.5, 0.5)), 1e-12);
        assertEquals(1, RankTest.higher(in, List.of(0.5, 0.4, 0.3, 0.2, 0.1)), 1e-12);
        assertEquals(
                0.1, RankTest.higher(List.of(false, false, true, true, true), List.of(0.1, 0.2, 0.3, 0.4, 0.5)), 1e-12);
        assertEquals(1, RankTest.higher(List.of(true, true), List.of(0.1, 0.2)));
    }
}
