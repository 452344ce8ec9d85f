package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Roster;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** Everything that came in, read once and sorted by seat. */
final class Inbox {
    /** Ten tries of a thousand learners at forty questions; as many fit into a small machine's memory. */
    private static final int MOST_ANSWERS = 400_000;

    private static final String TO_ROSTER =
            "Add the learner to the class list and mark again, or ask whose sheet it is.";

    private final ClassSheets sheets;
    private final TreeSet<Integer> seats = new TreeSet<>();
    private final Map<Integer, List<Incoming>> bySeat = new TreeMap<>();
    private final Map<String, Optional<Integer>> seatOfId = new LinkedHashMap<>();
    private final Map<String, Diagnostic> refusedIds = new LinkedHashMap<>();
    private final List<FileNote> files = new ArrayList<>();
    private final List<SetAside> setAside = new ArrayList<>();
    private int answers;
    private long bytes;

    /** One file's answers to one sheet. */
    record Incoming(FileNote file, List<TypedAnswer> answers) {}

    private Inbox(ClassSheets sheets, Roster roster) {
        this.sheets = sheets;
        roster.seats().forEach(seat -> seats.add(seat.number()));
    }

    static Inbox open(
            AnswerFolder folder,
            ClassSheets sheets,
            Roster roster,
            ReceivedList received,
            Optional<LocalDateTime> due,
            Privacy privacy) {
        Inbox inbox = new Inbox(sheets, roster);
        Map<String, Integer> numbers = new TreeMap<>();
        folder.names().forEach(name -> numbers.put(name, numbers.size() + 1));
        for (String name : folder.smallestFirst()) {
            int number = numbers.get(name);
            ReturnedFile file = inbox.read(folder, name, privacy.file(name, number), privacy);
            Optional<LocalDateTime> time = received.of(name);
            boolean late = due.isPresent() && time.isPresent() && time.get().isAfter(due.get());
            inbox.take(file, new FileNote(number, name, file.name(), time, late));
        }
        inbox.files.sort(Comparator.comparing(FileNote::number));
        inbox.bySeat.values().forEach(incoming -> incoming.sort(Comparator.comparing(Incoming::file)));
        return inbox;
    }

    /** What one file holds too much of must not cost the others their marks: it is set aside whole, by its name. */
    private ReturnedFile read(AnswerFolder folder, String name, String shown, Privacy privacy) {
        if (folder.hasRoomFor(name, bytes)) {
            ReturnedFile file = folder.read(name, shown, privacy);
            if (answers + file.answers().size() <= MOST_ANSWERS) {
                bytes += folder.size(name);
                return file;
            }
        }
        return AnswerFolder.faulty(
                shown,
                "the files of this folder hold too much in all, and this is one of the largest",
                "Look what it is; if it is meant, mark it in a folder of its own.");
    }

    private void take(ReturnedFile file, FileNote note) {
        files.add(note);
        note.add(file.faults());
        Map<String, Integer> unknown = new LinkedHashMap<>();
        Map<Integer, List<TypedAnswer>> here = new LinkedHashMap<>();
        for (TypedAnswer answer : file.answers()) {
            answers++;
            Optional<Integer> seat = seatOfId.computeIfAbsent(answer.sheet(), this::seat);
            if (seat.isPresent() && seats.contains(seat.get())) {
                here.computeIfAbsent(seat.get(), s -> new ArrayList<>()).add(answer);
            } else {
                if (unknown.merge(answer.sheet(), 1, Integer::sum) == 1) {
                    note.add(refused(answer, seat));
                }
                setAside.add(
                        new SetAside(answer, seat.isPresent() ? "seat not in the class list" : "unknown sheet ID"));
            }
        }
        here.forEach((seat, given) ->
                bySeat.computeIfAbsent(seat, s -> new ArrayList<>()).add(new Incoming(note, given)));
    }

    private Optional<Integer> seat(String typedId) {
        try {
            return Optional.of(sheets.readId(typedId).seat());
        } catch (DiagnosticException refused) {
            refusedIds.put(typedId, refused.diagnostics().get(0));
            return Optional.empty();
        }
    }

    private Diagnostic refused(TypedAnswer answer, Optional<Integer> seat) {
        if (seat.isPresent()) {
            return Diagnostic.error(
                    answer.place(), "seat " + seat.get() + " of this sheet is not in the class list", "", TO_ROSTER);
        }
        Diagnostic id = refusedIds.get(answer.sheet());
        return Diagnostic.error(answer.place(), id.problem(), id.expected(), id.nextAction());
    }

    /** Answers to a sheet in the order in which they count: what comes later takes the place of what came before. */
    List<Incoming> of(int seat) {
        return bySeat.getOrDefault(seat, List.of());
    }

    List<FileNote> files() {
        return List.copyOf(files);
    }

    /** All that were read, right or wrong, blank or not. */
    int answers() {
        return answers;
    }

    /** Those that belong to no sheet of this class. */
    List<SetAside> setAside() {
        return List.copyOf(setAside);
    }
}
