package ampersheet.figure;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What is drawn of a figure: its size, its shapes, and the SVG element that shows them on a page. */
public final class Picture {
    private final String id;
    private final double width;
    private final double height;
    private final Point origin;
    private final List<Shape> shapes;
    private final Function<SvgLook, String> svg;

    /**
     * @param id what its ids in a page begin with
     * @param origin where the upper left corner lies among the shapes
     * @param svg the element that shows them
     */
    Picture(String id, double width, double height, Point origin, List<Shape> shapes, Function<SvgLook, String> svg) {
        this.id = id;
        this.width = width;
        this.height = height;
        this.origin = origin;
        this.shapes = List.copyOf(shapes);
        this.svg = svg;
    }

    /** The id that the page gives the title, where it stands below the drawing. */
    public String titleId() {
        return id + "-title";
    }

    /** The id that the page gives the description, where it stands in words anyway. */
    public String descriptionId() {
        return id + "-desc";
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

    /** The same for a file that is shown on a page of any colour: its lines are black, so it brings its own white. */
    public String file() {
        String alone = svg();
        return "<svg style=\"background:#fff\"" + alone.substring("<svg".length()) + "\n";
    }

    /**
     * The same for a page that has {@link #style()}, inside an element of the class {@code drawing}; its title and
     * description are the page's elements {@link #titleId()} and {@link #descriptionId()}.
     *
     * @param partsNamed whether each part is a group with its name in {@code data-part}, for a script to point at
     */
    public String inPage(boolean partsNamed) {
        return svg.apply(partsNamed ? SvgLook.IN_PAGE : SvgLook.AT_REST);
    }

    /** Style rules for {@link #inPage(boolean)}. */
    public static String style() {
        return SvgLook.style();
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
