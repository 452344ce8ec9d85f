package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.SheetId;
import ampersheet.source.CellRows.Row;
import ampersheet.source.WithinMemory;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/**
 * What each learner should take again, by the answers that were marked: the skills of which fewer than four in five
 * answers were right, those left blank among them. What is undecided or left out for all counts neither way.
 */
public final class MissedSkills {
    private static final String FORM = say("folder.marks.answers-form");
    /** As is common where a skill has to be mastered before the next; no more than that. */
    private static final double MASTERED = 0.8;

    private MissedSkills() {}

    /**
     * Reads them.
     *
     * @param issue by which the IDs of the sheets begin that are taken again
     * @param skillOf a template's skill, by its name
     * @return skills by seat; a seat that missed none, or sent nothing, is not there
     * @throws DiagnosticException if this is no such table, or one of other sheets
     */
    public static Map<Integer, Set<String>> read(
            Marking.NamedText answers, SheetId issue, UnaryOperator<String> skillOf) {
        return WithinMemory.of(answers.file(), () -> readTable(answers, issue, skillOf));
    }

    private static Map<Integer, Set<String>> readTable(
            Marking.NamedText answers, SheetId issue, UnaryOperator<String> skillOf) {
        TextLines lines = TextLines.ofOwn(answers.file(), answers.text());
        CsvRows table = CsvRows.read(lines, FORM);
        Map<Integer, Map<String, Proportion>> right = new TreeMap<>();
        if (table.has(List.of("seat", "sheet", "template", "verdict", "mark", "decided"))) {
            for (Row row : table.body()) {
                String seat = table.cell(row, "seat");
                if (!seat.matches("[0-9]{1,6}") || !table.cell(row, "sheet").startsWith(issue.plan())) {
                    lines.fault(
                            row.line(),
                            say("folder.marks.other-plan", "sheet", table.cell(row, "sheet"), "begins", issue.plan()),
                            FORM,
                            say("folder.marks.other-plan.next"));
                    break;
                }
                if (!table.cell(row, "mark").isEmpty()) {
                    right.computeIfAbsent(Integer.parseInt(seat), first -> new TreeMap<>())
                            .merge(
                                    skillOf.apply(table.cell(row, "template")),
                                    new Proportion(isRight(table, row) ? 1 : 0, 1),
                                    MarkedWeeks::sum);
                }
            }
        }
        if (lines.hasFaults()) {
            throw new DiagnosticException(lines.faults().list());
        }
        return missed(right);
    }

    private static boolean isRight(CsvRows table, Row row) {
        String verdict = table.cell(row, "verdict");
        boolean earned = !table.cell(row, "mark").matches("0(\\.0*)?");
        return verdict.equals("correct")
                || verdict.equals("consistent-with-earlier")
                || earned && !table.cell(row, "decided").isEmpty();
    }

    private static Map<Integer, Set<String>> missed(Map<Integer, Map<String, Proportion>> right) {
        Map<Integer, Set<String>> missed = new TreeMap<>();
        right.forEach((seat, skills) -> skills.forEach((skill, share) -> {
            if (share.share() < MASTERED) {
                missed.computeIfAbsent(seat, first -> new TreeSet<>()).add(skill);
            }
        }));
        return missed;
    }
}
