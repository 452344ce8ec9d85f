package ampersheet.issue;

import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.Roster;
import ampersheet.source.CellRows;
import ampersheet.source.RowsOfFile;
import ampersheet.source.SafeCsv;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

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

    /** The questions of a class, learners told one after another. */
    static final class Columns {
        private final TreeMap<Integer, List<String>> questions = new TreeMap<>();

        void add(Line line) {
            line.questions().forEach((problem, names) -> {
                List<String> columns = questions.computeIfAbsent(problem, number -> new ArrayList<>());
                names.stream().filter(name -> !columns.contains(name)).forEach(columns::add);
            });
        }

        private List<String> names() {
            return questions.values().stream().flatMap(List::stream).toList();
        }
    }

    /** Takes learners one after another. */
    @FunctionalInterface
    interface Learners {
        void learner(String sheet, Roster.Seat seat) throws IOException;
    }

    /** Whom the grid has lines for. */
    @FunctionalInterface
    interface ToldLearners {
        void each(Learners to) throws IOException;
    }

    /** Writes it, if nobody has begun to fill in another; how many files changed. */
    static int write(List<Line> lines, Path file, Output output) {
        Columns columns = new Columns();
        lines.forEach(columns::add);
        return write(
                columns,
                to -> {
                    for (Line line : lines) {
                        to.learner(line.sheet(), line.seat());
                    }
                },
                file,
                output);
    }

    /** The same of a class that is not held in memory. */
    static int write(Columns columns, ToldLearners learners, Path file, Output output) {
        return mayBeWritten(file)
                        && output.write(file, (WholeFile.Content) out -> writeEmpty(columns.names(), learners, out))
                ? 1
                : 0;
    }

    private static void writeEmpty(List<String> columns, ToldLearners learners, OutputStream to) throws IOException {
        Writer out = new OutputStreamWriter(to, StandardCharsets.UTF_8);
        List<String> head = new ArrayList<>(OWNER);
        head.addAll(columns);
        out.append(SafeCsv.line(head));
        learners.each((sheet, seat) -> {
            List<String> row = new ArrayList<>(List.of(sheet, Integer.toString(seat.number()), seat.name()));
            columns.forEach(column -> row.add(""));
            out.append(SafeCsv.line(row));
        });
        out.flush();
    }

    /** Whether it may be written: not if there is one with anything in it but learners. */
    private static boolean mayBeWritten(Path file) {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return true;
        }
        Emptiness found = new Emptiness();
        try {
            RowsOfFile.each(file, ',', found::look);
            return found.isOurs();
        } catch (IOException | CellRows.Uneven other) {
            // Whatever it is, it is not the empty one that this program wrote.
            return false;
        }
    }

    /** Whether a table is an empty grid, looked at row after row. */
    private static final class Emptiness {
        private List<String> head = List.of();
        private boolean ours = true;

        void look(CellRows.Row row) {
            if (head.isEmpty()) {
                head = row.names();
                ours = head.size() > OWNER.size()
                        && head.subList(0, OWNER.size()).equals(OWNER);
                return;
            }
            ours &= row.size() == head.size();
            for (int i = 0; ours && i < head.size(); i++) {
                ours = OWNER.contains(head.get(i)) || row.get(i).isBlank();
            }
        }

        boolean isOurs() {
            return ours && !head.isEmpty();
        }
    }
}
