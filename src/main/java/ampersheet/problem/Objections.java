package ampersheet.problem;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Hears what speaks against a draw: the first objection ends a drawn problem, of a chosen one it is only noted. */
interface Objections {

    /** Returns if the work can go on all the same. */
    void raise(Refusal reason, Supplier<String> detail);

    /** For draws. */
    Objections FIRST_ENDS = (reason, detail) -> {
        throw new RefusedDraw(reason, detail.get());
    };

    /** For counting, where nobody reads the details. */
    Objections FIRST_ENDS_UNTOLD = (reason, detail) -> {
        throw new RefusedDraw(reason, "");
    };

    /** For chosen givens: what leaves nothing to print, is not proven, or is not safe, still ends the work. */
    final class Noted implements Objections {
        private final List<Attempt.Refused> notes = new ArrayList<>();

        @Override
        public void raise(Refusal reason, Supplier<String> detail) {
            switch (reason) {
                case NOT_A_NUMBER, NO_CASE, DESIGN_MISSED, ABOVE_EXTRA_LOW_VOLTAGE, MODEL_UNSOLVED, ROUTES_DISAGREE ->
                    throw new RefusedDraw(reason, detail.get());
                default -> notes.add(new Attempt.Refused(reason, detail.get()));
            }
        }

        List<Attempt.Refused> notes() {
            return notes;
        }
    }

    /** Leaves the work of a draw; without a stack trace, since draws are refused by the thousand. */
    final class RefusedDraw extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final Refusal reason;

        RefusedDraw(Refusal reason, String detail) {
            super(detail, null, false, false);
            this.reason = reason;
        }

        Attempt.Refused asAttempt() {
            return new Attempt.Refused(reason, getMessage());
        }
    }
}
