package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.language.Language;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.Roster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** One run of marking, from the folder of answers to the last table. */
final class ClassMarking {
    private final Marking.Task task;
    private final Marking.Output output;
    private final Language language;
    private final Privacy privacy;
    private final Seats seats;
    private final DecisionBook decisions;
    private final Inbox inbox;
    private final SheetMarker marker;
    private final List<Standing> standings = new ArrayList<>();
    private final Map<Roster.Seat, Status> statuses = new LinkedHashMap<>();

    ClassMarking(Marking.Task task, Marking.Output output) {
        this.task = task;
        this.output = output;
        this.language = task.sheets().plan().language();
        this.privacy = task.pseudonyms() ? Privacy.of(task.roster(), language) : Privacy.none(language);
        this.seats = new Seats(task.roster());
        this.decisions = task.decisions()
                .map(list -> DecisionBook.read(
                        list.file(), list.text(), task.sheets(), task.others().areKnown()))
                .orElseGet(DecisionBook::none);
        AnswerFolder folder = folder(task.answers());
        ReceivedList received = task.received()
                .map(list -> ReceivedList.read(list.file(), list.text(), folder.names()))
                .orElseGet(ReceivedList::unknown);
        LeftOutQuestions.find(decisions, task.sheets(), task.roster());
        this.inbox = Inbox.open(task, folder, seats, received, decisions, privacy);
        this.marker = new SheetMarker(task.sheets(), task.corrections(), decisions, privacy);
    }

    Erasure erasure(int seat, Optional<Path> decisionList, Optional<Path> receivedList) {
        return new LearnerErasure(task, inbox, decisions, seat).find(decisionList, receivedList);
    }

    Marking.Marked mark() {
        MarkTables tables = new MarkTables(task.roster(), task.sheets().plan(), privacy);
        markSheets(tables);
        List<ToDecide> toDecide = toDecide();
        List<SetAside> setAside = new ArrayList<>(inbox.setAside());
        setAside.addAll(marker.setAside());
        List<MarkChange> changes = task.before()
                .map(before -> MarkChange.between(before, standings))
                .orElse(List.of());
        int absent = task.roster().seats().size() - standings.size();
        ClassResults results = new ClassResults(task.sheets().templates(), standings, language);
        Tomorrow tomorrow = Tomorrow.of(results, task.sheets(), task.corrections(), privacy);
        output.write(
                "report.html",
                HtmlPage.render(ClassReport.compose(
                        task.sheets().plan(),
                        results,
                        tomorrow,
                        new ClassReport.CameIn(
                                inbox.files(),
                                absent,
                                setAside.size(),
                                toDecide.size(),
                                OpenMatters.of(toDecide, statuses, decisions, seats, privacy, language)),
                        task.before().map(before -> changes),
                        marker.changed(),
                        privacy)));
        output.write(
                Tomorrow.PROJECTOR,
                HtmlPage.render(tomorrow.projector(task.sheets().plan())));
        output.write(
                Gradebook.FILE, HtmlPage.render(Gradebook.compose(task.sheets().plan(), results, statuses, privacy)));
        write(tables, toDecide, setAside, changes);
        return new Marking.Marked(
                standings.size(),
                absent,
                inbox.files().size(),
                (int) inbox.files().stream().filter(FileNote::isLate).count(),
                inbox.answers(),
                setAside.size(),
                toDecide.size(),
                changes.size(),
                marker.changed().stream()
                        .map(of -> new Marking.CorrectedAnswer(of.sheet(), of.change()))
                        .toList(),
                notes());
    }

    private void write(MarkTables tables, List<ToDecide> toDecide, List<SetAside> setAside, List<MarkChange> changes) {
        output.write(OwnFile.MARKS.file(), tables.marks());
        output.write(OwnFile.SEND.file(), tables.send());
        output.write(
                OwnFile.DECIDE.file(), MarkTables.decide(toDecide, task.sheets().code(), seats, privacy, language));
        output.write(OwnFile.ANSWERS.file(), tables.answers());
        output.write(OwnFile.FILES.file(), MarkTables.files(inbox.files(), language));
        output.write(OwnFile.SET_ASIDE.file(), MarkTables.setAside(setAside, privacy, language));
        task.before()
                .ifPresent(
                        before -> output.write(OwnFile.CHANGES.file(), MarkChange.table(changes, privacy, language)));
        task.corrections()
                .ifPresent(by -> output.write(
                        OwnFile.CORRECTIONS.file(), ChangedVerdict.table(marker.changed(), privacy, language)));
        if (privacy.isOn()) {
            output.write(OwnFile.NAMES.file(), MarkTables.names(task.roster(), inbox.files()));
        }
    }

    private void markSheets(MarkTables tables) {
        Set<Integer> undecided = new TreeSet<>();
        inbox.toDecide().forEach(one -> undecided.addAll(one.maybe()));
        FileOwners unread = new FileOwners(inbox.files(), task.sheets(), task.roster());
        for (Roster.Seat seat : task.roster().seats()) {
            List<HandIn> handIns = inbox.of(seat.number());
            if (handIns.isEmpty()) {
                boolean open = undecided.contains(seat.number());
                Status status =
                        open ? Status.UNDECIDED : unread.sentFrom(seat.number()) ? Status.UNREADABLE : Status.NOTHING;
                statuses.put(seat, status);
                tables.addAbsent(seat, status);
                continue;
            }
            MarkedSheet marked = marker.mark(seat, handIns);
            standings.add(marked.standing());
            statuses.put(seat, Status.of(marked.standing()));
            tables.add(marked);
            output.write(
                    Marking.feedback(seat),
                    HtmlPage.render(FeedbackPage.compose(
                            marked, privacy.name(seat), decisions.onFilesOf(seat.number()), privacy)));
        }
    }

    private List<ToDecide> toDecide() {
        List<ToDecide> all = new ArrayList<>(inbox.toDecide());
        all.addAll(marker.toDecide());
        all.sort(Comparator.comparingInt(ToDecide::seat));
        return all;
    }

    private List<Diagnostic> notes() {
        List<Diagnostic> notes = new ArrayList<>(task.roster().remarks());
        inbox.files().forEach(file -> notes.addAll(file.notes()));
        notes.addAll(marker.notes());
        decisions.misfits().forEach(notes::add);
        return notes;
    }

    private static AnswerFolder folder(Path answers) {
        try {
            return AnswerFolder.of(answers);
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(answers.toString().replace('\\', '/')),
                    say("folder.answers.unread"),
                    say("folder.answers.unread.expected"),
                    say("folder.answers.unread.next")));
        }
    }
}
