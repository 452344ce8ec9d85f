package ampersheet.sheet;

import ampersheet.diagnostic.Place;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;

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
        StringBuilder out = new StringBuilder("A right answer counts one mark")
                .append(on(sheet, (template, step) -> marks(template, step), MARK, MarkingPolicy::told))
                .append(".");
        out.append(
                credits.carried() == MARK
                        ? " So does one that follows rightly from an earlier answer of yours, even if that one "
                                + "was wrong: a slip "
                                + "is paid for once."
                        : " One that follows rightly from an earlier wrong answer of yours counts "
                                + share(credits.carried()) + ".");
        out.append(
                credits.unitMissing() == credits.tooCoarse()
                        ? " A right number without its unit, or rounded too far, counts " + share(credits.unitMissing())
                                + "."
                        : " A right number without its unit counts " + share(credits.unitMissing())
                                + ", one rounded too far " + share(credits.tooCoarse()) + ".");
        String tolerated = on(
                sheet,
                (template, step) ->
                        named(tolerances, template, step).map(Named::value).orElse(0),
                0,
                (value, many) -> "may be off by " + decimal(value) + "\u00A0%");
        if (!tolerated.isEmpty()) {
            out.append(" An answer")
                    .append(tolerated.replaceFirst("; ", " to "))
                    .append('.');
        }
        if (rounds == Rounds.BEST) {
            out.append(" If you hand in more than once, the round counts after which you had most marks.");
        }
        if (lateness.aDay() > 0) {
            out.append(" Each day begun after the due time takes ")
                    .append(lateness.aDay())
                    .append("\u00A0% off what a late answer earns")
                    .append(
                            lateness.graceMinutes() == 0
                                    ? "."
                                    : "; the first " + lateness.graceMinutes() + " minutes take nothing.");
        }
        saysGrades().ifPresent(said -> out.append(' ').append(said));
        return out.toString();
    }

    /** One sentence; empty if there are none. */
    public Optional<String> saysGrades() {
        List<String> bands = grades.stream()
                .map(grade -> grade.from() == 0
                        ? grade.name() + " below"
                        : grade.name() + " from " + tenths(grade.from()) + "\u00A0%")
                .toList();
        return bands.isEmpty()
                ? Optional.empty()
                : Optional.of("Grades by the share of all marks: " + String.join(", ", bands) + ".");
    }

    private static String told(int marks, boolean many) {
        return (many ? "count " : "counts ") + decimal(marks) + (many ? " each" : "");
    }

    /** The questions of a sheet for which something else holds, each group behind a semicolon. */
    private static String on(
            Sheet sheet,
            BiFunction<String, String, Integer> value,
            int usual,
            BiFunction<Integer, Boolean, String> told) {
        TreeMap<Integer, List<String>> questions = new TreeMap<>();
        for (SheetProblem problem : sheet.problems()) {
            problem.places().forEach(key -> {
                int of = value.apply(problem.template().name(), key.step());
                if (of != usual) {
                    questions.computeIfAbsent(of, same -> new ArrayList<>()).add(key.question());
                }
            });
        }
        StringBuilder out = new StringBuilder();
        questions.forEach((of, names) ->
                out.append("; ").append(String.join(", ", names)).append(' ').append(told.apply(of, names.size() > 1)));
        return out.toString();
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

    /** Tenths without a zero at the end. */
    public static String tenths(int tenths) {
        return decimal(10 * tenths);
    }
}
