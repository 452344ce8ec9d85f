package ampersheet.figure;

import java.util.List;

/**
 * Puts a picture's shapes on a page. All numbers are in pixels from its upper left corner, rounded to hundredths, so
 * that every format draws the same. A new kind of shape is a new method here, which every format then has to draw.
 */
public interface Pen {
    /** An open line through points. */
    void line(List<Point> points, Stroke stroke);

    /** A closed body with straight sides; a filled one has no outline. */
    void polygon(List<Point> corners, Stroke stroke, boolean filled);

    /** A filled one has no outline. */
    void circle(Point centre, double radius, Stroke stroke, boolean filled);

    /** A closed outline with rounded corners. */
    void outline(List<Corner> corners, Stroke stroke);

    /** One line of text. */
    void words(Lettering lettering, Point baseline, Lettering.Anchor anchor);

    /** A corner is rounded from {@code in} to {@code out}, by a quadratic curve whose control point it is. */
    record Corner(Point in, Point at, Point out) {}
}
