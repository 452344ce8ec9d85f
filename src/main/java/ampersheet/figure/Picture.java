package ampersheet.figure;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What is drawn of a figure: its size, its shapes, and the SVG element that shows them on a page. */
public final class Picture {
    private final double width;
    private final double height;
    private final Point origin;
    private final List<Shape> shapes;
    private final Function<SvgLook, String> svg;

    /**
     * @param origin where the upper left corner lies among the shapes
     * @param svg the element that shows them
     */
    Picture(double width, double height, Point origin, List<Shape> shapes, Function<SvgLook, String> svg) {
        this.width = width;
        this.height = height;
        this.origin = origin;
        this.shapes = List.copyOf(shapes);
        this.svg = svg;
    }

    /** In pixels. */
    public double width() {
        return width;
    }

    /** In pixels. */
    public double height() {
        return height;
    }

    /** A complete {@code <svg>} element with width, height, viewBox, role="img", title and desc. */
    public String svg() {
        return svg.apply(SvgLook.ALONE);
    }

    /**
     * The same for a page that has {@link #style()}, inside an element of the class {@code drawing}.
     *
     * @param partsNamed whether each part is a group with its name in {@code data-part}, for a script to point at
     */
    public String inPage(boolean partsNamed) {
        return svg.apply(partsNamed ? SvgLook.IN_PAGE : SvgLook.AT_REST);
    }

    /** Style rules for {@link #inPage()}. */
    public static String style() {
        return SvgLook.STYLE;
    }

    /** Hands the shapes to a pen, each after what lies below it. */
    public void draw(Pen pen) {
        shapes.forEach(shape -> shape.draw(pen, -origin.x(), -origin.y()));
    }

    /** The SVG says all that the shapes do. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Picture picture && picture.svg().equals(svg());
    }

    @Override
    public int hashCode() {
        return svg().hashCode();
    }

    /** All text in it. */
    public String letters() {
        return shapes.stream()
                .filter(Shape.Words.class::isInstance)
                .map(shape -> ((Shape.Words) shape).lettering().text())
                .collect(Collectors.joining("\n"));
    }
}
