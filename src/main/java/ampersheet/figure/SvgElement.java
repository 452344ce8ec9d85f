package ampersheet.figure;

import ampersheet.formula.Spoken;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes a drawing as one SVG element. Parts that are drawn alike, as the tiles of a panel, are written once and shown
 * again by reference.
 */
final class SvgElement {
    /** Letters of a part from which on a second one is a reference to the first. */
    private static final int WORTHWHILE = 300;

    private final Map<String, List<Shape>> byPart;
    private final Box frame;
    private final String id;
    private final SvgLook look;
    private final StringBuilder svg = new StringBuilder();
    private int names;

    /** @param idPrefix makes the ids unique in a page */
    SvgElement(Map<String, List<Shape>> byPart, Box frame, String idPrefix, SvgLook look) {
        this.byPart = byPart;
        this.frame = frame;
        this.id = Xml.escape(idPrefix);
        this.look = look;
    }

    String write(String title, String description) {
        String width = Decimals.print(Math.ceil(frame.width()));
        String height = Decimals.print(Math.ceil(frame.height()));
        svg.append("<svg").append(look.whole()).append(" viewBox=\"0 0 ").append(width + " " + height);
        svg.append("\" width=\"").append(width).append("\" height=\"").append(height);
        svg.append("\" role=\"img\" aria-labelledby=\"").append(id);
        svg.append("-title\" aria-describedby=\"").append(id).append("-desc\"");
        svg.append(look.lines()).append(">" + look.lineBreak());
        if (look == SvgLook.ALONE) {
            svg.append("<title id=\"").append(id).append("-title\">").append(Xml.escape(Spoken.words(title)));
            svg.append("</title>\n<desc id=\"")
                    .append(id)
                    .append("-desc\">")
                    .append(Xml.escape(Spoken.words(description)));
            svg.append("</desc>\n");
        }
        parts();
        return svg.append("</svg>" + look.lineBreak()).toString();
    }

    private void parts() {
        Map<String, String> drawn = new LinkedHashMap<>();
        byPart.forEach((part, shapes) -> drawn.put(part, fromItsCorner(shapes)));
        Map<String, Integer> howOften = new TreeMap<>();
        drawn.values().forEach(alike -> howOften.merge(alike, 1, Integer::sum));
        Map<String, Written> written = new TreeMap<>();
        List<Shape> others = new ArrayList<>();
        byPart.forEach((part, shapes) -> {
            String alike = drawn.get(part);
            boolean again = alike.length() > WORTHWHILE && howOften.get(alike) > 1;
            if (!again && !look.namesParts()) {
                others.addAll(shapes);
                return;
            }
            if (look.namesParts()) {
                svg.append(part.isEmpty() ? "<g>" : "<g data-part=\"" + Xml.escape(part) + "\">");
            }
            if (again) {
                repeated(shapes, written, alike);
            } else {
                svg.append(look.lineBreak());
                shapes(shapes);
            }
            svg.append(look.namesParts() ? "</g>" + look.lineBreak() : "");
        });
        shapes(others);
    }

    private void repeated(List<Shape> shapes, Map<String, Written> written, String alike) {
        Written before = written.get(alike);
        if (before != null) {
            before.again(corner(shapes), svg);
            return;
        }
        Written first = new Written(nextName(), corner(shapes));
        written.put(alike, first);
        svg.append("<g id=\"").append(first.name).append("\">" + look.lineBreak());
        shapes(shapes);
        svg.append("</g>");
    }

    private void shapes(List<Shape> shapes) {
        SvgPen pen = new SvgPen(svg, look, this::nextName);
        shapes.forEach(shape -> shape.draw(pen, -frame.left(), -frame.top()));
        pen.finish();
    }

    private String nextName() {
        names++;
        return id + "-" + names;
    }

    /** What a part looks like, wherever it stands. */
    private String fromItsCorner(List<Shape> shapes) {
        Point corner = corner(shapes);
        StringBuilder alone = new StringBuilder();
        SvgPen pen = new SvgPen(alone, look, () -> "");
        shapes.forEach(shape -> shape.draw(pen, -corner.x(), -corner.y()));
        pen.finish();
        return alone.toString();
    }

    private static Point corner(List<Shape> shapes) {
        Box first = shapes.get(0).bounds();
        return new Point(Decimals.rounded(first.left()), Decimals.rounded(first.top()));
    }

    /** A part that stands there under a name. */
    private record Written(String name, Point corner) {
        void again(Point at, StringBuilder svg) {
            SvgPen.reference(name, at.x() - corner.x(), at.y() - corner.y(), svg);
        }
    }
}
