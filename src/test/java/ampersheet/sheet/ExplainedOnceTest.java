package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.language.Language;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What not every reader knows is said on a sheet or a key once, where it is met, and nowhere else. */
class ExplainedOnceTest {
    private static final Language ENGLISH = Languages.ENGLISH;
    private static final String PARALLEL = ENGLISH.say("sheet.sign.parallel");
    private static final String FINGERPRINT = ENGLISH.say("sheet.key.about-fingerprints");
    private static final String WORKED = ENGLISH.say("sheet.key.worked-on-sheet");
    private static final String EXAMPLE_AND_TWINS = """
        - {template: voltage-dividers/loaded-divider, example: yes}
        - {template: voltage-dividers/loaded-divider, support: faded, fade: backward, blank: 1}
      """;

    private static Sheet sheet(String problems) {
        String plan = "title: T\nseed: signs\nproblems:\n" + problems;
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), library)).sheet(1);
    }

    private static int times(String sought, Document document) {
        return MarkdownPage.render(document).split(Pattern.quote(sought), -1).length - 1;
    }

    @Test
    void aSignIsExplainedWhereItIsMetFirst() {
        Sheet sheet = sheet(EXAMPLE_AND_TWINS);
        String page = MarkdownPage.render(Composer.sheet(sheet, ""));
        assertTrue(page.indexOf(" ∥ ") < page.indexOf(PARALLEL), page);
        assertEquals(1, times(PARALLEL, Composer.sheet(sheet, "")));
        assertEquals(1, times(PARALLEL, Composer.key(sheet, "")));
    }

    @Test
    void aSheetThatShowsNoSignExplainsNone() {
        Sheet sheet = sheet("  - {template: voltage-dividers/loaded-divider}\n");
        assertEquals(0, times(PARALLEL, Composer.sheet(sheet, "")));
        assertEquals(1, times(PARALLEL, Composer.key(sheet, "")));
    }

    @Test
    void examplesForAllTakeTheirExplanationsWithThem() {
        Document sheet = Composer.sheet(sheet(EXAMPLE_AND_TWINS), "");
        assertEquals(1, times(PARALLEL, SharedExamples.of(sheet).orElseThrow()));
    }

    @Test
    void aKeySaysOfAWorkedExampleThatNothingOfItIsMarkedAndTellsWhatFingerprintsAre() {
        Sheet both = sheet(EXAMPLE_AND_TWINS);
        assertEquals(1, times(WORKED, Composer.key(both, "")));
        assertEquals(1, times(FINGERPRINT, Composer.key(both, "")));
        assertEquals(0, times(WORKED, Composer.sheet(both, "")));
        Sheet worked = sheet("  - {template: voltage-dividers/loaded-divider, support: full}\n");
        assertEquals(0, times(FINGERPRINT, Composer.key(worked, "")));
    }
}
