package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.BenchReading;
import ampersheet.problem.Inventory;
import ampersheet.problem.Problem;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Sheets that can be built: what the bins of an invented workshop hold limits what is asked. */
class PartsListTest {
    private static final int SEATS = 12;
    private static final String PLAN = """
      title: Bench evening
      problems:
        - {template: voltage-dividers/loaded-divider}
        - {template: current-limiting/one-indicator}
        - {template: voltage-dividers/divider-tolerance}
      """;
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));

    private static String demo() {
        try {
            return Files.readString(Path.of("problem-templates/demo/parts.csv"));
        } catch (IOException missing) {
            throw new AssertionError(missing);
        }
    }

    private static ProblemSet set(String parts) {
        return ProblemSet.of(
                PlanReader.read("plan.yaml", PLAN), LIBRARY, Optional.of(PartsReader.read("parts.csv", parts)));
    }

    private static List<Diagnostic> faults(String parts) {
        return assertThrows(DiagnosticException.class, () -> PartsReader.read("parts.csv", parts))
                .diagnostics();
    }

    private static String bins(String... lines) {
        return "kind,value,tolerance,rating,count\n" + String.join("\n", lines) + "\n";
    }

    @Test
    void everySheetOfAClassCanBeBuiltFromTheBinsAtTheSameTime() {
        ProblemSet set = set(demo());
        Inventory inventory = set.parts().orElseThrow();
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(SEATS);
        Map<String, Map<Double, Integer>> used = new TreeMap<>();
        int parts = 0;
        for (int seat = 1; seat <= SEATS; seat++) {
            for (SheetProblem one : maker.sheet(seat).problems()) {
                Problem problem = one.problem();
                var netlist = problem.schematic().orElseThrow().netlist();
                var point = ((Outcome.Solved) OperatingPointSolver.solve(netlist)).point();
                for (PlacedPart part : problem.schematic().orElseThrow().parts()) {
                    if (part.kind() == PartKind.RESISTOR || part.kind() == PartKind.LOAD) {
                        double ohms = part.values().get(PartValue.OHMS);
                        var bin = inventory.bins().stream()
                                .filter(each -> Math.abs(each.value() / ohms - 1) < 1e-9)
                                .findFirst();
                        assertTrue(bin.isPresent(), "seat " + seat + ": no bin holds " + ohms + " ohm");
                        assertTrue(
                                point.power(part.name()) <= bin.get().rating().orElseThrow(),
                                "seat " + seat + ": " + part);
                        used.computeIfAbsent(problem.template().name(), name -> new TreeMap<>())
                                .merge(ohms, 1, Integer::sum);
                        parts++;
                    }
                }
            }
        }
        assertEquals(SEATS * 6, parts);
        used.forEach((template, counts) -> counts.forEach((ohms, count) -> {
            int held = inventory.bins().stream()
                    .filter(each -> Math.abs(each.value() / ohms - 1) < 1e-9)
                    .findFirst()
                    .orElseThrow()
                    .count();
            assertTrue(count <= held, template + " needs " + count + " of " + ohms + " ohm, the bin holds " + held);
        }));
    }

    @Test
    void aBinThatRunsOutSendsLaterSeatsToOtherValuesAndAnEmptyWorkshopIsTold() {
        String few = bins(
                "resistor,4.7 kohm,5 %,0.25 W,3",
                "resistor,10 kohm,5 %,0.25 W,3",
                "resistor,3.3 kohm,5 %,0.25 W,3",
                "resistor,2.2 kohm,5 %,0.25 W,3",
                "resistor,470 ohm,5 %,0.5 W,3",
                "resistor,1 kohm,5 %,0.25 W,3");
        SheetMaker maker = new SheetMaker(set(few));
        maker.prepare(3);
        DiagnosticException tooFew = assertThrows(DiagnosticException.class, () -> maker.prepare(12));
        assertTrue(tooFew.getMessage().contains("too few of a part"), tooFew.getMessage());
        assertTrue(tooFew.getMessage().contains("Put more parts"), tooFew.getMessage());
        DiagnosticException none = assertThrows(
                DiagnosticException.class, () -> new SheetMaker(set(bins("resistor,1 Mohm,5 %,0.25 W,99"))));
        assertTrue(
                none.getMessage().contains("no bin holds a resistor that can be R1 of voltage-dividers/loaded-divider"),
                none.getMessage());
    }

    @Test
    void aPartWorkedFromOthersIsToldNotGuessed() {
        DiagnosticException told = assertThrows(
                DiagnosticException.class,
                () -> new SheetMaker(ProblemSet.of(
                        PlanReader.read(
                                "plan.yaml", "title: T\nproblems: [{template: thermal-rise/design-test-load}]\n"),
                        LIBRARY,
                        Optional.of(PartsReader.read("parts.csv", demo())))));
        assertTrue(told.getMessage().contains("draws RL as one part"), told.getMessage());
    }

    @Test
    void theSheetIdDependsOnWhatIsInTheBinsAndNotOnHowItIsWritten() {
        String id = set(demo()).id(1).toString();
        assertNotEquals(
                id,
                set(demo().replace("4.7 kohm,5 %,0.25 W,40", "4.7 kohm,5 %,0.25 W,41"))
                        .id(1)
                        .toString());
        assertNotEquals(id, set(demo().replace("2 digits", "3 digits")).id(1).toString());
        assertNotEquals(
                id,
                ProblemSet.of(PlanReader.read("plan.yaml", PLAN), LIBRARY).id(1).toString());
        assertEquals(
                id,
                set(demo().replace("4.7 kohm", "4k7")
                                .replace("0.25 W", "250 mW")
                                .replace("\n", "\r\n"))
                        .id(1)
                        .toString());
        List<String> lines = demo().lines().toList();
        assertEquals(
                id,
                set(lines.get(0) + "\n" + lines.get(2) + "\n" + lines.get(1) + "\n"
                                + String.join("\n", lines.subList(3, lines.size())))
                        .id(1)
                        .toString());
        DiagnosticException refused = assertThrows(
                DiagnosticException.class,
                () -> ProblemSet.of(PlanReader.read("plan.yaml", PLAN), LIBRARY).readId(id));
        assertTrue(refused.getMessage().contains("another parts list"), refused.getMessage());
    }

    private static double divider(double volts, double upper, double lower, double load) {
        double both = lower * load / (lower + load);
        return volts * both / (upper + both);
    }

    /** Worked by hand here: 1 % resistors, a meter that shows steps of 10 mV and may be off by 0.5 % + 2 digits. */
    @Test
    void theKeyTellsBetweenWhichValuesAMeterReads() {
        String ten = bins(
                "resistor,10 kohm,1 %,0.25 W,9",
                "resistor,22 kohm,1 %,0.25 W,9", "resistor,4.7 kohm,1 %,0.25 W,9", "meter,10 mV,0.5 % + 2 digits,,1");
        ProblemSet set = ProblemSet.of(
                PlanReader.read("plan.yaml", "title: T\nproblems: [{template: voltage-dividers/loaded-divider}]\n"),
                LIBRARY,
                Optional.of(PartsReader.read("parts.csv", ten)));
        Sheet sheet = new SheetMaker(set).sheet(1);
        Problem problem = sheet.problems().get(0).problem();
        double volts = problem.givens().quantity("Vs").value();
        double upper = problem.givens().quantity("R1").value();
        double lower = problem.givens().quantity("R2").value();
        double load = problem.givens().quantity("RL").value();
        List<BenchReading> readings = BenchReading.of(problem, set.parts().orElseThrow());
        BenchReading read = readings.get(readings.size() - 1);
        assertEquals("V", read.of());
        assertEquals(divider(volts, upper, lower, load), read.nominal(), 1e-9);
        assertEquals(divider(volts, 0.99 * upper, 1.01 * lower, 1.01 * load) * 1.005 + 0.02, read.high(), 1e-9);
        assertEquals(divider(volts, 1.01 * upper, 0.99 * lower, 0.99 * load) * 0.995 - 0.02, read.low(), 1e-9);
        String key = ampersheet.render.markdown.MarkdownPage.render(Composer.key(sheet, ""));
        assertTrue(key.contains("On the bench, with parts and meter within their tolerances: **q1c**"), key);
        String open = ampersheet.render.markdown.MarkdownPage.render(Composer.sheet(sheet, ""));
        assertFalse(open.contains("On the bench"), open);
    }

    @Test
    void everyFaultOfADamagedListIsToldWithItsLine() {
        List<Diagnostic> told = faults(bins(
                "resistor,4.7 kohm,5 %,0.25 W,40",
                "resistorr,1k,5 %,,3",
                "resistor,4.7 V,5 %,,3",
                "resistor,-5 ohm,5 %,,3",
                "resistor,1k,500 %,,3",
                "resistor,1k,5 %,much,3",
                "resistor,1k,5 %,,-1",
                "resistor,1k,5 %,,1.5",
                "resistor,4k7,5 %,,2",
                "meter,10 kohm,1 %,,1",
                "meter,10 mV,good,,1",
                "=cmd|' /C calc'!A0,1k,,,1",
                "resistor",
                ",,,,7"));
        assertEquals(
                List.of(3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 14, 15),
                told.stream().map(one -> one.place().line()).toList().subList(0, 14).stream()
                        .sorted()
                        .toList(),
                told.toString());
        told.forEach(one -> assertTrue(
                one.place().file().equals("parts.csv")
                        && !one.problem().isBlank()
                        && !one.nextAction().isBlank(),
                one.print()));
        assertTrue(
                told.stream()
                        .anyMatch(
                                one -> one.place().line() == 10 && one.problem().contains("line 2")),
                told.toString());
    }

    @Test
    void whatIsNoListAtAllIsTold() {
        assertTrue(faults("").get(0).problem().contains("empty"));
        assertTrue(faults("kind,value\nresistor,1k\n").get(0).problem().contains("tolerance, count"));
        assertTrue(
                faults("kind,value,tolerance,rating,count\n").get(0).problem().contains("no bin"));
        assertTrue(faults("kind,value,tolerance,rating,count\nresistor,\"1k,5 %,,3\n")
                .get(0)
                .problem()
                .contains("quotation"));
        assertTrue(faults("PK\u0003\u0004\u0000\u0001garbage").get(0).problem().contains("names no column"));
        assertTrue(faults(bins("resistor,1k,5 %,,1\n".repeat(6_000)))
                .get(0)
                .problem()
                .contains("6001 lines"));
    }

    @Test
    void aRatingMayBeAFractionOfAWatt() {
        for (String rating : List.of("1/4 W", "1/4W", "1 / 4 W", "1/4", "0.25 W", "250 mW")) {
            Inventory read = PartsReader.read("parts.csv", bins("resistor,1k,5 %," + rating + ",1"));
            assertEquals(0.25, read.bins().get(0).rating().orElseThrow(), rating);
        }
        for (String rating : List.of("1/0 W", "1/4 V", "1//4 W", "/4 W", "0/4 W")) {
            assertTrue(
                    faults(bins("resistor,1k,5 %," + rating + ",1"))
                            .get(0)
                            .problem()
                            .contains("is not a power rating"),
                    rating);
        }
    }

    /** Damage at random: a list is read, or refused with its faults; nothing else escapes. */
    @Test
    void aListDamagedAtRandomIsReadOrRefused() {
        long seed = 20_260_109;
        Random random = new Random(seed);
        int refused = 0;
        for (int i = 0; i < 3_000; i++) {
            StringBuilder damaged = new StringBuilder(demo());
            for (int cut = 0; cut <= random.nextInt(4); cut++) {
                int at = random.nextInt(damaged.length());
                switch (random.nextInt(4)) {
                    case 0 -> damaged.deleteCharAt(at);
                    case 1 -> damaged.insert(at, (char) random.nextInt(0x300));
                    case 2 -> damaged.setCharAt(at, "\",;\n%k-9e.".charAt(random.nextInt(10)));
                    default ->
                        damaged.insert(at, damaged.substring(at, Math.min(damaged.length(), at + random.nextInt(40))));
                }
            }
            try {
                PartsReader.read("parts.csv", damaged.toString());
            } catch (DiagnosticException told) {
                refused++;
                assertFalse(told.diagnostics().isEmpty(), "seed " + seed + ", list " + i);
            }
        }
        assertTrue(refused > 1_000 && refused < 3_000, refused + " of 3000 refused");
    }
}
