package ampersheet.figure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Gathers shapes and writes them as a few SVG elements. What is drawn alike is one path: all ink is of one colour, so
 * that nobody sees where one shape ends and another begins, and a tile of a thousand pixels is not a thousand elements.
 */
final class SvgPen implements Pen {
    private final StringBuilder svg;
    private final Map<Stroke, SvgPath> lines = new LinkedHashMap<>();
    private final Map<Double, SvgPath> dots = new LinkedHashMap<>();
    private final SvgPath filled = new SvgPath();
    private final Map<String, StringBuilder> texts = new LinkedHashMap<>();

    private SvgPen(StringBuilder svg) {
        this.svg = svg;
    }

    /** Writes shapes, moved by {@code (dx, dy)}. */
    static void write(List<Shape> shapes, double dx, double dy, StringBuilder svg) {
        SvgPen pen = new SvgPen(svg);
        shapes.forEach(shape -> shape.draw(pen, dx, dy));
        pen.finish();
    }

    @Override
    public void line(List<Point> points, Stroke stroke) {
        path(stroke).line(points, stroke.dashes().isEmpty());
    }

    @Override
    public void polygon(List<Point> corners, Stroke stroke, boolean isFilled) {
        (isFilled ? filled : path(stroke)).polygon(corners);
    }

    @Override
    public void circle(Point centre, double radius, Stroke stroke, boolean isFilled) {
        if (isFilled) {
            dots.computeIfAbsent(radius, r -> new SvgPath()).dot(centre);
        } else {
            path(stroke).circle(centre, radius);
        }
    }

    @Override
    public void outline(List<Corner> corners, Stroke stroke) {
        path(stroke).outline(corners);
    }

    private SvgPath path(Stroke stroke) {
        return lines.computeIfAbsent(stroke, s -> new SvgPath());
    }

    @Override
    public void words(Lettering lettering, Point baseline, Lettering.Anchor anchor) {
        StringBuilder alike = texts.computeIfAbsent(look(lettering, anchor), l -> new StringBuilder());
        alike.append("<text x=\"")
                .append(Decimals.print(baseline.x()))
                .append("\" y=\"")
                .append(Decimals.print(baseline.y()))
                .append("\">");
        double lowered = 0;
        for (Lettering.Span span : lettering.spans()) {
            span(span, lowered, alike);
            lowered = span.lowered();
        }
        alike.append("</text>");
    }

    private static String look(Lettering lettering, Lettering.Anchor anchor) {
        StringBuilder look = new StringBuilder();
        switch (anchor) {
            case START -> {}
            case MIDDLE -> look.append(" text-anchor=\"middle\"");
            case END -> look.append(" text-anchor=\"end\"");
        }
        if (lettering.size() != Lettering.BODY) {
            look.append(" font-size=\"")
                    .append(Decimals.print(lettering.size()))
                    .append('"');
        }
        if (lettering.bold()) {
            look.append(" font-weight=\"bold\"");
        }
        return look.toString();
    }

    private static void span(Lettering.Span span, double lowered, StringBuilder text) {
        StringBuilder attributes = new StringBuilder();
        if (span.lowered() != lowered) {
            attributes
                    .append(" dy=\"")
                    .append(Decimals.print(span.lowered() - lowered))
                    .append('"');
        }
        if (span.subscript()) {
            attributes
                    .append(" font-size=\"")
                    .append(Decimals.print(span.size()))
                    .append('"');
        }
        if (span.italic()) {
            attributes.append(" font-style=\"italic\"");
        }
        if (attributes.length() == 0) {
            text.append(Xml.escape(span.text()));
        } else {
            text.append("<tspan")
                    .append(attributes)
                    .append('>')
                    .append(Xml.escape(span.text()))
                    .append("</tspan>");
        }
    }

    private void finish() {
        lines.forEach((stroke, path) -> {
            svg.append("<path d=\"").append(path.data()).append('"');
            if (stroke.width() != Stroke.LINE.width()) {
                svg.append(" stroke-width=\"")
                        .append(Decimals.print(stroke.width()))
                        .append('"');
            }
            if (!stroke.dashes().isEmpty()) {
                svg.append(" stroke-dasharray=\"")
                        .append(stroke.dashes().stream().map(Decimals::print).collect(Collectors.joining(" ")))
                        .append('"');
            }
            svg.append("/>\n");
        });
        if (!filled.data().isEmpty()) {
            svg.append("<path d=\"").append(filled.data()).append("\" fill=\"currentColor\" stroke=\"none\"/>\n");
        }
        // In a group of their own: a part that is cued has heavier lines, but no smaller dots.
        dots.forEach((radius, path) -> svg.append("<g><path d=\"")
                .append(path.data())
                .append("\" stroke-width=\"")
                .append(Decimals.print(2 * radius))
                .append("\"/></g>\n"));
        texts.forEach((look, alike) -> svg.append("<g fill=\"currentColor\" stroke=\"none\"")
                .append(look)
                .append('>')
                .append(alike)
                .append("</g>\n"));
    }
}
