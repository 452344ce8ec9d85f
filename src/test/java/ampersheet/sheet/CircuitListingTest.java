package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.CircuitSimulator;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.SpiceNetlist;
import ampersheet.model.CircuitModel;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The netlist in a key is a circuit that a simulator runs as it stands, and stands in the key alone. */
class CircuitListingTest {
    private static final Sheet SHEET = SmallLibrary.maker(
                    "title: T\nseed: listing\nproblems:\n  - {template: " + SmallLibrary.DIVIDER + "}\n")
            .sheet(1);

    private static List<Listing> listings(Document document) {
        return document.blocks().stream()
                .filter(ProblemBlock.class::isInstance)
                .flatMap(problem -> ((ProblemBlock) problem).blocks().stream())
                .filter(Listing.class::isInstance)
                .map(Listing.class::cast)
                .toList();
    }

    @Test
    void theKeyHoldsTheCircuitAndTheSheetDoesNot() {
        assertEquals(1, listings(Composer.key(SHEET, "")).size());
        assertTrue(listings(Composer.sheet(SHEET, "")).isEmpty());
    }

    @Test
    void aLearnersNetlistTellsNoValueThatAStepFinds() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        int blank = 0;
        for (String name : library.names()) {
            ProblemTemplate template = library.template(name);
            SheetProblem drawn = SheetProblem.alone(
                    new Draws(new Workshop(template), "listing", Draws.Stretch.FROM_THE_END).draw(0),
                    DecimalMarker.POINT);
            Optional<CircuitModel> circuit = drawn.problem().model(CircuitModel.class);
            if (circuit.isEmpty()) {
                continue;
            }
            Set<String> all = new TreeSet<>();
            circuit.get().netlist().parts().forEach(part -> all.add(part.part().name()));
            assertEquals(
                    SpiceNetlist.of(circuit.get().netlist(), "t", all, Double::toString, Languages.ENGLISH),
                    SpiceNetlist.of(
                            withOtherValues(circuit.get().netlist()), "t", all, Double::toString, Languages.ENGLISH),
                    template.name() + ": what is left open leaves no trace");
            blank += CircuitListing.open(drawn)
                            .filter(listing -> listing.text().contains(SpiceNetlist.blank(Languages.ENGLISH)))
                            .isPresent()
                    ? 1
                    : 0;
        }
        assertTrue(blank > 5, blank + " templates with a value sought in their circuit");
    }

    private static Netlist withOtherValues(Netlist netlist) {
        return new Netlist(
                netlist.parts().stream()
                        .map(one -> new Netlist.Connected(withOtherValues(one.part()), one.node()))
                        .toList(),
                netlist.nodes(),
                netlist.nodeAt(),
                netlist.doubts());
    }

    /** What a part is made of stays: the copper of a strip, the gauge of a cable, whether a contact is closed. */
    private static PlacedPart withOtherValues(PlacedPart part) {
        Map<PartValue, Double> others = new LinkedHashMap<>(part.values());
        Set.of(
                        PartValue.VOLTS,
                        PartValue.OHMS,
                        PartValue.AMPS,
                        PartValue.FARADS,
                        PartValue.GAIN,
                        PartValue.METRES,
                        PartValue.POSITION)
                .forEach(value -> others.computeIfPresent(value, (its, number) -> number * 0.97));
        return Set.of(PartKind.STRIP, PartKind.PANEL).contains(part.kind())
                ? part
                : new PlacedPart(part.kind(), part.name(), part.ends(), others, part.words());
    }

    @Test
    void aSimulatorRunsItAsItStandsAndFindsTheKey() throws Exception {
        CircuitSimulator.need();
        String netlist = listings(Composer.key(SHEET, "")).get(0).text();
        assertFalse(netlist.contains("{"), netlist);
        Map<String, Double> found = CircuitSimulator.run(netlist, "op", List.of("v(1)", "v(2)"));
        double key = SHEET.problems().get(0).answers().get(0).expected();
        assertTrue(
                found.values().stream().anyMatch(volts -> Math.abs(volts - key) <= 1e-4 * Math.abs(key)),
                found + " and " + key);
    }
}
