package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.marking.MarkedSheet.MarkedAnswer;
import ampersheet.marking.MarkedSheet.MarkedProblem;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import ampersheet.source.SafeCsv;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** The tables that marking writes, for spreadsheets. */
final class MarkTables {
    /** All but seat and name, status and percent. */
    private static final int COUNTS = OwnFile.MARKS.head().size() - 4;

    private final Privacy privacy;
    private final MarkingPolicy policy;
    private final Language language;
    private final SafeCsv marks;
    private final SafeCsv send;
    private final SafeCsv answers = new SafeCsv(OwnFile.ANSWERS.head());

    MarkTables(Roster roster, Plan plan, Privacy privacy) {
        this.privacy = privacy;
        this.policy = plan.marking();
        this.language = plan.language();
        List<String> head = new ArrayList<>(OwnFile.MARKS.head());
        if (!policy.grades().isEmpty()) {
            head.add("grade");
        }
        this.marks = new SafeCsv(withColumnsOf(roster, head));
        this.send = new SafeCsv(withColumnsOf(roster, OwnFile.SEND.head()));
    }

    private List<String> withColumnsOf(Roster roster, List<String> ours) {
        List<String> head = new ArrayList<>(ours);
        if (!privacy.isOn()) {
            roster.columns().forEach(column -> head.add(apart(column, head)));
        }
        return head;
    }

    /** A column of the class list that is called as one of ours gets a name of its own. */
    private static String apart(String column, List<String> taken) {
        String name = column;
        while (taken.stream().anyMatch(name::equalsIgnoreCase)) {
            name += " (class list)";
        }
        return name;
    }

    void add(MarkedSheet marked) {
        Standing standing = marked.standing();
        List<String> row = new ArrayList<>(seat(marked.seat()));
        row.addAll(List.of(
                standing.sheet().toString(), Amounts.marks(standing.marks()), Amounts.marks(standing.mostMarks())));
        for (Credit credit :
                List.of(Credit.RIGHT, Credit.CARRIED, Credit.HALF, Credit.WRONG, Credit.UNREADABLE, Credit.BLANK)) {
            row.add(Long.toString(standing.count(credit)));
        }
        row.add(Long.toString(standing.late()));
        row.add(Long.toString(standing.count(Credit.UNDECIDED)));
        row.add(Amounts.marks(standing.marksInTime()));
        row.add(Status.of(standing).word());
        row.add(MarkingPolicy.tenths(standing.percent()));
        policy.grade(standing.percent()).ifPresent(row::add);
        marks.row(withFurther(row, marked.seat()));
        List<String> page = new ArrayList<>(List.of(Marking.feedback(marked.seat())));
        page.addAll(seat(marked.seat()));
        send.row(withFurther(page, marked.seat()));
        for (MarkedProblem problem : marked.problems()) {
            problem.answers().forEach(answer -> add(marked, problem, answer));
        }
    }

    /** Nothing from this seat could be marked. */
    void addAbsent(Roster.Seat seat, Status status) {
        List<String> row = new ArrayList<>(seat(seat));
        row.addAll(Collections.nCopies(COUNTS, ""));
        row.addAll(List.of(status.word(), ""));
        if (!policy.grades().isEmpty()) {
            row.add("");
        }
        marks.row(withFurther(row, seat));
    }

    private List<String> withFurther(List<String> row, Roster.Seat seat) {
        if (!privacy.isOn()) {
            row.addAll(seat.further());
        }
        return row;
    }

    private List<String> seat(Roster.Seat seat) {
        return List.of(Integer.toString(seat.number()), privacy.name(seat));
    }

    private void add(MarkedSheet marked, MarkedProblem problem, MarkedAnswer answer) {
        boolean undecided = answer.credit() == Credit.UNDECIDED;
        answers.row(List.of(
                Integer.toString(marked.seat().number()),
                marked.standing().sheet().toString(),
                answer.key().question(),
                problem.problem().template().name(),
                answer.key().step(),
                privacy.typed(answer.verdict()),
                answer.verdict().understood(),
                undecided
                        ? "undecided"
                        : answer.verdict()
                                .rung()
                                .name()
                                .toLowerCase(Locale.ROOT)
                                .replace('_', '-'),
                answer.cause().map(Cause::id).orElse(""),
                answer.counts() ? Amounts.marks(answer.earned().marks()) : "",
                answer.isLate() ? "late" : "",
                answer.from().map(from -> from.file().shown()).orElse(""),
                answer.from().map(from -> Integer.toString(from.line())).orElse(""),
                answer.decided()
                        .map(decision -> decision.told(language) + ": " + privacy.text(decision.reason()))
                        .orElse("")));
    }

    /**
     * Those columns that hold a decision are left for the instructor.
     *
     * @param code with which the IDs of the sheets begin that are marked
     */
    static String decide(List<ToDecide> open, String code, Seats seats, Privacy privacy, Language language) {
        SafeCsv table = new SafeCsv(OwnFile.DECIDE.head());
        for (ToDecide one : open) {
            table.row(List.of(
                    one.seat() == 0 ? "" : Integer.toString(one.seat()),
                    seats.seat(one.seat()).map(privacy::name).orElse(""),
                    privacy.text(one.sheet()),
                    privacy.text(one.question()),
                    privacy.text(one.typed()),
                    one.file(),
                    one.line() == 0 ? "" : Integer.toString(one.line()),
                    language.say(one.why()),
                    one.meaningsIn(language),
                    one.asked().template(),
                    one.asked().step(),
                    one.asked().words(),
                    one.asked().right(),
                    // the ID of a hand-in is what stands in it, and may be anybody's
                    one.question().isEmpty() ? IssuedArchive.issue(code) : "",
                    "",
                    "",
                    ""));
        }
        return table.toString();
    }

    /** Which page goes to whom. */
    String send() {
        return send.toString();
    }

    String marks() {
        return marks.toString();
    }

    String answers() {
        return answers.toString();
    }

    static String files(List<FileNote> files, Language language) {
        SafeCsv table = new SafeCsv(OwnFile.FILES.head());
        for (FileNote file : files) {
            table.row(List.of(
                    file.shown(),
                    file.received(),
                    file.isLate() ? "late" : "",
                    Integer.toString(file.marked()),
                    file.fate(language),
                    String.join(" | ", file.told(language))));
        }
        return table.toString();
    }

    static String setAside(List<SetAside> answers, Privacy privacy, Language language) {
        SafeCsv table = new SafeCsv(OwnFile.SET_ASIDE.head());
        for (SetAside one : answers) {
            table.row(List.of(
                    one.answer().place().file(),
                    Integer.toString(one.answer().place().line()),
                    privacy.text(one.answer().sheet()),
                    privacy.text(one.answer().question()),
                    privacy.text(one.answer().text()),
                    language.say(one.why())));
        }
        return table.toString();
    }

    /** The only file with names, when pseudonyms are wished: who sits where, and who sent which file. */
    static String names(Roster roster, List<FileNote> files) {
        SafeCsv table = new SafeCsv(OwnFile.NAMES.head());
        roster.seats().forEach(seat -> table.row(List.of("seat", Integer.toString(seat.number()), seat.name())));
        files.forEach(file -> table.row(List.of("file", Integer.toString(file.number()), file.name())));
        return table.toString();
    }
}
