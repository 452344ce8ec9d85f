package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetProblem;
import java.util.List;
import java.util.Optional;

/**
 * Which question is meant where one is left out for everyone: q2a of one sheet may be q3a of another, so what is left
 * out is a step of a template at its place in the plan.
 */
final class LeftOutQuestions {
    private LeftOutQuestions() {}

    /** Finds those that the decisions leave out; what cannot be found is noted as no longer fitting. */
    static void find(DecisionBook decisions, ClassSheets sheets, Roster roster) {
        for (Decision decision : decisions.ofTheseSheets()) {
            if (decision.kind() != Decision.Kind.LEAVE_OUT || !decisions.holds(decision)) {
                continue;
            }
            if (!QuestionName.is(decision.question())) {
                byStep(decision)
                        .ifPresentOrElse(
                                item -> decisions.leaveOut(decision, item),
                                () -> decisions.doesNotFit(
                                        decision,
                                        say("folder.decision.question.unknown", "question", decision.question())));
            } else if (decision.seat() == 0 && !isAlikeForAll(sheets.plan())) {
                decisions.doesNotFit(decision, say("folder.decision.question.many", "question", decision.question()));
            } else {
                bySheet(
                        decisions,
                        decision,
                        sheets,
                        decision.seat() > 0
                                ? List.of(decision.seat())
                                : roster.seats().stream()
                                        .map(Roster.Seat::number)
                                        .toList());
            }
        }
    }

    private static Optional<Standing.Item> byStep(Decision decision) {
        int blank = decision.question().indexOf(' ');
        return blank < 0
                ? Optional.empty()
                : Optional.of(new Standing.Item(
                        DecisionBook.ANYWHERE,
                        decision.question().substring(0, blank),
                        decision.question().substring(blank + 1).strip()));
    }

    private static boolean isAlikeForAll(Plan plan) {
        return plan.order() == Plan.Order.AS_LISTED
                && plan.portion().only().isEmpty()
                && plan.entries().stream().allMatch(entry -> entry.source() instanceof Plan.Source.One);
    }

    /**
     * A question that stands on no such sheet is told with the decisions that fit nothing.
     *
     * @param seats with that sheet, of which not all need to have one
     */
    private static void bySheet(DecisionBook decisions, Decision decision, ClassSheets sheets, List<Integer> seats) {
        Optional<Diagnostic> none = Optional.empty();
        for (int seat : seats) {
            try {
                leaveOut(decisions, decision, sheets.issued(seat));
                return;
            } catch (DiagnosticException missing) {
                none = none.or(() -> missing.diagnostics().stream().findFirst());
            }
        }
        none.ifPresent(missing -> decisions.doesNotFit(decision, missing.problem()));
    }

    private static void leaveOut(DecisionBook decisions, Decision decision, ClassSheets.IssuedSheet issued) {
        List<SheetProblem> problems = issued.sheet().problems();
        for (int i = 0; i < problems.size(); i++) {
            for (AnswerKey key : problems.get(i).places()) {
                if (key.question().equals(decision.question())) {
                    decisions.leaveOut(
                            decision,
                            new Standing.Item(
                                    issued.places().get(i),
                                    problems.get(i).template().name(),
                                    key.step()));
                }
            }
        }
    }
}
