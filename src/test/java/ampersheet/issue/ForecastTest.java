package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.pdf.Profile;
import ampersheet.sheet.Document;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SmallLibrary;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ForecastTest {
    private static Forecast of(String problems, int learners, Optional<Handouts.Wish> wish) {
        return Forecast.of(
                ProblemSet.of(
                        PlanReader.read("plan.yaml", "title: T\nseed: s\norder: mixed\nproblems: " + problems),
                        SmallLibrary.open()),
                learners,
                wish);
    }

    @Test
    void aSheetIsCountedAsItWouldStandThere() {
        Forecast forecast = of(
                "[{template: current-limiting/indicator, example: yes}, {template: voltage-dividers/plain-divider}]",
                4,
                Optional.empty());
        assertEquals(2, forecast.problems().getMax());
        assertEquals(1, forecast.examples().getMin());
        assertEquals(1.0, forecast.mixed());
        assertEquals(
                1.0,
                forecast.levels().values().stream().mapToDouble(share -> share).sum(),
                1e-9);
        assertEquals(2, forecast.templates().size());
        assertTrue(forecast.minutes().getMin() > 0);
    }

    @Test
    void fewProblemsAreWarnedOfAndEightAreNot() {
        assertTrue(of("[{template: current-limiting/indicator, count: 7}]", 1, Optional.empty())
                .warnings()
                .get(0)
                .startsWith("A sheet has 7 problems to work on; with fewer than 8"));
        assertTrue(of("[{template: current-limiting/indicator, count: 8}]", 1, Optional.empty()).warnings().stream()
                .noneMatch(warning -> warning.contains("fewer than")));
    }

    @Test
    void marksScatterLessWithMoreProblemsAndDifferBetweenSheetsOnlyWherePoolsDo() {
        Forecast.Marks one = of("[{template: current-limiting/indicator}]", 4, Optional.empty())
                .marks();
        Forecast.Marks four = of("[{template: current-limiting/indicator, count: 4}]", 4, Optional.empty())
                .marks();
        assertEquals(one.expected(), four.expected(), 1e-9);
        assertEquals(one.luck() / 2, four.luck(), 1e-9, "half with four times as many");
        assertEquals(0, one.sheets(), 1e-6);
        int level = of("[{template: current-limiting/indicator}]", 1, Optional.empty())
                .levels()
                .keySet()
                .iterator()
                .next();
        assertEquals(90 - 10 * level, one.expected(), 1e-9);
        assertEquals(
                Map.of(level, 1.0),
                of("[{template: current-limiting/indicator}]", 3, Optional.empty())
                        .levels());
    }

    @Test
    void anEvenPlanTellsItsSpreadAndWhereItCannotHelp() {
        String four = "[{template: current-limiting/indicator, count: 4}]";
        assertTrue(of(four, 30, Optional.empty()).spread().isEmpty());
        Forecast even = of(four + "\neven: yes", 30, Optional.empty());
        assertTrue(even.spread().orElseThrow().isWorthIt(), even.spread().toString());
        assertTrue(even.warnings().stream().noneMatch(warning -> warning.contains("even:")));
        Forecast one = of("[{template: current-limiting/indicator}]\neven: yes", 30, Optional.empty());
        assertEquals(
                one.spread().orElseThrow().asTheyCome(),
                one.spread().orElseThrow().evenly());
        assertTrue(one.warnings().stream().anyMatch(warning -> warning.startsWith("even: hardly helps here")));
    }

    @Test
    void sidesAreThoseOfTheHandout() {
        Handouts.Wish wish = new Handouts.Wish(Document.Paper.A4, Profile.COMPACT, Handouts.Keys.NONE, true);
        Forecast forecast = of("[{template: current-limiting/indicator}]", 2, Optional.of(wish));
        assertEquals(
                List.of(2, 2),
                List.of(
                        forecast.paper().orElseThrow().sheets(),
                        forecast.paper().orElseThrow().most()));
    }
}
