package ampersheet.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Hands what an SVG shows to a pen again, shape by shape, as a page understands it. */
final class SvgReader {
    private static final Pattern COMMAND = Pattern.compile("([MmlhvaqzLZ])([^MmlhvaqzLZ]*)");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]{1,2})?");

    private final Pen pen;

    private SvgReader(Pen pen) {
        this.pen = pen;
    }

    static void read(String svg, Pen pen) {
        Element root = SvgText.parse(svg);
        read(root, root, new Point(0, 0), pen);
    }

    private static void read(Element root, Element within, Point moved, Pen pen) {
        for (Element element : SvgText.elements(within)) {
            switch (element.getTagName()) {
                case "path" -> new SvgReader(pen).path(element, moved);
                case "text" -> words(element, moved, pen);
                case "use" ->
                    read(root, named(root, element.getAttribute("href").substring(1)), moved(element, moved), pen);
                case "polyline", "polygon", "circle", "rect" ->
                    throw new AssertionError("not written by the pen: " + element);
                default -> {}
            }
        }
    }

    private static Element named(Element root, String id) {
        return SvgText.elements(root).stream()
                .filter(element -> element.getAttribute("id").equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing is named " + id));
    }

    private static Point moved(Element use, Point by) {
        return by.plus(length(use, "x"), length(use, "y"));
    }

    private static double length(Element element, String attribute) {
        return element.hasAttribute(attribute) ? Double.parseDouble(element.getAttribute(attribute)) : 0;
    }

    /** Numbers of a path's data or of an attribute. */
    static List<Double> numbers(String text) {
        List<Double> numbers = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(text);
        while (matcher.find()) {
            numbers.add(Double.valueOf(matcher.group()));
        }
        return numbers;
    }

    private void path(Element element, Point moved) {
        boolean filled = element.getAttribute("fill").equals("currentColor");
        Stroke stroke = stroke(element);
        List<Point> points = new ArrayList<>();
        List<Pen.Corner> corners = new ArrayList<>();
        Matcher commands = COMMAND.matcher(element.getAttribute("d"));
        Point at = moved;
        Point start = at;
        double radius = 0;
        while (commands.find()) {
            List<Double> n = numbers(commands.group(2));
            switch (commands.group(1)) {
                case "M", "m" -> {
                    openLine(points, stroke);
                    at = rounded(at.plus(n.get(0), n.get(1)));
                    start = at;
                    points = new ArrayList<>(List.of(at));
                    for (int i = 2; i < n.size(); i += 2) {
                        at = rounded(at.plus(n.get(i), n.get(i + 1)));
                        points.add(at);
                    }
                }
                case "h", "v" -> {
                    for (double by : n) {
                        at = rounded(commands.group(1).equals("h") ? at.plus(by, 0) : at.plus(0, by));
                        points.add(at);
                    }
                }
                case "l" -> {
                    for (int i = 0; i < n.size(); i += 2) {
                        at = rounded(at.plus(n.get(i), n.get(i + 1)));
                        points.add(at);
                    }
                }
                case "a" -> radius = n.get(0);
                case "q" -> {
                    for (int i = 0; i < n.size(); i += 4) {
                        Point out = rounded(at.plus(n.get(i + 2), n.get(i + 3)));
                        corners.add(new Pen.Corner(at, rounded(at.plus(n.get(i), n.get(i + 1))), out));
                        at = out;
                    }
                }
                default -> {
                    if (radius > 0) {
                        pen.circle(rounded(start.plus(radius, 0)), radius, stroke, false);
                    } else if (!corners.isEmpty()) {
                        pen.outline(corners, stroke);
                    } else {
                        pen.polygon(points, stroke, filled);
                    }
                    radius = 0;
                    corners = new ArrayList<>();
                    points = new ArrayList<>();
                    at = start;
                }
            }
        }
        openLine(points, stroke);
    }

    private void openLine(List<Point> points, Stroke stroke) {
        if (points.size() == 2 && points.get(0).equals(points.get(1))) {
            pen.circle(points.get(0), stroke.width() / 2, Stroke.LINE, true);
        } else if (points.size() > 1) {
            pen.line(points, stroke);
        }
    }

    /** Hundredths added up are hundredths again. */
    private static Point rounded(Point point) {
        return new Point(Decimals.rounded(point.x()), Decimals.rounded(point.y()));
    }

    private static Stroke stroke(Element element) {
        double width = element.hasAttribute("stroke-width")
                ? Double.parseDouble(element.getAttribute("stroke-width"))
                : Stroke.LINE.width();
        List<Double> dashes = element.hasAttribute("stroke-dasharray")
                ? Arrays.stream(element.getAttribute("stroke-dasharray").split(" "))
                        .map(Double::valueOf)
                        .toList()
                : List.of();
        return new Stroke(width, dashes);
    }

    private static void words(Element element, Point moved, Pen pen) {
        List<Lettering.Run> runs = new ArrayList<>();
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            boolean subscript = node instanceof Element run && run.hasAttribute("font-size");
            boolean italic = node instanceof Element run && run.hasAttribute("font-style");
            runs.add(new Lettering.Run(
                    node.getTextContent(),
                    subscript ? Lettering.Face.SUBSCRIPT : italic ? Lettering.Face.ITALIC : Lettering.Face.UPRIGHT));
        }
        Element look = (Element) element.getParentNode();
        Lettering lettering = new Lettering(
                runs,
                look.hasAttribute("font-size") ? Double.parseDouble(look.getAttribute("font-size")) : Lettering.BODY,
                look.getAttribute("font-weight").equals("bold"));
        Lettering.Anchor anchor = switch (look.getAttribute("text-anchor")) {
            case "middle" -> Lettering.Anchor.MIDDLE;
            case "end" -> Lettering.Anchor.END;
            default -> Lettering.Anchor.START;
        };
        Point baseline =
                new Point(Double.parseDouble(element.getAttribute("x")), Double.parseDouble(element.getAttribute("y")));
        pen.words(lettering, rounded(baseline.plus(moved.x(), moved.y())), anchor);
    }
}
