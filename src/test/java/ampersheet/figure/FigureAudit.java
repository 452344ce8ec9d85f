package ampersheet.figure;

import java.util.List;

/** Reads a figure back from its SVG and looks at what a page shows of it. */
public final class FigureAudit {
    /** In pixels, of the ends of lines. */
    private static final double ROUNDING = 0.5;

    private FigureAudit() {}

    /** Of the SVG element, in pixels. */
    public static double width(Figure figure) {
        return Double.parseDouble(SvgText.parse(figure.svg()).getAttribute("width"));
    }

    public static int texts(Figure figure) {
        return SvgText.parse(figure.svg()).getElementsByTagName("text").getLength();
    }

    /** Labels stand clear of each other and of every line; text inside a body stays inside it. */
    public static void labelsStandClear(Figure figure, String where) {
        Drawing drawing = new Drawing();
        SvgReader.read(figure.svg(), new IntoDrawing(drawing));
        Audit.clear(drawing, where, ROUNDING);
    }

    /** Puts what a pen is handed into a drawing. */
    private record IntoDrawing(Drawing drawing) implements Pen {
        @Override
        public void line(List<Point> points, Stroke stroke) {
            drawing.add("", new Shape.Line(points, stroke));
        }

        @Override
        public void polygon(List<Point> corners, Stroke stroke, boolean filled) {
            drawing.add("", new Shape.Polygon(corners, stroke, filled));
        }

        @Override
        public void circle(Point centre, double radius, Stroke stroke, boolean filled) {
            drawing.add("", new Shape.Circle(centre, radius, stroke, filled));
        }

        @Override
        public void outline(List<Corner> corners, Stroke stroke) {
            drawing.add("", new Shape.Outline(corners.stream().map(Corner::at).toList(), 3, stroke));
        }

        @Override
        public void words(Lettering lettering, Point baseline, Lettering.Anchor anchor) {
            drawing.add("", new Shape.Words(lettering, baseline, anchor, true));
        }
    }
}
