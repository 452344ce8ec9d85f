package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.Composer;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.junit.jupiter.api.Test;

class FormulaTagTest {
    private static final String PLAN = """
      title: Lanterns
      problems:
        - {template: current-limiting/indicator, example: yes}
      """;
    private static final Sheet SHEET =
            new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", PLAN), SmallLibrary.open())).sheet(1);

    @Test
    void aLineOfWorkingIsAFormulaThatIsReadOutAsItIsSpoken() throws IOException {
        for (Profile profile : List.of(Profile.COMPACT, Profile.LARGE)) {
            List<String> spoken = new ArrayList<>();
            try (PDDocument pdf = Loader.loadPDF(PdfBookTest.book(profile, Composer.key(SHEET, "Ada")))) {
                formulas(pdf.getDocumentCatalog().getStructureTreeRoot(), spoken);
            }
            assertTrue(spoken.size() >= 6, spoken.toString());
            assertEquals("V r equals V s minus V f", spoken.get(0));
            assertTrue(spoken.get(1).matches("equals .+ V minus .+ V"), spoken.get(1));
        }
    }

    /** All of them in reading order; each has letters of a page in it. */
    private static void formulas(PDStructureNode node, List<String> spoken) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement tag) {
                assertNull(tag.getExpandedForm(), "an abbreviation is no formula");
                if (tag.getStructureType().equals("Formula")) {
                    assertFalse(tag.getAlternateDescription().isBlank());
                    assertFalse(tag.getKids().isEmpty());
                    spoken.add(tag.getAlternateDescription());
                } else {
                    assertEquals(tag.getStructureType().equals("Figure"), tag.getAlternateDescription() != null);
                }
                formulas(tag, spoken);
            }
        }
    }
}
