package ampersheet.formula;

/** Whole numbers as superscript characters. */
final class Superscript {
  private static final String DIGITS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

  private Superscript() {}

  static String of(int number) {
    StringBuilder text = new StringBuilder();
    for (char c : Integer.toString(number).toCharArray()) {
      text.append(c == '-' ? '⁻' : DIGITS.charAt(c - '0'));
    }
    return text.toString();
  }
}
