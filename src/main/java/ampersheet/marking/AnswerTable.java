package ampersheet.marking;

import ampersheet.source.AsciiCase;
import ampersheet.source.CellRows.Row;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads answers from a table with the columns {@code sheet}, {@code question} and {@code answer}; others are passed
 * over. One file may hold the answers of several sheets.
 */
final class AnswerTable {
    private static final String FORM =
            "a first line \"sheet,question,answer\", then a line such as \"A7K3M-007-R,q2a,4.7 kΩ\" for each answer";

    private AnswerTable() {}

    /**
     * @param name of the file
     * @param shown what may be written of it
     */
    static ReturnedFile read(String name, String shown, String text, Privacy privacy) {
        TextLines lines = new TextLines(shown, text, privacy);
        List<TypedAnswer> answers = new ArrayList<>();
        CsvRows table = CsvRows.read(lines, FORM);
        if (OwnFile.is(name, table.head())) {
            lines.fault(
                    table.headLine(),
                    "this table was written by an earlier run of mark and is not a learner's",
                    "answers as they came in",
                    "Take it out of the folder; to hand in lines of set-aside.csv that you have mended, "
                            + "save them under another name.");
        } else if (table.has(List.of("sheet", "question", "answer"))) {
            if (table.body().isEmpty()) {
                lines.fault(
                        table.headLine(), "this file holds no answer", FORM, "Ask whether an empty file was meant.");
            }
            table.body().forEach(row -> read(row, table, lines, answers));
        }
        return new ReturnedFile(shown, answers, lines.faults());
    }

    private static void read(Row row, CsvRows table, TextLines lines, List<TypedAnswer> answers) {
        int answer = table.column("answer");
        int needed = Math.max(answer, Math.max(table.column("sheet"), table.column("question"))) + 1;
        int columns = row.cells().size();
        if (columns < needed) {
            lines.fault(
                    row.line(),
                    "this line has " + (columns == 1 ? "one column" : columns + " columns")
                            + ", too few for a sheet, a question and an answer",
                    FORM,
                    "Add what is missing on this line.");
            return;
        }
        boolean spills = row.cells().subList(Math.min(columns, table.columns()), columns).stream()
                .anyMatch(cell -> !cell.isBlank());
        if (spills) {
            lines.fault(
                    row.line(),
                    "this line has more columns than the first one",
                    "an answer with a comma in quotation marks: \"4,7 kΩ\"",
                    "Put the answer on this line in quotation marks.");
            return;
        }
        String sheet = SafeCsv.read(table.cell(row, "sheet"));
        String question = AsciiCase.small(SafeCsv.read(table.cell(row, "question")));
        String text = SafeCsv.read(table.cell(row, "answer"));
        if (table.head().equals(OwnFile.SET_ASIDE.head()) && SetAside.anotherCounts(table.cell(row, "why"))) {
            lines.warning(
                    row.line(),
                    "this answer was set aside because another one counts",
                    "Nothing; to have it count, take out " + "what stands under why on this line.");
        } else if (sheet.isEmpty()) {
            lines.fault(row.line(), "this line names no sheet", FORM, "Write the sheet ID in front of the answer.");
        } else if (question.isEmpty()) {
            lines.fault(
                    row.line(),
                    "this line names no question",
                    FORM,
                    "Write the question, such as q2a, before the answer.");
        } else if (lines.isPlain(text, row.line())) {
            answers.add(new TypedAnswer(sheet, question, text, lines.place(row.line()), false));
        }
    }
}
