package ampersheet.quantity;

import java.util.List;
import java.util.Optional;

/**
 * Reads a quantity as people type it. Never folds m and M; never guesses between two readings.
 *
 * <ul>
 *   <li>A number by {@link TypedNumber}, then a unit by {@link UnitWords}, with any space or none between them.
 *   <li>Letter codes of IEC 60062, in which a letter stands at the decimal marker: {@code 4k7}, {@code 4R7}, {@code R47},
 *       {@code 2u2}; also {@code 3V3}, which the standard does not have but every bench does. A letter for the tolerance
 *       after the code is not read.
 *   <li>A prefix without unit ({@code 4.7k}) is against the SI and common all the same. {@code K} and {@code m} alone
 *       are then a prefix or a unit: the unit asked for decides; where none is known, the reading is ambiguous.
 *   <li>{@code C} after a number is the degree Celsius, never the coulomb, which no sheet asks for; in a ratio such as
 *       {@code °C/W} it is the kelvin, as a difference.
 *   <li>{@code R = 470 Ω} and {@code ≈ 470 Ω} lose what stands before the number.
 * </ul>
 */
public final class QuantityReader {
  private static final int LONGEST = 80;
  private static final String UNIT_HINT = " After the number, write a unit such as V, mA, kΩ or K/W.";

  private final String asTyped;
  private final Optional<Unit> expected;

  private QuantityReader(String asTyped, Optional<Unit> expected) {
    this.asTyped = asTyped;
    this.expected = expected;
  }

  /** Without knowing what is asked: {@code 4.7 K} is ambiguous. */
  public static Reading read(String typed) {
    return new QuantityReader(typed, Optional.empty()).read();
  }

  /**
   * @param expected the unit of the question. It decides only whether {@code K} or {@code m} alone is a unit or a prefix,
   *     whether {@code 5m2} is an area, and whether degrees are those of temperature or of angle
   */
  public static Reading read(String typed, Unit expected) {
    return new QuantityReader(typed, Optional.of(expected)).read();
  }

  private Reading read() {
    if (asTyped.length() > LONGEST) {
      return unreadable("This is too long for one answer. Type one number with its unit.");
    }
    String text = withoutLead(TypedText.fold(asTyped));
    if (text.isEmpty()) {
      return unreadable("Nothing is typed here. Type a number with its unit.");
    }
    if (text.indexOf('=') >= 0) {
      return unreadable("There is more than a result here. Type only the number with its unit.");
    }
    Reading code = letterCode(text);
    if (code != null) {
      return code;
    }
    try {
      return numberWithUnit(text);
    } catch (TypedNumber.Fault fault) {
      return unreadable(fault.getMessage());
    }
  }

  /** Takes off {@code R =}, {@code ≈} and the like. */
  private static String withoutLead(String text) {
    int end = 0;
    while (end < text.length() && isNameCharacter(text.charAt(end), end)) {
      end++;
    }
    int after = end < text.length() && text.charAt(end) == ' ' ? end + 1 : end;
    if (after < text.length() && isEquals(text.charAt(after))) {
      after++;
      while (after < text.length() && (isEquals(text.charAt(after)) || text.charAt(after) == ' ')) {
        after++;
      }
      return text.substring(after);
    }
    return TypedText.lowerCase(text).startsWith("about ") ? text.substring("about ".length()) : text;
  }

  private static boolean isEquals(char c) {
    return c == '=' || c == '≈' || c == '~';
  }

  private static boolean isNameCharacter(char c, int index) {
    boolean letter = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '\u00C0' && c != '≈' && c != '\u2212';
    return letter || index > 0 && (TypedText.isDigit(c) || c == '_');
  }

  private Reading letterCode(String text) {
    boolean negative = text.charAt(0) == '-';
    int start = negative || text.charAt(0) == '+' ? 1 : 0;
    int letterAt = digitsEnd(text, start);
    if (letterAt >= text.length() - 1) {
      return null;
    }
    char letter = text.charAt(letterAt);
    int end = digitsEnd(text, letterAt + 1);
    boolean leading = letterAt == start;
    if (end == letterAt + 1 || !(leading ? "RkKMGmµunpL" : "RkKMGmµunpLVAF").contains(String.valueOf(letter))) {
      return null;
    }
    String whole = text.substring(start, letterAt);
    String fraction = text.substring(letterAt + 1, end);
    String rest = text.substring(end).trim();
    if (letter == 'm' && !leading && rest.isEmpty() && (fraction.equals("2") || fraction.equals("3"))) {
      if (expected.isEmpty()) {
        return new Reading.Ambiguous(asTyped,
            List.of(whole + "." + fraction + " thousandths", whole + (fraction.equals("2") ? " m²" : " m³")));
      }
      if (isLengthPower(expected.get())) {
        return null;
      }
    }
    if (!rest.isEmpty() && !UnitReader.isLetter(rest.charAt(0))) {
      return unreadable("After a letter code such as 4k7 only a unit can follow. Type one number with its unit.");
    }
    Optional<Unit> coded = switch (letter) {
      case 'R', 'L' -> Optional.of(Unit.parse("ohm"));
      case 'V', 'A', 'F' -> Optional.of(Unit.parse(String.valueOf(letter)));
      default -> codedPart(letter);
    };
    if (!rest.isEmpty()) {
      Unit unit = UnitReader.readOrNull(UnitWords.symbols(rest, asksForTemperature()));
      if (unit == null) {
        return unknownUnit(rest);
      }
      boolean fits = unit.equals(unit.withoutPrefix())
          && (coded.isEmpty() || coded.get().dimension().equals(unit.dimension()));
      if (!fits) {
        return unreadable("The letter in " + text.substring(0, end) + " already stands for a prefix or a unit, and "
            + shown(rest) + " is another. Give only one.");
      }
      coded = Optional.of(unit);
    }
    int power = letter == 'K' ? 3 : letter == 'L' ? -3 : UnitReader.powerOf(letter);
    double number = TypedNumber.ofDigits(whole, fraction);
    return value(negative ? -number : number, power, coded,
        TypedNumber.significantFigures(whole + fraction, true));
  }

  /** The standard's codes are for resistors and capacitors: where one of these is asked for, the code has its unit. */
  private Optional<Unit> codedPart(char letter) {
    if (expected.isPresent() && expected.get().dimension().equals(Dimension.RESISTANCE) && "kKMG".indexOf(letter) >= 0) {
      return Optional.of(Unit.parse("ohm"));
    }
    if (expected.isPresent() && expected.get().dimension().equals(Dimension.CAPACITANCE)
        && "pnuµm".indexOf(letter) >= 0) {
      return Optional.of(Unit.parse("F"));
    }
    return Optional.empty();
  }

  private static int digitsEnd(String text, int from) {
    int end = from;
    while (end < text.length() && TypedText.isDigit(text.charAt(end))) {
      end++;
    }
    return end;
  }

  private Reading numberWithUnit(String text) throws TypedNumber.Fault {
    TypedNumber number = TypedNumber.read(text);
    String rest = text.substring(number.end()).trim();
    if (rest.endsWith(".")) {
      rest = rest.substring(0, rest.length() - 1).trim();
    }
    if (rest.isEmpty()) {
      return reading(number, 0, Optional.empty(), rest);
    }
    char prefix = UnitWords.prefixAlone(rest);
    if (prefix != 0) {
      return prefixAlone(number, prefix, rest.length() == 1);
    }
    if (rest.length() > 1 && rest.charAt(0) == '/' && UnitReader.isLetter(rest.charAt(1))) {
      rest = "1" + rest;
    }
    if (UnitWords.isFahrenheit(rest)) {
      return unreadable("Degrees Fahrenheit are not used on these sheets. Give the temperature in °C.");
    }
    try {
      Unit unit = Unit.parse(UnitWords.symbols(rest, asksForTemperature()));
      return reading(number, 0, Optional.of(unit), rest);
    } catch (UnitFault fault) {
      return notAUnit(rest, fault);
    }
  }

  /** @param mayBeUnit whether a single letter was typed, not the word milli */
  private Reading prefixAlone(TypedNumber number, char letter, boolean mayBeUnit) {
    int power = letter == 'K' ? 3 : UnitReader.powerOf(letter);
    if (mayBeUnit && (letter == 'K' || letter == 'm')) {
      Unit unit = Unit.parse(String.valueOf(letter));
      if (expected.isEmpty()) {
        String digits = number.hasTwoReadings() ? number.readAsDecimal() : typedNumber(number);
        return new Reading.Ambiguous(asTyped, letter == 'K'
            ? List.of(digits + " thousand", digits + " kelvin")
            : List.of(digits + " thousandths", digits + " metres"));
      }
      boolean isUnit = letter == 'K' ? expected.get().dimension().kelvin() != 0 : isLengthPower(expected.get());
      if (isUnit) {
        return reading(number, 0, Optional.of(unit), String.valueOf(letter));
      }
    }
    return reading(number, power, Optional.empty(), String.valueOf(letter));
  }

  private static String typedNumber(TypedNumber number) {
    return QuantityWriter.POINT.plain(number.value(), Unit.ONE, Decimal.MOST_DIGITS).number();
  }

  private Reading reading(TypedNumber number, int power, Optional<Unit> unit, String rest) {
    if (number.hasTwoReadings()) {
      String behind = rest.isEmpty() ? "" : " " + rest;
      return new Reading.Ambiguous(asTyped, List.of(number.readAsDecimal() + behind, number.readAsGrouped() + behind));
    }
    return value(number.value(), power, unit, number.significantFigures());
  }

  private Reading value(double number, int power, Optional<Unit> unit, int figures) {
    double prefixFactor = PowerOfTen.scale(1, power);
    double scaled = Unit.scaled(number, prefixFactor);
    return new Reading.Value(asTyped, number, prefixFactor, unit, figures, scaled == Math.floor(scaled));
  }

  private boolean asksForTemperature() {
    return expected.isPresent() && expected.get().dimension().equals(Dimension.TEMPERATURE);
  }

  private static boolean isLengthPower(Unit unit) {
    Dimension d = unit.dimension();
    return d.metre() != 0 && d.kilogram() == 0 && d.ampere() == 0 && d.kelvin() == 0;
  }

  private Reading notAUnit(String rest, UnitFault fault) {
    char first = rest.charAt(0);
    if (first == '/' || first == '+' || first == '-' || first == '*' || first == '^' || first == '(' || first == '·'
        || first == '×') {
      return unreadable(first == '/' && rest.length() > 1 && TypedText.isDigit(rest.charAt(1))
          ? "A fraction is not read. Work it out and type a decimal number."
          : "This is a calculation, not its result. Work it out and type one number with its unit.");
    }
    if (first == '±') {
      return unreadable("Only one value is read. Leave out the ± and what follows.");
    }
    if (TypedText.isDigit(first) || hasSecondNumber(rest)) {
      return unreadable("There is more than one number here. Type one number with one unit.");
    }
    if (rest.length() == 1 || isOneWord(rest)) {
      return unreadable(capital(fault.getMessage()) + (fault.getMessage().endsWith("?") ? "" : ".") + UNIT_HINT);
    }
    return unknownUnit(rest);
  }

  private Reading unknownUnit(String rest) {
    return unreadable("The unit " + shown(rest) + " is not understood." + UNIT_HINT);
  }

  private static boolean hasSecondNumber(String rest) {
    for (int i = 1; i < rest.length(); i++) {
      if (TypedText.isDigit(rest.charAt(i)) && (rest.charAt(i - 1) == ' ' || rest.charAt(i - 1) == ',')) {
        return true;
      }
    }
    return false;
  }

  private static boolean isOneWord(String rest) {
    for (int i = 0; i < rest.length(); i++) {
      if (!UnitReader.isLetter(rest.charAt(i))) {
        return false;
      }
    }
    return true;
  }

  private static String capital(String sentence) {
    char first = sentence.charAt(0);
    return first >= 'a' && first <= 'z' ? (char) (first + 'A' - 'a') + sentence.substring(1) : sentence;
  }

  private static String shown(String typed) {
    return typed.length() <= 20 ? "“" + typed + "”" : "“" + typed.substring(0, 20) + "…”";
  }

  private Reading unreadable(String problem) {
    return new Reading.Unreadable(asTyped, problem);
  }
}
