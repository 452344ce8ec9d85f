package ampersheet.template;

import ampersheet.template.StatementSyntax.Both;
import ampersheet.template.StatementSyntax.Branch;
import ampersheet.template.StatementSyntax.Choice;
import ampersheet.template.StatementSyntax.Comment;
import ampersheet.template.StatementSyntax.Compared;
import ampersheet.template.StatementSyntax.Either;
import ampersheet.template.StatementSyntax.Not;
import ampersheet.template.StatementSyntax.Otherwise;
import ampersheet.template.StatementSyntax.Piece;
import ampersheet.template.StatementSyntax.Plain;
import ampersheet.template.StatementSyntax.Printed;
import ampersheet.template.StatementSyntax.WordCondition;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes parsed words for FreeMarker. Every tag, comment and expression is written here, and what could begin one in plain
 * text, in any of FreeMarker's syntaxes, is printed from a table, so that nothing is in what it reads but what the parse has.
 * Line breaks within tags stay, since FreeMarker leaves out lines that hold tags alone.
 */
final class StatementWriter {
  static final String VALUES = "value";
  static final String SYMBOLS = "symbol";
  static final String CHARACTERS = "character";
  /** What tags and interpolations begin with: a character, and those that may follow it. */
  private static final Map<Character, String> BEGINNINGS = Map.of('<', "#@/", '$', "{", '#', "{", '[', "#@/=");

  private final StringBuilder out = new StringBuilder();

  private StatementWriter() {}

  static String write(List<Piece> pieces) {
    StatementWriter writer = new StatementWriter();
    pieces.forEach(writer::piece);
    return writer.out.toString();
  }

  private void piece(Piece piece) {
    if (piece instanceof Plain plain) {
      plain(plain.text());
    } else if (piece instanceof Comment comment) {
      out.append("<#--").append("\n".repeat(comment.lines())).append("-->");
    } else if (piece instanceof Printed printed) {
      out.append("${").append(named(printed.symbol() ? SYMBOLS : VALUES, printed.name()));
      printed.cases().forEach(change -> out.append('?').append(change));
      out.append('}');
    } else {
      choice((Choice) piece);
    }
  }

  private void plain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean begins = i + 1 < text.length() && BEGINNINGS.getOrDefault(c, "").indexOf(text.charAt(i + 1)) >= 0;
      if (begins) {
        out.append("${").append(named(CHARACTERS, Integer.toString(c))).append('}');
      } else {
        out.append(c);
      }
    }
  }

  private void choice(Choice choice) {
    String directive = "<#if ";
    for (Branch branch : choice.branches()) {
      out.append(directive).append(condition(branch.condition()));
      tagEnd(branch.lines());
      branch.pieces().forEach(this::piece);
      directive = "<#elseif ";
    }
    Optional<Otherwise> otherwise = choice.otherwise();
    if (otherwise.isPresent()) {
      out.append("<#else");
      tagEnd(otherwise.get().lines());
      otherwise.get().pieces().forEach(this::piece);
    }
    out.append("</#if");
    tagEnd(choice.lines());
  }

  private void tagEnd(int lines) {
    out.append("\n".repeat(lines)).append('>');
  }

  private static String condition(WordCondition condition) {
    if (condition instanceof Both both) {
      return "(" + condition(both.left()) + " && " + condition(both.right()) + ")";
    } else if (condition instanceof Either either) {
      return "(" + condition(either.left()) + " || " + condition(either.right()) + ")";
    } else if (condition instanceof Not not) {
      return "!" + condition(not.of());
    }
    Compared compared = (Compared) condition;
    return "(" + named(VALUES, compared.name()) + (compared.equal() ? " == " : " != ") + quoted(compared.word()) + ")";
  }

  private static String named(String table, String key) {
    return table + "[" + quoted(key) + "]";
  }

  /** @throws IllegalArgumentException for a text that no name and no word can be */
  private static String quoted(String text) {
    if (!text.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == ' ' || c == '-' || c == '_' || c == '.')) {
      throw new IllegalArgumentException("neither a name nor a word: " + text);
    }
    return "\"" + text + "\"";
  }
}
