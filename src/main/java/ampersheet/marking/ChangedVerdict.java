package ampersheet.marking;

import ampersheet.answer.Verdict;
import ampersheet.language.Language;
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
    public String toldBefore(Language language) {
        return told(before, language);
    }

    public String toldNow(Language language) {
        return told(now, language);
    }

    private static String told(Verdict verdict, Language language) {
        return switch (Credit.of(verdict)) {
            case RIGHT -> language.say("report.taken.right");
            case CARRIED -> language.say("report.taken.carried");
            case HALF -> language.say("report.taken.half");
            case WRONG -> language.say("report.taken.wrong");
            case UNREADABLE -> language.say("report.taken.unreadable");
            case UNDECIDED -> language.say("report.taken.undecided");
            case BLANK -> language.say("report.taken.blank");
        };
    }

    /** @param sheet whose answer it is */
    record Of(Roster.Seat seat, String sheet, ChangedVerdict change) {}

    static String table(List<Of> changes, Privacy privacy, Language language) {
        SafeCsv table = new SafeCsv(OwnFile.CORRECTIONS.head());
        for (Of of : changes) {
            ChangedVerdict change = of.change();
            List<String> row =
                    new ArrayList<>(List.of(Integer.toString(of.seat().number()), privacy.name(of.seat()), of.sheet()));
            row.addAll(List.of(
                    change.question(),
                    change.template(),
                    privacy.typed(change.now()),
                    change.toldBefore(language),
                    change.toldNow(language)));
            table.row(row);
        }
        return table.toString();
    }
}
