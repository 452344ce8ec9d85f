package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.sheet.Roster;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.List;

/** A learner whose mark is another than in an earlier run. */
record MarkChange(Roster.Seat seat, EarlierMarks.Written before, EarlierMarks.Written now) {

    static List<MarkChange> between(EarlierMarks earlier, List<Standing> standings) {
        List<MarkChange> changes = new ArrayList<>();
        for (Standing standing : standings) {
            EarlierMarks.Written before = earlier.of(standing.seat().number());
            EarlierMarks.Written now =
                    new EarlierMarks.Written(Amounts.marks(standing.marks()), Amounts.marks(standing.mostMarks()));
            if (!before.equals(now)) {
                changes.add(new MarkChange(standing.seat(), before, now));
            }
        }
        return changes;
    }

    static String table(List<MarkChange> changes, Privacy privacy, Language language) {
        SafeCsv table = new SafeCsv(OwnFile.CHANGES.head());
        for (MarkChange change : changes) {
            table.row(List.of(
                    Integer.toString(change.seat().number()),
                    privacy.name(change.seat()),
                    change.before().told(language),
                    change.now().told(language)));
        }
        return table.toString();
    }
}
