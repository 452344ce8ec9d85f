package ampersheet.sheet;

import ampersheet.diagnostic.Place;
import ampersheet.language.Language;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What answers earn, as the plan says. Marks are counted in hundredths, so that sums are exact.
 *
 * @param credits of answers that are right in part
 * @param lateness what is taken from late ones
 * @param weights of questions that count otherwise than one mark, by their template, or by template and step
 * @param tolerances of questions that are judged otherwise than their template says, by the same names
 * @param rounds which of several hand-ins counts
 * @param grades from the best down; empty if none are given
 */
public record MarkingPolicy(
        Credits credits,
        Lateness lateness,
        Map<String, Named> weights,
        Map<String, Named> tolerances,
        Rounds rounds,
        List<Grade> grades) {
    /** In hundredths. */
    public static final int MARK = 100;
    /** In tenths of a percent. */
    public static final int ALL = 1000;

    /** Of a plan that says nothing of marking. */
    public static final MarkingPolicy USUAL = new MarkingPolicy(
            new Credits(MARK / 2, MARK / 2, MARK), new Lateness(0, 0), Map.of(), Map.of(), Rounds.LAST, List.of());

    private static final int MINUTES_A_DAY = 24 * 60;

    public MarkingPolicy {
        weights = Collections.unmodifiableMap(new TreeMap<>(weights));
        tolerances = Collections.unmodifiableMap(new TreeMap<>(tolerances));
        grades = List.copyOf(grades);
    }

    /**
     * In hundredths of what a question counts.
     *
     * @param unitMissing of a right number whose unit is missing
     * @param tooCoarse of one that is rounded too far
     * @param carried of an answer that follows rightly from an earlier wrong one
     */
    public record Credits(int unitMissing, int tooCoarse, int carried) {}

    /**
     * @param aDay taken from a late answer for each day begun, in hundredths of what it earns
     * @param graceMinutes for so long after the due time nothing is taken
     */
    public record Lateness(int aDay, int graceMinutes) {}

    /** @param value a weight in hundredths of a mark, or a tolerance in hundredths of a percent */
    public record Named(int value, Place place) {}

    /** Which of several hand-ins of one sheet counts. */
    public enum Rounds {
        LAST,
        BEST
    }

    /** @param from on, in tenths of a percent of the marks */
    public record Grade(String name, int from) {}

    public boolean isUsual() {
        return equals(USUAL);
    }

    /** What a question counts, in hundredths of a mark. */
    public int marks(String template, String step) {
        return named(weights, template, step).map(Named::value).orElse(MARK);
    }

    /** How far from the key an answer to a question may lie, as a share of it; empty if that is as usual. */
    Optional<Double> tolerance(String template, String step) {
        return named(tolerances, template, step).map(named -> named.value() / 10_000.0);
    }

    /** The same in hundredths of a percent; 0 if it is as usual. */
    int namedTolerance(String template, String step) {
        return named(tolerances, template, step).map(Named::value).orElse(0);
    }

    private static Optional<Named> named(Map<String, Named> all, String template, String step) {
        return Optional.ofNullable(all.getOrDefault(template + " " + step, all.get(template)));
    }

    /** What is left of these hundredths for an answer that came in so many minutes after the due time. */
    public int late(int hundredths, long minutes) {
        if (lateness.aDay() == 0 || minutes <= lateness.graceMinutes()) {
            return hundredths;
        }
        long days = (minutes + MINUTES_A_DAY - 1) / MINUTES_A_DAY;
        long left = Math.max(0, MARK - days * lateness.aDay());
        return (int) ((hundredths * left + MARK / 2) / MARK);
    }

    /** Share of the marks in tenths of a percent; a half is rounded up. What is printed is what grades go by. */
    public static int percent(int marks, int most) {
        return most == 0 ? 0 : (int) ((2L * marks * ALL + most) / (2L * most));
    }

    /** The grade for a share in tenths of a percent; empty if the plan has no grades. */
    public Optional<String> grade(int percent) {
        return grades.stream()
                .filter(grade -> percent >= grade.from())
                .findFirst()
                .map(Grade::name);
    }

    /** For learners, of one sheet. */
    public String says(Sheet sheet) {
        return new PolicyInWords(this, sheet.plan().language()).of(sheet);
    }

    /** One sentence; empty if there are none. */
    public Optional<String> saysGrades(Language language) {
        return new PolicyInWords(this, language).grades();
    }

    /** Without zeros at the end. */
    public static String decimal(int hundredths) {
        int rest = hundredths % MARK;
        return hundredths / MARK
                + (rest == 0 ? "" : "." + (rest % 10 == 0 ? rest / 10 : rest < 10 ? "0" + rest : rest));
    }

    /** Tenths without a zero at the end. */
    public static String tenths(int tenths) {
        return decimal(10 * tenths);
    }
}
