package ampersheet.sheet;

import static ampersheet.source.Told.say;

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
    private static final String SHARE = say("plan.marking.share.expected");
    private static final String WEIGHT = say("plan.marking.weight.expected");
    private static final int LEAST_WEIGHT = 5;
    private static final int MOST_WEIGHT = 20 * MarkingPolicy.MARK;
    private static final String GRADES = say("plan.marking.grade.expected", "example", "{A: 90, B: 75, C: 50, F: 0}");
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
                say("plan.unfit", "written", written.text(), "key", "rounds"),
                say("plan.marking.rounds.expected"),
                say("plan.marking.rounds.next"));
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
                        fits ? say("plan.marking.grade.not-lower", "grade", name) : say("plan.marking.grade.unfit"),
                        GRADES,
                        say("plan.marking.grade.next"));
                return List.of();
            }
            grades.add(new MarkingPolicy.Grade(RosterReader.printable(name), tenths));
        }
        if (!grades.isEmpty() && grades.get(grades.size() - 1).from() > 0) {
            faults.error(
                    named.place(),
                    say(
                            "plan.marking.grade.gap",
                            "percent",
                            MarkingPolicy.tenths(grades.get(grades.size() - 1).from())),
                    GRADES,
                    say("plan.marking.grade.gap.next"));
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
                    say("plan.marking.tolerance.unfit", "problem", entry.key().text()),
                    say("plan.marking.tolerance.unfit.expected"),
                    say("plan.marking.tolerance.unfit.next"));
        }
    }

    private static String withoutPercent(String written) {
        return written.endsWith("%")
                ? written.substring(0, written.length() - 1).strip()
                : written;
    }

    private int share(Fields fields, String key, int otherwise) {
        return fields.text(key)
                .map(written -> within(
                        written,
                        0,
                        MarkingPolicy.MARK,
                        say("plan.unfit", "written", written.text(), "key", key),
                        SHARE))
                .orElse(otherwise);
    }

    private void weight(Yaml.Entry entry, Map<String, Named> weights) {
        if (entry.value() instanceof Yaml.Scalar value && !value.text().isBlank()) {
            int marks = within(
                    value,
                    LEAST_WEIGHT,
                    MOST_WEIGHT,
                    say(
                            "plan.marking.weight.unfit",
                            "written",
                            value.text(),
                            "problem",
                            entry.key().text()),
                    WEIGHT);
            weights.put(entry.key().text(), new Named(marks, entry.key().place()));
        } else {
            faults.error(
                    entry.key().place(),
                    say(
                            "plan.marking.weight.kind",
                            "problem",
                            entry.key().text(),
                            "kind",
                            entry.value().kind()),
                    WEIGHT,
                    say("plan.marking.weight.kind.next"));
        }
    }

    private int within(Yaml.Scalar written, int least, int most, String problem, String expected) {
        OptionalInt read = hundredths(written.text());
        if (read.isPresent() && read.getAsInt() >= least && read.getAsInt() <= most) {
            return read.getAsInt();
        }
        faults.error(written.place(), problem, expected, say("plan.write-number"));
        return most;
    }

    private int minutes(Yaml.Scalar written) {
        OptionalInt read = WholeNumber.read(written.text());
        if (read.isPresent() && read.getAsInt() <= LONGEST_GRACE) {
            return read.getAsInt();
        }
        faults.error(
                written.place(),
                say("plan.unfit", "written", written.text(), "key", "grace-minutes"),
                say("plan.marking.grace.expected"),
                say("plan.write-number"));
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
