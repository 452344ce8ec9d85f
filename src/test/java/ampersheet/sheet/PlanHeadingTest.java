package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.html.HtmlPage;
import ampersheet.render.markdown.MarkdownPage;
import org.junit.jupiter.api.Test;

/** What an instructor writes over a sheet besides its title. */
class PlanHeadingTest {
    private static final String PLAN = """
      title: Lanterns
      seed: one
      problems: [{template: current-limiting/indicator}]
      """;

    private static final String HEADED = PLAN
            + "school: Harbour <School>\ncourse: Bench *1*\ndate: 5 March\ndue: \"12 March, 18:00\"\n"
            + "instructions: Work in pairs.\n";

    private static Sheet sheet(String plan) {
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), SmallLibrary.open())).sheet(1);
    }

    @Test
    void itStandsOnTheSheetAsItIsWritten() {
        Document sheet = Composer.sheet(sheet(HEADED), "Ada");
        String page = HtmlPage.render(sheet);
        assertTrue(page.contains("Harbour &lt;School&gt; · Bench *1* · 5 March · hand in by 12 March, 18:00"), page);
        assertTrue(page.contains("Work in pairs."), page);
        assertTrue(MarkdownPage.render(sheet).contains("hand in by 12 March, 18:00"));
        assertFalse(HtmlPage.render(Composer.key(sheet(HEADED), "Ada")).contains("Work in pairs."));
    }

    @Test
    void itChangesNoNumberAndNoId() {
        assertEquals(sheet(PLAN).id(), sheet(HEADED).id());
        assertEquals(
                sheet(PLAN).problems().get(0).problem().givens(),
                sheet(HEADED).problems().get(0).problem().givens());
    }
}
