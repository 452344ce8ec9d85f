package ampersheet.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

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
        for (Element element : SvgText.elements(SvgText.parse(figure.svg()))) {
            switch (element.getTagName()) {
                case "polyline" -> drawing.add("", new Shape.Line(points(element), stroke(element)));
                case "polygon" ->
                    drawing.add("", new Shape.Polygon(points(element), stroke(element), isFilled(element)));
                case "circle" ->
                    drawing.add(
                            "",
                            new Shape.Circle(
                                    new Point(number(element, "cx"), number(element, "cy")),
                                    number(element, "r"),
                                    stroke(element),
                                    isFilled(element)));
                case "path" -> drawing.add("", outline(element));
                case "text" -> drawing.add("", words(element));
                default -> {}
            }
        }
        Audit.clear(drawing, where, ROUNDING);
    }

    private static double number(Element element, String name) {
        return Double.parseDouble(element.getAttribute(name));
    }

    private static boolean isFilled(Element element) {
        return element.getAttribute("fill").equals("currentColor");
    }

    private static Stroke stroke(Element element) {
        double width = element.hasAttribute("stroke-width") ? number(element, "stroke-width") : Stroke.LINE.width();
        List<Double> dashes = element.hasAttribute("stroke-dasharray")
                ? Arrays.stream(element.getAttribute("stroke-dasharray").split(" "))
                        .map(Double::valueOf)
                        .toList()
                : List.of();
        return new Stroke(width, dashes);
    }

    private static List<Point> points(Element element) {
        return Arrays.stream(element.getAttribute("points").split(" "))
                .map(FigureAudit::point)
                .toList();
    }

    private static Point point(String pair) {
        String[] coordinates = pair.split(",");
        return new Point(Double.parseDouble(coordinates[0]), Double.parseDouble(coordinates[1]));
    }

    /** Its corners stand after each Q. */
    private static Shape outline(Element element) {
        List<Point> corners = new ArrayList<>();
        for (String part : element.getAttribute("d").split("Q")) {
            corners.add(point(part.split(" ")[0].replaceAll("[MZ]", "")));
        }
        return new Shape.Outline(corners.subList(1, corners.size()), 3, stroke(element));
    }

    private static Shape.Words words(Element element) {
        List<Lettering.Run> runs = new ArrayList<>();
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            boolean subscript = node instanceof Element run && run.hasAttribute("font-size");
            boolean italic = node instanceof Element run && run.hasAttribute("font-style");
            runs.add(new Lettering.Run(
                    node.getTextContent(),
                    subscript ? Lettering.Face.SUBSCRIPT : italic ? Lettering.Face.ITALIC : Lettering.Face.UPRIGHT));
        }
        Lettering lettering = new Lettering(
                runs,
                element.hasAttribute("font-size") ? number(element, "font-size") : Lettering.BODY,
                element.getAttribute("font-weight").equals("bold"));
        Lettering.Anchor anchor = switch (element.getAttribute("text-anchor")) {
            case "middle" -> Lettering.Anchor.MIDDLE;
            case "end" -> Lettering.Anchor.END;
            default -> Lettering.Anchor.START;
        };
        return new Shape.Words(lettering, new Point(number(element, "x"), number(element, "y")), anchor, true);
    }
}
