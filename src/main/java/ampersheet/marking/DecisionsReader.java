package ampersheet.marking;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.AsciiCase;
import ampersheet.source.CellRows.Row;
import ampersheet.source.SafeCsv;
import ampersheet.source.WithinMemory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Reads the list that the instructor keeps of what she decided. It has the columns of decide.csv, so that a line of
 * that one with a decision and a reason written into it is a line of this one; lines without a decision are passed
 * over.
 */
final class DecisionsReader {
    private static final String FORM =
            "a first line \"seat,question,answer,file,decision,value,reason\", then a line such "
                    + "as \"7,q2a,\"\"4,700 Ω\"\",,read as,4.7 kΩ,said so when asked\" for each decision";
    private static final String WORDS = "accept, read as, mark, leave out, counts or does not count";

    private final TextLines lines;
    private final CsvRows table;
    private final List<Decision> decisions = new ArrayList<>();
    private final Map<String, Integer> lineOf = new TreeMap<>();

    private DecisionsReader(String file, String text) {
        this.lines = TextLines.ofOwn(file, text);
        this.table = CsvRows.read(lines, FORM);
    }

    /**
     * Reads them.
     *
     * @param file as its reader knows it
     * @throws DiagnosticException with all faults of the list at once
     */
    static List<Decision> read(String file, String text) {
        return WithinMemory.of(file, () -> new DecisionsReader(file, text).read());
    }

    private List<Decision> read() {
        if (table.has(List.of("decision", "reason"))) {
            table.body().forEach(this::row);
        }
        if (lines.hasFaults()) {
            throw new DiagnosticException(lines.faults().list());
        }
        return List.copyOf(decisions);
    }

    private String cell(Row row, String column) {
        return SafeCsv.read(table.cell(row, column));
    }

    private void row(Row row) {
        String word = cell(row, "decision");
        if (word.isEmpty() && cell(row, "reason").isEmpty()) {
            return;
        }
        int line = row.line();
        Decision.Kind kind = Decision.Kind.of(word).orElse(null);
        if (kind == null) {
            lines.fault(
                    line,
                    word.isEmpty() ? "this line has a reason and no decision" : "“" + word + "” is no decision",
                    WORDS,
                    "Write one of these under decision.");
            return;
        }
        String seat = cell(row, "seat");
        Decision decision = new Decision(
                line,
                kind,
                Seats.number(seat),
                question(cell(row, "question")),
                cell(row, "answer"),
                cell(row, "file"),
                cell(row, "sheet"),
                cell(row, "value"),
                cell(row, "reason"));
        if (isWhole(decision, seat) && isFirst(decision)) {
            decisions.add(decision);
        }
    }

    /** {@code q2a} in any case; the name of a template's step as it is. */
    private static String question(String written) {
        String small = AsciiCase.small(written);
        return QuestionName.is(small) ? small : written;
    }

    private boolean isWhole(Decision decision, String seat) {
        String missing = missing(decision);
        if (decision.reason().isEmpty()) {
            lines.fault(
                    decision.line(),
                    "this decision has no reason",
                    "a few words for whoever asks",
                    "Write them under reason; the learner reads them.");
        } else if (!seat.isEmpty() && decision.seat() == 0) {
            lines.fault(
                    decision.line(),
                    "“" + seat + "” is not a seat number",
                    "a whole number",
                    "Write the number that the class list gives the learner.");
        } else if (!missing.isEmpty()) {
            lines.fault(
                    decision.line(),
                    "“" + decision.kind().word() + "” stands here without " + missing,
                    FORM,
                    "Copy the line from decide.csv or answers.csv and write the decision behind it.");
        } else if (decision.kind() == Decision.Kind.MARK && !Decision.isMark(decision.value())) {
            lines.fault(
                    decision.line(),
                    "“" + decision.value() + "” is not a mark that a question can have",
                    "0, 0.5 or 1",
                    "Write one of them under value.");
        } else {
            return true;
        }
        return false;
    }

    private static String missing(Decision decision) {
        boolean seat = decision.seat() > 0;
        boolean question = !decision.question().isEmpty();
        return switch (decision.kind()) {
            case ACCEPT ->
                !seat ? "a seat" : !question ? "a question" : decision.answer().isEmpty() ? "the answer accepted" : "";
            case READ_AS ->
                !seat
                        ? "a seat"
                        : !question
                                ? "a question"
                                : decision.answer().isEmpty()
                                        ? "the answer as typed"
                                        : decision.value().isEmpty() ? "what it means, under value" : "";
            case MARK ->
                !seat ? "a seat" : !question ? "a question" : decision.value().isEmpty() ? "the mark, under value" : "";
            case LEAVE_OUT -> question ? "" : "a question";
            case COUNTS -> decision.file().isEmpty() ? "a file" : seat ? "" : "the seat it counts for";
            case DOES_NOT_COUNT -> decision.file().isEmpty() ? "a file" : "";
        };
    }

    private boolean isFirst(Decision decision) {
        String subject = decision.kind().isOfFile()
                ? decision.file() + "\t" + decision.sheet() + "\t" + decision.seat()
                : (decision.kind() == Decision.Kind.LEAVE_OUT ? "all" : Integer.toString(decision.seat())) + "\t"
                        + decision.question();
        Integer earlier = lineOf.putIfAbsent(subject, decision.line());
        if (earlier != null) {
            lines.fault(
                    decision.line(),
                    "line " + earlier + " decides the same",
                    "one decision on each answer, question or file",
                    "Keep the line that is right.");
        }
        return earlier == null;
    }
}
