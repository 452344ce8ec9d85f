package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Printable;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.MarkedFolder;
import ampersheet.issue.Output;
import ampersheet.issue.Progress;
import ampersheet.marking.Corrections;
import ampersheet.marking.DecisionList;
import ampersheet.marking.EarlierMarks;
import ampersheet.marking.MarkForms;
import ampersheet.marking.Marking;
import ampersheet.marking.OtherSheets;
import ampersheet.marking.ReceivedList;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheets;
import ampersheet.sheet.Roster;
import ampersheet.source.CellRows;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** What came back, and what became of it. */
final class TakeInPlace {
    private static final int MOST_NOTES = 20;
    private static final String HERE = "/take-in";
    /** Of a form or an address that says which sheets are meant. */
    private static final String ARCHIVE = "archive";

    private final CourseSet set;
    private final CourseWeeks weeks;
    private final Frame frame;
    private final Work work;
    private final Received received;
    private final GivenOut given;

    TakeInPlace(CourseSet set, CourseWeeks weeks, GivenOut given, Frame frame, Work work) {
        this.set = set;
        this.weeks = weeks;
        this.frame = frame;
        this.work = work;
        this.given = given;
        this.received = new Received(set.course());
    }

    /**
     * The sheets at hand, of which the place tells.
     *
     * @param marks what was made of the answers to them
     */
    private record Hand(List<GivenOut.Sheets> all, Optional<GivenOut.Sheets> chosen, Marks marks) {
        OptionalInt week() {
            return chosen.map(GivenOut.Sheets::week).orElse(OptionalInt.empty());
        }

        GivenOut.Others others() {
            return GivenOut.Others.than(all, chosen);
        }

        /** Whether the class has other sheets as well, so that a decision has to tell on which it is. */
        boolean amongOthers() {
            return week().isPresent() || !others().all().isEmpty();
        }

        /** The same for marking. */
        OtherSheets known() {
            return OtherSheets.among(
                    all.stream()
                            .map(one -> new OtherSheets.Given(one.week().toString(), one.set()))
                            .toList(),
                    chosen.map(GivenOut.Sheets::set).orElse(""));
        }

        DecisionList.Decided decided(String list) {
            return DecisionList.decided(
                    list, amongOthers() ? chosen.map(GivenOut.Sheets::set).orElse("") : "");
        }

        /** What only the instructor can decide, each with the sheets it is about. */
        List<DecisionList.Open> open() {
            return marks.open(others()).stream()
                    .map(one -> chosen.map(sheets -> one.of(sheets.set())).orElse(one))
                    .toList();
        }
    }

    /**
     * By when the sheets at hand are to come back.
     *
     * @param written in whatever words; empty if nothing is said, or by nobody who can be read
     * @param kept as the sheets were given out; else as is said now where they are made
     */
    private record Due(String written, boolean kept) {
        /** Where it is one: nothing is guessed of other words. */
        Optional<LocalDateTime> time() {
            return ReceivedList.time(written);
        }
    }

    private Hand hand(String named) {
        List<GivenOut.Sheets> all = given.all();
        Optional<GivenOut.Sheets> chosen = given.named(all, named).or(() -> given.usual(all));
        return new Hand(
                all,
                chosen,
                chosen.map(sheets -> Marks.of(set.course(), sheets, all))
                        .orElseGet(() -> new Marks(
                                set.course(), set.course().files().ofPlan().marked())));
    }

    /**
     * The same for a form, which means the sheets that it names and no others.
     *
     * @throws DiagnosticException if they are not there any more
     */
    private Hand hand(Form form) {
        String named = form.text(ARCHIVE);
        Hand hand = hand(named);
        if (!named.isEmpty() && given.named(hand.all(), named).isEmpty()) {
            throw unfit(named, say("desk.sheets.gone"), say("desk.sheets.gone.next"));
        }
        return hand;
    }

    Reply show(Call call) {
        CourseFolder files = set.course().files();
        Hand hand = hand(call.query().text(ARCHIVE));
        Due due = due(hand);
        Course.Kept decisions = set.course().read(CourseFolder.DECISIONS);
        List<String> answers = set.course().names(files.answers());
        List<DecisionList.Open> open = hand.open();
        DecisionList.Decided decided = hand.decided(decisions.text());
        Map<String, Object> values = Pages.values(
                "answers", answers,
                "archives", hand.all().stream().map(GivenOut.Sheets::values).toList(),
                "chosen", hand.chosen().map(GivenOut.Sheets::shown).orElse(""),
                "chosenTold", hand.chosen().map(GivenOut.Sheets::told).orElse(""),
                "duePlace", hand.week().isPresent() ? WeeksPlace.PLACE : "set",
                "dueLabel", hand.week().isPresent() ? say("desk.place.weeks") : say("desk.place.set"),
                "version", decisions.version(),
                "canUndo", set.course().canUndo(CourseFolder.DECISIONS),
                "hasDecisions", decisions.isThere(),
                "receivedVersion", set.course().read(CourseFolder.RECEIVED).version(),
                "hasReceived", set.course().isThere(CourseFolder.RECEIVED),
                "dueWritten", due.written(),
                "dueKept", due.kept(),
                "due", due.time().map(LocalDateTime::toString).orElse(""),
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "open", hand.marks().shown(open, decided),
                "undecided",
                        open.stream().filter(one -> decided.of(one).isEmpty()).count(),
                "work", GiveOutPlace.shown(work.standing("take-in")));
        values.putAll(marked(hand, answers));
        return frame.page(Reply.FINE, call, "take-in", "take-in", values);
    }

    /** What became of the answers. */
    private Map<String, Object> marked(Hand hand, List<String> answers) {
        Marks marks = hand.marks();
        List<List<String>> became = marks.rows(
                "files.csv", List.of("file", "received", "late", "answers_marked", "what_became_of_it", "notes"));
        boolean withoutNames = marks.table("names.csv").isPresent();
        Set<String> known = marks.files();
        List<String> unknown = answers.stream()
                .filter(name -> !known.contains(Printable.line(name)))
                .toList();
        return Pages.values(
                "isMarked", marks.areThere(),
                "newer",
                        !withoutNames
                                && !given.notElsewhere(unknown, hand.others()).isEmpty(),
                "withoutNames", withoutNames,
                "elsewhere", elsewhere(hand),
                "lies",
                        set.course()
                                .shown(hand.chosen()
                                        .map(sheets -> Marks.to(set.course(), sheets, hand.all()))
                                        .orElse(marks)
                                        .folder()),
                "marksAt", marks.address(),
                "marks", marks.rows("marks.csv", List.of("seat", "name", "marks", "of", "status")),
                "files", became,
                "changes", marks.rows("changes.csv", List.of("seat", "name", "before", "now")),
                "tables", marks.tables(),
                "feedback", marks.feedback());
    }

    /** Answers to sheets of other archives, with where they are marked. */
    private static List<Map<String, Object>> elsewhere(Hand hand) {
        List<Map<String, Object>> told = new ArrayList<>();
        hand.marks().answersElsewhere(hand.others()).forEach((code, answers) -> {
            GivenOut.Sheets there = hand.others().called(code).orElseThrow();
            told.add(Pages.values(
                    "told", count("desk.elsewhere", answers, "sheets", there.told()), "archive", there.shown()));
        });
        return told;
    }

    /** Keeps in mind by which sheets what came in is looked at. */
    Reply choose(Call call) {
        try {
            hand(call.form()).chosen().ifPresent(given::pick);
            return Reply.to(HERE);
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.choose.unfit"), unfit);
        }
    }

    /** Whether plan or week would make the sheets at hand now, so that what is said there now is said of them. */
    private boolean isOfNow(GivenOut.Sheets sheets) {
        try {
            if (sheets.week().isEmpty()) {
                return set.course().isThere(CourseFolder.PLAN)
                        && sheets.set().equals(set.known().id(1).set());
            }
            int week = sheets.week().getAsInt();
            return weeks.isThere()
                    && week <= weeks.timetable().size()
                    && sheets.set().equals(weeks.code(week));
        } catch (DiagnosticException broken) {
            return false; // the place of the set or of the weeks tells
        }
    }

    private Due due(Hand hand) {
        if (!hand.chosen().map(this::isOfNow).orElse(true)) {
            return new Due(hand.chosen().orElseThrow().due(), true);
        }
        try {
            if (hand.week().isPresent()) {
                return new Due(weeks.due(hand.week().getAsInt()), false);
            }
            boolean isPlanThere = set.course().isThere(CourseFolder.PLAN);
            return new Due(isPlanThere ? set.plan().heading().due() : "", false);
        } catch (DiagnosticException broken) {
            return new Due("", false); // the place of the set or of the weeks tells
        }
    }

    /** A list of when files came in; what it says is looked at when they are marked. */
    Reply times(Call call) {
        if (call.uploads().isEmpty()) {
            return frame.goOn(HERE, List.of(say("desk.file.unchosen")));
        }
        try {
            String list = CellRows.Lines.of(Received.table(call.uploads().get(0).bytes()))
                    .text();
            set.course().write(CourseFolder.RECEIVED, list, call.form().text("seen"));
            return frame.goOn(HERE, List.of(say("desk.times.kept")));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.times.unfit"), unfit);
        } catch (Course.Stale stale) {
            return frame.stale(call, "take-in", stale, "");
        }
    }

    /** Puts what was sent among the answers. */
    Reply receive(Call call) {
        try {
            return frame.goOn(HERE, received.keep(call.uploads()));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.received.unfit"), unfit);
        }
    }

    Reply mark(Call call) {
        try {
            CourseFolder files = set.course().files();
            Hand hand = hand(call.form());
            Roster roster = set.roster()
                    .orElseThrow(
                            () -> unfit(CourseFolder.CLASS, say("desk.class.missing"), say("desk.class.missing.next")));
            GivenOut.Sheets sheets = hand.chosen()
                    .orElseThrow(() -> unfit(CourseFolder.MADE, say("desk.mark.sheets"), say("desk.mark.sheets.next")));
            if (!set.course().isFolder(files.answers())) {
                throw unfit(CourseFolder.ANSWERS, say("desk.mark.answers"), say("desk.mark.answers.next"));
            }
            marksTo(hand);
            given.pick(sheets);
            boolean pseudonyms = call.form().has("pseudonyms");
            return frame.begun(
                    work.begin(
                            say("desk.make.marks", "sheets", sheets.told()),
                            "take-in",
                            progress -> marked(hand, roster, pseudonyms, progress)),
                    HERE);
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.mark.unfit"), unfit);
        }
    }

    /**
     * Where marks are written to.
     *
     * @throws DiagnosticException if something else lies in the way
     */
    private Marks marksTo(Hand hand) {
        CourseFolder files = set.course().files();
        Marks marks = Marks.to(set.course(), hand.chosen().orElseThrow(), hand.all());
        Path place = marks.folder().getParent();
        for (Path folder : List.of(files.made(), place, marks.folder(), marks.feedbackFolder(), files.answers())) {
            set.course().requireFolder(folder);
        }
        return marks;
    }

    private static DiagnosticException unfit(String file, String problem, String next) {
        return new DiagnosticException(Diagnostic.error(Place.inFile(file), problem, "", next));
    }

    private List<String> marked(Hand hand, Roster roster, boolean pseudonyms, Progress progress) {
        CourseFolder files = set.course().files();
        GivenOut.Sheets sheets = hand.chosen().orElseThrow();
        Path archive = sheets.archive();
        Marks marks = marksTo(hand); // what was marked since it was asked for may lie there now
        Path marksBefore = marks.at().before();
        Optional<String> before = Marks.of(set.course(), sheets, hand.all()).table("marks.csv");
        before.ifPresent(written -> keepBefore(marksBefore, written));
        Course.Kept decisions = set.course().read(CourseFolder.DECISIONS);
        Course.Kept received = set.course().read(CourseFolder.RECEIVED);
        Optional<LocalDateTime> due = due(hand).time();
        Marking.Task task = new Marking.Task(
                files.answers(),
                new ArchivedSheets(ArchivedClass.read(archive), set.library()),
                Optional.of(Corrections.orElseAsIssued(set.library())),
                roster,
                named(CourseFolder.RECEIVED, received),
                received.isThere() ? due : Optional.empty(),
                before.map(written -> EarlierMarks.read(set.course().shown(marksBefore), written)),
                named(CourseFolder.DECISIONS, decisions),
                hand.known(),
                pseudonyms);
        MarkedFolder.Written written = MarkedFolder.write(
                task,
                marks.folder(),
                List.of(MarkForms.XLSX, MarkForms.SEMICOLONS),
                new Output.Terms(
                                List.of(files.roster(), files.decisions(), files.received(), archive),
                                false,
                                false,
                                place -> {})
                        .watchedBy(progress));
        return told(
                new Hand(hand.all(), hand.chosen(), marks), written.marked(), received.isThere(), before.isPresent());
    }

    private static Optional<Marking.NamedText> named(String name, Course.Kept kept) {
        return kept.isThere() ? Optional.of(new Marking.NamedText(name, kept.text())) : Optional.empty();
    }

    private List<String> told(Hand hand, Marking.Marked marked, boolean knowsTimes, boolean again) {
        List<String> told = new ArrayList<>();
        told.add(came(marked));
        if (knowsTimes) {
            String place = hand.week().isPresent() ? say("desk.place.weeks") : say("desk.place.set");
            Due due = due(hand);
            told.add(
                    due.time().isPresent()
                            ? count("desk.marked.late", marked.late())
                            : due.kept()
                                    ? say("desk.marked.late.unknown.kept")
                                    : say("desk.marked.late.unknown", "place", place));
        }
        List<DecisionList.Open> elsewhere = hand.marks().allOpen().stream()
                .filter(one -> Marks.isElsewhere(one, hand.others()))
                .toList();
        if (marked.toDecide() > elsewhere.size()) {
            told.add(count("desk.marked.decide", marked.toDecide() - elsewhere.size()));
        }
        if (again) {
            told.add(marked.changed() == 0 ? say("desk.marked.same") : count("desk.marked.changed", marked.changed()));
        }
        marked.notes().stream()
                .filter(note -> elsewhere.stream().noneMatch(one -> isAt(note.place(), one)))
                .limit(MOST_NOTES)
                .forEach(note ->
                        told.add(say("desk.marked.note", "place", note.place().toString(), "problem", note.problem())));
        return told;
    }

    private static boolean isAt(Place place, DecisionList.Open one) {
        return place.file().equals(one.cell("file"))
                && Integer.toString(place.line()).equals(one.cell("line"));
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
        try {
            Hand hand = hand(call.form());
            hand.chosen().ifPresent(given::pick);
            return decided(call, hand);
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.decide.unfit"), unfit);
        }
    }

    private Reply decided(Call call, Hand hand) {
        Form form = call.form();
        List<DecisionList.Open> open = hand.open();
        Optional<DecisionList.Open> on = open.stream()
                .filter(one -> Course.version(one.key()).equals(form.text("key")))
                .findFirst();
        if (on.isEmpty()) {
            return frame.goOn(HERE, List.of(say("desk.decide.gone")));
        }
        Course.Kept now = set.course().read(CourseFolder.DECISIONS);
        List<DecisionList.Open> meant =
                form.has("alike") ? Marks.alike(open, on.get(), hand.decided(now.text())) : List.of(on.get());
        String list = now.text();
        for (DecisionList.Open one : meant) {
            list = DecisionList.with(
                    CourseFolder.DECISIONS, list, one, form.text("decision"), form.text("value"), form.text("reason"));
        }
        try {
            set.course().write(CourseFolder.DECISIONS, list, form.text("seen"));
        } catch (Course.Stale stale) {
            return frame.stale(call, "take-in", stale, list);
        }
        return frame.goOn(
                HERE,
                List.of(
                        meant.size() == 1
                                ? say("desk.decided")
                                : say("desk.decided.alike", "learners", Integer.toString(meant.size()))));
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.DECISIONS), HERE, CourseFolder.DECISIONS);
    }
}
