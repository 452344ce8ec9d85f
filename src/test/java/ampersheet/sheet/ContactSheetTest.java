package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Writes one page with the figures of every template to {@code target/figures/contact-sheet.html}, to be looked at; a
 * picture of it, taken with a browser, is {@code output/sample/figures.png}.
 */
class ContactSheetTest {
    private static final int LARGEST = 900_000;

    @Test
    void everyTemplateHasAFigureAndAllFitOnOnePage() throws IOException {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        StringBuilder page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"UTF-8\"/>"
                + "<title>Every figure</title><style>body{font:14px "
                + "sans-serif;margin:8px}section{display:inline-block;"
                + "vertical-align:top;margin:8px;padding:6px;border:1px solid}h2{font-size:14px;margin:0 "
                + "0 4px}</style></head><body>\n");
        for (String name : library.names()) {
            SheetProblem problem = SheetProblem.alone(
                    new Draws(new Workshop(library.template(name)), "figures").draw(0), DecimalMarker.POINT);
            List<Block> figures = Composer.alone(problem.problem(), DecimalMarker.POINT).blocks().stream()
                    .filter(FigureBlock.class::isInstance)
                    .toList();
            assertTrue(!figures.isEmpty(), name + " has no figure");
            page.append("<section><h2>").append(name).append("</h2>\n");
            for (Block figure : figures) {
                String own = name.replace('/', '-') + "-p1";
                page.append(((FigureBlock) figure)
                        .figure()
                        .svg()
                        .replace("id=\"p1", "id=\"" + own)
                        .replace("aria-labelledby=\"p1", "aria-labelledby=\"" + own)
                        .replace("aria-describedby=\"p1", "aria-describedby=\"" + own));
            }
            page.append("</section>\n");
        }
        page.append("</body></html>\n");
        Path file = Path.of("target", "figures", "contact-sheet.html");
        Files.createDirectories(file.getParent());
        Files.writeString(file, page, StandardCharsets.UTF_8);
        assertTrue(Files.size(file) < LARGEST, "the page of all figures has " + Files.size(file) + " bytes");
    }
}
