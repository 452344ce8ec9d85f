package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.CellRows.Row;
import ampersheet.source.WithinMemory;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * When each file came in, as the instructor or the mailbox wrote it down. Nothing else is taken for it: a file's own
 * date changes when it is copied, and a learner's clock may be wrong.
 */
public final class ReceivedList {
    private static final String FORM = say("folder.received.form");

    private final Map<String, LocalDateTime> times;

    private ReceivedList(Map<String, LocalDateTime> times) {
        this.times = times;
    }

    /** Of no file is it known. */
    public static ReceivedList unknown() {
        return new ReceivedList(Map.of());
    }

    /**
     * @param names of the files in the folder
     * @throws DiagnosticException with all faults of the list at once
     */
    static ReceivedList read(String file, String text, List<String> names) {
        return WithinMemory.of(file, () -> readTable(file, text, new TreeSet<>(names)));
    }

    private static ReceivedList readTable(String file, String text, Set<String> names) {
        TextLines lines = TextLines.ofOwn(file, text);
        CsvRows table = CsvRows.read(lines, FORM);
        Map<String, LocalDateTime> times = new TreeMap<>();
        if (table.has(List.of("file", "received"))) {
            for (Row row : table.body()) {
                String name = table.cell(row, "file");
                String time = table.cell(row, "received");
                Optional<LocalDateTime> read = time(time);
                if (!names.contains(name)) {
                    lines.fault(
                            row.line(),
                            say("folder.received.unknown", "file", name),
                            say("folder.received.unknown.expected"),
                            say("plan.correct-name"));
                } else if (read.isEmpty()) {
                    lines.fault(
                            row.line(),
                            say("folder.received.time", "time", time),
                            say("folder.received.time.expected"),
                            say("folder.received.time.next"));
                } else if (times.putIfAbsent(name, read.get()) != null) {
                    lines.fault(
                            row.line(),
                            say("folder.received.twice", "file", name),
                            say("folder.received.twice.expected"),
                            say("folder.keep-line"));
                }
            }
        }
        List<Diagnostic> faults = lines.faults().list();
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        return new ReceivedList(times);
    }

    /** Where files of these names stand in the list. */
    static SortedSet<Integer> linesOf(Marking.NamedText list, Set<String> names) {
        CsvRows table = CsvRows.read(TextLines.ofOwn(list.file(), list.text()), FORM);
        TreeSet<Integer> lines = new TreeSet<>();
        for (Row row : table.body()) {
            if (names.contains(table.cell(row, "file"))) {
                lines.add(row.line());
            }
        }
        return lines;
    }

    /** Empty if it is not a date and time such as {@code 2026-03-05T17:40}. */
    public static Optional<LocalDateTime> time(String written) {
        try {
            return Optional.of(LocalDateTime.parse(written.strip().replace(' ', 'T')));
        } catch (DateTimeException unreadable) {
            return Optional.empty();
        }
    }

    Optional<LocalDateTime> of(String name) {
        return Optional.ofNullable(times.get(name));
    }
}
