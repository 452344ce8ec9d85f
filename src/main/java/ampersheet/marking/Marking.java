package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A folder of returned answers becomes marks, a page for each learner and a report on the class. */
public final class Marking {
    private Marking() {}

    /**
     * What is to be marked.
     *
     * @param answers folder of the returned files
     * @param sheets as they were issued
     * @param corrections where the templates to mark by are not those that the sheets were issued from
     * @param received text of the list of times at which files came in
     * @param due files that came in later are late; the time is compared with that list and with nothing else
     * @param before marks of an earlier run, to tell whose changed
     * @param pseudonyms whether names stay out of everything but one file
     */
    public record Task(
            Path answers,
            ClassSheets sheets,
            Optional<Corrections> corrections,
            Roster roster,
            Optional<NamedText> received,
            Optional<LocalDateTime> due,
            Optional<EarlierMarks> before,
            boolean pseudonyms) {

        /** @param corrected the templates to mark by, where they are not those of the set */
        public Task(
                Path answers,
                ProblemSet set,
                Optional<TemplateLibrary> corrected,
                Roster roster,
                Optional<NamedText> received,
                Optional<LocalDateTime> due,
                Optional<EarlierMarks> before,
                boolean pseudonyms) {
            this(
                    answers,
                    new SheetMaker(set),
                    corrected.map(Corrections::new),
                    roster,
                    received,
                    due,
                    before,
                    pseudonyms);
        }
    }

    /** @param file as its reader knows it */
    public record NamedText(String file, String text) {}

    /** Takes the files that marking makes, by their path in the folder of results. */
    public interface Output {
        void write(String path, String text);
    }

    /**
     * What was marked.
     *
     * @param learners from whom something came in
     * @param absent seats from which nothing came in
     * @param answers that came in, blanks included
     * @param corrected answers that a correction of a key makes worth more or less, by sheet ID and question, told in a
     *     line
     * @param notes all that was wrong with files, in the order of the files, and what is left to do by hand
     */
    public record Marked(
            int learners,
            int absent,
            int files,
            int late,
            int answers,
            int setAside,
            int changed,
            List<CorrectedAnswer> corrected,
            List<Diagnostic> notes) {
        public Marked {
            corrected = List.copyOf(corrected);
            notes = List.copyOf(notes);
        }
    }

    /** An answer of a sheet that a correction makes worth more or less. */
    public record CorrectedAnswer(String sheet, ChangedVerdict verdict) {}

    /** @throws DiagnosticException if the folder or the list of times cannot be read */
    public static Marked mark(Task task, Output output) {
        Privacy privacy = task.pseudonyms() ? Privacy.of(task.roster()) : Privacy.NONE;
        AnswerFolder folder = folder(task.answers());
        ReceivedList received = task.received()
                .map(list -> ReceivedList.read(list.file(), list.text(), folder.names()))
                .orElseGet(ReceivedList::unknown);
        Inbox inbox = Inbox.open(folder, task.sheets(), task.roster(), received, task.due(), privacy);
        SheetMarker marker = new SheetMarker(task.sheets(), task.corrections());
        MarkTables tables = new MarkTables(privacy);
        List<Standing> standings = new ArrayList<>();
        for (Roster.Seat seat : task.roster().seats()) {
            List<Inbox.Incoming> incoming = inbox.of(seat.number());
            if (incoming.isEmpty()) {
                tables.addAbsent(seat);
                continue;
            }
            MarkedSheet marked = marker.mark(seat, incoming);
            standings.add(marked.standing());
            tables.add(marked);
            output.write(feedback(seat), HtmlPage.render(FeedbackPage.compose(marked, privacy.name(seat), privacy)));
        }
        List<SetAside> setAside = new ArrayList<>(inbox.setAside());
        setAside.addAll(marker.setAside());
        List<MarkChange> changes = task.before()
                .map(before -> MarkChange.between(before, standings))
                .orElse(List.of());
        output.write(
                "report.html",
                HtmlPage.render(ClassReport.compose(
                        task.sheets().plan(),
                        new ClassResults(task.sheets().templates(), standings),
                        inbox.files(),
                        task.roster().seats().size() - standings.size(),
                        task.before().map(before -> changes),
                        marker.changed(),
                        setAside.size(),
                        privacy)));
        output.write(OwnFile.MARKS.file(), tables.marks());
        output.write(OwnFile.ANSWERS.file(), tables.answers());
        output.write(OwnFile.FILES.file(), MarkTables.files(inbox.files()));
        output.write(OwnFile.SET_ASIDE.file(), MarkTables.setAside(setAside, privacy));
        task.before().ifPresent(before -> output.write(OwnFile.CHANGES.file(), MarkChange.table(changes, privacy)));
        task.corrections()
                .ifPresent(by ->
                        output.write(OwnFile.CORRECTIONS.file(), ChangedVerdict.table(marker.changed(), privacy)));
        if (privacy.isOn()) {
            output.write(OwnFile.NAMES.file(), MarkTables.names(task.roster(), inbox.files()));
        }
        List<Diagnostic> notes = new ArrayList<>();
        inbox.files().forEach(file -> notes.addAll(file.notes()));
        notes.addAll(marker.notes());
        return new Marked(
                standings.size(),
                task.roster().seats().size() - standings.size(),
                inbox.files().size(),
                (int) inbox.files().stream().filter(FileNote::isLate).count(),
                inbox.answers(),
                setAside.size(),
                changes.size(),
                marker.changed().stream()
                        .map(of -> new CorrectedAnswer(of.sheet(), of.change()))
                        .toList(),
                notes);
    }

    static String feedback(Roster.Seat seat) {
        return "feedback/" + Roster.fileName(seat.number()) + ".html";
    }

    private static AnswerFolder folder(Path answers) {
        try {
            return AnswerFolder.of(answers);
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(answers.toString().replace('\\', '/')),
                    "this folder of answers cannot be read",
                    "a folder with the files that learners sent",
                    "Check the path and its permissions."));
        }
    }
}
