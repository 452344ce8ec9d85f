package ampersheet.integration;

/** How a state went on over time. */
public sealed interface Course {
    /** @param seconds since the start */
    record Arrived(double seconds, double[] state) implements Course {}

    /** The state came to rest before what was waited for. */
    record AtRest(double[] state) implements Course {}

    /** The state grew beyond all bounds, or lost its balance, or needed more steps than can be afforded. */
    record Diverged(int spans) implements Course {}
}
