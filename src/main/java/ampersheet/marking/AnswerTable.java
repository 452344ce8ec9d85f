package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.language.Saying;
import ampersheet.source.AsciiCase;
import ampersheet.source.CellRows.Row;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads answers from a table: with the columns {@code sheet}, {@code question} and {@code answer}, a line for each
 * answer; or a grid, a line for each learner and a column for each question. Other columns are passed over. One file
 * may hold the answers of several sheets, and first lines again where files were put together.
 */
final class AnswerTable {
    private static final String FORM = say("folder.answers.table");
    private static final List<String> COLUMNS = List.of("sheet", "question", "answer");
    /** What names the learner of a line of a grid. */
    private static final List<String> OWNERS = List.of("sheet", "seat", "name");
    /** Typed into a cell of a grid for a place that came back open. */
    private static final String OPEN = "-–—/";

    private static final CsvRows.Heads HEADS = new CsvRows.Heads() {
        @Override
        public boolean isHead(Row row) {
            List<String> names = row.names();
            return names.containsAll(COLUMNS) || isGrid(names);
        }

        @Override
        public boolean isBody(Row row) {
            return row.size() >= COLUMNS.size()
                    && isId(row.get(0).strip())
                    && QuestionName.is(AsciiCase.small(row.get(1).strip()));
        }

        @Override
        public List<String> usual() {
            return COLUMNS;
        }
    };

    private final TextLines lines;
    private final CsvRows table;
    private final List<TypedAnswer> answers = new ArrayList<>();

    private AnswerTable(TextLines lines) {
        this.lines = lines;
        this.table = CsvRows.read(lines, FORM, HEADS);
    }

    /**
     * Reads one.
     *
     * @param name of the file
     * @param shown what may be written of it
     */
    static ReturnedFile read(String name, String shown, String text, Privacy privacy) {
        AnswerTable reading = new AnswerTable(TextLines.of(shown, text, privacy));
        reading.read(name);
        return new ReturnedFile(shown, reading.answers, reading.lines.faults());
    }

    private static boolean isGrid(List<String> head) {
        return !head.contains("question")
                && head.stream().anyMatch(OWNERS::contains)
                && head.stream().anyMatch(QuestionName::is);
    }

    private static boolean isId(String cell) {
        return cell.length() >= 7
                && cell.indexOf('-') > 0
                && cell.chars().allMatch(c -> c < 0x80 && (Character.isLetterOrDigit(c) || c == '-'))
                && cell.chars().anyMatch(Character::isDigit);
    }

    private void read(String name) {
        if (OwnFile.is(name, table.head())) {
            lines.fault(
                    table.headLine(),
                    Saying.of("report.file.own-table"),
                    say("folder.answers.as-they-came"),
                    say("folder.answers.own-table.next"));
        } else if (table.head().containsAll(List.of("decision", "reason"))) {
            lines.fault(
                    table.headLine(),
                    Saying.of("report.file.decisions"),
                    say("folder.answers.as-they-came"),
                    say("folder.answers.decisions.next"));
        } else if (isGrid(table.head())) {
            new Grid().read();
        } else if (table.has(COLUMNS)) {
            if (table.body().isEmpty()) {
                lines.fault(
                        table.headLine(),
                        Saying.of("report.file.no-answer"),
                        FORM,
                        say("folder.answers.empty-row.next"));
            }
            table.body().stream().filter(row -> !isHeadAgain(row)).forEach(this::line);
        }
    }

    /** Where files were put together. */
    private boolean isHeadAgain(Row row) {
        return AsciiCase.small(table.cell(row, "sheet")).equals("sheet")
                && row.names().containsAll(COLUMNS);
    }

    private String cell(Row row, String column) {
        return SafeCsv.read(table.cell(row, column));
    }

    private Origin origin(Row row) {
        return new Origin(
                cell(row, "sheet"), cell(row, "seat"), "", cell(row, "browser"), Seats.number(table.cell(row, "save")));
    }

    private void line(Row row) {
        if (!isWhole(row)) {
            return;
        }
        Origin origin = origin(row);
        String question = AsciiCase.small(cell(row, "question"));
        String text = cell(row, "answer");
        if (table.head().equals(OwnFile.SET_ASIDE.head()) && SetAside.anotherCounts(table.cell(row, "why"))) {
            lines.warning(row.line(), Saying.of("report.file.set-aside"), say("folder.answers.set-aside.next"));
        } else if (origin.sheet().isEmpty()) {
            lines.fault(row.line(), Saying.of("report.file.no-sheet"), FORM, say("folder.answers.no-sheet.next"));
        } else if (question.isEmpty()) {
            lines.fault(row.line(), Saying.of("report.file.no-question"), FORM, say("folder.answers.no-question.next"));
        } else if (lines.isPlain(text, row.line())) {
            answers.add(new TypedAnswer(origin, question, text, lines.place(row.line()), false));
        }
    }

    /** Whether a line has all columns and no more. */
    private boolean isWhole(Row row) {
        int needed = COLUMNS.stream().mapToInt(table::column).max().orElse(0) + 1;
        int columns = row.size();
        if (columns < needed) {
            lines.fault(
                    row.line(),
                    Saying.count("report.file.columns-missing", columns),
                    FORM,
                    say("folder.answers.short-line.next"));
            return false;
        }
        boolean spills = row.cells().subList(Math.min(columns, table.columns()), columns).stream()
                .anyMatch(cell -> !cell.isBlank());
        if (spills) {
            lines.fault(
                    row.line(),
                    Saying.of("report.file.columns-too-many"),
                    say("folder.answers.comma.expected"),
                    say("folder.answers.comma.next"));
        }
        return !spills;
    }

    /**
     * A learner a line, a question a column; a line without anything in it is that of somebody who handed in nothing.
     */
    private final class Grid {
        private final Map<String, Integer> questions = new LinkedHashMap<>();

        void read() {
            List<String> head = table.head();
            for (int i = 0; i < head.size(); i++) {
                if (QuestionName.is(head.get(i)) && questions.putIfAbsent(head.get(i), i) != null) {
                    lines.fault(
                            table.headLine(),
                            Saying.of("report.file.question-twice", "question", head.get(i)),
                            say("folder.answers.question-twice.expected"),
                            say("folder.answers.question-twice.next"));
                }
            }
            table.body().forEach(this::line);
        }

        private void line(Row row) {
            Origin origin = new Origin(cell(row, "sheet"), cell(row, "seat"), cell(row, "name"), "", 0);
            List<TypedAnswer> here = new ArrayList<>();
            questions.forEach((question, at) -> {
                String text = at < row.size() ? SafeCsv.read(row.get(at).strip()) : "";
                boolean open = text.length() == 1 && OPEN.contains(text);
                if (!text.isEmpty() && lines.isPlain(text, row.line())) {
                    here.add(new TypedAnswer(origin, question, open ? "" : text, lines.place(row.line()), false));
                }
            });
            boolean owned = !origin.sheet().isEmpty()
                    || !origin.seat().isEmpty()
                    || !origin.name().isEmpty();
            if (!owned && !here.isEmpty()) {
                lines.fault(
                        row.line(),
                        Saying.of("report.file.no-learner"),
                        say("folder.answers.no-learner.expected"),
                        say("plan.write-one"));
                return;
            }
            answers.addAll(here);
        }
    }
}
