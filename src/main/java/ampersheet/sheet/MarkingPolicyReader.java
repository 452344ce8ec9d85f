package ampersheet.sheet;

import ampersheet.sheet.MarkingPolicy.Named;
import ampersheet.source.AsciiCase;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Reads the group {@code marking:} of a plan. */
final class MarkingPolicyReader {
    private static final String SHARE = "a share from 0 to 1 with at most two decimals, such as 0.5";
    private static final String WEIGHT = "marks from 0.05 to 20 with at most two decimals, such as 2";
    private static final int LEAST_WEIGHT = 5;
    private static final int MOST_WEIGHT = 20 * MarkingPolicy.MARK;
    private static final String GRADES = "grades from the best down to one from 0, such as {A: 90, B: 75, C: 50, F: 0}";
    private static final int MOST_PERCENT = 100 * 100;
    private static final int LONGEST_GRADE = 20;
    private static final int LEAST_TOLERANCE = 10;
    private static final int MOST_TOLERANCE = 20 * 100;
    private static final int LONGEST_GRACE = 14 * 24 * 60;

    private final Faults faults;

    private MarkingPolicyReader(Faults faults) {
        this.faults = faults;
    }

    /** Whether the templates it names are on the sheets is found out where the templates are. */
    static MarkingPolicy read(Yaml.Mapping group, Faults faults) {
        return new MarkingPolicyReader(faults).read(new Fields(group, "marking", faults));
    }

    private MarkingPolicy read(Fields fields) {
        MarkingPolicy usual = MarkingPolicy.USUAL;
        MarkingPolicy.Credits credits = new MarkingPolicy.Credits(
                share(fields, "unit-missing", usual.credits().unitMissing()),
                share(fields, "rounded-too-far", usual.credits().tooCoarse()),
                share(fields, "carried", usual.credits().carried()));
        MarkingPolicy.Lateness lateness = new MarkingPolicy.Lateness(
                share(fields, "late-a-day", usual.lateness().aDay()),
                fields.text("grace-minutes")
                        .map(this::minutes)
                        .orElse(usual.lateness().graceMinutes()));
        Map<String, Named> weights = new TreeMap<>();
        fields.group("weights").ifPresent(named -> named.entries().forEach(entry -> weight(entry, weights)));
        Map<String, Named> tolerances = new TreeMap<>();
        fields.group("tolerance").ifPresent(named -> named.entries().forEach(entry -> tolerance(entry, tolerances)));
        MarkingPolicy.Rounds rounds = fields.text("rounds").map(this::rounds).orElse(usual.rounds());
        List<MarkingPolicy.Grade> grades =
                fields.group("grades").map(this::grades).orElse(List.of());
        fields.finish();
        return new MarkingPolicy(credits, lateness, weights, tolerances, rounds, grades);
    }

    private MarkingPolicy.Rounds rounds(Yaml.Scalar written) {
        for (MarkingPolicy.Rounds rounds : MarkingPolicy.Rounds.values()) {
            if (AsciiCase.small(rounds.name()).equals(written.text())) {
                return rounds;
            }
        }
        faults.error(
                written.place(),
                "\"" + written.text() + "\" does not fit rounds",
                "last or best",
                "Write which of several hand-ins counts.");
        return MarkingPolicy.Rounds.LAST;
    }

    /** From the best down to one that everybody reaches. */
    private List<MarkingPolicy.Grade> grades(Yaml.Mapping named) {
        List<MarkingPolicy.Grade> grades = new ArrayList<>();
        for (Yaml.Entry entry : named.entries()) {
            String name = entry.key().text().strip();
            OptionalInt from = entry.value() instanceof Yaml.Scalar value
                    ? hundredths(withoutPercent(value.text()))
                    : OptionalInt.empty();
            boolean fits = from.isPresent()
                    && from.getAsInt() <= MOST_PERCENT
                    && from.getAsInt() % 10 == 0
                    && !name.isEmpty()
                    && name.length() <= LONGEST_GRADE;
            int tenths = fits ? from.getAsInt() / 10 : 0;
            boolean falls =
                    grades.isEmpty() || tenths < grades.get(grades.size() - 1).from();
            if (!fits || !falls) {
                faults.error(
                        entry.key().place(),
                        fits
                                ? "the grade " + name + " begins no lower than the one before it"
                                : "this does not fit a grade",
                        GRADES,
                        "Write each grade with the percentage from which on it is given, the best first.");
                return List.of();
            }
            grades.add(new MarkingPolicy.Grade(RosterReader.printable(name), tenths));
        }
        if (!grades.isEmpty() && grades.get(grades.size() - 1).from() > 0) {
            faults.error(
                    named.place(),
                    "below "
                            + MarkingPolicy.tenths(grades.get(grades.size() - 1).from()) + " % there is no grade",
                    GRADES,
                    "Let the last grade begin at 0.");
        }
        return grades;
    }

    private void tolerance(Yaml.Entry entry, Map<String, Named> tolerances) {
        OptionalInt read =
                entry.value() instanceof Yaml.Scalar value && value.text().endsWith("%")
                        ? hundredths(withoutPercent(value.text()))
                        : OptionalInt.empty();
        if (read.isPresent() && read.getAsInt() >= LEAST_TOLERANCE && read.getAsInt() <= MOST_TOLERANCE) {
            tolerances.put(
                    entry.key().text(), new Named(read.getAsInt(), entry.key().place()));
        } else {
            faults.error(
                    entry.key().place(),
                    "this does not fit the tolerance of " + entry.key().text(),
                    "from 0.1 % to 20 %, such as 5 %",
                    "Write how far from the key an answer may lie.");
        }
    }

    private static String withoutPercent(String written) {
        return written.endsWith("%")
                ? written.substring(0, written.length() - 1).strip()
                : written;
    }

    private int share(Fields fields, String key, int otherwise) {
        return fields.text(key)
                .map(written -> within(written, 0, MarkingPolicy.MARK, key, SHARE))
                .orElse(otherwise);
    }

    private void weight(Yaml.Entry entry, Map<String, Named> weights) {
        if (entry.value() instanceof Yaml.Scalar value && !value.text().isBlank()) {
            int marks = within(
                    value,
                    LEAST_WEIGHT,
                    MOST_WEIGHT,
                    "the weight of " + entry.key().text(),
                    WEIGHT);
            weights.put(entry.key().text(), new Named(marks, entry.key().place()));
        } else {
            faults.error(
                    entry.key().place(),
                    "the weight of " + entry.key().text() + " is "
                            + entry.value().kind(),
                    WEIGHT,
                    "Write how many marks each of its questions counts.");
        }
    }

    private int within(Yaml.Scalar written, int least, int most, String what, String expected) {
        OptionalInt read = hundredths(written.text());
        if (read.isPresent() && read.getAsInt() >= least && read.getAsInt() <= most) {
            return read.getAsInt();
        }
        faults.error(
                written.place(), "\"" + written.text() + "\" does not fit " + what, expected, "Write such a number.");
        return most;
    }

    private int minutes(Yaml.Scalar written) {
        OptionalInt read = WholeNumber.read(written.text());
        if (read.isPresent() && read.getAsInt() <= LONGEST_GRACE) {
            return read.getAsInt();
        }
        faults.error(
                written.place(),
                "\"" + written.text() + "\" does not fit grace-minutes",
                "a whole number of minutes, at most two weeks",
                "Write such a number.");
        return 0;
    }

    /** Of a number such as 2, 0.5 or 1.25; empty if it is anything else. */
    private static OptionalInt hundredths(String written) {
        int point = written.indexOf('.');
        String whole = point < 0 ? written : written.substring(0, point);
        String decimals = point < 0 ? "" : written.substring(point + 1);
        boolean fits = decimals.length() <= 2 && (point < 0 || !decimals.isEmpty()) && whole.length() <= 3;
        return fits ? WholeNumber.read(whole + (decimals + "00").substring(0, 2)) : OptionalInt.empty();
    }
}
