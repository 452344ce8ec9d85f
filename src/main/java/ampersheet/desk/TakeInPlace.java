package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.MarkedFolder;
import ampersheet.issue.Output;
import ampersheet.issue.Progress;
import ampersheet.marking.Corrections;
import ampersheet.marking.DecisionList;
import ampersheet.marking.EarlierMarks;
import ampersheet.marking.MarkForms;
import ampersheet.marking.Marking;
import ampersheet.marking.ReceivedList;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheets;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.Roster;
import ampersheet.source.CellRows;
import ampersheet.source.SafeCsv;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** What came back, and what became of it. */
final class TakeInPlace {
    private static final int MOST_SHOWN = 500;
    private static final int MOST_NOTES = 20;

    private final CourseSet set;
    private final CourseWeeks weeks;
    private final Frame frame;
    private final Work work;
    private final Received received;

    TakeInPlace(CourseSet set, CourseWeeks weeks, Frame frame, Work work) {
        this.set = set;
        this.weeks = weeks;
        this.frame = frame;
        this.work = work;
        this.received = new Received(set.course());
    }

    Reply show(Call call) {
        CourseFolder files = set.course().files();
        List<Path> archives = set.course().archives();
        Optional<Path> chosen = chosen(call.query().text("archive"));
        OptionalInt week = week(chosen);
        Course.Kept decisions = set.course().read(CourseFolder.DECISIONS);
        List<Map<String, Object>> open = open(decisions.text());
        List<String> answers = set.course().names(files.answers());
        List<List<String>> became =
                rows("files.csv", List.of("file", "received", "late", "answers_marked", "what_became_of_it", "notes"));
        boolean withoutNames = table("names.csv").isPresent();
        Map<String, Object> values = Pages.values(
                "answers", answers,
                "newer",
                        !withoutNames
                                && !became.stream()
                                        .map(row -> row.get(0))
                                        .toList()
                                        .containsAll(answers),
                "archives", archives.stream().map(set.course()::shown).toList(),
                "chosen", chosen.map(set.course()::shown).orElse(""),
                "duePlace", week.isPresent() ? WeeksPlace.PLACE : "set",
                "dueLabel", week.isPresent() ? say("desk.place.weeks") : say("desk.place.set"),
                "version", decisions.version(),
                "canUndo", set.course().canUndo(CourseFolder.DECISIONS),
                "receivedVersion", set.course().read(CourseFolder.RECEIVED).version(),
                "hasReceived", set.course().isThere(CourseFolder.RECEIVED),
                "dueWritten", dueWritten(week),
                "due", due(week).map(LocalDateTime::toString).orElse(""),
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "isMarked", table("marks.csv").isPresent(),
                "withoutNames", withoutNames,
                "open", open,
                "undecided",
                        open.stream()
                                .filter(one -> one.get("decided").equals(""))
                                .count(),
                "marks", rows("marks.csv", List.of("seat", "name", "marks", "of", "status")),
                "files", became,
                "changes", rows("changes.csv", List.of("seat", "name", "before", "now")),
                "tables", tables(),
                "feedback", set.course().names(files.marks().resolve("feedback")),
                "work", GiveOutPlace.shown(work.standing("take-in")));
        return frame.page(Reply.FINE, call, "take-in", "take-in", values);
    }

    private List<Map<String, Object>> tables() {
        List<Map<String, Object>> tables = new ArrayList<>();
        for (String name : set.course().names(set.course().files().marks())) {
            if (!name.endsWith(".html")) {
                tables.add(Pages.values("path", "/made/marks/" + name, "name", name));
            }
        }
        return tables;
    }

    private Optional<String> table(String name) {
        return set.course()
                .made(List.of("marks", name))
                .map(file -> new String(set.course().bytes(file), StandardCharsets.UTF_8));
    }

    /** Some columns of a table that marking wrote. */
    private List<List<String>> rows(String name, List<String> columns) {
        List<List<String>> shown = new ArrayList<>();
        List<CellRows.Row> rows = table(name).map(TakeInPlace::read).orElse(List.of());
        for (int i = 1; i < rows.size() && i <= MOST_SHOWN; i++) {
            CellRows.Row row = rows.get(i);
            List<String> head = rows.get(0).names();
            shown.add(columns.stream()
                    .map(column -> head.indexOf(column))
                    .map(at -> at < 0 || at >= row.size() ? "" : SafeCsv.read(row.get(at)))
                    .toList());
        }
        return shown;
    }

    private static List<CellRows.Row> read(String table) {
        try {
            return CellRows.read(table, ',', 1);
        } catch (CellRows.Uneven broken) {
            return List.of(); // somebody else wrote it; marking again mends it
        }
    }

    private List<Map<String, Object>> open(String decisions) {
        List<DecisionList.Open> open =
                table("decide.csv").map(DecisionList::open).orElse(List.of());
        DecisionList.Decided decided = DecisionList.decided(decisions);
        return open.stream()
                .limit(MOST_SHOWN)
                .map(one -> Pages.values(
                        "asked", one.cell("asked"),
                        "right", one.cell("right_answer"),
                        "decided", decided.of(one).orElse(""),
                        "like", alike(open, one, decided).size() - 1,
                        "key", Course.version(one.key()),
                        "seat", one.cell("seat"),
                        "name", one.cell("name"),
                        "question", one.cell("question"),
                        "answer", one.cell("answer"),
                        "file", one.cell("file"),
                        "words", one.words(),
                        "why", one.cell("why"),
                        "meanings", one.cell("may_mean")))
                .toList();
    }

    /** The line itself and the others that are still open and can be decided with it. */
    private static List<DecisionList.Open> alike(
            List<DecisionList.Open> open, DecisionList.Open one, DecisionList.Decided decided) {
        return open.stream()
                .filter(other ->
                        other == one || other.isLike(one) && decided.of(other).isEmpty())
                .toList();
    }

    /** The archive by which is marked: the one named, or the last in the list. */
    private Optional<Path> chosen(String named) {
        List<Path> archives = set.course().archives();
        return archives.stream()
                .filter(one -> set.course().shown(one).equals(named))
                .findFirst()
                .or(() -> current(archives))
                .or(() -> archives.isEmpty() ? Optional.empty() : Optional.of(archives.get(archives.size() - 1)));
    }

    /** The archive of the plan as it is now, if it was given out. */
    private Optional<Path> current(List<Path> archives) {
        if (archives.size() < 2) {
            return Optional.empty();
        }
        try {
            String ending = IssuedArchive.fileName(set.set());
            return archives.stream()
                    .filter(one -> one.getFileName().toString().endsWith(ending))
                    .findFirst();
        } catch (DiagnosticException unfit) {
            return Optional.empty();
        }
    }

    /** The week whose sheets an archive keeps; empty for those of the plan. */
    private OptionalInt week(Optional<Path> archive) {
        return archive.map(one -> set.course().weekOf(one)).orElse(OptionalInt.empty());
    }

    /** What plan or week say of it, in whatever words; empty while there is none that can be read. */
    private String dueWritten(OptionalInt week) {
        try {
            if (week.isPresent()) {
                return weeks.due(week.getAsInt());
            }
            return set.course().isThere(CourseFolder.PLAN)
                    ? set.plan().heading().due()
                    : "";
        } catch (DiagnosticException broken) {
            return ""; // the place of the set or of the weeks tells
        }
    }

    /** The same as a time, where it is one: nothing is guessed of other words. */
    private Optional<LocalDateTime> due(OptionalInt week) {
        return ReceivedList.time(dueWritten(week));
    }

    /** A list of when files came in; what it says is looked at when they are marked. */
    Reply times(Call call) {
        if (call.uploads().isEmpty()) {
            return frame.goOn("/take-in", List.of(say("desk.file.unchosen")));
        }
        try {
            String list = CellRows.Lines.of(Received.table(call.uploads().get(0).bytes()))
                    .text();
            set.course().write(CourseFolder.RECEIVED, list, call.form().text("seen"));
            return frame.goOn("/take-in", List.of(say("desk.times.kept")));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.times.unfit"), unfit);
        } catch (Course.Stale stale) {
            return frame.stale(call, "take-in", stale, "");
        }
    }

    /** Puts what was sent among the answers. */
    Reply receive(Call call) {
        try {
            return frame.goOn("/take-in", received.keep(call.uploads()));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.received.unfit"), unfit);
        }
    }

    Reply mark(Call call) {
        try {
            CourseFolder files = set.course().files();
            for (Path folder :
                    List.of(files.made(), files.marks(), files.marks().resolve("feedback"), files.answers())) {
                set.course().requireFolder(folder);
            }
            Roster roster = set.roster()
                    .orElseThrow(
                            () -> unfit(CourseFolder.CLASS, say("desk.class.missing"), say("desk.class.missing.next")));
            Path archive = chosen(call.form().text("archive"))
                    .orElseThrow(() -> unfit(CourseFolder.MADE, say("desk.mark.sheets"), say("desk.mark.sheets.next")));
            if (!set.course().isFolder(files.answers())) {
                throw unfit(CourseFolder.ANSWERS, say("desk.mark.answers"), say("desk.mark.answers.next"));
            }
            boolean pseudonyms = call.form().has("pseudonyms");
            return frame.begun(
                    work.begin(
                            say("desk.make.marks"),
                            "take-in",
                            progress -> marked(roster, archive, pseudonyms, progress)),
                    "/take-in");
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.mark.unfit"), unfit);
        }
    }

    private static DiagnosticException unfit(String file, String problem, String next) {
        return new DiagnosticException(Diagnostic.error(Place.inFile(file), problem, "", next));
    }

    private List<String> marked(Roster roster, Path archive, boolean pseudonyms, Progress progress) {
        CourseFolder files = set.course().files();
        Optional<String> before = table("marks.csv");
        before.ifPresent(marks -> keepBefore(files.marksBefore(), marks));
        Course.Kept decisions = set.course().read(CourseFolder.DECISIONS);
        Course.Kept received = set.course().read(CourseFolder.RECEIVED);
        OptionalInt week = set.course().weekOf(archive);
        Optional<LocalDateTime> due = due(week);
        Marking.Task task = new Marking.Task(
                files.answers(),
                new ArchivedSheets(ArchivedClass.read(archive), set.library()),
                Optional.of(Corrections.orElseAsIssued(set.library())),
                roster,
                received.isThere()
                        ? Optional.of(new Marking.NamedText(CourseFolder.RECEIVED, received.text()))
                        : Optional.empty(),
                received.isThere() ? due : Optional.empty(),
                before.map(marks -> EarlierMarks.read(set.course().shown(files.marksBefore()), marks)),
                decisions.isThere()
                        ? Optional.of(new Marking.NamedText(CourseFolder.DECISIONS, decisions.text()))
                        : Optional.empty(),
                pseudonyms);
        MarkedFolder.Written written = MarkedFolder.write(
                task,
                files.marks(),
                List.of(MarkForms.XLSX, MarkForms.SEMICOLONS),
                new Output.Terms(
                                List.of(files.roster(), files.decisions(), files.received(), archive),
                                false,
                                false,
                                place -> {})
                        .watchedBy(progress));
        Marking.Marked marked = written.marked();
        List<String> told = new ArrayList<>();
        told.add(came(marked));
        if (received.isThere()) {
            String place = week.isPresent() ? say("desk.place.weeks") : say("desk.place.set");
            told.add(
                    due.isPresent()
                            ? count("desk.marked.late", marked.late())
                            : say("desk.marked.late.unknown", "place", place));
        }
        if (marked.toDecide() > 0) {
            told.add(count("desk.marked.decide", marked.toDecide()));
        }
        if (before.isPresent()) {
            told.add(marked.changed() == 0 ? say("desk.marked.same") : count("desk.marked.changed", marked.changed()));
        }
        marked.notes().stream()
                .limit(MOST_NOTES)
                .forEach(note ->
                        told.add(say("desk.marked.note", "place", note.place().toString(), "problem", note.problem())));
        return told;
    }

    private static String came(Marking.Marked marked) {
        String answers = count("desk.marked.answers", marked.answers());
        String files = count("desk.marked.files", marked.files());
        String learners = count("desk.marked.learners", marked.learners());
        return marked.absent() == 0
                ? say("desk.marked", "answers", answers, "files", files, "learners", learners)
                : count(
                        "desk.marked.absent",
                        marked.absent(),
                        "answers",
                        answers,
                        "files",
                        files,
                        "learners",
                        learners);
    }

    private static void keepBefore(Path file, String marks) {
        try (Output output = Output.file(file, ".csv", Output.Terms.NONE)) {
            output.write(file, marks);
            output.finish();
        }
    }

    /** Adds a line to the list of decisions; it holds from the next time that is marked. */
    Reply decide(Call call) {
        Form form = call.form();
        List<DecisionList.Open> open =
                table("decide.csv").map(DecisionList::open).orElse(List.of());
        Optional<DecisionList.Open> on = open.stream()
                .filter(one -> Course.version(one.key()).equals(form.text("key")))
                .findFirst();
        if (on.isEmpty()) {
            return frame.goOn("/take-in", List.of(say("desk.decide.gone")));
        }
        Course.Kept now = set.course().read(CourseFolder.DECISIONS);
        try {
            List<DecisionList.Open> meant =
                    form.has("alike") ? alike(open, on.get(), DecisionList.decided(now.text())) : List.of(on.get());
            String list = now.text();
            for (DecisionList.Open one : meant) {
                list = DecisionList.with(
                        CourseFolder.DECISIONS,
                        list,
                        one,
                        form.text("decision"),
                        form.text("value"),
                        form.text("reason"));
            }
            try {
                set.course().write(CourseFolder.DECISIONS, list, form.text("seen"));
            } catch (Course.Stale stale) {
                return frame.stale(call, "take-in", stale, list);
            }
            return frame.goOn(
                    "/take-in",
                    List.of(
                            meant.size() == 1
                                    ? say("desk.decided")
                                    : say("desk.decided.alike", "learners", Integer.toString(meant.size()))));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.decide.unfit"), unfit);
        }
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.DECISIONS), "/take-in", CourseFolder.DECISIONS);
    }
}
