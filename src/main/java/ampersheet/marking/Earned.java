package ampersheet.marking;

import ampersheet.answer.Rung;
import ampersheet.sheet.MarkingPolicy;

/**
 * What an answer earns, in hundredths of a mark.
 *
 * @param marks that count
 * @param inTime what it would earn if it had come in in time
 * @param most that the question can earn
 */
record Earned(int marks, int inTime, int most) {
    static Earned usual(Credit credit) {
        return of(
                credit,
                credit == Credit.HALF ? Rung.UNIT_MISSING : Rung.CORRECT,
                MarkingPolicy.USUAL,
                MarkingPolicy.MARK,
                0);
    }

    /**
     * By a policy.
     *
     * @param rung which half right answer it is
     * @param most that the question can earn
     * @param minutesLate 0 for an answer that came in in time
     */
    static Earned of(Credit credit, Rung rung, MarkingPolicy policy, int most, long minutesLate) {
        int share = switch (credit) {
            case RIGHT -> MarkingPolicy.MARK;
            case CARRIED -> policy.credits().carried();
            case HALF ->
                switch (rung) {
                    case TOO_COARSE -> policy.credits().tooCoarse();
                    case UNIT_MISSING, OTHER_SCALE -> policy.credits().unitMissing();
                    default -> MarkingPolicy.MARK / 2;
                };
            case WRONG, UNREADABLE, UNDECIDED, BLANK -> 0;
        };
        int inTime = (most * share + MarkingPolicy.MARK / 2) / MarkingPolicy.MARK;
        return new Earned(policy.late(inTime, minutesLate), inTime, most);
    }
}
