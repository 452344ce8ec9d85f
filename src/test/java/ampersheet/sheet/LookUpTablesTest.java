package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.PreferredSeries;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LookUpTablesTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    private static Document sheet(String... templates) {
        StringBuilder plan = new StringBuilder("title: Tables\nseed: tables\norder: as listed\nproblems:\n");
        for (String template : templates) {
            plan.append("  - {template: ").append(template).append("}\n");
        }
        return Composer.sheet(
                new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan.toString()), LIBRARY)).sheet(1), "");
    }

    private static List<PreferredValues> preferred(Document sheet) {
        return sheet.blocks().stream()
                .filter(PreferredValues.class::isInstance)
                .map(PreferredValues.class::cast)
                .toList();
    }

    @Test
    void aSheetPrintsEverySeriesThatItAsksForOnceAndNoOther() {
        List<PreferredValues> both = preferred(sheet(
                "current-limiting/one-indicator", "current-limiting/motor-start", "voltage-dividers/preferred-pair"));
        assertEquals(1, both.size());
        assertEquals(
                List.of("E12", "E24"),
                both.get(0).series().stream().map(Document.Series::name).toList());
        assertEquals(
                List.of("1.0", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6", "6.8", "8.2"),
                both.get(0).series().get(0).values());
        assertEquals(List.of(), preferred(sheet("chain-addressing/tile-grid")));
    }

    /** A design's blanks are looked up as well; they are no asked values of their own. */
    @Test
    void aDesignNeedsItsSeries() {
        ProblemTemplate design = LIBRARY.template("voltage-dividers/design-pair");
        assertTrue(LookUpTables.series(design).contains(PreferredSeries.E24), design.name());
    }

    @Test
    void longSeriesComeInRowsWithThreeFiguresAndTheSheetsDecimalMarker() {
        PreferredValues values = LookUpTables.preferredValues(EnumSet.of(PreferredSeries.E96), DecimalMarker.COMMA);
        List<List<String>> rows = values.series().get(0).rows(12);
        assertEquals(8, rows.size());
        assertEquals("1,00", rows.get(0).get(0));
        assertEquals("9,76", rows.get(7).get(11));
        assertEquals(
                Set.of(4),
                Set.copyOf(values.series().get(0).values().stream()
                        .map(String::length)
                        .toList()));
    }

    /** Against the sizes of ASTM B258 and the resistance of copper by IEC 60028, 1.7241·10⁻⁸ Ω·m. */
    @Test
    void theRowsOfWireAreThoseOfTheGaugeRule() {
        ReferenceTable wires = LookUpTables.wireGauges(DecimalMarker.POINT, Languages.ENGLISH);
        assertEquals(11, wires.rows().size());
        assertEquals(List.of("22", "0.644", "0.326", "52.95"), wires.rows().get(6));
        assertEquals(List.of("10", "2.59", "5.26", "3.277"), wires.rows().get(0));
        assertEquals(List.of("30", "0.255", "0.0509", "338.6"), wires.rows().get(10));
        ReferenceTable turned = wires.turned();
        assertEquals(12, turned.head().size());
        assertEquals(List.of("Gauge", "10"), turned.head().subList(0, 2));
        assertEquals(wires, turned.turned());
    }

    @Test
    void aHazardThatComesUpAgainSaysWhatToDoAndPointsNowhere() {
        Document sheet = sheet(
                "current-limiting/motor-start",
                "current-limiting/transistor-overdrive",
                "voltage-dividers/preferred-pair");
        List<Document.Caution> bench = sheet.blocks().stream()
                .filter(Document.ProblemBlock.class::isInstance)
                .flatMap(block -> ((Document.ProblemBlock) block).blocks().stream())
                .filter(Document.Caution.class::isInstance)
                .map(Document.Caution.class::cast)
                .filter(caution -> caution.heading().equals("Before you switch on"))
                .toList();
        assertTrue(bench.size() >= 2, bench.toString());
        assertTrue(
                bench.get(0).text().startsWith("A wrong setting"), bench.get(0).text());
        assertTrue(
                bench.get(1).text().startsWith("Set the bench supply first"),
                bench.get(1).text());
    }
}
