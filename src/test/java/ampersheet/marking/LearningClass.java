package ampersheet.marking;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;

/**
 * A learner over the weeks of a course, by a model that is assumed and not measured. She begins with an ability of her
 * own (normal, spread 0.7). A skill is worth 0.8 to her once she has seen its example, 0.35 more for each problem of it
 * that she works, and loses a quarter of that in each week. A problem of level L is right with the chance 1 / (1 +
 * exp(−(1.3 + ability + skill − 0.4 L))), with all its answers or with none of them.
 */
final class LearningClass {
    private static final double BASE = 1.3;
    private static final double SPREAD = 0.7;
    private static final double EXAMPLE = 0.8;
    private static final double PROBLEM = 0.35;
    private static final double KEPT = 0.75;
    private static final double A_LEVEL = 0.4;
    /** What whoever falls behind has less. */
    static final double GAP = 2.5;

    private LearningClass() {}

    /** What may be planted in a learner. */
    enum Planted {
        NOTHING,
        ALL,
        /** One skill does not stick. */
        SKILL,
        /** From the later half of the weeks on. */
        LATELY
    }

    /** One of the class. */
    static final class Member {
        private final Random random;
        private final Planted planted;
        private final String skill;
        private final double ability;
        private final Map<String, Double> strength = new LinkedHashMap<>();

        /** @param skill that does not stick, if that is planted */
        Member(Random random, Planted planted, String skill) {
            this.random = random;
            this.planted = planted;
            this.skill = skill;
            this.ability = SPREAD * random.nextGaussian();
        }

        /** @param week from 0 */
        boolean works(int week, int weeks, String practised, int level) {
            double known = strength.computeIfAbsent(practised, first -> EXAMPLE);
            boolean behind = planted == Planted.ALL
                    || planted == Planted.SKILL && skill.equals(practised)
                    || planted == Planted.LATELY && week >= weeks / 2;
            double odds = BASE + ability + known - A_LEVEL * level - (behind ? GAP : 0);
            strength.merge(practised, PROBLEM, Double::sum);
            return random.nextDouble() < 1 / (1 + Math.exp(-odds));
        }

        void forgets() {
            strength.replaceAll((practised, known) -> known * KEPT);
        }
    }
}
