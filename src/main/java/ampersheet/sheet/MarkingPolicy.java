package ampersheet.sheet;

import ampersheet.diagnostic.Place;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What answers earn, as the plan says. Marks are counted in hundredths, so that sums are exact.
 *
 * @param unitMissing of a right number whose unit is missing, in hundredths of what the question counts
 * @param tooCoarse of one that is rounded too far
 * @param carried of an answer that follows rightly from an earlier wrong one
 * @param lateADay taken from a late answer for each day begun, in hundredths of what it earns
 * @param graceMinutes for so long after the due time nothing is taken
 * @param weights of questions that count otherwise than one mark, by their template, or by template and step
 */
public record MarkingPolicy(
        int unitMissing, int tooCoarse, int carried, int lateADay, int graceMinutes, Map<String, Weight> weights) {
    /** In hundredths. */
    public static final int MARK = 100;

    /** Of a plan that says nothing of marking. */
    public static final MarkingPolicy USUAL = new MarkingPolicy(MARK / 2, MARK / 2, MARK, 0, 0, Map.of());

    private static final int MINUTES_A_DAY = 24 * 60;

    public MarkingPolicy {
        weights = Collections.unmodifiableMap(new TreeMap<>(weights));
    }

    /** @param marks that each question counts, in hundredths */
    public record Weight(int marks, Place place) {}

    public boolean isUsual() {
        return equals(USUAL);
    }

    /** What a question counts, in hundredths of a mark. */
    public int marks(String template, String step) {
        Weight weight = weights.getOrDefault(template + " " + step, weights.get(template));
        return weight == null ? MARK : weight.marks();
    }

    /** What is left of these hundredths for an answer that came in so many minutes after the due time. */
    public int late(int hundredths, long minutes) {
        if (lateADay == 0 || minutes <= graceMinutes) {
            return hundredths;
        }
        long days = (minutes + MINUTES_A_DAY - 1) / MINUTES_A_DAY;
        long left = Math.max(0, MARK - days * lateADay);
        return (int) ((hundredths * left + MARK / 2) / MARK);
    }

    /** For learners, of one sheet. */
    public String says(Sheet sheet) {
        StringBuilder out = new StringBuilder("A right answer counts one mark")
                .append(weightsOn(sheet))
                .append(".");
        out.append(
                carried == MARK
                        ? " So does one that follows rightly from an earlier answer of yours, even if that one "
                                + "was wrong: a slip "
                                + "is paid for once."
                        : " One that follows rightly from an earlier wrong answer of yours counts " + share(carried)
                                + ".");
        out.append(
                unitMissing == tooCoarse
                        ? " A right number without its unit, or rounded too far, counts " + share(unitMissing) + "."
                        : " A right number without its unit counts " + share(unitMissing) + ", one rounded too far "
                                + share(tooCoarse) + ".");
        if (lateADay > 0) {
            out.append(" Each day begun after the due time takes ")
                    .append(lateADay)
                    .append("\u00A0% off what a late answer earns")
                    .append(graceMinutes == 0 ? "." : "; the first " + graceMinutes + " minutes take nothing.");
        }
        return out.toString();
    }

    private String weightsOn(Sheet sheet) {
        TreeMap<Integer, List<String>> questions = new TreeMap<>();
        for (SheetProblem problem : sheet.problems()) {
            problem.places().forEach(key -> {
                int marks = marks(problem.template().name(), key.step());
                if (marks != MARK) {
                    questions.computeIfAbsent(marks, same -> new ArrayList<>()).add(key.question());
                }
            });
        }
        List<String> parts = new ArrayList<>();
        questions.forEach((marks, names) -> parts.add(String.join(", ", names)
                + (names.size() == 1 ? " counts " + decimal(marks) : " count " + decimal(marks) + " each")));
        return parts.isEmpty() ? "" : "; " + String.join("; ", parts);
    }

    private static String share(int hundredths) {
        return hundredths == MARK
                ? "in full"
                : hundredths == MARK / 2 ? "half" : hundredths == 0 ? "nothing" : hundredths + "\u00A0%";
    }

    /** Without zeros at the end. */
    public static String decimal(int hundredths) {
        int rest = hundredths % MARK;
        return hundredths / MARK
                + (rest == 0 ? "" : "." + (rest % 10 == 0 ? rest / 10 : rest < 10 ? "0" + rest : rest));
    }
}
