package ampersheet.practice;

/**
 * The order of what was done, without a clock: each event counts one more than the greatest its writer has seen
 * (Lamport, "Time, clocks, and the ordering of events", 1978).
 *
 * @param writer a tab of a browser; sets apart what two did without seeing each other
 */
public record Moment(int count, String writer) implements Comparable<Moment> {
    static final Moment NEVER = new Moment(0, "-");

    @Override
    public int compareTo(Moment other) {
        return count == other.count ? writer.compareTo(other.writer) : Integer.compare(count, other.count);
    }

    Moment orLater(Moment other) {
        return compareTo(other) >= 0 ? this : other;
    }

    boolean isAfter(Moment other) {
        return compareTo(other) > 0;
    }
}
