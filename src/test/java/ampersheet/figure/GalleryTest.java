package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/**
 * Every figure as a pen draws it and as its SVG shows it; they are written to {@code target/figures}, to be looked at.
 */
class GalleryTest {
    private static final Path FOLDER = Path.of("target", "figures");
    private static final int PER_PAGE = 6;

    @Test
    void circuitsAreDrawnAsTheirSvgShowsThem() throws IOException {
        for (SymbolStyle style : SymbolStyle.values()) {
            List<Figure> figures = new ArrayList<>();
            Circuits.all()
                    .forEach((name, drawn) -> figures.add(CircuitFigure.draw(
                            name,
                            drawn.schematic(),
                            drawn.labels(),
                            style,
                            new Figure.Setting("c-" + style + "-" + name, Figure.PAGE_WIDTH, Languages.ENGLISH))));
            pages("circuits-" + style, figures);
        }
    }

    @Test
    void panelsAreDrawnAsTheirSvgShowsThem() throws IOException {
        List<Figure> figures = new ArrayList<>();
        Panels.all()
                .forEach((name, laid) -> figures.add(ChainFigure.draw(
                        name,
                        laid.panel(),
                        laid.marks(),
                        new Figure.Setting("p" + figures.size(), Figure.PAGE_WIDTH, Languages.ENGLISH))));
        pages("panels", figures);
    }

    @Test
    void joinedTilesAreDrawnAsTheirSvgShowsThem() throws IOException {
        List<Figure> figures = new ArrayList<>();
        AssemblyFigureTest.all()
                .keySet()
                .forEach(name -> figures.add(AssemblyFigureTest.figure(name, "a" + figures.size())));
        pages("joined-tiles", figures);
    }

    @Test
    void heatPathsAreDrawnAsTheirSvgShowsThem() throws IOException {
        for (SymbolStyle style : SymbolStyle.values()) {
            List<Figure> figures = new ArrayList<>();
            HeatPaths.all()
                    .forEach((name, laid) -> figures.add(HeatFigure.draw(
                            name,
                            laid.network(),
                            laid.labels(),
                            style,
                            new Figure.Setting("h" + figures.size(), Figure.PAGE_WIDTH, Languages.ENGLISH))));
            pages("heat-" + style, figures);
        }
    }

    @Test
    void aCurveIsDrawnAsItsSvgShowsIt() throws IOException {
        pages("curve", List.of(CurveFigureTest.example()));
    }

    /** A pen is handed what the SVG shows, each piece as often and at that place; the size is the element's. */
    private static void isOneAndTheSame(Picture picture) {
        Ink drawn = new Ink();
        picture.draw(drawn);
        Ink shown = new Ink();
        SvgReader.read(picture.svg(), shown);
        assertEquals(drawn.pieces(), shown.pieces());
        assertTrue(drawn.pieces().size() > 5, drawn.pieces().toString());
        Element root = SvgText.parse(picture.svg());
        assertEquals(Double.parseDouble(root.getAttribute("width")), picture.width());
        assertEquals(Double.parseDouble(root.getAttribute("height")), picture.height());
        for (int i = 0; i < root.getElementsByTagName("text").getLength(); i++) {
            String text = root.getElementsByTagName("text").item(i).getTextContent();
            assertTrue(picture.letters().lines().anyMatch(text::equals), text);
        }
    }

    private static void pages(String name, List<Figure> figures) throws IOException {
        figures.forEach(figure -> isOneAndTheSame(figure.picture()));
        for (int page = 0; page * PER_PAGE < figures.size(); page++) {
            StringBuilder html = new StringBuilder("<!doctype html><meta charset='utf-8'>");
            figures.subList(page * PER_PAGE, Math.min(figures.size(), (page + 1) * PER_PAGE))
                    .forEach(figure -> html.append("<div style='display:inline-block;margin:14px;vertical-align:top'>")
                            .append(figure.svg())
                            .append("</div>"));
            write(name + "-" + (page + 1) + ".html", html.toString());
        }
    }

    private static void write(String name, String text) throws IOException {
        Files.createDirectories(FOLDER);
        Files.write(FOLDER.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
