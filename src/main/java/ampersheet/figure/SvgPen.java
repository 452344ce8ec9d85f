package ampersheet.figure;

import java.util.ArrayList;
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
    /** From so many words in line on it takes fewer letters to say so. */
    private static final int ALIGNED = 3;

    private final StringBuilder svg;
    private final SvgLook look;
    private final Supplier<String> names;
    private final Map<Stroke, SvgPath> lines = new LinkedHashMap<>();
    private final Map<Double, SvgPath> dots = new LinkedHashMap<>();
    private final SvgPath filled = new SvgPath();
    private final Map<String, List<Line>> texts = new LinkedHashMap<>();

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
        StringBuilder line = new StringBuilder();
        double lowered = 0;
        for (Lettering.Span span : lettering.spans()) {
            span(span, lowered, line);
            lowered = span.lowered();
        }
        texts.computeIfAbsent(look(lettering, anchor), l -> new ArrayList<>()).add(new Line(baseline, line.toString()));
    }

    /** Words at their place. */
    private record Line(Point at, String markup) {
        /** Whether letters in it look different from the others. */
        boolean hasLook() {
            return markup.indexOf('<') >= 0;
        }

        void write(StringBuilder svg) {
            svg.append("<text x=\"").append(Decimals.print(at.x())).append("\" y=\"");
            svg.append(Decimals.print(at.y())).append("\">").append(markup).append("</text>");
        }
    }

    /** Numbers side by side say once how high they stand. */
    private void texts(List<Line> lines) {
        List<Line> left = new ArrayList<>(lines);
        while (!left.isEmpty()) {
            double height = left.get(0).at().y();
            List<Line> row =
                    left.stream().filter(line -> line.at().y() == height).toList();
            if (look != SvgLook.AT_REST || row.size() < ALIGNED || row.stream().anyMatch(Line::hasLook)) {
                left.remove(0).write(svg);
                continue;
            }
            svg.append("<text y=\"").append(Decimals.print(height)).append("\">");
            row.forEach(line -> svg.append("<tspan x=\"")
                    .append(Decimals.print(line.at().x()))
                    .append("\">")
                    .append(line.markup())
                    .append("</tspan>"));
            svg.append("</text>");
            left.removeAll(row);
        }
    }

    private String look(Lettering lettering, Lettering.Anchor anchor) {
        return look.attributes(
                SvgLook.WORDS,
                switch (anchor) {
                    case START -> "";
                    case MIDDLE -> SvgLook.MIDDLE;
                    case END -> SvgLook.END;
                },
                lettering.size() == Lettering.BODY ? "" : SvgLook.size(lettering.size()),
                lettering.bold() ? SvgLook.BOLD : "");
    }

    private void span(Lettering.Span span, double lowered, StringBuilder text) {
        String attributes = look.attributes(
                span.lowered() == lowered ? "" : "dy=\"" + Decimals.print(span.lowered() - lowered) + "\"",
                span.subscript() ? SvgLook.size(span.size()) : "",
                span.italic() ? SvgLook.ITALIC : "");
        if (attributes.isEmpty()) {
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
        lines.forEach((stroke, path) -> path(inRows(path, stroke), attributes(stroke)));
        path(Repeated.inRows(filled.subpaths()), look.attributes(SvgLook.FILLED));
        // In a group of their own: a part that is cued has heavier lines, but no smaller dots.
        dots.forEach((radius, path) -> {
            svg.append("<g>");
            path(Repeated.inRows(path.subpaths()), look.attributes(SvgLook.width(2 * radius)));
            svg.append("</g>" + look.lineBreak());
        });
        texts.forEach((how, alike) -> {
            svg.append("<g").append(how).append('>');
            texts(alike);
            svg.append("</g>" + look.lineBreak());
        });
    }

    private String attributes(Stroke stroke) {
        String dashes = stroke.dashes().stream().map(Decimals::print).collect(Collectors.joining(" "));
        return look.attributes(
                stroke.width() == Stroke.LINE.width() ? "" : SvgLook.width(stroke.width()),
                dashes.isEmpty() ? "" : "stroke-dasharray=\"" + dashes + "\"");
    }

    /** Dashes are counted from where a line begins. */
    private static List<SvgPath.Subpath> inRows(SvgPath path, Stroke stroke) {
        return stroke.dashes().isEmpty() ? Repeated.inRows(path.subpaths()) : path.subpaths();
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
            svg.append('"').append(attributes).append("/>" + look.lineBreak());
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
