package ampersheet.answer;

/**
 * A value that is reached without a modelled mistake, by a slip that any problem may have.
 *
 * @param rung under which it is told
 * @param value in coherent SI units
 * @param reach how far (SI) from it an answer may lie and still be taken for it
 * @param says to the learner; never the expected value
 */
public record UsualSlip(Rung rung, double value, double reach, String says) {
    boolean takes(double si) {
        return Math.abs(si - value) <= reach + Acceptance.LAST_BITS * Math.abs(value);
    }
}
