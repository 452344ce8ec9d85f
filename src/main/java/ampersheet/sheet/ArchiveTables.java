package ampersheet.sheet;

import ampersheet.quantity.Unit;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;

/** The tables of an archive, to which sheets come one after another in the order of their seats. */
public final class ArchiveTables {
    private final Appendable sheets;
    private final Appendable numbers;
    private final Appendable answers;

    /** @param to where each of {@link IssuedArchive#TABLES} is written */
    public ArchiveTables(Map<String, ? extends Appendable> to) throws IOException {
        sheets = to.get(IssuedArchive.SHEETS);
        numbers = to.get(IssuedArchive.NUMBERS);
        answers = to.get(IssuedArchive.ANSWERS);
        row(sheets, IssuedArchive.SHEETS_HEAD);
        row(numbers, IssuedArchive.NUMBERS_HEAD);
        row(answers, IssuedArchive.ANSWERS_HEAD);
    }

    public void add(ArchivedSheet sheet) throws IOException {
        for (ArchivedProblem problem : sheet.problems()) {
            add(sheet.id(), problem);
        }
    }

    private void add(SheetId id, ArchivedProblem problem) throws IOException {
        String sheet = id.toString();
        String number = Integer.toString(problem.number());
        row(
                sheets,
                List.of(
                        sheet,
                        Integer.toString(id.seat()),
                        number,
                        Integer.toString(problem.place()),
                        problem.template()));
        for (ArchivedProblem.Number given : problem.numbers()) {
            row(
                    numbers,
                    List.of(
                            sheet,
                            number,
                            given.name(),
                            given.isWord()
                                    ? given.written()
                                    : ExactNumber.write(given.quantity().value()),
                            given.isWord() ? IssuedArchive.WORD : symbol(given.unit()),
                            given.written()));
        }
        for (ArchivedProblem.Answer answer : problem.answers()) {
            row(
                    answers,
                    List.of(
                            sheet,
                            number,
                            answer.question(),
                            answer.step(),
                            ExactNumber.write(answer.value()),
                            symbol(answer.unit()),
                            answer.written()));
        }
    }

    private static String symbol(Unit unit) {
        return unit.symbol().isEmpty() ? "1" : unit.symbol();
    }

    private static void row(Appendable table, List<String> cells) throws IOException {
        table.append(CSVFormat.DEFAULT.format(cells.toArray())).append('\n');
    }
}
