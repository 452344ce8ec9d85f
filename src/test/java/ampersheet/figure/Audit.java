package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;

/** What holds for every figure of this room. */
public final class Audit {
    private static final Set<String> ELEMENTS = Set.of("svg", "title", "desc", "g", "path", "text", "tspan", "use");

    private Audit() {}

    /** Everything a figure's SVG promises to any page that takes it in. */
    static void svg(Figure figure, String idPrefix, String where) {
        Element root = SvgText.parse(figure.svg());
        assertEquals("svg", root.getTagName(), where);
        assertEquals("http://www.w3.org/2000/svg", root.getAttribute("xmlns"), where);
        assertEquals("img", root.getAttribute("role"), where);
        assertEquals(
                "0 0 " + root.getAttribute("width") + " " + root.getAttribute("height"),
                root.getAttribute("viewBox"),
                where);
        assertEquals(idPrefix + "-title", root.getAttribute("aria-labelledby"), where);
        assertEquals(idPrefix + "-desc", root.getAttribute("aria-describedby"), where);
        Set<String> ids = new TreeSet<>();
        for (Element element : SvgText.elements(root)) {
            assertTrue(ELEMENTS.contains(element.getTagName()), where + ": " + element.getTagName());
            for (int i = 0; i < element.getAttributes().getLength(); i++) {
                attribute((Attr) element.getAttributes().item(i), idPrefix, where);
            }
            if (element.hasAttribute("id")) {
                assertTrue(element.getAttribute("id").startsWith(idPrefix + "-"), where);
                assertTrue(ids.add(element.getAttribute("id")), where);
            }
        }
        assertTrue(ids.containsAll(Set.of(idPrefix + "-title", idPrefix + "-desc")), where);
        assertEquals(figure.title(), root.getElementsByTagName("title").item(0).getTextContent(), where);
        assertEquals(figure.summary(), root.getElementsByTagName("desc").item(0).getTextContent(), where);
    }

    private static void attribute(Attr attribute, String idPrefix, String where) {
        String value = attribute.getValue();
        String place = where + ": " + attribute.getName() + "=" + value;
        switch (attribute.getName()) {
            case "stroke-width" ->
                assertTrue(Double.parseDouble(value) * 25.4 / 96 >= 0.35, place + " thinner than 0.35 mm");
            case "font-size" -> assertTrue(Double.parseDouble(value) >= 12, place + " too small to read");
            case "stroke", "fill" -> assertTrue(value.equals("currentColor") || value.equals("none"), place);
            case "href" -> assertTrue(value.startsWith("#" + idPrefix + "-"), place);
            case "style", "class", "xlink:href" -> throw new AssertionError(place);
            default -> assertFalse(attribute.getName().startsWith("on"), place);
        }
        if (Set.of("x", "y", "cx", "cy", "r", "points", "d", "width", "height", "dy")
                .contains(attribute.getName())) {
            for (String number : value.split("[^0-9.-]+|(?<=[0-9])(?=-)")) {
                assertTrue(number.isEmpty() || number.matches("-?[0-9]+(\\.[0-9]{1,2})?"), place);
            }
        }
    }

    /** A curve keeps to its column, and its labels stand clear. */
    public static void clear(CurveFigure.Plot plot, double widest, String where) {
        Drawing drawing = CurveFigure.layOut(plot, widest);
        assertTrue(
                drawing.bounds().width() <= widest,
                () -> where + " is " + drawing.bounds().width() + " wide");
        clear(drawing, where);
    }

    /** Labels stand clear of each other and of every line; text inside a body stays inside it. */
    static void clear(Drawing drawing, String where) {
        clear(drawing, where, 0);
    }

    /** @param touching how far a line may come into the box of a text, in pixels */
    static void clear(Drawing drawing, String where, double touching) {
        List<Shape> shapes = drawing.shapes();
        List<String> collisions = new ArrayList<>();
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Words words) {
                for (Shape other : shapes) {
                    boolean mayEnclose =
                            words.insideBody() && !(other instanceof Shape.Words) && encloses(other, words);
                    if (other != shape
                            && !mayEnclose
                            && other.meets(words.bounds().grown(-touching))) {
                        collisions.add(text(words) + " on " + other);
                    }
                }
            }
        }
        assertEquals(List.of(), collisions, where);
    }

    private static boolean encloses(Shape body, Shape.Words words) {
        Box inner = words.bounds();
        Box outer = body.bounds();
        return outer.left() <= inner.left()
                && outer.right() >= inner.right()
                && outer.top() <= inner.top()
                && outer.bottom() >= inner.bottom();
    }

    static String text(Shape.Words words) {
        StringBuilder text = new StringBuilder();
        words.lettering().runs().forEach(run -> text.append(run.text()));
        return text.toString();
    }
}
