package ampersheet.marking;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;

/**
 * How one question did in a class: those who answered it, whether they got it right, and how they did otherwise.
 *
 * @param scores one for each learner who answered it readably
 * @param blank learners who left it open
 */
record ItemScores(List<Score> scores, int blank) {
    /** Kelley 1939: for normally distributed totals, groups of this share tell best between strong and weak. */
    static final double GROUP = 0.27;

    /**
     * @param right whether it earned a full mark
     * @param total share of all marks that the learner has
     * @param rest the same without this question, so that it is not compared with itself
     * @param cause id of what explains it; empty for one that is right or that nothing explains
     */
    record Score(boolean right, double total, double rest, String cause) {
        Score(boolean right, double total, double rest) {
            this(right, total, rest, "");
        }
    }

    ItemScores {
        scores = List.copyOf(scores);
    }

    Proportion facility() {
        return new Proportion((int) scores.stream().filter(Score::right).count(), scores.size());
    }

    /**
     * Share right in the upper 27 % by total less that in the lower 27 %; learners with the same total at the edge of a
     * group count in equal parts. {@code NaN} if nobody answered.
     */
    double discrimination() {
        if (scores.isEmpty()) {
            return Double.NaN;
        }
        int group = Math.max(1, (int) Math.floor(GROUP * scores.size() + 0.5));
        List<Score> rising = new ArrayList<>(scores);
        rising.sort(Comparator.comparingDouble(Score::total));
        List<Score> falling = new ArrayList<>(rising);
        Collections.reverse(falling);
        return shareRight(falling, group) - shareRight(rising, group);
    }

    private static double shareRight(List<Score> ordered, int group) {
        double right = 0;
        int taken = 0;
        int i = 0;
        while (taken < group) {
            int end = i;
            int rightHere = 0;
            while (end < ordered.size()
                    && ordered.get(end).total() == ordered.get(i).total()) {
                rightHere += ordered.get(end).right() ? 1 : 0;
                end++;
            }
            int room = Math.min(end - i, group - taken);
            right += (double) rightHere * room / (end - i);
            taken += room;
            i = end;
        }
        return right / group;
    }

    /** Correlation of right or wrong with the rest of the marks; {@code NaN} where one of them does not vary. */
    double pointBiserial() {
        if (scores.size() < 2) {
            return Double.NaN;
        }
        double[] right =
                scores.stream().mapToDouble(score -> score.right() ? 1 : 0).toArray();
        double[] rest = scores.stream().mapToDouble(Score::rest).toArray();
        return varies(right) && varies(rest) ? new PearsonsCorrelation().correlation(right, rest) : Double.NaN;
    }

    private static boolean varies(double[] values) {
        for (double value : values) {
            if (value != values[0]) {
                return true;
            }
        }
        return false;
    }
}
