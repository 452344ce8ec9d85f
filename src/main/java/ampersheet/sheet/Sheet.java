package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.problem.Inventory;
import java.util.List;
import java.util.Optional;

/**
 * One learner's sheet: the problems with their numbers, in the order shown. Whose it is, is not part of it: the same
 * seat has the same sheet whoever sits there.
 *
 * @param parts the bins it can be built from; empty if nobody said
 */
public record Sheet(SheetId id, Plan plan, List<SheetProblem> problems, Optional<Inventory> parts) {
    public Sheet {
        problems = List.copyOf(problems);
    }

    /** Every place for an answer, in the order shown. */
    public List<AnswerKey> places() {
        return problems.stream().flatMap(problem -> problem.places().stream()).toList();
    }

    /** The problem in which an answer is typed under this name, such as {@code q3a}. */
    public Optional<SheetProblem> problemWith(String question) {
        return problems.stream()
                .filter(problem -> problem.key().answers().stream()
                        .anyMatch(key -> key.question().equals(question)))
                .findFirst();
    }
}
