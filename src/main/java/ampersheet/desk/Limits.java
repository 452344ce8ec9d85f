package ampersheet.desk;

import java.time.Duration;

/**
 * What a browser may ask of the desk. One instructor with a class of a thousand stays far below; what goes beyond is
 * refused with the reason.
 *
 * @param bodyBytes of what is sent at once
 * @param allBodyBytes of what is sent at the same time by all
 * @param uploads files at once
 * @param bodyTime in which all of it must have come
 * @param idle time in which something must happen on a connection
 */
public record Limits(int bodyBytes, int allBodyBytes, int uploads, Duration bodyTime, Duration idle) {
    public static final Limits USUAL =
            new Limits(16 << 20, 48 << 20, 1_000, Duration.ofSeconds(30), Duration.ofSeconds(15));

    /** Of the head of a request. */
    static final int HEADER_BYTES = 8 << 10;
    /** Requests that compute, at the same time. */
    static final int COMPUTING = 2;
    /** That may wait for it. */
    static final int WAITING = 64;
}
