package ampersheet.render.pdf;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.AbstractOutputDevice;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.render.RenderingContext;
import com.openhtmltopdf.css.sheet.FontFaceRule;
import java.awt.BasicStroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.io.File;
import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Draws the figures of this program on paper: the few SVG elements they are made of, as PDF lines and real text in the
 * faces of the page. Anything else in a drawing is an error of the program and not passed over.
 */
final class FigureDrawer implements SVGDrawer {
  /** In millimetres: a photocopy of a photocopy still shows it. */
  private static final double THINNEST = 0.36;
  private static final double PIXELS_PER_MILLIMETRE = 96 / 25.4;

  private final String family;

  /** @param family of the lettering */
  FigureDrawer(String family) {
    this.family = family;
  }

  @Override
  public SVGImage buildSVGImage(Element svg, Box box, CssContext css, double cssWidth, double cssHeight,
      double dotsPerPixel) {
    double width = number(svg, "width");
    double height = number(svg, "height");
    double dots = cssWidth > 0 ? cssWidth / width : dotsPerPixel;
    return new Drawing(svg, family, dots, THINNEST * dotsPerPixel * PIXELS_PER_MILLIMETRE, (int) Math.ceil(width * dots), (int) Math.ceil(height * dots));
  }

  @Override
  public void importFontFaceRules(List<FontFaceRule> fontFaces, SharedContext shared) {
    // The faces are registered with the page itself.
  }

  @Override
  public void addFontFile(File fontFile, String name, Integer weight, FontStyle style) {
    throw new IllegalStateException("a drawing has the faces of its page, not " + fontFile);
  }

  @Override
  public void close() {
    // Nothing is held open.
  }

  private static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }

  /** @param dots of the page per unit of the drawing; @param thinnest line in dots */
  private record Drawing(Element svg, String family, double dots, double thinnest, int width, int height) implements SVGImage {
    @Override
    public int getIntrinsicWidth() {
      return width;
    }

    @Override
    public int getIntrinsicHeight() {
      return height;
    }

    @Override
    public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
      new Pen((AbstractOutputDevice) device, context, family, dots, thinnest, x, y).drawAll(svg, Look.of(svg, Look.NONE));
    }
  }

  /** What an element hands down to those in it. */
  private record Look(String fill, String stroke, double strokeWidth, String dashes, double fontSize, boolean bold,
      boolean italic) {
    static final Look NONE = new Look("none", "none", 1, "", 16, false, false);

    static Look of(Element element, Look outer) {
      return new Look(text(element, "fill", outer.fill), text(element, "stroke", outer.stroke),
          element.hasAttribute("stroke-width") ? number(element, "stroke-width") : outer.strokeWidth,
          text(element, "stroke-dasharray", outer.dashes),
          element.hasAttribute("font-size") ? number(element, "font-size") : outer.fontSize,
          element.hasAttribute("font-weight") ? element.getAttribute("font-weight").equals("bold") : outer.bold,
          element.hasAttribute("font-style") ? element.getAttribute("font-style").equals("italic") : outer.italic);
    }

    private static String text(Element element, String attribute, String otherwise) {
      return element.hasAttribute(attribute) ? element.getAttribute(attribute) : otherwise;
    }

    boolean filled() {
      return !fill.equals("none");
    }

    boolean stroked() {
      return !stroke.equals("none");
    }
  }

  private static final class Pen {
    private static final FSRGBColor INK = FSRGBColor.BLACK;

    private final AbstractOutputDevice device;
    private final RenderingContext context;
    private final String family;
    private final double dots;
    private final double thinnest;
    private final double left;
    private final double top;

    Pen(AbstractOutputDevice device, RenderingContext context, String family, double dots, double thinnest, double left,
        double top) {
      this.device = device;
      this.context = context;
      this.family = family;
      this.dots = dots;
      this.thinnest = thinnest;
      this.left = left;
      this.top = top;
    }

    void drawAll(Element parent, Look look) {
      for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
        if (node instanceof Element element) {
          draw(element, Look.of(element, look));
        }
      }
    }

    private void draw(Element element, Look look) {
      switch (element.getTagName()) {
        case "title", "desc" -> { }
        case "g" -> drawAll(element, look);
        case "polyline" -> draw(path(numbers(element.getAttribute("points")), false), look);
        case "polygon" -> draw(path(numbers(element.getAttribute("points")), true), look);
        case "circle" -> circle(element, look);
        case "path" -> draw(outline(element.getAttribute("d")), look);
        case "text" -> words(element, look);
        default -> throw new IllegalStateException("a figure on paper cannot have the element " + element.getTagName());
      }
    }

    private void circle(Element element, Look look) {
      double radius = number(element, "r") * dots;
      draw(new Ellipse2D.Double(x(number(element, "cx")) - radius, y(number(element, "cy")) - radius, 2 * radius,
          2 * radius), look);
    }

    private void draw(java.awt.Shape shape, Look look) {
      device.setColor(INK);
      if (look.filled()) {
        device.fill(shape);
      }
      if (look.stroked()) {
        device.setStroke(stroke(look));
        device.draw(shape);
      }
    }

    private BasicStroke stroke(Look look) {
      float width = (float) Math.max(look.strokeWidth() * dots, thinnest);
      if (look.dashes().isEmpty()) {
        return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
      }
      double[] lengths = numbers(look.dashes());
      float[] dashes = new float[lengths.length];
      for (int i = 0; i < dashes.length; i++) {
        dashes[i] = (float) (lengths[i] * dots);
      }
      return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, dashes, 0);
    }

    private Path2D path(double[] points, boolean closed) {
      Path2D path = new Path2D.Double();
      path.moveTo(x(points[0]), y(points[1]));
      for (int i = 2; i + 1 < points.length; i += 2) {
        path.lineTo(x(points[i]), y(points[i + 1]));
      }
      if (closed) {
        path.closePath();
      }
      return path;
    }

    /** Commands M, L, Q and Z, absolute. */
    private Path2D outline(String commands) {
      Path2D path = new Path2D.Double();
      int at = 0;
      while (at < commands.length()) {
        char command = commands.charAt(at);
        int end = at + 1;
        while (end < commands.length() && !Character.isLetter(commands.charAt(end))) {
          end++;
        }
        double[] n = numbers(commands.substring(at + 1, end));
        switch (command) {
          case 'M' -> path.moveTo(x(n[0]), y(n[1]));
          case 'L' -> path.lineTo(x(n[0]), y(n[1]));
          case 'Q' -> path.quadTo(x(n[0]), y(n[1]), x(n[2]), y(n[3]));
          case 'Z' -> path.closePath();
          default -> throw new IllegalStateException("a figure on paper cannot have the path command " + command);
        }
        at = end;
      }
      return path;
    }

    // ------------------------------------------------------------------------------------------------------- lettering

    /** Text with one look, lowered by {@code drop}. */
    private record Run(String text, Look look, double drop) {}

    private void words(Element element, Look look) {
      List<Run> runs = new ArrayList<>();
      double drop = 0;
      for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
        Look own = look;
        if (node instanceof Element span) {
          own = Look.of(span, look);
          drop += span.hasAttribute("dy") ? number(span, "dy") : 0;
        }
        runs.add(new Run(node.getTextContent(), own, drop));
      }
      double width = runs.stream().mapToDouble(this::width).sum();
      double at = x(number(element, "x")) - switch (element.getAttribute("text-anchor")) {
        case "middle" -> width / 2;
        case "end" -> width;
        default -> 0;
      };
      double baseline = y(number(element, "y"));
      device.setColor(INK);
      FontSpecification around = device.getFontSpecification();
      for (Run run : runs) {
        device.setFontSpecification(face(run.look())); // or it slants and thickens after what was written before
        device.setFont(font(run.look()));
        context.getTextRenderer().drawString(device, run.text(), (float) at, (float) (baseline + run.drop() * dots));
        at += width(run);
      }
      device.setFontSpecification(around);
    }

    private double width(Run run) {
      return context.getTextRenderer().getWidth(context.getFontContext(), font(run.look()), run.text());
    }

    private FSFont font(Look look) {
      return context.getFont(face(look));
    }

    private FontSpecification face(Look look) {
      FontSpecification face = new FontSpecification();
      face.families = new String[] {family, Fonts.SYMBOLS};
      face.size = (float) (look.fontSize() * dots);
      face.fontWeight = look.bold() ? IdentValue.BOLD : IdentValue.NORMAL;
      face.fontStyle = look.italic() ? IdentValue.ITALIC : IdentValue.NORMAL;
      face.variant = IdentValue.NORMAL;
      return face;
    }

    private double x(double units) {
      return left + units * dots;
    }

    private double y(double units) {
      return top + units * dots;
    }

    private static double[] numbers(String text) {
      List<Double> numbers = new ArrayList<>();
      int start = -1;
      for (int i = 0; i <= text.length(); i++) {
        boolean within = i < text.length() && text.charAt(i) != ' ' && text.charAt(i) != ',';
        if (within && start < 0) {
          start = i;
        } else if (!within && start >= 0) {
          numbers.add(Double.parseDouble(text.substring(start, i)));
          start = -1;
        }
      }
      return numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }
  }
}
