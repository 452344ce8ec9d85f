package ampersheet.marking;

import ampersheet.marking.MarkedSheet.MarkedAnswer;
import ampersheet.marking.MarkedSheet.MarkedProblem;
import ampersheet.sheet.Roster;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The tables that marking writes, for spreadsheets. */
final class MarkTables {
    private final Privacy privacy;
    private final SafeCsv marks = new SafeCsv(OwnFile.MARKS);
    private final SafeCsv answers = new SafeCsv(OwnFile.ANSWERS);

    MarkTables(Privacy privacy) {
        this.privacy = privacy;
    }

    void add(MarkedSheet marked) {
        Standing standing = marked.standing();
        List<String> row = new ArrayList<>(seat(marked.seat()));
        row.addAll(List.of(
                standing.sheet().toString(), Amounts.marks(standing.halves()), Amounts.marks(standing.mostHalves())));
        for (Credit credit :
                List.of(Credit.RIGHT, Credit.CARRIED, Credit.HALF, Credit.WRONG, Credit.UNREADABLE, Credit.BLANK)) {
            row.add(Long.toString(standing.count(credit)));
        }
        row.add(Long.toString(standing.late()));
        marks.row(row);
        for (MarkedProblem problem : marked.problems()) {
            problem.answers().forEach(answer -> add(marked, problem, answer));
        }
    }

    /** Nothing came in from this seat. */
    void addAbsent(Roster.Seat seat) {
        List<String> row = new ArrayList<>(seat(seat));
        row.addAll(List.of("", "", "", "", "", "", "", "", "", ""));
        marks.row(row);
    }

    private List<String> seat(Roster.Seat seat) {
        return List.of(Integer.toString(seat.number()), privacy.name(seat));
    }

    private void add(MarkedSheet marked, MarkedProblem problem, MarkedAnswer answer) {
        answers.row(List.of(
                Integer.toString(marked.seat().number()),
                marked.standing().sheet().toString(),
                answer.key().question(),
                problem.problem().template().name(),
                answer.key().step(),
                privacy.typed(answer.verdict()),
                answer.verdict().understood(),
                answer.verdict().rung().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                answer.cause().map(Cause::id).orElse(""),
                Amounts.marks(answer.credit().halves()),
                answer.isLate() ? "late" : "",
                answer.from().map(from -> from.file().shown()).orElse(""),
                answer.from().map(from -> Integer.toString(from.line())).orElse("")));
    }

    String marks() {
        return marks.toString();
    }

    String answers() {
        return answers.toString();
    }

    static String files(List<FileNote> files) {
        SafeCsv table = new SafeCsv(OwnFile.FILES);
        for (FileNote file : files) {
            table.row(List.of(
                    file.shown(),
                    file.received(),
                    file.isLate() ? "late" : "",
                    Integer.toString(file.marked()),
                    file.fate(),
                    String.join(
                            " | ",
                            file.notes().stream()
                                    .map(note -> (note.place().line() == 0
                                                    ? ""
                                                    : "line " + note.place().line() + ": ")
                                            + note.problem())
                                    .toList())));
        }
        return table.toString();
    }

    static String setAside(List<SetAside> answers, Privacy privacy) {
        SafeCsv table = new SafeCsv(OwnFile.SET_ASIDE);
        for (SetAside one : answers) {
            table.row(List.of(
                    one.answer().place().file(),
                    Integer.toString(one.answer().place().line()),
                    privacy.text(one.answer().sheet()),
                    privacy.text(one.answer().question()),
                    privacy.text(one.answer().text()),
                    one.why()));
        }
        return table.toString();
    }

    /** The only file with names, when pseudonyms are wished: who sits where, and who sent which file. */
    static String names(Roster roster, List<FileNote> files) {
        SafeCsv table = new SafeCsv(OwnFile.NAMES);
        roster.seats().forEach(seat -> table.row(List.of("seat", Integer.toString(seat.number()), seat.name())));
        files.forEach(file -> table.row(List.of("file", Integer.toString(file.number()), file.name())));
        return table.toString();
    }
}
