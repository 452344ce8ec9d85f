package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Values;
import ampersheet.model.ModelPlans;
import ampersheet.quantity.Quantity;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.CurvePlan;
import ampersheet.template.CurveTrace;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * A line of a curve is right not only at the asked point: it is followed along its axis by the solved models, which
 * share no formula with it.
 */
class CurveLinesTest {
    private static final String SEED = "curve-lines";
    private static final int DRAWS = 10;
    private static final double EXACT = 1e-6;

    /**
     * @param measure what the models show where the quantity that runs has a value; it may use that quantity
     * @param shares of the axis at which they are asked
     * @param whole whether only whole numbers can be put into the model
     * @param within relative, or of the line's own height
     */
    private record Followed(String measure, double[] shares, boolean whole, double within) {}

    private static final double[] ALONG = {0.05, 0.23, 0.5, 0.77, 1};

    /** By template and number of the line. */
    private static final Map<String, Followed> FOLLOWED = followed();

    /** Lines that no model shows, and why. */
    private static final Map<String, String> NOT_FOLLOWED = Map.ofEntries(
            Map.entry("current-limiting/relay-hold-up 1", "a limit that is given"),
            Map.entry(
                    "voltage-dividers/bus-pull-up 0", "what the model is searched for; proven as a step at one length"),
            Map.entry("voltage-dividers/bus-pull-up 1", "a limit, proven as a step"),
            Map.entry("current-limiting/gate-resistor 1", "a limit that is given"),
            Map.entry("current-limiting/reference-resistor 1", "a current that is given"),
            Map.entry("thermal-rise/measured-heat-sink 1", "as line 0, with another resistance; its end is proven"),
            Map.entry("thermal-rise/measured-heat-sink 2", "a limit that is given"),
            Map.entry("thermal-rise/pwm-dimmer 1", "a limit that is given"),
            Map.entry("voltage-dividers/bus-boards 0", "the outputs let go; proven as steps at two numbers of boards"),
            Map.entry("voltage-dividers/bus-boards 1", "a limit that is given"),
            Map.entry("thermal-rise/warm-up-time 1", "a limit that is given"),
            Map.entry("thermal-rise/panel-brightness 1", "a limit that is given"),
            Map.entry("thermal-rise/regulator-junction 1", "a limit that is given"),
            Map.entry("voltage-dividers/heaviest-load 1", "a limit, proven as a step"),
            Map.entry("current-limiting/panel-level 1", "a limit, two givens multiplied"),
            Map.entry("voltage-dividers/trimpot-window 1", "another circuit, without its end resistors"),
            Map.entry(
                    "thermal-rise/hot-driver 0",
                    "heat at a temperature that the model would not settle at; the crossing is proven"),
            Map.entry(
                    "thermal-rise/hot-driver 1",
                    "heat at a temperature that the model would not settle at; the crossing is proven"),
            Map.entry("thermal-rise/first-power 1", "a limit that is given"),
            Map.entry("thermal-rise/most-voltage 1", "a limit that is given"),
            Map.entry("voltage-dividers/parallel-sources 1", "a voltage that is given"),
            Map.entry("voltage-dividers/wake-interval 1", "a limit, proven as a step"));

    /** Where the model does not take the quantity that runs: what it takes, and which value that has. */
    private static final Map<String, String[]> PUT_INTO_THE_MODEL = Map.of(
            "current-limiting/reference-resistor", new String[] {"R", "r"},
            "thermal-rise/coil-temperature", new String[] {"T2", "T"},
            "thermal-rise/measured-heat-sink", new String[] {"I", "p / U"},
            "thermal-rise/resistor-takes-heat", new String[] {"I", "i"},
            "voltage-dividers/thermistor-divider", new String[] {"TK", "T"},
            "current-limiting/transistor-overdrive", new String[] {"RB", "(Vc - Vbe) / Ib"},
            "thermal-rise/current-source-heat", new String[] {"RL", "RX"},
            "thermal-rise/most-voltage", new String[] {"V", "Vc"},
            "voltage-dividers/source-inner-resistance", new String[] {"RL", "RX"},
            "voltage-dividers/wake-interval", new String[] {"T", "Tc"});

    private static Map<String, Followed> followed() {
        Map<String, Followed> all = new LinkedHashMap<>();
        all.put("chain-addressing/alignment-error 0", new Followed("worst_edge()", ALONG, true, EXACT));
        all.put("chain-addressing/alignment-error 1", new Followed("typical_edge()", ALONG, true, EXACT));
        all.put("chain-addressing/frame-time 0", new Followed("1 / frame_time()", ALONG, true, EXACT));
        all.put(
                "chain-addressing/clocked-frame 0",
                new Followed("ceiling(frame_time() * f / 8 - 1e-6) * 8 / f", ALONG, true, EXACT));
        all.put("chain-addressing/supply-drop-one-end 0", new Followed("Vs - tap_voltage(L1, x)", ALONG, true, 1e-4));
        all.put("current-limiting/capacitor-inrush 0", new Followed("current_after(R2, t)", ALONG, false, 1e-4));
        all.put("current-limiting/relay-hold-up 0", new Followed("voltage_after(a, t)", ALONG, false, 1e-4));
        all.put("current-limiting/driver-limit-measured 0", new Followed("current(M1)", ALONG, false, EXACT));
        all.put(
                "current-limiting/motor-top-speed 0",
                new Followed("across(E1) / (2 * pi * T / current(M1))", ALONG, false, 1e-4));
        all.put("current-limiting/panel-level 0", new Followed("N * current(V1)", ALONG, false, EXACT));
        all.put(
                "current-limiting/transistor-overdrive 0",
                new Followed("current(RL)", new double[] {0.2, 0.4, 0.8, 1}, false, 0.02));
        all.put("thermal-rise/cooling-down 0", new Followed("temperature_after(sink, t)", ALONG, false, 1e-4));
        all.put("thermal-rise/warm-up-time 0", new Followed("temperature_after(plate, t)", ALONG, false, 1e-4));
        all.put(
                "thermal-rise/hottest-air 0",
                new Followed("Tmax - (temperature(junction) - temperature(air))", ALONG, false, EXACT));
        all.put("thermal-rise/panel-brightness 0", new Followed("temperature(panel)", ALONG, false, EXACT));
        all.put("thermal-rise/panel-temperature 0", new Followed("temperature(pixel)", ALONG, false, EXACT));
        all.put("thermal-rise/panel-temperature 1", new Followed("temperature(board)", ALONG, false, EXACT));
        all.put("thermal-rise/regulator-junction 0", new Followed("temperature(junction)", ALONG, false, EXACT));
        all.put("thermal-rise/resistor-derating 0", new Followed("power(R1)", new double[] {0.95, 0.99}, false, EXACT));
        all.put("thermal-rise/reverse-polarity-loss 0", new Followed("power(D1)", ALONG, false, 1e-4));
        all.put("thermal-rise/reverse-polarity-loss 1", new Followed("power(Q1)", ALONG, false, EXACT));
        all.put(
                "thermal-rise/trace-rise 0",
                new Followed("wi * (temperature(inside) - temperature(air)) / dT", ALONG, false, EXACT));
        all.put(
                "thermal-rise/trace-rise 1",
                new Followed("wo * (temperature(outside) - temperature(air)) / dT", ALONG, false, EXACT));
        all.put("voltage-dividers/bridge-sensor 0", new Followed("voltage(B, A)", ALONG, false, EXACT));
        all.put("voltage-dividers/filter-settling 0", new Followed("voltage_after(adc, t)", ALONG, false, 1e-4));
        all.put("voltage-dividers/heaviest-load 0", new Followed("voltage(out)", ALONG, false, EXACT));
        all.put("voltage-dividers/loaded-divider 0", new Followed("voltage(out)", ALONG, false, EXACT));
        all.put(
                "voltage-dividers/loaded-divider 1",
                new Followed("voltage(out) + current(RL) * R1 * R2 / (R1 + R2)", ALONG, false, EXACT));
        all.put("voltage-dividers/thermistor-divider 0", new Followed("voltage(out)", ALONG, false, EXACT));
        all.put("voltage-dividers/trimpot-window 0", new Followed("voltage(out)", new double[] {0.5}, false, EXACT));
        all.put("current-limiting/board-budget 0", new Followed("power(V2) / eta / V", ALONG, false, EXACT));
        all.put("current-limiting/gate-resistor 0", new Followed("voltage_after(gate, t)", ALONG, false, 1e-4));
        all.put("current-limiting/reference-resistor 0", new Followed("k * current(R1)", ALONG, false, EXACT));
        all.put("thermal-rise/coil-temperature 0", new Followed("across(M1) / current(M1)", ALONG, false, EXACT));
        all.put("thermal-rise/measured-heat-sink 0", new Followed("temperature(sink)", ALONG, false, EXACT));
        all.put("thermal-rise/pwm-dimmer 0", new Followed("temperature(junction)", ALONG, false, EXACT));
        all.put(
                "thermal-rise/resistor-takes-heat 0",
                new Followed("voltage(in, out) * current(R1)", ALONG, false, EXACT));
        all.put("thermal-rise/resistor-takes-heat 1", new Followed("power(R1)", ALONG, false, EXACT));
        all.put("current-limiting/first-current 0", new Followed("current(R1)", ALONG, false, EXACT));
        all.put(
                "thermal-rise/current-source-heat 0",
                new Followed("current(X1)", new double[] {0.3, 0.6}, false, EXACT));
        all.put("thermal-rise/first-power 0", new Followed("power(R1)", ALONG, false, EXACT));
        all.put("thermal-rise/most-voltage 0", new Followed("power(R1)", ALONG, false, EXACT));
        all.put("thermal-rise/shared-box 0", new Followed("temperature(regulator)", ALONG, false, EXACT));
        all.put("thermal-rise/shared-box 1", new Followed("temperature(driver)", ALONG, false, EXACT));
        all.put("thermal-rise/shared-box 2", new Followed("temperature(box)", ALONG, false, EXACT));
        all.put("thermal-rise/track-squares 0", new Followed("across(track) / current(track)", ALONG, false, EXACT));
        all.put(
                "voltage-dividers/battery-life 0",
                new Followed("u * C * VB / power(B1) / (24 h)", ALONG, false, EXACT));
        all.put("voltage-dividers/bridging-resistor 0", new Followed("current(R5)", ALONG, false, EXACT));
        all.put("voltage-dividers/parallel-sources 0", new Followed("voltage(out)", ALONG, false, EXACT));
        all.put("voltage-dividers/source-inner-resistance 0", new Followed("power(RL)", ALONG, false, EXACT));
        all.put("voltage-dividers/wake-interval 0", new Followed("current(B1)", ALONG, false, EXACT));
        return all;
    }

    private static Stream<ProblemTemplate> withCurve() {
        TemplateFiles files = TemplateFiles.builtIn();
        return ChosenTemplates.of(files).stream()
                .map(name -> TemplateReader.read(files, name))
                .filter(template -> template.curve().isPresent());
    }

    @Test
    void everyLineIsFollowedOrItIsSaidWhyNot() {
        List<String> neither = new ArrayList<>();
        withCurve().forEach(template -> {
            for (int line = 0; line < template.curve().orElseThrow().lines().size(); line++) {
                String name = template.name() + " " + line;
                if (!FOLLOWED.containsKey(name) && !NOT_FOLLOWED.containsKey(name)) {
                    neither.add(name);
                }
            }
        });
        assertEquals(List.of(), neither);
    }

    @TestFactory
    Stream<DynamicTest> theModelsFollowEveryLine() {
        return withCurve()
                .flatMap(template -> FOLLOWED.entrySet().stream()
                        .filter(entry -> entry.getKey().startsWith(template.name() + " "))
                        .map(entry -> DynamicTest.dynamicTest(
                                entry.getKey(),
                                () -> follow(
                                        template,
                                        Integer.parseInt(entry.getKey()
                                                .substring(template.name().length() + 1)),
                                        entry.getValue()))));
    }

    private static void follow(ProblemTemplate template, int line, Followed followed) {
        CurvePlan plan = template.curve().orElseThrow();
        Expression measure = FormulaReader.expression(followed.measure());
        Draws draws = new Draws(new Workshop(template), SEED);
        for (int draw = 0; draw < DRAWS; draw++) {
            Problem problem = draws.draw(draw);
            CurveTrace trace = problem.curve().orElseThrow();
            double height = Math.max(Math.abs(trace.highest()), Math.abs(trace.lowest()));
            for (double share : followed.shares()) {
                double x = trace.from() + share * (trace.to() - trace.from());
                x = followed.whole() ? Math.max(1, Math.rint(x)) : x;
                Values there = at(x, plan, problem);
                double drawn =
                        Evaluation.evaluate(plan.lines().get(line).is(), there).value();
                Values measured = new ModelPlans(template.models()).with(there).measuredBy(there);
                double shown = Evaluation.evaluate(measure, measured).value();
                String replay = template.name() + ", seed " + SEED + ", draw " + draw + ", "
                        + plan.across().quantity() + " = " + x + ": the line is at " + drawn + ", the model at "
                        + shown;
                assertTrue(Math.abs(drawn - shown) <= followed.within() * height, replay);
            }
        }
    }

    private static Values at(double x, CurvePlan plan, Problem problem) {
        String running = plan.across().quantity();
        Quantity value = new Quantity(x, plan.across().unit().dimension());
        Values there = problem.values().with(running, value);
        Values worked = problem.values().has(running)
                ? problem.template().working().work(there, Map.of(running, value))
                : there;
        String[] put = PUT_INTO_THE_MODEL.get(problem.template().name());
        return put == null
                ? worked
                : worked.with(put[0], Evaluation.evaluate(FormulaReader.expression(put[1]), worked));
    }
}
