package ampersheet.render.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/**
 * Pages in the order in which leaves have them that are printed on both sides, turned over the short edge, laid on each
 * other and folded once: the last page beside the first, the second beside the last but one. Each front has marks where
 * to fold; the outermost also where to staple.
 */
final class Imposition {
    static final int PAGES_OF_A_LEAF = 4;

    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;
    /** In points, as all that follows: 0.35 mm. */
    private static final float LINE = 1;
    /** Nearer to the edge most printers leave white. */
    private static final float EDGE = (float) (5 * POINTS_PER_MILLIMETRE);

    private static final float FOLD = (float) (4 * POINTS_PER_MILLIMETRE);
    /** As wide as a staple. */
    private static final float STAPLE = (float) (12 * POINTS_PER_MILLIMETRE);

    /** The pages to the left and to the right on a side, counted from 0. */
    private record Side(int left, int right) {}

    private Imposition() {}

    /**
     * What is copied refers to the resources of the pages given, so these must be kept until it is written.
     *
     * @param pages as many as whole leaves hold
     */
    static PDDocument of(PDDocument pages) throws IOException {
        PDDocument folded = new PDDocument();
        for (int leaf = 0; leaf < pages.getNumberOfPages() / PAGES_OF_A_LEAF; leaf++) {
            for (Side side : sides(leaf, pages.getNumberOfPages())) {
                PDRectangle half = pages.getPage(side.left()).getMediaBox();
                PDPage page = new PDPage(new PDRectangle(2 * half.getWidth(), half.getHeight()));
                folded.addPage(page);
                boolean front = side.left() > side.right();
                try (PDPageContentStream content = new PDPageContentStream(folded, page)) {
                    draw(copy(pages.getPage(side.left()), folded), 0, content);
                    draw(copy(pages.getPage(side.right()), folded), half.getWidth(), content);
                    if (front) {
                        marks(half, leaf == 0, content);
                    }
                }
            }
        }
        return folded;
    }

    private static List<Side> sides(int leaf, int pages) {
        int outer = 2 * leaf;
        return List.of(new Side(pages - 1 - outer, outer), new Side(outer + 1, pages - 2 - outer));
    }

    private static PDFormXObject copy(PDPage page, PDDocument into) throws IOException {
        PDFormXObject copy = new PDFormXObject(new PDStream(into, page.getContents(), COSName.FLATE_DECODE));
        copy.setResources(page.getResources());
        copy.setBBox(page.getMediaBox());
        return copy;
    }

    private static void draw(PDFormXObject page, float left, PDPageContentStream content) throws IOException {
        content.saveGraphicsState();
        content.transform(Matrix.getTranslateInstance(left, 0));
        content.drawForm(page);
        content.restoreGraphicsState();
    }

    private static void marks(PDRectangle half, boolean outermost, PDPageContentStream content) throws IOException {
        content.setLineWidth(LINE);
        fold(half, EDGE, FOLD, content);
        fold(half, half.getHeight() - EDGE - FOLD, FOLD, content);
        if (outermost) {
            fold(half, (half.getHeight() - STAPLE) / 4, STAPLE, content);
            fold(half, (half.getHeight() - STAPLE) * 3 / 4, STAPLE, content);
        }
        content.stroke();
    }

    private static void fold(PDRectangle half, float from, float length, PDPageContentStream content)
            throws IOException {
        content.moveTo(half.getWidth(), from);
        content.lineTo(half.getWidth(), from + length);
    }
}
