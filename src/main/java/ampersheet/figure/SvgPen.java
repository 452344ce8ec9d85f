package ampersheet.figure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Gathers shapes and writes them as a few SVG elements. What is drawn alike is one path: all ink is of one colour, so
 * that nobody sees where one shape ends and another begins, and a tile of a thousand pixels is not a thousand elements.
 */
final class SvgPen implements Pen {
    private final StringBuilder svg;
    private final SvgLook look;
    private final Supplier<String> names;
    private final Map<Stroke, SvgPath> lines = new LinkedHashMap<>();
    private final Map<Double, SvgPath> dots = new LinkedHashMap<>();
    private final SvgPath filled = new SvgPath();
    private final Map<String, StringBuilder> texts = new LinkedHashMap<>();

    /** @param names each time another one, which no other element of the page has */
    SvgPen(StringBuilder svg, SvgLook look, Supplier<String> names) {
        this.svg = svg;
        this.look = look;
        this.names = names;
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

    private String look(Lettering lettering, Lettering.Anchor anchor) {
        StringBuilder attributes = new StringBuilder();
        switch (anchor) {
            case START -> {}
            case MIDDLE -> attributes.append(look.middle);
            case END -> attributes.append(look.end);
        }
        if (lettering.size() != Lettering.BODY) {
            attributes.append(" font-size=\"")
                    .append(Decimals.print(lettering.size()))
                    .append('"');
        }
        if (lettering.bold()) {
            attributes.append(" font-weight=\"bold\"");
        }
        return attributes.toString();
    }

    private void span(Lettering.Span span, double lowered, StringBuilder text) {
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
            attributes.append(look.italic);
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

    /** Writes what was drawn. */
    void finish() {
        lines.forEach((stroke, path) -> path(path, attributes(stroke)));
        path(filled, look.filled);
        // In a group of their own: a part that is cued has heavier lines, but no smaller dots.
        dots.forEach((radius, path) -> {
            svg.append("<g>");
            path(path, " stroke-width=\"" + Decimals.print(2 * radius) + "\"");
            svg.append("</g>\n");
        });
        texts.forEach((how, alike) -> svg.append("<g")
                .append(look.words)
                .append(how)
                .append('>')
                .append(alike)
                .append("</g>\n"));
    }

    private static String attributes(Stroke stroke) {
        String width = stroke.width() == Stroke.LINE.width()
                ? ""
                : " stroke-width=\"" + Decimals.print(stroke.width()) + "\"";
        String dashes = stroke.dashes().stream().map(Decimals::print).collect(Collectors.joining(" "));
        return dashes.isEmpty() ? width : width + " stroke-dasharray=\"" + dashes + "\"";
    }

    private void path(SvgPath path, String attributes) {
        path(path.subpaths(), attributes);
    }

    private void path(List<SvgPath.Subpath> all, String attributes) {
        Repeated repeated = Repeated.in(all);
        if (repeated.isWorthwhile()) {
            String name = names.get();
            path(repeated.block(all), " id=\"" + name + "\"", attributes);
            Point step = repeated.step(all);
            for (int i = 1; i < repeated.times(); i++) {
                reference(name, i * step.x(), i * step.y(), svg);
            }
            path(repeated.rest(all), attributes);
        } else {
            path(all, "", attributes);
        }
    }

    private void path(List<SvgPath.Subpath> subpaths, String id, String attributes) {
        if (!subpaths.isEmpty()) {
            svg.append("<path").append(id).append(" d=\"").append(SvgPath.data(subpaths));
            svg.append('"').append(attributes).append("/>\n");
        }
    }

    /** Shows what stands under the name once more, moved. */
    static void reference(String name, double right, double down, StringBuilder svg) {
        svg.append("<use href=\"#").append(name).append('"');
        String x = Decimals.print(right);
        String y = Decimals.print(down);
        svg.append(x.equals("0") ? "" : " x=\"" + x + "\"").append(y.equals("0") ? "" : " y=\"" + y + "\"");
        svg.append("/>");
    }
}
