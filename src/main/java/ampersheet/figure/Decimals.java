package ampersheet.figure;

/** Numbers as attribute text: at most two decimals, no trailing zeros, no exponent, the same on every machine. */
final class Decimals {
  private Decimals() {}

  static String print(double value) {
    long hundredths = (long) Math.floor(Math.abs(value) * 100 + 0.5);
    String sign = value < 0 && hundredths != 0 ? "-" : "";
    long whole = hundredths / 100;
    int rest = (int) (hundredths % 100);
    if (rest == 0) {
      return sign + whole;
    }
    String decimals = rest % 10 == 0 ? "" + rest / 10 : rest < 10 ? "0" + rest : "" + rest;
    return sign + whole + "." + decimals;
  }
}
