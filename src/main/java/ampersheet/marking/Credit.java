package ampersheet.marking;

import ampersheet.answer.Verdict;

/** How an answer counts; what that earns is told by {@link Earned}. */
enum Credit {
    RIGHT,
    /** Follows rightly from an earlier wrong answer of the same problem, which has paid for the slip already. */
    CARRIED,
    /** The number is right, but its unit is missing or has another zero, or it is rounded too far. */
    HALF,
    WRONG,
    /** Nobody can tell what was meant. */
    UNREADABLE,
    /** What came in contradicts itself, and nobody has decided yet. */
    UNDECIDED,
    /** Nothing there; or one blank of a design, whose other blanks give nothing to judge it with. */
    BLANK;

    /** Whether the step was taken rightly. */
    boolean isFull() {
        return this == RIGHT || this == CARRIED;
    }

    /** Whether something was answered that can be judged. */
    boolean isAnswered() {
        return this != BLANK && this != UNREADABLE && this != UNDECIDED;
    }

    static Credit of(Verdict verdict) {
        return switch (verdict.rung()) {
            case CORRECT -> RIGHT;
            case CONSISTENT_WITH_EARLIER -> verdict.carriedFrom().isEmpty() ? WRONG : CARRIED;
            case TOO_COARSE, UNIT_MISSING, OTHER_SCALE -> HALF;
            case BLANK, INCOMPLETE -> BLANK;
            case UNREADABLE, AMBIGUOUS -> UNREADABLE;
            case WRONG_DIMENSION,
                    POWER_OF_TEN,
                    SIGN,
                    RECIPROCAL,
                    KNOWN_MISTAKE,
                    CRITERION_MISSED,
                    RISE_OR_TEMPERATURE,
                    OTHER_QUANTITY,
                    EXACT_OR_FITTED,
                    WRONG_PAIR,
                    CARRIED_MISTAKE,
                    MISPLACED_GIVEN,
                    NEAR_MISS,
                    UNEXPLAINED -> WRONG;
        };
    }
}
