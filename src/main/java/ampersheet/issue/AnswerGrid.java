package ampersheet.issue;

import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.Roster;
import ampersheet.source.Bounds;
import ampersheet.source.CellRows;
import ampersheet.source.SafeCsv;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * An empty table to type answers from paper into: a line for each learner, a column for each question. One that
 * somebody has begun to fill in is hers and stays as it is.
 */
final class AnswerGrid {
    private static final List<String> OWNER = List.of("sheet", "seat", "name");

    private AnswerGrid() {}

    /** @param issue by which all sheet IDs of a set begin */
    static Path file(Path out, String issue) {
        return out.resolve(name(issue));
    }

    static String name(String issue) {
        return "answer-grid-" + issue + ".csv";
    }

    /**
     * A line of it.
     *
     * @param questions by their problem's number, each with its places in their order
     */
    record Line(String sheet, Roster.Seat seat, TreeMap<Integer, List<String>> questions) {
        /** A question stands in the index if the sheet has a place for it. */
        static Line of(ClassIndex.Line told) {
            TreeMap<Integer, List<String>> questions = new TreeMap<>();
            for (int i = 0; i < told.problems().size(); i++) {
                List<String> names =
                        List.copyOf(told.problems().get(i).answers().keySet());
                if (!names.isEmpty()) {
                    questions.put(i + 1, names);
                }
            }
            return new Line(told.id().toString(), told.seat(), questions);
        }
    }

    /** Writes it, if nobody has begun to fill in another; how many files changed. */
    static int write(List<Line> lines, Path file, Output output) {
        return mayBeWritten(file) && output.write(file, empty(lines)) ? 1 : 0;
    }

    private static String empty(List<Line> lines) {
        TreeMap<Integer, List<String>> questions = new TreeMap<>();
        lines.forEach(line -> line.questions().forEach((problem, names) -> {
            List<String> columns = questions.computeIfAbsent(problem, number -> new ArrayList<>());
            names.stream().filter(name -> !columns.contains(name)).forEach(columns::add);
        }));
        List<String> columns = questions.values().stream().flatMap(List::stream).toList();
        List<String> head = new ArrayList<>(OWNER);
        head.addAll(columns);
        SafeCsv grid = new SafeCsv(head);
        for (Line line : lines) {
            List<String> row = new ArrayList<>(List.of(
                    line.sheet(),
                    Integer.toString(line.seat().number()),
                    line.seat().name()));
            columns.forEach(column -> row.add(""));
            grid.row(row);
        }
        return grid.toString();
    }

    /** Whether it may be written: not if there is one with anything in it but learners. */
    private static boolean mayBeWritten(Path file) {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return true;
        }
        try {
            CellRows.Lines text = CellRows.Lines.of(SourceFile.text(file, Bounds.WRITTEN, SourceFile.Links.REFUSED));
            List<CellRows.Row> rows = CellRows.read(text.text(), ',', 1);
            Set<Integer> answers = new TreeSet<>();
            List<String> head = rows.isEmpty() ? List.of() : rows.get(0).names();
            for (int i = 0; i < head.size(); i++) {
                if (!OWNER.contains(head.get(i))) {
                    answers.add(i);
                }
            }
            boolean ours =
                    head.size() > OWNER.size() && head.subList(0, OWNER.size()).equals(OWNER);
            return ours
                    && rows.stream()
                            .skip(1)
                            .allMatch(row -> row.size() == head.size()
                                    && answers.stream()
                                            .allMatch(at -> row.get(at).isBlank()));
        } catch (Unread | CellRows.Uneven other) {
            // Whatever it is, it is not the empty one that this program wrote.
            return false;
        }
    }
}
