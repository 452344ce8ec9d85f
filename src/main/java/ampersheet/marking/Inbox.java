package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.language.Saying;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.SheetId;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;

/** Everything that came in, read once and sorted by seat. */
final class Inbox {
    /** Ten tries of a thousand learners at forty questions; as many fit into a small machine's memory. */
    private static final int MOST_ANSWERS = 400_000;

    private static final Saying TO_ROSTER = Saying.of("report.file.to-roster");
    private static final Saying NOTHING = FileFault.asItIs("");
    private static final Saying WHOSE = Saying.of("report.file.whose");

    private final ClassSheets sheets;
    private final OtherSheets others;
    private final Seats seats;
    private final DecisionBook decisions;
    private final Map<Integer, List<HandIn>> bySeat = new TreeMap<>();
    private final Map<String, Optional<Integer>> seatOfId = new LinkedHashMap<>();
    private final Map<String, Diagnostic> refusedIds = new LinkedHashMap<>();
    private final List<FileNote> files = new ArrayList<>();
    private final List<SetAside> setAside = new ArrayList<>();
    private final List<ToDecide> toDecide = new ArrayList<>();
    private int answers;
    private long bytes;

    /**
     * Whose answers these are.
     *
     * @param seat 0 if that is not known
     * @param why it is not, for the list of what was set aside
     * @param told the same for whoever looks at the file
     * @param next what to do about it
     */
    private record Owner(int seat, Saying why, Optional<FileFault> told, Saying next) {
        static Owner of(int seat) {
            return new Owner(seat, NOTHING, Optional.empty(), NOTHING);
        }

        static Owner unknown(Saying why, Place at, Saying problem, String expected, Saying next) {
            return new Owner(
                    0, why, Optional.of(FileFault.error(at, problem, expected, Languages.ENGLISH.say(next))), next);
        }

        /** Why nobody knows, as the file's own fault tells it. */
        Saying problem() {
            return told.map(FileFault::problem).orElse(why);
        }
    }

    private Inbox(Marking.Task task, Seats seats, DecisionBook decisions) {
        this.sheets = task.sheets();
        this.others = task.others();
        this.seats = seats;
        this.decisions = decisions;
    }

    static Inbox open(
            Marking.Task task,
            AnswerFolder folder,
            Seats seats,
            ReceivedList received,
            DecisionBook decisions,
            Privacy privacy) {
        Inbox inbox = new Inbox(task, seats, decisions);
        Map<String, Integer> numbers = new TreeMap<>();
        folder.names().forEach(name -> numbers.put(name, numbers.size() + 1));
        for (String name : folder.smallestFirst()) {
            int number = numbers.get(name);
            ReturnedFile file = inbox.read(folder, name, privacy.file(name, number), privacy);
            inbox.take(file, FileNote.of(number, name, file.name(), received.of(name), task.due()));
        }
        inbox.files.sort(Comparator.comparing(FileNote::number));
        inbox.bySeat.values().forEach(handIns -> handIns.sort(Comparator.comparing(HandIn::file)));
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
        return AnswerFolder.faulty(shown, Saying.of("report.file.too-much"), say("folder.answers.too-much.next"));
    }

    private void take(ReturnedFile file, FileNote note) {
        files.add(note);
        note.add(file.faults());
        Map<Origin, List<TypedAnswer>> byOrigin = new LinkedHashMap<>();
        for (TypedAnswer answer : file.answers()) {
            answers++;
            byOrigin.computeIfAbsent(answer.origin(), o -> new ArrayList<>()).add(answer);
        }
        Map<Origin, Owner> owners = new LinkedHashMap<>();
        byOrigin.forEach((origin, given) -> owners.put(origin, owner(origin, given.get(0))));
        long unknown =
                owners.values().stream().filter(owner -> owner.seat() == 0).count();
        boolean ofThese = byOrigin.isEmpty();
        for (Map.Entry<Origin, List<TypedAnswer>> one : byOrigin.entrySet()) {
            Origin origin = one.getKey();
            boolean taken = take(note, origin, one.getValue(), owners.get(origin), unknown > 1);
            ofThese |= taken || !isOfOthers(origin);
        }
        if (!ofThese) {
            note.isOfOthers();
        }
    }

    /** Whether a hand-in bears an ID without a slip that other sheets have. */
    private boolean isOfOthers(Origin origin) {
        return SheetId.set(origin.sheet())
                .filter(set -> !set.equals(sheets.code()))
                .isPresent();
    }

    /**
     * Puts a hand-in where it belongs.
     *
     * @param oneOfMany whether the file holds more than one of which nobody knows whose it is
     * @return whether it is a learner's
     */
    private boolean take(FileNote note, Origin origin, List<TypedAnswer> given, Owner owner, boolean oneOfMany) {
        Optional<Decision> decided = decisions
                .ofFile(note, origin.sheet(), owner.seat())
                .filter(one -> owner.seat() > 0 || !oneOfMany || !one.sheet().isEmpty());
        if (decided.isPresent() && decided.get().kind() == Decision.Kind.DOES_NOT_COUNT) {
            given.forEach(answer -> setAside.add(SetAside.dismissed(answer)));
            return owner.seat() > 0;
        }
        if (decided.isPresent() && seats.has(decided.get().seat())) {
            int seat = decided.get().seat();
            if (sheets.has(seat)) {
                handIn(seat, new HandIn(note, origin, given, true));
                return true;
            }
            decisions.doesNotFit(
                    decided.get(), say("folder.decision.no-sheet-of-seat", "seat", Integer.toString(seat)));
        }
        if (owner.seat() > 0) {
            handIn(owner.seat(), new HandIn(note, origin, given, false));
        } else if (others.haveElsewhere(origin.sheet())) {
            given.forEach(answer -> setAside.add(SetAside.elsewhere(answer)));
            return false;
        } else {
            owner.told().ifPresent(note::add);
            given.forEach(answer -> setAside.add(new SetAside(answer, owner.why())));
            toDecide.add(new ToDecide(
                    maybe(origin),
                    origin.sheet(),
                    ToDecide.Asked.NOTHING,
                    "",
                    note.shown(),
                    given.get(0).place().line(),
                    Saying.count("report.decide.unknown-owner", given.size()).with("why", owner.problem()),
                    List.of(owner.next())));
            return false;
        }
        return true;
    }

    private void handIn(int seat, HandIn handIn) {
        bySeat.computeIfAbsent(seat, s -> new ArrayList<>()).add(handIn);
    }

    /** Those of its ID and of its page; where the ID has a slip, those of IDs one slip away. */
    private List<Integer> maybe(Origin origin) {
        Optional<Integer> ofId = seatOfId.getOrDefault(origin.sheet(), Optional.empty());
        List<Integer> found = new ArrayList<>(ofId.map(List::of).orElse(List.of()));
        if (found.isEmpty() && refusedIds.containsKey(origin.sheet())) {
            Matcher near =
                    SheetId.PRINTED.matcher(refusedIds.get(origin.sheet()).nextAction());
            while (near.find()) {
                seat(near.group()).ifPresent(found::add);
            }
        }
        if (found.isEmpty()) {
            found.add(Seats.number(origin.seat()));
        }
        return found.stream().filter(seats::has).distinct().toList();
    }

    /** All that a file says of whose answers these are must agree. */
    private Owner owner(Origin origin, TypedAnswer first) {
        int ofId = 0;
        if (!origin.sheet().isEmpty()) {
            Optional<Integer> read = seatOfId.computeIfAbsent(origin.sheet(), this::seat);
            if (read.isEmpty()) {
                Diagnostic id = refusedIds.get(origin.sheet());
                return Owner.unknown(
                        Saying.of("report.aside.unknown-sheet"),
                        first.place(),
                        FileFault.asItIs(id.problem()),
                        id.expected(),
                        FileFault.asItIs(id.nextAction()));
            }
            ofId = read.get();
        }
        int said = Seats.number(origin.seat());
        if (!origin.seat().isEmpty() && (said == 0 || ofId > 0 && said != ofId)) {
            return ofTwoSeats(first, said, ofId);
        }
        int seat =
                ofId > 0 ? ofId : said > 0 ? said : seats.named(origin.name()).orElse(0);
        if (seat == 0) {
            return Owner.unknown(
                    Saying.of("report.aside.unknown-name"),
                    first.place(),
                    Saying.of("report.file.unknown-name"),
                    say("folder.hand-in.name"),
                    WHOSE);
        }
        if (!seats.has(seat)) {
            return Owner.unknown(
                    Saying.of("report.aside.not-in-class"),
                    first.place(),
                    Saying.of("report.file.not-in-class", "seat", Integer.toString(seat)),
                    "",
                    TO_ROSTER);
        }
        if (!sheets.has(seat)) {
            return Owner.unknown(
                    Saying.of("report.aside.no-sheet-of-seat"),
                    first.place(),
                    Saying.of("report.file.no-sheet-of-seat", "seat", Integer.toString(seat)),
                    "",
                    WHOSE);
        }
        if (!origin.name().isEmpty() && seats.isCalledOtherwise(seat, origin.name())) {
            return Owner.unknown(
                    Saying.of("report.aside.two-names"),
                    first.place(),
                    Saying.of("report.file.two-names", "seat", Integer.toString(seat)),
                    say("folder.hand-in.seat-and-name"),
                    Saying.of("report.file.whose-sorted"));
        }
        return Owner.of(seat);
    }

    /** @param said 0 where what stands there is no seat */
    private static Owner ofTwoSeats(TypedAnswer first, int said, int ofId) {
        return Owner.unknown(
                Saying.of("report.aside.two-seats"),
                first.place(),
                said == 0
                        ? Saying.of("report.file.no-seat")
                        : Saying.of(
                                "report.file.two-seats",
                                "said",
                                Integer.toString(said),
                                "seat",
                                Integer.toString(ofId)),
                say("folder.hand-in.one-sheet"),
                WHOSE);
    }

    private Optional<Integer> seat(String typedId) {
        try {
            return Optional.of(sheets.readId(typedId).seat());
        } catch (DiagnosticException refused) {
            refusedIds.put(typedId, refused.diagnostics().get(0));
            return Optional.empty();
        }
    }

    /** Answers to a sheet, in the order of the list of times and of the files' names. */
    List<HandIn> of(int seat) {
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

    /** Hand-ins of which nobody knows whose they are. */
    List<ToDecide> toDecide() {
        return List.copyOf(toDecide);
    }
}
