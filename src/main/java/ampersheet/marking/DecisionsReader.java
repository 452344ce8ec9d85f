package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.AsciiCase;
import ampersheet.source.CellRows.Row;
import ampersheet.source.SafeCsv;
import ampersheet.source.Told;
import ampersheet.source.WithinMemory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Reads the list that the instructor keeps of what she decided. It has the columns of decide.csv, so that a line of
 * that one with a decision and a reason written into it is a line of this one; lines without a decision are passed
 * over.
 */
final class DecisionsReader {
    private static final String FORM = say("folder.decision.form");
    private static final String WORDS = Told.either(
            Stream.of(Decision.Kind.values()).map(Decision.Kind::word).toList());

    private final TextLines lines;
    private final CsvRows table;
    private final List<Decision> decisions = new ArrayList<>();
    /** By what is decided, and by the sheets for which it holds; empty for all. */
    private final Map<String, Map<String, Integer>> lineOf = new TreeMap<>();

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
                    word.isEmpty() ? say("folder.decision.none") : say("folder.decision.unknown", "written", word),
                    WORDS,
                    say("folder.decision.unknown.next"));
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
                cell(row, "issue"),
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
                    say("folder.decision.no-reason"),
                    say("folder.decision.no-reason.expected"),
                    say("folder.decision.no-reason.next"));
        } else if (!seat.isEmpty() && decision.seat() == 0) {
            lines.fault(
                    decision.line(),
                    say("folder.decision.seat", "seat", seat),
                    say("folder.decision.seat.expected"),
                    say("folder.decision.seat.next"));
        } else if (!missing.isEmpty()) {
            lines.fault(decision.line(), missing, FORM, say("folder.decision.without.next"));
        } else if (decision.kind() == Decision.Kind.MARK && !Decision.isMark(decision.value())) {
            lines.fault(
                    decision.line(),
                    say("folder.decision.no-mark", "value", decision.value()),
                    Told.either(List.of("0", "0.5", "1")),
                    say("folder.decision.no-mark.next"));
        } else {
            return true;
        }
        return false;
    }

    private static String missing(Decision decision) {
        boolean seat = decision.seat() > 0;
        boolean question = !decision.question().isEmpty();
        boolean answer = !decision.answer().isEmpty();
        boolean value = !decision.value().isEmpty();
        boolean file = !decision.file().isEmpty();
        Decision.Kind kind = decision.kind();
        String word = kind.word();
        if (kind.isOfFile() && !file) {
            return say("folder.decision.without-file", "decision", word);
        }
        if (!kind.isOfFile() && kind != Decision.Kind.LEAVE_OUT && !seat) {
            return say("folder.decision.without-seat", "decision", word);
        }
        if (!kind.isOfFile() && !question) {
            return say("folder.decision.without-question", "decision", word);
        }
        return switch (kind) {
            case ACCEPT -> answer ? "" : say("folder.decision.without-accepted", "decision", word);
            case READ_AS ->
                !answer
                        ? say("folder.decision.without-answer", "decision", word)
                        : value ? "" : say("folder.decision.without-meaning", "decision", word);
            case MARK -> value ? "" : say("folder.decision.without-mark", "decision", word);
            case COUNTS -> seat ? "" : say("folder.decision.without-its-seat", "decision", word);
            case LEAVE_OUT, DOES_NOT_COUNT -> "";
        };
    }

    private boolean isFirst(Decision decision) {
        String subject = decision.kind().isOfFile()
                ? decision.file() + "\t" + decision.sheet() + "\t" + decision.seat() + "\t" + decision.issue()
                : (decision.kind() == Decision.Kind.LEAVE_OUT ? "all" : Integer.toString(decision.seat())) + "\t"
                        + decision.question();
        String set = decision.kind().isOfFile() ? "" : decision.set().orElse("");
        Map<String, Integer> known = lineOf.computeIfAbsent(subject, first -> new TreeMap<>());
        Integer earlier = known.getOrDefault(set, known.get(""));
        if (earlier == null && set.isEmpty() && !known.isEmpty()) {
            earlier = known.values().iterator().next();
        }
        known.putIfAbsent(set, decision.line());
        if (earlier != null) {
            lines.fault(
                    decision.line(),
                    say("folder.decision.twice", "line", Integer.toString(earlier)),
                    say("folder.decision.twice.expected"),
                    say("folder.keep-line"));
        }
        return earlier == null;
    }
}
