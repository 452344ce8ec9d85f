package ampersheet.figure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Writes every figure to {@code target/figures}, to be looked at. */
class GalleryTest {
  private static final Path FOLDER = Path.of("target", "figures");
  private static final int PER_PAGE = 6;

  @Test
  void circuitsAreWrittenToBeLookedAt() throws IOException {
    for (SymbolStyle style : SymbolStyle.values()) {
      List<String> figures = new ArrayList<>();
      Circuits.all().forEach((name, drawn) -> figures.add(CircuitFigure.draw(name, drawn.schematic(), drawn.labels(),
          style, "c-" + style + "-" + name).svg()));
      pages("circuits-" + style, figures);
    }
  }

  @Test
  void panelsAreWrittenToBeLookedAt() throws IOException {
    List<String> figures = new ArrayList<>();
    Panels.all().forEach((name, laid) -> figures.add(
        ChainFigure.draw(name, laid.panel(), laid.marks(), "p" + figures.size()).svg()));
    pages("panels", figures);
  }

  @Test
  void joinedTilesAreWrittenToBeLookedAt() throws IOException {
    List<String> figures = new ArrayList<>();
    AssemblyFigureTest.all().keySet().forEach(name ->
        figures.add(AssemblyFigureTest.figure(name, "a" + figures.size()).svg()));
    pages("joined-tiles", figures);
  }

  @Test
  void heatPathsAreWrittenToBeLookedAt() throws IOException {
    for (SymbolStyle style : SymbolStyle.values()) {
      List<String> figures = new ArrayList<>();
      HeatPaths.all().forEach((name, laid) -> figures.add(
          HeatFigure.draw(name, laid.network(), laid.labels(), style, "h" + figures.size()).svg()));
      pages("heat-" + style, figures);
    }
  }

  @Test
  void aCurveIsWrittenToBeLookedAt() throws IOException {
    pages("curve", List.of(CurveFigureTest.example().svg()));
  }

  private static void pages(String name, List<String> figures) throws IOException {
    for (int page = 0; page * PER_PAGE < figures.size(); page++) {
      StringBuilder html = new StringBuilder("<!doctype html><meta charset='utf-8'>");
      figures.subList(page * PER_PAGE, Math.min(figures.size(), (page + 1) * PER_PAGE)).forEach(
          svg -> html.append("<div style='display:inline-block;margin:14px;vertical-align:top'>").append(svg)
              .append("</div>"));
      write(name + "-" + (page + 1) + ".html", html.toString());
    }
  }

  private static void write(String name, String text) throws IOException {
    Files.createDirectories(FOLDER);
    Files.write(FOLDER.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }
}
