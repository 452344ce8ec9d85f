package ampersheet.problem;

/** A model or a search without a result; the message is one sentence. Without a stack trace: searches meet many. */
final class Unsolved extends RuntimeException {
  private static final long serialVersionUID = 1L;

  Unsolved(String sentence) {
    super(sentence, null, false, false);
  }
}
