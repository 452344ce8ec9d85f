package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

class CheckLettersOnPaperTest {
    private static final double MILLIMETRE = 72 / 25.4;

    private static Sheet sheet(String paper) {
        String plan = "title: Lanterns\npaper: " + paper + "\nproblems:\n"
                + "  - {template: current-limiting/indicator}\n  - {template: voltage-dividers/plain-divider}\n";
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), SmallLibrary.open())).sheet(1);
    }

    @Test
    void theTableOfAllLettersTakesAQuarterOfAPageAtMostInNinePoint() throws IOException {
        for (String paper : List.of("a4", "letter")) {
            Sheet sheet = sheet(paper);
            byte[] pdf = PdfBookTest.book(Profile.COMPACT, CheckLetters.addedTo(Composer.sheet(sheet, "Ada"), sheet));
            PrintedTag table = PrintedTag.read(pdf)
                    .all("Table")
                    .filter(tag -> tag.text().startsWith("rowABC0123"))
                    .findFirst()
                    .orElseThrow();
            assertTrue(table.onOnePage());
            table.letters()
                    .forEach(letter ->
                            assertTrue(letter.size() >= 9, letter.text() + " has " + letter.size() + " point"));
            Paper on = paper.equals("a4") ? Paper.A4 : Paper.LETTER;
            double page = PrintStyle.textHeight(on, Profile.COMPACT) * MILLIMETRE;
            double share = table.height()
                    / page
                    * PrintStyle.columnWidth(on, Profile.COMPACT)
                    / PrintStyle.textWidth(on, Profile.COMPACT);
            assertTrue(share <= 0.25, "the table takes " + share + " of a page of " + paper);
            assertEquals(38 + 1, table.all("TR").count());
        }
    }
}
