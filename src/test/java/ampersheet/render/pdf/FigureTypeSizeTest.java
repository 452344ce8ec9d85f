package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.figure.Figure;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** How large the smallest letters of drawings are on paper; {@code -Pdeep} looks at every template. */
class FigureTypeSizeTest {
    private static final TemplateFiles FILES = TemplateFiles.builtIn();
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(FILES));
    private static final int STRIDE = Boolean.getBoolean("ampersheet.deep") ? 1 : 16;
    private static final Pattern SIZE = Pattern.compile("font-size=\"([0-9.]+)\"");

    private static final double LEAST_POINTS = 7;
    /** Rounding of a drawing's size to hundredths of a millimetre. */
    private static final double ROUNDING = 0.01;

    /** In CSS pixels: A4 between the margins of a printed page, and what is left beside the givens. */
    private static final double PAGE = 172 / 25.4 * 96;

    private static final double BESIDE_GIVENS = 418;
    private static final double WIDEST_BESIDE_GIVENS = 520;
    private static final double POINTS_PER_PIXEL = 0.75;

    private static double smallest(Figure figure) {
        return SIZE.matcher(figure.svg())
                .results()
                .mapToDouble(size -> Double.parseDouble(size.group(1)))
                .min()
                .orElseThrow();
    }

    @OnlyDeep
    @Test
    void noLetterOfADrawingIsUnderSevenPointOnA4() {
        int seen = 0;
        List<String> templates = List.copyOf(ChosenTemplates.of(FILES));
        for (int i = 0; i < templates.size(); i += STRIDE) {
            String plan = "title: On paper\nproblems:\n  - {template: " + templates.get(i) + ", example: yes}\n";
            Sheet sheet = new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), LIBRARY)).sheet(1);
            for (Profile profile : Profile.values()) {
                Document document = Composer.sheet(sheet, "Ada", profile.widestDrawing(Paper.A4));
                for (Document.Block block : document.blocks()) {
                    if (block instanceof ProblemBlock problem) {
                        List<Figure> figures = problem.blocks().stream()
                                .filter(FigureBlock.class::isInstance)
                                .map(one -> ((FigureBlock) one).figure())
                                .toList();
                        inThePdf(figures, profile, templates.get(i));
                        figures.forEach(figure -> printedFromABrowser(figure, figure.title()));
                        seen += figures.size();
                    }
                }
            }
        }
        assertTrue(seen > 0, "no drawing was seen");
    }

    private static void inThePdf(List<Figure> figures, Profile profile, String where) {
        if (figures.isEmpty()) {
            return;
        }
        large(figures, FigureSize.of(figures, profile, Paper.A4), where + " " + profile);
        Optional<List<FigureSize>> inColumn =
                profile.columns() ? FigureSize.inColumn(figures, profile, Paper.A4) : Optional.empty();
        inColumn.ifPresent(sizes -> large(figures, sizes, where + " " + profile + " in a column"));
    }

    private static void large(List<Figure> figures, List<FigureSize> sizes, String where) {
        for (int i = 0; i < figures.size(); i++) {
            double scale = sizes.get(i).width() / figures.get(i).picture().width();
            double points = smallest(figures.get(i)) * scale * 72 / 25.4;
            assertTrue(
                    points >= LEAST_POINTS - ROUNDING,
                    where + ", " + figures.get(i).title() + ": " + points + " point");
        }
    }

    private static void printedFromABrowser(Figure figure, String where) {
        double width = figure.picture().width();
        double room = width > WIDEST_BESIDE_GIVENS ? PAGE : BESIDE_GIVENS;
        double points = smallest(figure) * Math.min(1, room / width) * POINTS_PER_PIXEL;
        assertTrue(points >= LEAST_POINTS, where + ": " + points + " point");
    }
}
