package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.PartKind;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.model.ChainModel;
import ampersheet.model.ChainPlan;
import ampersheet.model.ChainPlan.Layout;
import ampersheet.model.HeatModel;
import ampersheet.model.HeatPlan;
import ampersheet.model.HeatPlan.PlannedAmbient;
import ampersheet.model.HeatPlan.PlannedLoss;
import ampersheet.model.HeatPlan.PlannedNode;
import ampersheet.model.HeatPlan.PlannedResistance;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Way;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Models made from plans, and what proofs measure on them. */
class ModelsTest {

    private static Expression formula(String text) {
        return FormulaReader.expression(text);
    }

    private static Problem first(TemplateBuilder builder) {
        return new Draws(new Workshop(builder.build()), "s").draw(0);
    }

    private static Acceptance oneKelvin() {
        return new Acceptance.Within(0, 1);
    }

    /** A resistor on a source heats a case. */
    private static TemplateBuilder heated(String watts) {
        return new TemplateBuilder("thermal-rise/heated")
                .given("V", "V", 12)
                .given("R", "ohm", 100)
                .given("Rth", "K/W", 40)
                .given("Ta", "degC", 25)
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 0, 0)
                .ground(0, 0)
                .heat(new HeatPlan(
                        List.of(new PlannedAmbient("air", formula("Ta"))),
                        List.of(new PlannedNode("case", Optional.of(formula("1 J/K")), Optional.empty())),
                        List.of(new PlannedResistance("RCA", "case", "air", formula("Rth"))),
                        List.of(new PlannedLoss("P1", "case", formula(watts)))));
    }

    @Test
    void heatFlowsFromTheCircuitToTheAir() {
        Problem problem = first(heated("power(R1)")
                .step("P", "W", "V ^ 2 / R")
                .step("T", "degC", "Ta + P * Rth")
                .ask("T", oneKelvin())
                .ask("P", new Acceptance.Within(0.02, 0))
                .proof("T", "T", "temperature(case)", new Way.Direct(), 1e-4)
                .proof("P", "P", "heat(RCA)", new Way.Direct(), 1e-4));
        // 12² V² / 100 Ω = 1.44 W; 1.44 W × 40 K/W = 57.6 K above 25 °C
        assertEquals(273.15 + 82.6, problem.answers().get(0).second(), 1e-9);
        assertEquals(1.44, problem.answers().get(1).second(), 1e-9);
        assertEquals(List.of("hot-resistors"), problem.cautions());
        assertTrue(problem.model(HeatModel.class).map(HeatModel::network).isPresent());
    }

    /** P = P0 (1 + α ΔT) and ΔT = P Rth give ΔT = P0 Rth / (1 − α P0 Rth). */
    @Test
    void aLossMayGrowWithTheTemperatureItMakes() {
        Problem problem = first(heated("power(R1) * (1 + 0.004 * (temperature(case) - Ta) / (1 K))")
                .step("dT", "K", "V ^ 2 / R * Rth / (1 - 0.004 / (1 K) * V ^ 2 / R * Rth)")
                .ask("dT", new Acceptance.Within(0.02, 0))
                .proof("dT", "dT", "temperature(case) - temperature(air)", new Way.Direct(), 1e-6));
        assertEquals(57.6 / (1 - 0.004 * 57.6), problem.answers().get(0).second(), 1e-6);
    }

    @Test
    void aTransientIsMeasuredAfterATimeAndUntilATemperature() {
        Problem problem = first(heated("power(R1)")
                .given("t", "s", 30)
                .step("T", "degC", "Ta + V ^ 2 / R * Rth * (1 - exp(-t / (Rth * (1 J/K))))")
                .step("t50", "s", "-(Rth * (1 J/K)) * ln(1 - (25 K) / (V ^ 2 / R * Rth))")
                .ask("T", oneKelvin())
                .ask("t50", new Acceptance.Within(0.02, 0))
                .proof("T", "T", "temperature_after(case, t)", new Way.Direct(), 1e-6)
                .proof("t50", "t50", "time_until(case, 50 degC)", new Way.Direct(), 1e-6));
        assertTrue(problem.answers().stream().allMatch(Problem.Answer::agrees));
    }

    /**
     * OpenStax, University Physics Volume 2, section 10.5 RC circuits, worked example: 10 kΩ and 10 mF on 12 V reach 10
     * V after 179.18 s. The heat path has a measure of the same name beside it, and a node of the same name.
     */
    @Test
    void aCapacitorIsMeasuredAfterATimeAndUntilAVoltage() {
        Problem problem = first(new TemplateBuilder("thermal-rise/timer")
                .given("V", "V", 12)
                .given("R", "kohm", 10)
                .given("C", "F", 0.01)
                .given("t", "s", 100)
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 4, 4)
                .part(PartKind.CAPACITOR, "C1", "farads", "C", 4, 4, 4, 0)
                .wire(4, 0, 0, 0)
                .ground(0, 0)
                .node("out", 4, 4)
                .heat(new HeatPlan(
                        List.of(new PlannedAmbient("air", formula("0 degC"))),
                        List.of(new PlannedNode("out", Optional.of(formula("1 J/K")), Optional.empty())),
                        List.of(new PlannedResistance("RCA", "out", "air", formula("20 K/W"))),
                        List.of(new PlannedLoss("P1", "out", formula("1 W")))))
                .step("t10", "s", "179.18 s")
                .step("Vt", "V", "V * (1 - exp(-t / (R * C)))")
                .step("It", "A", "V / R * exp(-t / (R * C))")
                .step("t1", "s", "R * C * ln(12)")
                .step("tw", "s", "20 s * ln(2)")
                .ask("t10", new Acceptance.Within(0.02, 0))
                .ask("Vt", new Acceptance.Within(0.02, 0))
                .ask("It", new Acceptance.Within(0.02, 0))
                .ask("t1", new Acceptance.Within(0.02, 0))
                .ask("tw", new Acceptance.Within(0.02, 0))
                .proof("t10", "t10", "time_until(out, 10 V)", new Way.Direct(), 5e-5)
                .proof("Vt", "Vt", "voltage_after(out, t)", new Way.Direct(), 1e-7)
                .proof("It", "It", "current_after(R1, t)", new Way.Direct(), 1e-6)
                .proof("t1", "t1", "current_after(R1, t1)", new Way.Root(formula("0.1 mA")), 1e-6)
                .proof("tw", "tw", "time_until(out, 10 degC)", new Way.Direct(), 1e-6));
        assertTrue(problem.answers().stream().allMatch(Problem.Answer::agrees), problem.answers()::toString);
    }

    /** Four groups of 0.1 A: stretches of 0.5 Ω there and back carry 4, 3, 2 and 1 of them, and lose 0.2 to 0.05 V. */
    @Test
    void aStripIsMeasuredTapByTap() {
        TemplateBuilder strip = new TemplateBuilder("chain-addressing/strip")
                .given("V", "V", 12.03)
                .given("n", "1", 4)
                .given("k", "1", 3)
                .word("feed", "end", "both ends")
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 6)
                .copper(PartKind.STRIP, "L1", "feed", 0, 6, 0, "taps", "n", "amps", "0.1 A", "ohms", "0.25 ohm")
                .ground(0, 0)
                .step("Vk", "V", "V - 0.35 V")
                .step("Vw", "V", "V - 0.5 V")
                .step("kw", "1", "n - 3")
                .ask("Vk", new Acceptance.Within(0.02, 0))
                .ask("Vw", new Acceptance.Within(0.02, 0))
                .ask("kw", new Acceptance.Count())
                .proof("Vk", "Vk", "tap_voltage(L1, k)", new Way.Direct(), 1e-9)
                .proof("Vw", "Vw", "lowest_voltage(L1)", new Way.Direct(), 1e-9)
                .proof("kw", "kw", "lowest_tap(L1)", new Way.Direct(), 1e-9)
                .require("feed == end");
        Problem problem = first(strip);
        assertTrue(problem.answers().stream().allMatch(Problem.Answer::agrees), problem.answers()::toString);
        assertEquals("end", problem.schematic().orElseThrow().parts().get(1).word("feed"));
    }

    /** Two taps share the lowest voltage of a strip fed at both ends; the first counts, whatever the last bits say. */
    @Test
    void ofEqualTapsTheFirstIsTheLowest() {
        Problem problem = first(new TemplateBuilder("chain-addressing/strip")
                .given("V", "V", 12)
                .given("n", "1", 44)
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 6)
                .copper(PartKind.STRIP, "L1", "both ends", 0, 6, 0, "taps", "n", "amps", "7 mA", "ohms", "3 mohm")
                .ground(0, 0)
                .step("kw", "1", "n / 2")
                .ask("kw", new Acceptance.Count())
                .proof("kw", "kw", "lowest_tap(L1)", new Way.Direct(), 1e-9));
        assertEquals(22, problem.answers().get(0).second());
    }

    /** Two rows of three pixels, 0.1 A each, on a solid bar: to the last pixel, 0.5 Ω carry 3, 2 and 1 of them. */
    @Test
    void aPanelIsMeasuredPixelByPixel() {
        TemplateBuilder panel = new TemplateBuilder("chain-addressing/panel")
                .given("V", "V", 5)
                .given("x", "1", 2)
                .given("y", "1", 1)
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 9)
                .copper(
                        PartKind.PANEL,
                        "P1",
                        "start",
                        0,
                        9,
                        0,
                        "columns",
                        "3",
                        "rows",
                        "2",
                        "amps",
                        "0.1 A",
                        "ohms",
                        "0.25 ohm",
                        "bus",
                        "0 ohm")
                .ground(0, 0)
                .step("Vp", "V", "V - 0.3 V")
                .step("V0", "V", "V - 0.15 V")
                .ask("Vp", new Acceptance.Within(0.02, 0))
                .ask("V0", new Acceptance.Within(0.02, 0))
                .proof("Vp", "Vp", "pixel_voltage(P1, x, y)", new Way.Direct(), 1e-9)
                .proof("V0", "V0", "pixel_voltage(P1, 0, y)", new Way.Direct(), 1e-9);
        assertTrue(first(panel).answers().stream().allMatch(Problem.Answer::agrees));
        ProblemTemplate outside = panel.step("V3", "V", "V")
                .ask("V3", new Acceptance.Within(0.02, 0))
                .proof("V3", "V3", "pixel_voltage(P1, 3, 0)", new Way.Direct(), 1e-9)
                .build();
        Attempt.Refused refused = assertInstanceOf(
                Attempt.Refused.class, new Workshop(outside).work(new SpaceOfGivens(outside).values(0)));
        assertTrue(refused.detail().contains("P1 has no such pixel"), refused.detail());
    }

    @Test
    void aVoltageThatIsNeverReachedIsRefused() {
        ProblemTemplate template = new TemplateBuilder("voltage-dividers/never")
                .given("V", "V", 5)
                .given("R", "ohm", 100)
                .part(PartKind.SOURCE, "V1", "volts", "V", 0, 0, 0, 4)
                .part(PartKind.RESISTOR, "R1", "ohms", "R", 0, 4, 4, 4)
                .part(PartKind.CAPACITOR, "C1", "farads", "1 uF", 4, 4, 4, 0)
                .wire(4, 0, 0, 0)
                .node("out", 4, 4)
                .step("t", "s", "R * (1 uF)")
                .ask("t", new Acceptance.Within(0.02, 0))
                .proof("t", "t", "time_until(out, 6 V)", new Way.Direct(), 1e-6)
                .build();
        Attempt.Refused refused = assertInstanceOf(
                Attempt.Refused.class, new Workshop(template).work(new SpaceOfGivens(template).values(0)));
        assertEquals(Refusal.MODEL_UNSOLVED, refused.reason());
        assertTrue(
                refused.detail().contains("out never reaches the voltage asked for; it comes to rest at 5"),
                refused.detail());
    }

    /** The search varies a value of the heat path. */
    @Test
    void theHighestAmbientIsFoundBySearch() {
        Problem problem = first(heated("power(R1)")
                .step("Tmax", "degC", "100 degC - V ^ 2 / R * Rth")
                .ask("Tmax", oneKelvin())
                .proof("Tmax", "Ta", "temperature(case)", new Way.Root(formula("100 degC")), 1e-6));
        assertEquals(273.15 + 42.4, problem.answers().get(0).second(), 1e-6);
    }

    /** For one proof the model has another resistor; the heat path follows the circuit. */
    @Test
    void aProofMayChangeTheModel() {
        Problem problem = first(heated("power(R1)")
                .step("T", "degC", "Ta + V ^ 2 / R * Rth")
                .step("Thalf", "degC", "Ta + V ^ 2 / (2 * R) * Rth")
                .ask("T", oneKelvin())
                .ask("Thalf", oneKelvin())
                .proof("T", "T", "temperature(case)", new Way.Direct(), 1e-6)
                .proof(
                        "Thalf",
                        "Thalf",
                        Map.of("R", formula("2 * R")),
                        "temperature(case)",
                        new Way.Direct(),
                        1e-6,
                        ""));
        assertEquals(273.15 + 82.6, problem.answers().get(0).second(), 1e-9);
        assertEquals(273.15 + 53.8, problem.answers().get(1).second(), 1e-9);
    }

    @Test
    void aTemperatureThatIsNeverReachedIsRefused() {
        ProblemTemplate template = heated("power(R1)")
                .step("t", "s", "Rth * (1 J/K)")
                .ask("t", new Acceptance.Within(0.02, 0))
                .proof("t", "t", "time_until(case, 200 degC)", new Way.Direct(), 1e-6)
                .build();
        Workshop workshop = new Workshop(template);
        Attempt.Refused refused =
                assertInstanceOf(Attempt.Refused.class, workshop.work(new SpaceOfGivens(template).values(0)));
        assertEquals(Refusal.MODEL_UNSOLVED, refused.reason());
        assertTrue(refused.detail().contains("never reaches"), refused.detail());
    }

    /** Tiles of 4 by 2 in rows that snake; the second row of tiles is turned half around. */
    private static TemplateBuilder wall() {
        return new TemplateBuilder("chain-addressing/wall")
                .given("columns", "1", 3)
                .given("rows", "1", 2)
                .given("x", "1", 9)
                .given("y", "1", 2)
                .word("order", "progressive", "serpentine")
                .chain(new ChainPlan(
                        formula("4"),
                        formula("2"),
                        "order",
                        "top left",
                        "rows",
                        "west",
                        "east",
                        new Layout.Rows(formula("columns"), formula("rows")),
                        true,
                        Optional.of(formula("24")),
                        Optional.of(formula("1.25 us")),
                        Optional.of(formula("50 us")),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(formula("0.5 us")),
                        Optional.of(new ChainPlan.PlannedPackets(
                                formula("32"),
                                formula("3"),
                                Optional.of(formula("44 us")),
                                Optional.of(formula("148 us")))),
                        List.of()));
    }

    /** 48 pixels, ten to a packet of 32 channels; the fullest packet sends 30 channels, the last pixel is 47 on. */
    @Test
    void thePacketsOfAFrameAreFilledPixelByPixel() {
        Problem problem = first(wall().step("P", "1", "5")
                .step("k", "1", "5")
                .step("c", "1", "7 * 3 + 1")
                .step("tp", "s", "148 us + 30 * 44 us")
                .step("tf", "s", "48 * 24 * 1.25 us + 50 us + 47 * 0.5 us")
                .ask("P", new Acceptance.Count())
                .ask("k", new Acceptance.Count())
                .ask("c", new Acceptance.Count())
                .ask("tp", new Acceptance.Within(0.02, 0))
                .ask("tf", new Acceptance.Within(0.02, 0))
                .proof("P", "P", "packets()", new Way.Direct(), 1e-12)
                .proof("k", "k", "packet_of(47)", new Way.Direct(), 1e-12)
                .proof("c", "c", "channel_of(47)", new Way.Direct(), 1e-12)
                .proof("tp", "tp", "packet_time()", new Way.Direct(), 1e-9)
                .proof("tf", "tf", "frame_time()", new Way.Direct(), 1e-9));
        assertEquals(
                List.of(5.0, 5.0, 22.0),
                problem.answers().stream().limit(3).map(Problem.Answer::second).toList());
    }

    @Test
    void thePathOfTheDataIsCounted() {
        // Row 2 is the first row of the second row of tiles, which the data enters at the right: tile 3 holds columns 8
        // to 11.
        // Turned half around, it is seen from its lower right corner: pixel (9, 2) is its column 2 (11 − 9), row 1.
        TemplateBuilder progressive = wall().require("order == progressive")
                .step("n", "1", "columns * rows * 8")
                .step("tile", "1", "3")
                .step("turn", "1", "3 * 8 + 4 + 2")
                .step("back", "1", "3")
                .step("tf", "s", "n * 24 * 1.25 us + 50 us + (n - 1) * 0.5 us");
        Problem problem = first(progressive
                .ask("n", new Acceptance.Count())
                .ask("tile", new Acceptance.Count())
                .ask("turn", new Acceptance.Count())
                .ask("back", new Acceptance.Count())
                .ask("tf", new Acceptance.Within(0.02, 0))
                .proof("n", "n", "pixels()", new Way.Direct(), 1e-4)
                .proof("tile", "tile", "tile_turn(x, y)", new Way.Direct(), 1e-4)
                .proof("turn", "turn", "turn(x, y)", new Way.Direct(), 1e-4)
                .proof("back", "back", "return_turn(x, y)", new Way.Direct(), 1e-4)
                .proof("tf", "tf", "frame_time()", new Way.Direct(), 1e-4));
        assertEquals(
                List.of(48.0, 3.0, 30.0, 3.0),
                problem.answers().stream().limit(4).map(Problem.Answer::second).toList());
        assertTrue(problem.model(ChainModel.class).isPresent());
    }

    @Test
    void aWordGivenTurnsTheTile() {
        // In a serpentine tile the second row runs back, so that column 2 of 4 comes after column 3.
        Problem problem = first(wall().require("order == serpentine")
                .step("turn", "1", "3 * 8 + 4 + 1")
                .ask("turn", new Acceptance.Count())
                .proof("turn", "turn", "turn(x, y)", new Way.Direct(), 1e-4));
        assertEquals(29, problem.answers().get(0).second());
    }

    @Test
    void aPixelOutsideThePanelIsRefused() {
        ProblemTemplate template = wall().step("turn", "1", "x")
                .ask("turn", new Acceptance.Count())
                .proof("turn", "turn", "turn(x + 3, y)", new Way.Direct(), 1e-4)
                .build();
        Attempt.Refused refused = assertInstanceOf(
                Attempt.Refused.class, new Workshop(template).work(new SpaceOfGivens(template).values(0)));
        assertEquals(Refusal.MODEL_UNSOLVED, refused.reason());
        assertTrue(refused.detail().contains("column 12"), refused.detail());
    }
}
