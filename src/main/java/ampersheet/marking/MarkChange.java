package ampersheet.marking;

import ampersheet.sheet.Roster;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.List;

/** A learner whose mark is another than in an earlier run; {@code before} is empty if there was none. */
record MarkChange(Roster.Seat seat, String before, String now) {

    static List<MarkChange> between(EarlierMarks earlier, List<Standing> standings) {
        List<MarkChange> changes = new ArrayList<>();
        for (Standing standing : standings) {
            String before = earlier.of(standing.seat().number());
            String now = EarlierMarks.written(Amounts.marks(standing.marks()), Amounts.marks(standing.mostMarks()));
            if (!before.equals(now)) {
                changes.add(new MarkChange(standing.seat(), before, now));
            }
        }
        return changes;
    }

    static String table(List<MarkChange> changes, Privacy privacy) {
        SafeCsv table = new SafeCsv(OwnFile.CHANGES.head());
        for (MarkChange change : changes) {
            table.row(List.of(
                    Integer.toString(change.seat().number()),
                    privacy.name(change.seat()),
                    change.before(),
                    change.now()));
        }
        return table.toString();
    }
}
