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
import ampersheet.sheet.Roster;
import ampersheet.source.CellRows;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

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

    /** The sheets at hand, of which the place tells, with what was made of the answers to them. */
    private record Hand(List<GivenOut.Sheets> all, Optional<GivenOut.Sheets> chosen, Marks marks) {
        OptionalInt week() {
            return chosen.map(GivenOut.Sheets::week).orElse(OptionalInt.empty());
        }

        GivenOut.Others others() {
            return GivenOut.Others.than(all, chosen);
        }
    }

    private Hand hand(String named) {
        List<GivenOut.Sheets> all = given.all();
        Optional<GivenOut.Sheets> chosen = given.named(all, named).or(() -> given.usual(all));
        CourseFolder files = set.course().files();
        OptionalInt week = chosen.map(GivenOut.Sheets::week).orElse(OptionalInt.empty());
        return new Hand(
                all,
                chosen,
                new Marks(set.course(), week.isPresent() ? files.ofWeek(week.getAsInt()) : files.ofPlan()));
    }

    Reply show(Call call) {
        CourseFolder files = set.course().files();
        Hand hand = hand(call.query().text(ARCHIVE));
        Course.Kept decisions = set.course().read(CourseFolder.DECISIONS);
        List<String> answers = set.course().names(files.answers());
        List<DecisionList.Open> open = hand.marks().open(hand.others());
        DecisionList.Decided decided = DecisionList.decided(decisions.text());
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
                "dueWritten", dueWritten(hand.week()),
                "due", due(hand.week()).map(LocalDateTime::toString).orElse(""),
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "open", hand.marks().shown(open, decisions.text()),
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
        List<String> known = became.stream().map(row -> row.get(0)).toList();
        return Pages.values(
                "isMarked", marks.areThere(),
                "newer", !withoutNames && !known.containsAll(answers),
                "withoutNames", withoutNames,
                "elsewhere", elsewhere(hand),
                "lies", set.course().shown(marks.folder()),
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
        hand(call.form().text(ARCHIVE)).chosen().ifPresent(given::pick);
        return Reply.to(HERE);
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
            Hand hand = hand(call.form().text(ARCHIVE));
            Marks marks = hand.marks();
            for (Path folder : List.of(
                    files.made(), marks.made().folder(), marks.folder(), marks.feedbackFolder(), files.answers())) {
                set.course().requireFolder(folder);
            }
            Roster roster = set.roster()
                    .orElseThrow(
                            () -> unfit(CourseFolder.CLASS, say("desk.class.missing"), say("desk.class.missing.next")));
            GivenOut.Sheets sheets = hand.chosen()
                    .orElseThrow(() -> unfit(CourseFolder.MADE, say("desk.mark.sheets"), say("desk.mark.sheets.next")));
            if (!set.course().isFolder(files.answers())) {
                throw unfit(CourseFolder.ANSWERS, say("desk.mark.answers"), say("desk.mark.answers.next"));
            }
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

    private static DiagnosticException unfit(String file, String problem, String next) {
        return new DiagnosticException(Diagnostic.error(Place.inFile(file), problem, "", next));
    }

    private List<String> marked(Hand hand, Roster roster, boolean pseudonyms, Progress progress) {
        CourseFolder files = set.course().files();
        Marks marks = hand.marks();
        Path archive = hand.chosen().orElseThrow().archive();
        Path marksBefore = marks.made().marksBefore();
        Optional<String> before = marks.table("marks.csv");
        before.ifPresent(written -> keepBefore(marksBefore, written));
        Course.Kept decisions = set.course().read(CourseFolder.DECISIONS);
        Course.Kept received = set.course().read(CourseFolder.RECEIVED);
        Optional<LocalDateTime> due = due(hand.week());
        Marking.Task task = new Marking.Task(
                files.answers(),
                new ArchivedSheets(ArchivedClass.read(archive), set.library()),
                Optional.of(Corrections.orElseAsIssued(set.library())),
                roster,
                named(CourseFolder.RECEIVED, received),
                received.isThere() ? due : Optional.empty(),
                before.map(written -> EarlierMarks.read(set.course().shown(marksBefore), written)),
                named(CourseFolder.DECISIONS, decisions),
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
        return told(hand, written.marked(), received.isThere(), before.isPresent());
    }

    private static Optional<Marking.NamedText> named(String name, Course.Kept kept) {
        return kept.isThere() ? Optional.of(new Marking.NamedText(name, kept.text())) : Optional.empty();
    }

    private List<String> told(Hand hand, Marking.Marked marked, boolean knowsTimes, boolean again) {
        List<String> told = new ArrayList<>();
        told.add(came(marked));
        if (knowsTimes) {
            String place = hand.week().isPresent() ? say("desk.place.weeks") : say("desk.place.set");
            told.add(
                    due(hand.week()).isPresent()
                            ? count("desk.marked.late", marked.late())
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
        Form form = call.form();
        Hand hand = hand(form.text(ARCHIVE));
        hand.chosen().ifPresent(given::pick);
        List<DecisionList.Open> open = hand.marks().open(hand.others());
        Optional<DecisionList.Open> on = open.stream()
                .filter(one -> Course.version(one.key()).equals(form.text("key")))
                .findFirst();
        if (on.isEmpty()) {
            return frame.goOn(HERE, List.of(say("desk.decide.gone")));
        }
        Course.Kept now = set.course().read(CourseFolder.DECISIONS);
        try {
            List<DecisionList.Open> meant = form.has("alike")
                    ? Marks.alike(open, on.get(), DecisionList.decided(now.text()))
                    : List.of(on.get());
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
                    HERE,
                    List.of(
                            meant.size() == 1
                                    ? say("desk.decided")
                                    : say("desk.decided.alike", "learners", Integer.toString(meant.size()))));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "take-in", say("desk.decide.unfit"), unfit);
        }
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.DECISIONS), HERE, CourseFolder.DECISIONS);
    }
}
