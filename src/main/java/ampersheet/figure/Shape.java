package ampersheet.figure;

import java.util.List;

/** Something drawn; it knows where its ink is, so that no label is put on it. */
sealed interface Shape {
  Box bounds();

  /** Whether any ink, or the inside of a closed body, lies in the box. */
  boolean meets(Box box);

  Shape moved(double dx, double dy);

  /** Appends one SVG element, moved by {@code (dx, dy)}. */
  void write(StringBuilder svg, double dx, double dy);

  /** An open line through points. */
  record Line(List<Point> points, Stroke stroke) implements Shape {
    public Line {
      points = List.copyOf(points);
    }

    @Override
    public Box bounds() {
      return Box.around(points.toArray(new Point[0])).grown(stroke.width() / 2);
    }

    @Override
    public boolean meets(Box box) {
      return crosses(points, false, box.grown(stroke.width() / 2));
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Line(points.stream().map(point -> point.plus(dx, dy)).toList(), stroke);
    }

    @Override
    public void write(StringBuilder svg, double dx, double dy) {
      svg.append("<polyline points=\"").append(coordinates(points, dx, dy)).append('"');
      attributes(svg, stroke);
      svg.append("/>");
    }
  }

  /** A closed body with straight sides, outlined or filled. */
  record Polygon(List<Point> points, Stroke stroke, boolean filled) implements Shape {
    public Polygon {
      points = List.copyOf(points);
    }

    @Override
    public Box bounds() {
      return Box.around(points.toArray(new Point[0])).grown(filled ? 0 : stroke.width() / 2);
    }

    @Override
    public boolean meets(Box box) {
      return crosses(points, true, box.grown(stroke.width() / 2)) || bounds().contains(box.centre());
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Polygon(points.stream().map(point -> point.plus(dx, dy)).toList(), stroke, filled);
    }

    @Override
    public void write(StringBuilder svg, double dx, double dy) {
      svg.append("<polygon points=\"").append(coordinates(points, dx, dy)).append('"');
      if (filled) {
        svg.append(" fill=\"currentColor\" stroke=\"none\"");
      } else {
        attributes(svg, stroke);
      }
      svg.append("/>");
    }
  }

  record Circle(Point centre, double radius, Stroke stroke, boolean filled) implements Shape {
    @Override
    public Box bounds() {
      double reach = radius + (filled ? 0 : stroke.width() / 2);
      return Box.centred(centre, 2 * reach, 2 * reach);
    }

    @Override
    public boolean meets(Box box) {
      double reach = radius + stroke.width() / 2;
      double dx = Math.max(0, Math.max(box.left() - centre.x(), centre.x() - box.right()));
      double dy = Math.max(0, Math.max(box.top() - centre.y(), centre.y() - box.bottom()));
      return dx * dx + dy * dy < reach * reach;
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Circle(centre.plus(dx, dy), radius, stroke, filled);
    }

    @Override
    public void write(StringBuilder svg, double dx, double dy) {
      svg.append("<circle cx=\"").append(Decimals.print(centre.x() + dx)).append("\" cy=\"")
          .append(Decimals.print(centre.y() + dy)).append("\" r=\"").append(Decimals.print(radius)).append('"');
      if (filled) {
        svg.append(" fill=\"currentColor\" stroke=\"none\"");
      } else {
        attributes(svg, stroke);
      }
      svg.append("/>");
    }
  }

  /** A closed outline with rounded corners; what stands inside it is no collision. */
  record Outline(List<Point> corners, double radius, Stroke stroke) implements Shape {
    public Outline {
      corners = List.copyOf(corners);
    }

    @Override
    public Box bounds() {
      return Box.around(corners.toArray(new Point[0])).grown(stroke.width() / 2);
    }

    @Override
    public boolean meets(Box box) {
      return crosses(corners, true, box.grown(stroke.width() / 2));
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Outline(corners.stream().map(corner -> corner.plus(dx, dy)).toList(), radius, stroke);
    }

    @Override
    public void write(StringBuilder svg, double dx, double dy) {
      svg.append("<path d=\"");
      int n = corners.size();
      for (int i = 0; i < n; i++) {
        Point corner = corners.get(i);
        Point before = corners.get((i + n - 1) % n);
        Point after = corners.get((i + 1) % n);
        Point in = corner.towards(before, Math.min(radius, corner.distanceTo(before) / 2));
        Point out = corner.towards(after, Math.min(radius, corner.distanceTo(after) / 2));
        svg.append(i == 0 ? 'M' : 'L').append(pair(in, dx, dy)).append('Q').append(pair(corner, dx, dy)).append(' ')
            .append(pair(out, dx, dy));
      }
      svg.append("Z\"");
      attributes(svg, stroke);
      svg.append("/>");
    }
  }

  /** One line of text. */
  record Words(Lettering lettering, Point baseline, Lettering.Anchor anchor, boolean insideBody) implements Shape {
    @Override
    public Box bounds() {
      double width = lettering.width();
      double left = switch (anchor) {
        case START -> baseline.x();
        case MIDDLE -> baseline.x() - width / 2;
        case END -> baseline.x() - width;
      };
      return new Box(left, baseline.y() - lettering.ascent(), left + width, baseline.y() + lettering.descent());
    }

    @Override
    public boolean meets(Box box) {
      return bounds().overlaps(box);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Words(lettering, baseline.plus(dx, dy), anchor, insideBody);
    }

    @Override
    public void write(StringBuilder svg, double dx, double dy) {
      svg.append("<text x=\"").append(Decimals.print(baseline.x() + dx)).append("\" y=\"")
          .append(Decimals.print(baseline.y() + dy)).append('"');
      switch (anchor) {
        case START -> { }
        case MIDDLE -> svg.append(" text-anchor=\"middle\"");
        case END -> svg.append(" text-anchor=\"end\"");
      }
      lettering.write(svg);
      svg.append("</text>");
    }
  }

  private static boolean crosses(List<Point> points, boolean closed, Box box) {
    for (int i = 1; i < points.size(); i++) {
      if (box.crossedBy(points.get(i - 1), points.get(i))) {
        return true;
      }
    }
    return closed && box.crossedBy(points.get(points.size() - 1), points.get(0));
  }

  private static void attributes(StringBuilder svg, Stroke stroke) {
    if (stroke.width() != Stroke.LINE.width()) {
      svg.append(" stroke-width=\"").append(Decimals.print(stroke.width())).append('"');
    }
    if (!stroke.dashes().isEmpty()) {
      svg.append(" stroke-dasharray=\"").append(stroke.dashes()).append('"');
    }
  }

  private static String coordinates(List<Point> points, double dx, double dy) {
    StringBuilder text = new StringBuilder();
    for (Point point : points) {
      text.append(text.length() == 0 ? "" : " ").append(pair(point, dx, dy));
    }
    return text.toString();
  }

  private static String pair(Point point, double dx, double dy) {
    return Decimals.print(point.x() + dx) + "," + Decimals.print(point.y() + dy);
  }
}
