package ampersheet.bench;

import ampersheet.formula.Evaluation;
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
                        "the " + limited.limit().meaning() + " is "
                                + limited.limit().text(value) + "; usual is "
                                + limited.limit().told());
            }
        }
    }
}
