package ampersheet.render.html;

/** The size of a drawing in CSS pixels, as its {@code <svg>} element states it; 0 for what is not stated. */
record DrawingSize(int width, int height) {
  private static final int PHONE = 400;

  /** The room beside the givens is about 410; a drawing may shrink to four fifths. */
  private static final int BESIDE_GIVENS = 520;

  static DrawingSize of(String svg) {
    String element = svg.substring(0, svg.indexOf('>') + 1);
    return new DrawingSize(number(element, " width=\""), number(element, " height=\""));
  }

  /** Too wide to stand beside the givens without its lettering becoming too small to read. */
  boolean isWide() {
    return width > BESIDE_GIVENS;
  }

  /** So wide that on a phone it had better scroll than shrink to the screen. */
  boolean scrollsOnAPhone() {
    return width > PHONE;
  }

  private static int number(String element, String attribute) {
    int at = element.indexOf(attribute);
    int number = 0;
    for (int i = at + attribute.length(); at >= 0 && Character.isDigit(element.charAt(i)) && number < 10_000; i++) {
      number = number * 10 + Character.digit(element.charAt(i), 10);
    }
    return number;
  }
}
