package ampersheet.template;

import java.util.List;
import java.util.Optional;

/** What words that are filled in consist of, once they are parsed. Nothing that is not here can be said in them. */
final class StatementSyntax {
  private StatementSyntax() {}

  sealed interface Piece permits Plain, Comment, Printed, Choice {}

  /** Characters that print as they stand. */
  record Plain(String text, int index) implements Piece {}

  /** @param lines it breaks: what stands beside it on a line decides whether that line is printed */
  record Comment(int lines) implements Piece {}

  /**
   * A value or a symbol.
   *
   * @param cases changes of case, such as {@code cap_first}, in the order in which they apply
   * @param index of the name, without what says that its symbol is meant
   */
  record Printed(boolean symbol, String name, List<String> cases, int index) implements Piece {
    Printed {
      cases = List.copyOf(cases);
    }
  }

  /**
   * The first branch whose condition holds.
   *
   * @param otherwise where none holds; empty: nothing
   * @param lines that the closing tag breaks
   */
  record Choice(List<Branch> branches, Optional<Otherwise> otherwise, int lines) implements Piece {
    Choice {
      branches = List.copyOf(branches);
    }
  }

  /** @param lines that its tag breaks */
  record Branch(WordCondition condition, List<Piece> pieces, int lines) {
    Branch {
      pieces = List.copyOf(pieces);
    }
  }

  /** @param lines that its tag breaks */
  record Otherwise(List<Piece> pieces, int lines) {
    Otherwise {
      pieces = List.copyOf(pieces);
    }
  }

  /** Of word givens; quantities decide nothing. */
  sealed interface WordCondition permits Compared, Both, Either, Not {}

  /** @param index of the name; @param wordIndex of the word, after its quote */
  record Compared(String name, boolean equal, String word, int index, int wordIndex) implements WordCondition {}

  record Both(WordCondition left, WordCondition right) implements WordCondition {}

  record Either(WordCondition left, WordCondition right) implements WordCondition {}

  record Not(WordCondition of) implements WordCondition {}
}
