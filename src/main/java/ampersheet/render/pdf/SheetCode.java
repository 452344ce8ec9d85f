package ampersheet.render.pdf;

import ampersheet.figure.Point;
import io.nayuki.qrcodegen.QrCode;
import java.util.ArrayList;
import java.util.List;

/** The sheet ID as a QR code (ISO/IEC 18004), so that a phone need not type it; a unit is a module of the code. */
record SheetCode(QrCode code) implements OnPaper {
    private static final int QUIET = 4;
    private static final double MILLIMETRES_PER_MODULE = 0.7;

    static SheetCode of(String sheetId) {
        return new SheetCode(QrCode.encodeText(sheetId, QrCode.Ecc.MEDIUM));
    }

    /** In millimetres. */
    double side() {
        return Math.round(width() * MILLIMETRES_PER_MODULE * 10) / 10.0;
    }

    @Override
    public double width() {
        return code.size + 2 * QUIET;
    }

    @Override
    public double height() {
        return width();
    }

    @Override
    public void draw(PaperPen pen) {
        pen.fill(bars());
    }

    /** Dark modules that touch in a row are one rectangle. */
    List<List<Point>> bars() {
        List<List<Point>> bars = new ArrayList<>();
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
                    bars.add(List.of(
                            new Point(left, top),
                            new Point(right, top),
                            new Point(right, top + 1),
                            new Point(left, top + 1)));
                }
                x = end + 1;
            }
        }
        return bars;
    }
}
