package ampersheet.sheet;

import ampersheet.figure.Figure;
import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.List;
import java.util.Optional;

/**
 * A page's content without a format: all that a renderer may see.
 *
 * @param language tag of the words, for the {@code lang} attribute
 * @param title the only first-level heading
 * @param subtitle such as the learner's name and seat; may be empty
 * @param sheetId printed at head and foot; empty on pages without one
 */
public record Document(Kind kind, String language, String title, String subtitle, String sheetId, Paper paper,
    List<Block> blocks) {
  public Document {
    blocks = List.copyOf(blocks);
  }

  /** The same for other paper. */
  public Document on(Paper other) {
    return new Document(kind, language, title, subtitle, sheetId, other, blocks);
  }

  public enum Kind { SHEET, KEY, INDEX, FEEDBACK, REPORT }

  public enum Paper { A4, LETTER }

  public sealed interface Block {}

  /** Second level or lower; problems make their own. */
  public record Heading(int level, String text) implements Block {}

  /** Markdown of a limited kind: paragraphs, emphasis, lists, code, tables; no HTML. */
  public record Prose(String markdown) implements Block {}

  /** One problem; never split from its figure in print. {@code tags} such as family, level and skill, in words. */
  public record ProblemBlock(String number, String title, List<String> tags, List<Block> blocks) implements Block {
    public ProblemBlock {
      tags = List.copyOf(tags);
      blocks = List.copyOf(blocks);
    }
  }

  /** The givens as a list. */
  public record Givens(List<GivenLine> lines) implements Block {
    public Givens {
      lines = List.copyOf(lines);
    }
  }

  /** @param symbol empty for a word given; @param value as printed, unit included */
  public record GivenLine(Optional<Symbol> symbol, String meaning, String value) {}

  public record FigureBlock(Figure figure) implements Block {}

  /** Worked steps, numbered. */
  public record Steps(String heading, List<StepBlock> steps) implements Block {
    public Steps {
      steps = List.copyOf(steps);
    }
  }

  /**
   * A step of the working: {@code symbol = formula = numbers put in = result}.
   *
   * @param condition why this case applies ("row is odd"), symbolic and with numbers; empty where there is one case
   * @param principle the rule that gives the line
   * @param reason one sentence
   * @param result empty where the step is left blank for the learner (faded): then formula and numbers are hidden too
   * @param blankId question-like label of a blank step, empty if shown
   * @param check code and letter by which a learner checks what fills the blank; may be empty
   */
  public record StepBlock(int number, Symbol symbol, String meaning, Optional<Condition> condition,
      Optional<Expression> formula, Notation notation, Optional<Printed> result, String principle, String reason,
      String blankId, String check) {
    public StepBlock(int number, Symbol symbol, String meaning, Optional<Condition> condition,
        Optional<Expression> formula, Notation notation, Optional<Printed> result, String principle, String reason,
        String blankId) {
      this(number, symbol, meaning, condition, formula, notation, result, principle, reason, blankId, "");
    }

    StepBlock checkedBy(String letter) {
      return new StepBlock(number, symbol, meaning, condition, formula, notation, result, principle, reason, blankId, letter);
    }
  }

  /** A place for an answer. @param check code and letter by which a learner checks it; may be empty */
  public record Question(String id, String prompt, Optional<Symbol> symbol, String unitHint, List<String> options,
      String check) implements Block {
    public Question {
      options = List.copyOf(options);
    }

    public Question(String id, String prompt, Optional<Symbol> symbol, String unitHint, List<String> options) {
      this(id, prompt, symbol, unitHint, options, "");
    }

    Question checkedBy(String letter) {
      return new Question(id, prompt, symbol, unitHint, options, letter);
    }
  }

  /** A box: hazard first, action second. */
  public record Caution(String heading, String text) implements Block {}

  /** Answer lines of a key. */
  public record KeyTable(List<KeyLine> lines) implements Block {
    public KeyTable {
      lines = List.copyOf(lines);
    }
  }

  /**
   * @param accepted band in words, such as {@code 428.8 Ω to 446.3 Ω}
   * @param secondRoute the other route's value and the gap, in words
   * @param mistakes value and explanation of each modelled mistake
   */
  public record KeyLine(String question, Optional<Symbol> symbol, String answer, String accepted, String secondRoute,
      List<MistakeLine> mistakes) {
    public KeyLine {
      mistakes = List.copyOf(mistakes);
    }
  }

  public record MistakeLine(String value, String explanation) {}

  /** A table of the index page; cells are plain text, or a link where {@code href} is not empty. */
  public record Table(String caption, List<String> head, List<List<Cell>> rows) implements Block {
    public Table {
      head = List.copyOf(head);
      rows = rows.stream().map(List::copyOf).toList();
    }
  }

  public record Cell(String text, String href) {}
}
