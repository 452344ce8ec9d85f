package ampersheet.model;

/** A model or a search without a result; the message is one sentence. Without a stack trace: searches meet many. */
public final class Unsolved extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Unsolved(String sentence) {
        super(sentence, null, false, false);
    }
}
