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

        int halves() {
            return answers.stream().mapToInt(answer -> answer.credit().halves()).sum();
        }

        int mostHalves() {
            return answers.size() * Credit.HALVES_PER_QUESTION;
        }
    }

    /**
     * @param changed how it would have been marked before its key was corrected; empty if that makes no difference
     * @param from the file it was read from; empty for a place that nobody filled
     */
    record MarkedAnswer(
            AnswerKey key,
            Verdict verdict,
            Credit credit,
            Optional<Cause> cause,
            Optional<ChangedVerdict> changed,
            Optional<From> from) {
        boolean isLate() {
            return from.isPresent() && from.get().file().isLate() && credit != Credit.BLANK;
        }
    }

    record From(FileNote file, int line) {}
}
