package ampersheet.formula;

/** Something that holds or does not: what a template requires, or when a case of a step applies. */
public sealed interface Condition {
  int position();

  enum Relation {
    LESS("<", "<"), AT_MOST("<=", "≤"), MORE(">", ">"), AT_LEAST(">=", "≥"), EQUAL("==", "="), UNEQUAL("!=", "≠");

    private final String asWritten;
    private final String printed;

    Relation(String asWritten, String printed) {
      this.asWritten = asWritten;
      this.printed = printed;
    }

    public String asWritten() {
      return asWritten;
    }

    public String printed() {
      return printed;
    }
  }

  /** Either two quantities of one dimension, or (== and != only) a word given and one of its words. */
  record Comparison(Expression left, Relation relation, Expression right, int position) implements Condition {}

  record Both(Condition left, Condition right, int position) implements Condition {}

  record Either(Condition left, Condition right, int position) implements Condition {}

  record Not(Condition of, int position) implements Condition {}
}
