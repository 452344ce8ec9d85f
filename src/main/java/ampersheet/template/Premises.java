package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.model.Reality;
import java.util.List;
import java.util.Optional;

/**
 * What a problem rests on without asking for it: what it takes for granted, where the trade's limits hold, and what
 * stands on the sheet beside it.
 *
 * @param assumptions idealisations, in the author's order
 * @param limits of quantities of the problem
 * @param partLimits of the parts of its circuit, whatever the problem is about
 * @param tables that a learner needs to solve it on paper
 * @param after the skills that its own builds on; no part of any sheet
 */
public record Premises(
        List<Assumption> assumptions,
        List<LimitedQuantity> limits,
        List<TradeLimit> partLimits,
        List<Table> tables,
        List<String> after) {
    public Premises {
        assumptions = List.copyOf(assumptions);
        limits = List.copyOf(limits);
        partLimits = List.copyOf(partLimits);
        tables = List.copyOf(tables);
        after = List.copyOf(after);
    }

    /**
     * An idealisation.
     *
     * @param that what is taken for granted: a clause without a full stop
     * @param really in full sentences, which way reality departs from it and how far
     * @param real the models without the idealisation; the key then says what that makes of the answers
     */
    public record Assumption(String that, String really, Optional<Reality> real) {}

    /**
     * @param of over givens, constants and steps
     * @param onPurpose why the problem goes beyond the limit; empty: a draw beyond it is refused
     */
    public record LimitedQuantity(TradeLimit limit, Expression of, String asWritten, Optional<String> onPurpose) {}

    /** A table of the trade that is printed on the sheet. */
    public enum Table {
        WIRE_GAUGES("wire gauges");

        private final String word;

        Table(String word) {
            this.word = word;
        }

        /** As a template names it. */
        public String word() {
            return word;
        }
    }
}
