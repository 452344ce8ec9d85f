package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.marking.FallingBehind.Finding;
import ampersheet.marking.LearningClass.Member;
import ampersheet.marking.LearningClass.Planted;
import ampersheet.marking.MarkedWeeks.Learner;
import ampersheet.marking.MarkedWeeks.Worked;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Classes of 30 over four weeks of eight problems, by the model of {@link LearningClass}. */
class FallingBehindTest {
    private static final long SEED = 20_260_302;
    private static final int CLASSES = Boolean.getBoolean("ampersheet.deep") ? 300 : 60;
    private static final int LEARNERS = 30;
    private static final int WEEKS = 4;
    private static final String LAW = "Ohm's law";
    /** Problems of each skill in each week, as a course of four weeks has them. */
    private static final Map<String, int[]> SHEETS = sheets();

    private static Map<String, int[]> sheets() {
        Map<String, int[]> sheets = new LinkedHashMap<>();
        sheets.put(LAW, new int[] {2, 2, 1, 1});
        sheets.put("indicator", new int[] {2, 0, 1, 0});
        sheets.put("divider", new int[] {2, 0, 1, 0});
        sheets.put("address", new int[] {2, 0, 1, 0});
        sheets.put("load", new int[] {0, 3, 1, 1});
        sheets.put("junction", new int[] {0, 3, 0, 1});
        sheets.put("supply", new int[] {0, 0, 1, 1});
        sheets.put("panel", new int[] {0, 0, 1, 1});
        sheets.put("side by side", new int[] {0, 0, 1, 1});
        sheets.put("worst case", new int[] {0, 0, 0, 1});
        sheets.put("wall", new int[] {0, 0, 0, 1});
        return sheets;
    }

    /** The first of the class has the gap. */
    private static List<Learner> learners(Random random, Planted planted) {
        List<Learner> learners = new ArrayList<>();
        for (int i = 0; i < LEARNERS; i++) {
            Member member = new Member(random, i == 0 ? planted : Planted.NOTHING, LAW);
            Learner learner = new Learner("L" + i);
            for (int week = 0; week < WEEKS; week++) {
                int at = week;
                SHEETS.forEach((skill, counts) -> {
                    for (int k = 0; k < counts[at]; k++) {
                        learner.worked().add(new Worked(at, skill, member.works(at, WEEKS, skill, 1)));
                    }
                });
                member.forgets();
            }
            learners.add(learner);
        }
        return learners;
    }

    @Test
    void ofLearnersWithoutAGapAboutOneInFiftyIsNamedForASkillOrLately() {
        Random random = new Random(SEED);
        int skills = 0;
        int lately = 0;
        for (int i = 0; i < CLASSES; i++) {
            for (Finding finding : FallingBehind.of(learners(random, Planted.NOTHING), WEEKS)) {
                skills += finding.skill().isEmpty() ? 0 : 1;
                lately += finding.lately() ? 1 : 0;
            }
        }
        double all = CLASSES * LEARNERS;
        System.out.println("without a gap: " + 100 * skills / all + " % named for a skill, " + 100 * lately / all
                + " % lately, seed " + SEED);
        assertTrue(skills / all < 0.03, skills + " of " + all);
        assertTrue(lately / all < 0.03, lately + " of " + all);
    }

    @Test
    void whoFallsBehindIsFoundAndInWhat() {
        Random random = new Random(SEED);
        int[] found = new int[Planted.values().length];
        int right = 0;
        for (int i = 0; i < CLASSES; i++) {
            for (Planted planted : List.of(Planted.ALL, Planted.SKILL, Planted.LATELY)) {
                for (Finding finding : FallingBehind.of(learners(random, planted), WEEKS)) {
                    if (finding.who().equals("L0")) {
                        boolean named = planted == Planted.ALL
                                ? finding.all()
                                : planted == Planted.SKILL ? !finding.skill().isEmpty() : finding.lately();
                        found[planted.ordinal()] += named ? 1 : 0;
                        right += planted == Planted.SKILL && finding.skill().equals(LAW) ? 1 : 0;
                    }
                }
            }
        }
        System.out.println("found: in all " + 100 * found[1] / CLASSES + " %, in a skill of six problems "
                + 100 * found[2] / CLASSES + " % (the right one " + 100 * right / CLASSES + " %), lately "
                + 100 * found[3] / CLASSES + " %, seed " + SEED);
        assertTrue(found[1] > 0.6 * CLASSES, "in all: " + found[1]);
        assertTrue(right > 0.25 * CLASSES, "in the skill: " + right);
        assertTrue(found[3] > 0.5 * CLASSES, "lately: " + found[3]);
    }

    @Test
    void ofASmallClassNobodyIsNamed() {
        assertEquals(
                List.of(),
                FallingBehind.of(learners(new Random(SEED), Planted.ALL).subList(0, 7), WEEKS));
    }
}
