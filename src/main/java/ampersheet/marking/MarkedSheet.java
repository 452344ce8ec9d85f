package ampersheet.marking;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.Verdict;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetProblem;
import java.util.List;
import java.util.Optional;

/**
 * One learner's sheet with its verdicts.
 *
 * @param lost problems to which no key is at hand
 */
record MarkedSheet(
        Roster.Seat seat,
        Sheet sheet,
        List<MarkedProblem> problems,
        List<ClassSheets.LostProblem> lost,
        Standing standing) {
    MarkedSheet {
        problems = List.copyOf(problems);
        lost = List.copyOf(lost);
    }

    /**
     * A problem with places for answers.
     *
     * @param place in the plan's list, from 0
     * @param byHand why it could not be marked; empty if it was
     */
    record MarkedProblem(SheetProblem problem, int place, List<MarkedAnswer> answers, Optional<String> byHand) {
        MarkedProblem {
            answers = List.copyOf(answers);
        }

        /** In hundredths of a mark. */
        int marks() {
            return answers.stream()
                    .filter(MarkedAnswer::counts)
                    .mapToInt(answer -> answer.earned().marks())
                    .sum();
        }

        int mostMarks() {
            return answers.stream()
                    .filter(MarkedAnswer::counts)
                    .mapToInt(answer -> answer.earned().most())
                    .sum();
        }
    }

    /**
     * An answer with what it earns.
     *
     * @param item the question, whatever its numbers
     * @param changed how it would have been marked before its key was corrected; empty if that makes no difference
     * @param from the file it was read from; empty for a place that nobody filled
     * @param comma how its comma was read, where the learner's other answers tell
     * @param decided what the instructor decided of it
     */
    record MarkedAnswer(
            AnswerKey key,
            Standing.Item item,
            Verdict verdict,
            Credit credit,
            Earned earned,
            Optional<Cause> cause,
            Optional<ChangedVerdict> changed,
            Optional<From> from,
            Optional<CommaReading> comma,
            Optional<Decision> decided) {
        boolean isLate() {
            return from.isPresent() && from.get().file().isLate() && credit != Credit.BLANK;
        }

        /** Whether it belongs to the marks: not if the question is left out for everyone. */
        boolean counts() {
            return decided.isEmpty() || decided.get().kind() != Decision.Kind.LEAVE_OUT;
        }
    }

    record From(FileNote file, int line) {}
}
