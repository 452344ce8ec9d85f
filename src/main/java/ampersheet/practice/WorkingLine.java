package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Scope;
import ampersheet.formula.TradeWords;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import ampersheet.quantity.TypedText;
import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A line of working typed instead of a value: {@code 6.2 V / 15.5 mA}, {@code (Vs - Vf) / If}, {@code R = 6.2 V / 15.5 mA =
 * 400 Ω}. It is worked with its units; where several sides stand, they must agree.
 *
 * @param value what it comes to, to be judged as if typed; empty where it comes to nothing
 * @param said what was made of it, or what does not fit
 */
record WorkingLine(String value, String said) {
  /** How near two sides of a line must lie: as a person rounds. */
  private static final double SIDES_AGREE = 0.01;
  /** Of a value that must be exact. */
  private static final int EXACT_FIGURES = 9;
  private static final int SHOWN_FIGURES = 4;
  private static final int LONGEST = 200;

  /** A side of the line, worked. */
  private record Side(Quantity quantity, boolean calculated) {}

  boolean isFaulty() {
    return value.isEmpty();
  }

  /** Empty if it is a value, or nothing that could be worked. */
  static Optional<WorkingLine> read(String typed, ProblemKey key, AnswerKey answer) {
    if (answer.acceptance() instanceof Acceptance.Choice
        || !(QuantityReader.read(typed, answer.unit()) instanceof Reading.Unreadable)) {
      return Optional.empty();
    }
    int figures = answer.acceptance() instanceof Acceptance.Within ? answer.figures() + 1 : EXACT_FIGURES;
    return read(typed, key.givens(), answer.unit(), figures);
  }

  /** As a calculator does, with no question in mind; empty if there is nothing to work. */
  static Optional<WorkingLine> read(String typed) {
    return read(typed, Values.of(Map.of(), Map.of()), Unit.ONE, SHOWN_FIGURES + 2);
  }

  private static Optional<WorkingLine> read(String typed, Values known, Unit asked, int figures) {
    String text = inFormulaSigns(TypedText.fold(typed));
    if (!hasOperator(text) || text.length() > LONGEST) {
      return Optional.empty();
    }
    List<String> sides = Texts.parts(text, '=');
    if (sides.size() > 1 && isLabel(sides.get(0).trim())) {
      sides = sides.subList(1, sides.size());
    }
    List<Side> worked = new ArrayList<>();
    for (String side : sides) {
      try {
        worked.add(side(side.trim(), known));
      } catch (FormulaFault fault) {
        return Optional.of(new WorkingLine("", Sentences.lineNotRead(fault.getMessage(), fault.nextAction())));
      }
    }
    boolean calculated = false;
    for (Side side : worked) {
      calculated |= side.calculated();
    }
    return calculated ? Optional.of(told(worked, asked, figures)) : Optional.empty();
  }

  private static WorkingLine told(List<Side> sides, Unit asked, int figures) {
    Quantity last = sides.get(sides.size() - 1).quantity();
    Optional<Unit> unit = unit(last.dimension(), asked);
    if (last.value() - last.value() != 0) {
      return new WorkingLine("", Sentences.LINE_WITHOUT_VALUE);
    }
    if (unit.isEmpty()) {
      return new WorkingLine("", Sentences.lineInStrangeUnit(TradeWords.symbol(last.dimension()), asked.symbol()));
    }
    String value = QuantityWriter.POINT.plain(last.value(), unit.get(), figures).text();
    for (Side side : sides.subList(0, sides.size() - 1)) {
      boolean alike = side.quantity().dimension().equals(last.dimension())
          && Math.abs(side.quantity().value() - last.value()) <= SIDES_AGREE * Math.abs(side.quantity().value());
      if (!alike) {
        return new WorkingLine("", Sentences.sidesDiffer(shown(side.quantity(), asked), value));
      }
    }
    return new WorkingLine(value, Sentences.lineGives(shown(last, asked)));
  }

  private static String shown(Quantity quantity, Unit asked) {
    Unit unit = unit(quantity.dimension(), asked).orElse(Unit.ONE);
    String number = QuantityWriter.POINT.plain(quantity.value(), unit, SHOWN_FIGURES).text();
    return unit.symbol().isEmpty() && !quantity.dimension().equals(Dimension.ONE)
        ? number + " " + TradeWords.symbol(quantity.dimension()) : number;
  }

  private static Optional<Unit> unit(Dimension dimension, Unit asked) {
    if (dimension.equals(asked.dimension())) {
      return Optional.of(asked);
    }
    if (dimension.equals(Dimension.ONE)) {
      return Optional.of(Unit.ONE);
    }
    try {
      return Optional.of(Unit.parse(TradeWords.symbol(dimension)));
    } catch (UnitFault noName) {
      return Optional.empty();
    }
  }

  /** @throws FormulaFault if it cannot be read or its units do not fit together */
  private static Side side(String text, Values known) {
    Expression expression = FormulaReader.expression(text);
    Map<String, Dimension> dimensions = new LinkedHashMap<>();
    known.quantities().forEach((name, quantity) -> dimensions.put(name, quantity.dimension()));
    for (String name : Evaluation.names(expression)) {
      if (!known.has(name)) {
        throw new FormulaFault(0, "there is no " + name + " among the given values",
            "numbers with units, and names of given values", "Put in its value with its unit.");
      }
    }
    Evaluation.check(expression, new Scope(dimensions, Map.of(), Scope.NO_MEASURES));
    boolean calculated = !(expression instanceof Expression.Constant)
        && !(expression instanceof Expression.Negative negative && negative.of() instanceof Expression.Constant);
    return new Side(Evaluation.evaluate(expression, known), calculated);
  }

  private static boolean isLabel(String text) {
    return FormulaReader.isName(text.endsWith("?") ? text.substring(0, text.length() - 1) : text);
  }

  private static boolean hasOperator(String text) {
    for (int i = 0; i < text.length(); i++) {
      if ("+*/^(".indexOf(text.charAt(i)) >= 0 || text.charAt(i) == '-' && i > 0) {
        return true;
      }
    }
    return false;
  }

  /** The signs of the formula language in the place of those that people type; numbers with a point. */
  private static String inFormulaSigns(String text) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      char before = i > 0 ? text.charAt(i - 1) : ' ';
      char after = i + 1 < text.length() ? text.charAt(i + 1) : ' ';
      if (c == '×' || c == '·' || (c == 'x' || c == 'X') && (before == ' ' || isDigit(before)) && (after == ' ' || isDigit(after))) {
        out.append('*');
      } else if (c == '÷' || c == ':') {
        out.append('/');
      } else if (c == ',' && isDigit(before) && isDigit(after)) {
        out.append('.');
      } else if (c == '.' && !isDigit(before) && isDigit(after)) {
        out.append("0.");
      } else if (c == '²' || c == '³') {
        out.append(c == '²' ? "^2" : "^3");
      } else if (c == '√') {
        out.append("sqrt");
      } else if (c == '[' || c == '{') {
        out.append('(');
      } else if (c == ']' || c == '}') {
        out.append(')');
      } else if (c == '*' && before == '*') {
        out.setCharAt(out.length() - 1, '^');
      } else if (c == '°' && after == 'C') {
        out.append("deg");
      } else if (isCode(text, i)) {
        out.append(isDigit(after) ? "." : "");
        int digits = i + 1;
        while (digits < text.length() && isDigit(text.charAt(digits))) {
          out.append(text.charAt(digits));
          digits++;
        }
        out.append(c == 'R' ? " ohm" : c == 'M' ? " Mohm" : " kohm");
        i = digits - 1;
      } else {
        out.append(c);
      }
    }
    return out.toString();
  }

  /** The letter of a marking, as in 4k7 and 4.7k: it stands for ohms where nothing else is said. */
  private static boolean isCode(String text, int at) {
    char c = text.charAt(at);
    boolean letter = c == 'k' || c == 'K' || c == 'M' || c == 'R';
    if (!letter || at == 0 || !isDigit(text.charAt(at - 1)) || isInName(text, at - 1)) {
      return false;
    }
    int end = at + 1;
    while (end < text.length() && isDigit(text.charAt(end))) {
      end++;
    }
    boolean wordGoesOn = end < text.length()
        && (text.charAt(end) >= 'a' && text.charAt(end) <= 'z' || text.charAt(end) >= 'A' && text.charAt(end) <= 'Z'
            || text.charAt(end) == 'Ω' || text.charAt(end) == '.');
    return !wordGoesOn && !(c == 'K' && end == at + 1);
  }

  private static boolean isInName(String text, int digit) {
    int i = digit;
    while (i >= 0 && (isDigit(text.charAt(i)) || text.charAt(i) == '.')) {
      i--;
    }
    return i >= 0 && (text.charAt(i) >= 'a' && text.charAt(i) <= 'z' || text.charAt(i) >= 'A' && text.charAt(i) <= 'Z'
        || text.charAt(i) == '_');
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
