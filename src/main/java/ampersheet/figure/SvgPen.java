package ampersheet.figure;

import java.util.List;
import java.util.stream.Collectors;

/** Writes each shape as one SVG element. */
final class SvgPen implements Pen {
    private final StringBuilder svg;

    SvgPen(StringBuilder svg) {
        this.svg = svg;
    }

    @Override
    public void line(List<Point> points, Stroke stroke) {
        svg.append("<polyline points=\"").append(coordinates(points)).append('"');
        stroked(stroke);
    }

    @Override
    public void polygon(List<Point> corners, Stroke stroke, boolean filled) {
        svg.append("<polygon points=\"").append(coordinates(corners)).append('"');
        body(stroke, filled);
    }

    @Override
    public void circle(Point centre, double radius, Stroke stroke, boolean filled) {
        svg.append("<circle cx=\"")
                .append(Decimals.print(centre.x()))
                .append("\" cy=\"")
                .append(Decimals.print(centre.y()))
                .append("\" r=\"")
                .append(Decimals.print(radius))
                .append('"');
        body(stroke, filled);
    }

    @Override
    public void outline(List<Corner> corners, Stroke stroke) {
        svg.append("<path d=\"");
        char move = 'M';
        for (Corner corner : corners) {
            svg.append(move)
                    .append(pair(corner.in()))
                    .append('Q')
                    .append(pair(corner.at()))
                    .append(' ')
                    .append(pair(corner.out()));
            move = 'L';
        }
        svg.append("Z\"");
        stroked(stroke);
    }

    @Override
    public void words(Lettering lettering, Point baseline, Lettering.Anchor anchor) {
        svg.append("<text x=\"")
                .append(Decimals.print(baseline.x()))
                .append("\" y=\"")
                .append(Decimals.print(baseline.y()))
                .append('"');
        switch (anchor) {
            case START -> {}
            case MIDDLE -> svg.append(" text-anchor=\"middle\"");
            case END -> svg.append(" text-anchor=\"end\"");
        }
        if (lettering.size() != Lettering.BODY) {
            svg.append(" font-size=\"").append(Decimals.print(lettering.size())).append('"');
        }
        if (lettering.bold()) {
            svg.append(" font-weight=\"bold\"");
        }
        svg.append(" fill=\"currentColor\" stroke=\"none\">");
        double lowered = 0;
        for (Lettering.Span span : lettering.spans()) {
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
                svg.append(Xml.escape(span.text()));
            } else {
                svg.append("<tspan")
                        .append(attributes)
                        .append('>')
                        .append(Xml.escape(span.text()))
                        .append("</tspan>");
            }
            lowered = span.lowered();
        }
        svg.append("</text>");
    }

    private void body(Stroke stroke, boolean filled) {
        if (filled) {
            svg.append(" fill=\"currentColor\" stroke=\"none\"/>");
        } else {
            stroked(stroke);
        }
    }

    private void stroked(Stroke stroke) {
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
        svg.append("/>");
    }

    private static String coordinates(List<Point> points) {
        return points.stream().map(SvgPen::pair).collect(Collectors.joining(" "));
    }

    private static String pair(Point point) {
        return Decimals.print(point.x()) + "," + Decimals.print(point.y());
    }
}
