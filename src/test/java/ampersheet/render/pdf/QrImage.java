package ampersheet.render.pdf;

import ampersheet.figure.Point;
import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.List;

/** The picture that a drawn code makes, to be read by the ZXing library. */
final class QrImage extends LuminanceSource {
    private static final int PIXELS = 8;

    private final boolean[][] black;

    private QrImage(boolean[][] black) {
        super(black.length * PIXELS, black.length * PIXELS);
        this.black = black;
    }

    static QrImage of(SheetCode code) {
        int modules = (int) code.width();
        boolean[][] black = new boolean[modules][modules];
        for (List<Point> bar : code.bars()) {
            for (int x = (int) bar.get(0).x(); x < (int) bar.get(1).x(); x++) {
                black[(int) bar.get(0).y()][x] = true;
            }
        }
        return new QrImage(black);
    }

    String decoded() throws Exception {
        com.google.zxing.Result result = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(this)));
        if (result.getBarcodeFormat() != BarcodeFormat.QR_CODE) {
            throw new AssertionError(result.getBarcodeFormat());
        }
        return result.getText();
    }

    @Override
    public byte[] getRow(int y, byte[] row) {
        byte[] line = row != null && row.length >= getWidth() ? row : new byte[getWidth()];
        for (int x = 0; x < getWidth(); x++) {
            line[x] = (byte) (black[y / PIXELS][x / PIXELS] ? 0 : 255);
        }
        return line;
    }

    @Override
    public byte[] getMatrix() {
        byte[] matrix = new byte[getWidth() * getHeight()];
        for (int y = 0; y < getHeight(); y++) {
            System.arraycopy(getRow(y, null), 0, matrix, y * getWidth(), getWidth());
        }
        return matrix;
    }
}
