package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class RowChartTest {
    private static final Figure BARS = BarFigure.draw(
            "Mistakes & slips",
            "learners",
            "mistake",
            List.of(
                    new BarFigure.Bar("load <ignored>", 4, "4"),
                    new BarFigure.Bar("sign", 2, "2"),
                    new BarFigure.Bar("none", 0, "0")),
            "b",
            Languages.ENGLISH);

    private static Element svg(Figure figure) throws Exception {
        var factory = javax.xml.parsers.DocumentBuilderFactory.newInstance();
        return factory.newDocumentBuilder()
                .parse(new java.io.ByteArrayInputStream(figure.svg().getBytes(java.nio.charset.StandardCharsets.UTF_8)))
                .getDocumentElement();
    }

    /** The right end less the left end of each filled body, in the order drawn. */
    private static List<Double> lengths(Figure figure) {
        List<Double> lengths = new ArrayList<>();
        SvgReader.read(figure.svg(), new Ink() {
            @Override
            public void polygon(List<Point> corners, Stroke stroke, boolean filled) {
                lengths.add(Box.around(corners.toArray(new Point[0])).width());
            }
        });
        return lengths;
    }

    @Test
    void barsAreAsLongAsWhatTheyShow() {
        List<Double> lengths = lengths(BARS);
        assertEquals(2, lengths.size(), "nothing is drawn for zero");
        assertEquals(2, lengths.get(0) / lengths.get(1), 0.01);
    }

    @Test
    void everyChartHasATitleADescriptionAndItsNumbersAsATable() throws Exception {
        Element svg = svg(BARS);
        assertEquals("img", svg.getAttribute("role"));
        assertEquals(
                "Mistakes & slips", svg.getElementsByTagName("title").item(0).getTextContent());
        assertTrue(svg.getElementsByTagName("desc").item(0).getTextContent().contains("three rows"));
        assertEquals(List.of("mistake", "learners"), BARS.table().head());
        assertEquals(List.of("load <ignored>", "4"), BARS.table().rows().get(0));
    }

    @Test
    void anIntervalLiesOnItsScaleWithItsValueInside() {
        Figure figure = IntervalFigure.draw(
                "Share right",
                "% right",
                "question",
                100,
                List.of(new IntervalFigure.Row("1a", 60, 75, 85.5, "75 % of 30")),
                "i",
                Languages.ENGLISH);
        assertEquals(
                List.of("1a", "75 % of 30", "60 to 86"),
                figure.table().rows().get(0).stream()
                        .map(cell -> cell.replace('\u00A0', ' '))
                        .toList());
        assertThrows(
                IllegalArgumentException.class,
                () -> IntervalFigure.draw(
                        "",
                        "",
                        "",
                        100,
                        List.of(new IntervalFigure.Row("1a", 80, 75, 85, "")),
                        "i",
                        Languages.ENGLISH));
        assertThrows(
                IllegalArgumentException.class, () -> BarFigure.draw("", "", "", List.of(), "b", Languages.ENGLISH));
    }
}
