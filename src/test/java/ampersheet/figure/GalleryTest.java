package ampersheet.figure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Writes every figure to {@code target/figures}, to be looked at. */
class GalleryTest {
  private static final Path FOLDER = Path.of("target", "figures");

  @Test
  void circuitsAreWrittenToBeLookedAt() throws IOException {
    StringBuilder page = new StringBuilder("<!doctype html><meta charset='utf-8'><style>figure{display:inline-block;"
        + "margin:12px;vertical-align:top}</style>");
    for (SymbolStyle style : SymbolStyle.values()) {
      StringBuilder styled = new StringBuilder();
      for (var entry : Circuits.all().entrySet()) {
        Drawing drawing = CircuitFigure.layOut(entry.getValue().schematic(), entry.getValue().labels(), style, Set.of())
            .drawing();
        styled.append("<figure>").append(drawing.svg(entry.getKey(), "", "c-" + style + "-" + entry.getKey()))
            .append("<figcaption>").append(entry.getKey()).append("</figcaption></figure>");
      }
      write("circuits-" + style + ".html", page.toString() + styled);
    }
  }

  private static void write(String name, String text) throws IOException {
    Files.createDirectories(FOLDER);
    Files.write(FOLDER.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }
}
