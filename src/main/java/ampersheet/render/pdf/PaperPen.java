package ampersheet.render.pdf;

import ampersheet.figure.Lettering;
import ampersheet.figure.Pen;
import ampersheet.figure.Point;
import ampersheet.figure.Stroke;
import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.render.AbstractOutputDevice;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/** Draws PDF lines and real text in the faces of the page, in black. */
final class PaperPen implements Pen {
    private static final FSRGBColor INK = FSRGBColor.BLACK;
    private static final int MITRE_LIMIT = 10;

    private final AbstractOutputDevice device;
    private final RenderingContext context;
    private final String family;
    private final Place place;

    /**
     * Where a drawing lies on the page, in the page's dots.
     *
     * @param dots per unit of the drawing
     * @param thinnest width that a line has at least
     */
    record Place(double left, double top, double dots, double thinnest) {}

    /** @param family of the lettering */
    PaperPen(AbstractOutputDevice device, RenderingContext context, String family, Place place) {
        this.device = device;
        this.context = context;
        this.family = family;
        this.place = place;
    }

    @Override
    public void line(List<Point> points, Stroke stroke) {
        stroked(path(points, new Path2D.Double()), stroke);
    }

    @Override
    public void polygon(List<Point> corners, Stroke stroke, boolean filled) {
        Path2D path = path(corners, new Path2D.Double());
        path.closePath();
        body(path, stroke, filled);
    }

    @Override
    public void circle(Point centre, double radius, Stroke stroke, boolean filled) {
        double dots = radius * place.dots();
        body(new Ellipse2D.Double(x(centre.x()) - dots, y(centre.y()) - dots, 2 * dots, 2 * dots), stroke, filled);
    }

    @Override
    public void outline(List<Corner> corners, Stroke stroke) {
        Path2D path = new Path2D.Double();
        for (Corner corner : corners) {
            if (path.getCurrentPoint() == null) {
                path.moveTo(x(corner.in().x()), y(corner.in().y()));
            } else {
                path.lineTo(x(corner.in().x()), y(corner.in().y()));
            }
            path.quadTo(
                    x(corner.at().x()),
                    y(corner.at().y()),
                    x(corner.out().x()),
                    y(corner.out().y()));
        }
        path.closePath();
        stroked(path, stroke);
    }

    /** Bodies filled at one stroke, so that none shows where they touch. */
    void fill(List<List<Point>> bodies) {
        Path2D path = new Path2D.Double();
        for (List<Point> corners : bodies) {
            path(corners, path).closePath();
        }
        filled(path);
    }

    private Path2D path(List<Point> points, Path2D path) {
        path.moveTo(x(points.get(0).x()), y(points.get(0).y()));
        points.subList(1, points.size()).forEach(point -> path.lineTo(x(point.x()), y(point.y())));
        return path;
    }

    private void body(Shape shape, Stroke stroke, boolean filled) {
        if (filled) {
            filled(shape);
        } else {
            stroked(shape, stroke);
        }
    }

    private void filled(Shape shape) {
        device.setColor(INK);
        device.fill(shape);
    }

    private void stroked(Shape shape, Stroke stroke) {
        device.setColor(INK);
        device.setStroke(stroke(stroke));
        device.draw(shape);
    }

    private BasicStroke stroke(Stroke stroke) {
        float width = (float) Math.max(stroke.width() * place.dots(), place.thinnest());
        if (stroke.dashes().isEmpty()) {
            return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        }
        float[] dashes = new float[stroke.dashes().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = (float) (stroke.dashes().get(i) * place.dots());
        }
        return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, MITRE_LIMIT, dashes, 0);
    }

    // Lettering

    /** Text in one face. */
    private record Run(Lettering.Span span, FontSpecification face, FSFont font, double width) {}

    @Override
    public void words(Lettering lettering, Point baseline, Lettering.Anchor anchor) {
        List<Run> runs = new ArrayList<>();
        for (Lettering.Span span : lettering.spans()) {
            FontSpecification face = face(span, lettering.bold());
            FSFont font = context.getFont(face);
            runs.add(new Run(
                    span, face, font, context.getTextRenderer().getWidth(context.getFontContext(), font, span.text())));
        }
        double width = runs.stream().mapToDouble(Run::width).sum();
        double at = x(baseline.x())
                - switch (anchor) {
                    case START -> 0;
                    case MIDDLE -> width / 2;
                    case END -> width;
                };
        double y = y(baseline.y());
        device.setColor(INK);
        FontSpecification around = device.getFontSpecification();
        for (Run run : runs) {
            device.setFontSpecification(run.face()); // or it slants and thickens after what was written before
            device.setFont(run.font());
            context.getTextRenderer().drawString(device, run.span().text(), (float) at, (float)
                    (y + run.span().lowered() * place.dots()));
            at += run.width();
        }
        device.setFontSpecification(around);
    }

    private FontSpecification face(Lettering.Span span, boolean bold) {
        FontSpecification face = new FontSpecification();
        face.families = new String[] {family, Fonts.SYMBOLS};
        face.size = (float) (span.size() * place.dots());
        face.fontWeight = bold ? IdentValue.BOLD : IdentValue.NORMAL;
        face.fontStyle = span.italic() ? IdentValue.ITALIC : IdentValue.NORMAL;
        face.variant = IdentValue.NORMAL;
        return face;
    }

    private double x(double units) {
        return place.left() + units * place.dots();
    }

    private double y(double units) {
        return place.top() + units * place.dots();
    }
}
