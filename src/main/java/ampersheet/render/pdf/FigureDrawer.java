package ampersheet.render.pdf;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.AbstractOutputDevice;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.io.File;
import java.util.List;
import org.w3c.dom.Element;

/**
 * Draws what the markup only refers to: the page setter has a place for drawings where an {@code svg} element stands.
 */
final class FigureDrawer implements SVGDrawer {
    /** Attribute of the element: which of the handout's drawings it is. */
    static final String NUMBER = "data-drawing";
    /** In millimetres: a photocopy of a photocopy still shows it. */
    private static final double THINNEST = 0.36;

    private static final double PIXELS_PER_MILLIMETRE = 96 / 25.4;

    private final List<OnPaper> drawings;
    private final String family;

    /** @param drawings of the handout; @param family of the lettering */
    FigureDrawer(List<OnPaper> drawings, String family) {
        this.drawings = drawings;
        this.family = family;
    }

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext css, double cssWidth, double cssHeight, double dotsPerPixel) {
        OnPaper drawing = drawings.get(Integer.parseInt(svg.getAttribute(NUMBER)));
        double dots = cssWidth > 0 ? cssWidth / drawing.width() : dotsPerPixel;
        return new Image(drawing, family, dots, THINNEST * dotsPerPixel * PIXELS_PER_MILLIMETRE);
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> fontFaces, SharedContext shared) {
        // The faces are registered with the page itself.
    }

    @Override
    public void addFontFile(File fontFile, String name, Integer weight, FontStyle style) {
        throw new IllegalStateException("a drawing has the faces of its page, not " + fontFile);
    }

    @Override
    public void close() {
        // Nothing is held open.
    }

    /** @param dots of the page per unit of the drawing; @param thinnest line in dots */
    private record Image(OnPaper drawing, String family, double dots, double thinnest) implements SVGImage {
        @Override
        public int getIntrinsicWidth() {
            return (int) Math.ceil(drawing.width() * dots);
        }

        @Override
        public int getIntrinsicHeight() {
            return (int) Math.ceil(drawing.height() * dots);
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            drawing.draw(new PaperPen(
                    (AbstractOutputDevice) device, context, family, new PaperPen.Place(x, y, dots, thinnest)));
        }
    }
}
