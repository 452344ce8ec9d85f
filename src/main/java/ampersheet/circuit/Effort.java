package ampersheet.circuit;

/** Steps of Newton's method that one question may still cost, so that numbers without an answer are told in time. */
final class Effort {
    /** A question of a lesson takes some thousands; this many take about a second. */
    private static final int OF_A_QUESTION = 100_000;

    private int left = OF_A_QUESTION;

    boolean isLeft() {
        return left > 0;
    }

    void spend() {
        left--;
    }

    int spent() {
        return OF_A_QUESTION - left;
    }
}
