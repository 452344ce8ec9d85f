package ampersheet.sheet;

import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Reads the group {@code marking:} of a plan. */
final class MarkingPolicyReader {
    private static final String SHARE = "a share from 0 to 1 with at most two decimals, such as 0.5";
    private static final String WEIGHT = "marks from 0.05 to 20 with at most two decimals, such as 2";
    private static final int LEAST_WEIGHT = 5;
    private static final int MOST_WEIGHT = 20 * MarkingPolicy.MARK;
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
        int unitMissing = share(fields, "unit-missing", usual.unitMissing());
        int tooCoarse = share(fields, "rounded-too-far", usual.tooCoarse());
        int carried = share(fields, "carried", usual.carried());
        int late = share(fields, "late-a-day", usual.lateADay());
        int grace = fields.text("grace-minutes").map(this::minutes).orElse(usual.graceMinutes());
        Map<String, MarkingPolicy.Weight> weights = new TreeMap<>();
        fields.group("weights").ifPresent(named -> {
            for (Yaml.Entry entry : named.entries()) {
                weight(entry, weights);
            }
        });
        fields.finish();
        return new MarkingPolicy(unitMissing, tooCoarse, carried, late, grace, weights);
    }

    private int share(Fields fields, String key, int otherwise) {
        return fields.text(key)
                .map(written -> within(written, 0, MarkingPolicy.MARK, key, SHARE))
                .orElse(otherwise);
    }

    private void weight(Yaml.Entry entry, Map<String, MarkingPolicy.Weight> weights) {
        if (entry.value() instanceof Yaml.Scalar value && !value.text().isBlank()) {
            int marks = within(
                    value,
                    LEAST_WEIGHT,
                    MOST_WEIGHT,
                    "the weight of " + entry.key().text(),
                    WEIGHT);
            weights.put(
                    entry.key().text(),
                    new MarkingPolicy.Weight(marks, entry.key().place()));
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
