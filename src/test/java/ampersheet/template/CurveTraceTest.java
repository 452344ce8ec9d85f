package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Step;
import ampersheet.formula.Symbol;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import ampersheet.template.CurveTrace.Sample;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CurveTraceTest {
    private static final Working DOUBLED = new Working(List.of(Step.of("y", formula("2 * x"))));
    private static final Values DRAWN = DOUBLED.work(Values.of(Map.of("x", Quantity.number(3)), Map.of()));

    private static Expression formula(String text) {
        return FormulaReader.expression(text);
    }

    private static CurvePlan.Axis axis(String name) {
        return new CurvePlan.Axis(name, "number", new Symbol(name, ""), Unit.ONE);
    }

    private static CurveTrace trace(
            String across, String from, String to, String line, String pointAcross, String pointUp) {
        return CurveTrace.of(
                new CurvePlan(
                        axis(across),
                        axis("h"),
                        formula(from),
                        formula(to),
                        List.of(new CurvePlan.Line("", formula(line))),
                        List.of(new CurvePlan.Point("y", formula(pointAcross), formula(pointUp)))),
                DOUBLED,
                DRAWN);
    }

    @Test
    void theStepsAreWorkedAgainForEveryValueOfAGiven() {
        CurveTrace trace = trace("x", "0", "10", "y", "x", "y");
        trace.lines().get(0).forEach(sample -> assertEquals(2 * sample.x(), sample.y(), 1e-12));
        assertEquals(List.of(new CurveTrace.Point("y", 3, 6, 0)), trace.points());
        assertTrue(trace.fault().isEmpty(), () -> trace.fault().orElseThrow());
    }

    @Test
    void aStepThatRunsIsNotWorkedAgain() {
        CurveTrace trace = trace("y", "0", "10", "y + x", "y", "y + x");
        assertEquals(
                new Sample(10, 13),
                trace.lines().get(0).get(trace.lines().get(0).size() - 1));
    }

    @Test
    void aKinkIsFoundToAThousandthOfTheAxis() {
        List<Sample> samples =
                trace("q", "0", "1", "min(q, 0.3)", "0.1", "0.1").lines().get(0);
        double nearest = samples.stream()
                .mapToDouble(sample -> Math.abs(sample.x() - 0.3))
                .min()
                .orElseThrow();
        assertTrue(nearest <= 0.001, () -> "nearest sample is " + nearest + " from the kink");
    }

    @Test
    void aBendIsFollowedCloselyAndAStraightLineWithFewSamples() {
        List<Sample> steep =
                trace("q", "0", "1", "q / (q + 0.02)", "0", "0").lines().get(0);
        for (int i = 1; i < steep.size(); i++) {
            double middle = (steep.get(i).x() + steep.get(i - 1).x()) / 2;
            double chord = (steep.get(i).y() + steep.get(i - 1).y()) / 2;
            assertEquals(middle / (middle + 0.02), chord, 0.002);
        }
        assertEquals(17, trace("q", "0", "1", "3 * q", "0", "0").lines().get(0).size());
    }

    @Test
    void theAxisReachesBeyondItsLastPointButNotBeyondItsEndOtherwise() {
        assertEquals(3.24, trace("q", "0", "1", "q", "x", "x").to(), 1e-12);
        assertEquals(3, trace("q", "0", "3", "q", "x", "x").to(), 1e-12);
    }

    @Test
    void aPointBesideItsLineIsAFault() {
        assertEquals(
                "the point y lies on no line of the curve",
                trace("q", "0", "1", "q", "0.5", "0.5001").fault().orElseThrow());
        assertTrue(trace("q", "0", "1", "q", "0.5", "0.5000001").fault().isEmpty());
    }

    @Test
    void aLineWithoutAValueIsAFault() {
        assertEquals(
                "a line of the curve has no finite value somewhere on its axis",
                trace("q", "0", "1", "1 / q", "1", "1").fault().orElseThrow());
    }

    @Test
    void anAxisWithoutLengthIsAFault() {
        assertEquals(
                "the horizontal axis of the curve has no length",
                trace("q", "1", "1", "q", "1", "1").fault().orElseThrow());
    }

    @Test
    void aPointBeforeTheAxisIsAFault() {
        assertEquals(
                "the point y lies before the beginning of the curve's axis",
                trace("q", "1", "2", "q", "0.5", "0.5").fault().orElseThrow());
    }
}
