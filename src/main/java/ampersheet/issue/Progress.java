package ampersheet.issue;

/**
 * Is told how far a run has come. It may throw {@link java.util.concurrent.CancellationException}: then the run ends,
 * each of its files is whole or not there, and the same run again makes the rest. May be called by several threads.
 */
@FunctionalInterface
public interface Progress {
    /** Nobody listens. */
    Progress UNWATCHED = (of, seats) -> {};

    /**
     * One more seat is made.
     *
     * @param of what is made, such as "sheets"
     * @param seats in all
     */
    void made(String of, int seats);
}
