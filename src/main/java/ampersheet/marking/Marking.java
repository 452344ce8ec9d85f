package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Roster;
import java.nio.file.Path;
import java.time.LocalDateTime;
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
     * @param decisions text of the list of what the instructor decided
     * @param others whose answers and decisions may be among these
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
            Optional<NamedText> decisions,
            OtherSheets others,
            boolean pseudonyms) {
        /** The same by a list of what the instructor decided. */
        public Task deciding(NamedText list) {
            return new Task(
                    answers, sheets, corrections, roster, received, due, before, Optional.of(list), others, pseudonyms);
        }

        /** The same where the class was given these sheets as well. */
        public Task among(OtherSheets known) {
            return new Task(answers, sheets, corrections, roster, received, due, before, decisions, known, pseudonyms);
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
     * @param toDecide lines of the list of what only the instructor can decide
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
            int toDecide,
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

    /** @throws DiagnosticException if the folder, the list of times or that of decisions cannot be read */
    public static Marked mark(Task task, Output output) {
        return new ClassMarking(task, output).mark();
    }

    /**
     * What has to go so that nothing of a learner is left among the answers and in these lists. Nothing is changed yet.
     *
     * @param decisionList the file of the task's decisions
     * @param receivedList the file of its list of times
     * @throws DiagnosticException as for {@link #mark}
     */
    public static Erasure erasure(Task task, int seat, Optional<Path> decisionList, Optional<Path> receivedList) {
        // of a learner, also what she sent for other sheets is looked at
        return new ClassMarking(task.among(OtherSheets.NONE), (path, text) -> {})
                .erasure(seat, decisionList, receivedList);
    }

    static String feedback(Roster.Seat seat) {
        return "feedback/" + Roster.fileName(seat.number()) + ".html";
    }
}
