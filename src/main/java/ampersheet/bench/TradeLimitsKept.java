package ampersheet.bench;

import ampersheet.formula.Evaluation;
import ampersheet.language.Saying;
import ampersheet.problem.Problem;
import ampersheet.template.Premises.LimitedQuantity;

/** A problem may go beyond what the trade builds to ask about it; on paper, not on a bench. */
final class TradeLimitsKept {
    private TradeLimitsKept() {}

    static void require(Problem problem) throws NotLaidOut {
        for (LimitedQuantity limited : problem.template().premises().limits()) {
            double value = Evaluation.evaluate(limited.of(), problem.values()).value();
            if (!limited.limit().allows(value)) {
                throw new NotLaidOut(
                        NotLaidOut.Reason.OUTSIDE_LIMITS,
                        language -> Saying.of(
                                "problem.no-card.beyond-limit",
                                "limited",
                                language.say(
                                        "common.the", "what", limited.limit().meaning()),
                                "value",
                                limited.limit().text(value, language),
                                "usual",
                                limited.limit().told(language)));
            }
        }
    }
}
