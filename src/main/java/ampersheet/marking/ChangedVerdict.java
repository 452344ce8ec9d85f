package ampersheet.marking;

import ampersheet.answer.Verdict;
import ampersheet.sheet.Roster;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An answer that a correction of the key makes worth more or less.
 *
 * @param before by the key that was issued
 * @param now by the corrected one
 */
public record ChangedVerdict(String question, String template, Verdict before, Verdict now) {

    /** Empty if the answer earns the same; what is said of it may be said in other words. */
    public static Optional<ChangedVerdict> between(String question, String template, Verdict before, Verdict now) {
        return Credit.of(before) == Credit.of(now)
                ? Optional.empty()
                : Optional.of(new ChangedVerdict(question, template, before, now));
    }

    /** What the answer was taken for, in words. */
    public String toldBefore() {
        return told(before);
    }

    public String toldNow() {
        return told(now);
    }

    private static String told(Verdict verdict) {
        return switch (Credit.of(verdict)) {
            case RIGHT -> "right";
            case CARRIED -> "right from an earlier answer";
            case HALF -> "half right";
            case WRONG -> "wrong";
            case UNREADABLE -> "not readable";
            case UNDECIDED -> "not decided";
            case BLANK -> "left open";
        };
    }

    /** @param sheet whose answer it is */
    record Of(Roster.Seat seat, String sheet, ChangedVerdict change) {}

    static String table(List<Of> changes, Privacy privacy) {
        SafeCsv table = new SafeCsv(OwnFile.CORRECTIONS.head());
        for (Of of : changes) {
            ChangedVerdict change = of.change();
            List<String> row =
                    new ArrayList<>(List.of(Integer.toString(of.seat().number()), privacy.name(of.seat()), of.sheet()));
            row.addAll(List.of(
                    change.question(),
                    change.template(),
                    privacy.typed(change.now()),
                    change.toldBefore(),
                    change.toldNow()));
            table.row(row);
        }
        return table.toString();
    }
}
