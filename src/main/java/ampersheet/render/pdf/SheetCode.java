package ampersheet.render.pdf;

import io.nayuki.qrcodegen.QrCode;

/** The sheet ID as a QR code (ISO/IEC 18004), so that a phone need not type it. */
final class SheetCode {
  private static final int QUIET = 4;
  private static final double MILLIMETRES_PER_MODULE = 0.7;

  private SheetCode() {}

  static String svg(String sheetId) {
    QrCode code = QrCode.encodeText(sheetId, QrCode.Ecc.MEDIUM);
    int size = code.size + 2 * QUIET;
    StringBuilder squares = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      for (int x = 0; x < code.size; ) {
        int end = x;
        while (end < code.size && code.getModule(end, y)) {
          end++;
        }
        if (end > x) {
          int left = x + QUIET;
          int right = end + QUIET;
          int top = y + QUIET;
          squares.append('M').append(left).append(',').append(top).append('L').append(right).append(',').append(top)
              .append('L').append(right).append(',').append(top + 1).append('L').append(left).append(',').append(top + 1)
              .append('Z');
        }
        x = end + 1;
      }
    }
    double side = Math.round(size * MILLIMETRES_PER_MODULE * 10) / 10.0;
    return "<svg alt=\"QR code of the sheet ID " + sheetId + "\" style=\"width:" + side + "mm;height:" + side
        + "mm\" xmlns=\"http://www.w3.org/2000/svg\" width=\"" + size + "\" height=\"" + size + "\"><path d=\"" + squares
        + "\" fill=\"currentColor\" stroke=\"none\"/></svg>";
  }
}
