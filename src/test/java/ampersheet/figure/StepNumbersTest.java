package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class StepNumbersTest {
    private static final String GROUP = "steps at ";

    private static Drawing numbered(Circuits.Drawn circuit, Map<String, List<Integer>> found) {
        Drawing drawing = CircuitFigure.layOut(
                circuit.schematic(),
                circuit.labels(),
                new CircuitFigure.Manner(SymbolStyle.IEC, Languages.ENGLISH),
                Figure.PAGE_WIDTH);
        StepNumbers.add(drawing, found, Figure.PAGE_WIDTH);
        return drawing;
    }

    private static Map<String, List<Integer>> twoForEvery(Circuits.Drawn circuit) {
        Map<String, List<Integer>> found = new LinkedHashMap<>();
        circuit.labels().keySet().forEach(part -> found.put(part, List.of(found.size() + 1, found.size() + 12)));
        return found;
    }

    private static double distance(Box one, Box other) {
        double dx = Math.max(0, Math.max(one.left() - other.right(), other.left() - one.right()));
        double dy = Math.max(0, Math.max(one.top() - other.bottom(), other.top() - one.bottom()));
        return Math.sqrt(dx * dx + dy * dy);
    }

    @Test
    void numbersStandClearNearTheirPartAndAwayFromTheTextOfOthers() {
        int placed = 0;
        for (Map.Entry<String, Circuits.Drawn> each : Circuits.all().entrySet()) {
            Drawing drawing = numbered(each.getValue(), twoForEvery(each.getValue()));
            Audit.clear(drawing, each.getKey());
            for (String part : each.getValue().labels().keySet()) {
                Optional<Box> numbers =
                        drawing.shapes(GROUP + part).stream().map(Shape::bounds).reduce(Box::with);
                if (numbers.isEmpty()) {
                    continue;
                }
                placed++;
                double own = drawing.shapes(part).stream()
                        .mapToDouble(of -> distance(of.bounds(), numbers.get()))
                        .min()
                        .orElseThrow();
                assertTrue(
                        own <= 13,
                        () -> each.getKey() + ": the numbers of " + part + " stand " + own + " away from it");
                for (String other : each.getValue().labels().keySet()) {
                    drawing.shapes(other).stream()
                            .filter(of -> !other.equals(part) && of instanceof Shape.Words)
                            .forEach(words -> assertTrue(
                                    distance(words.bounds(), numbers.get()) >= 8,
                                    () -> each.getKey() + ": the numbers of " + part + " stand at " + other));
                }
            }
        }
        assertTrue(placed > 40, "only " + placed + " parts got their numbers");
    }

    @Test
    void nothingElseOfTheDrawingChanges() {
        Circuits.Drawn circuit = Circuits.all().values().iterator().next();
        List<Shape> before = CircuitFigure.layOut(
                        circuit.schematic(),
                        circuit.labels(),
                        new CircuitFigure.Manner(SymbolStyle.IEC, Languages.ENGLISH),
                        Figure.PAGE_WIDTH)
                .shapes();
        assertEquals(before, numbered(circuit, twoForEvery(circuit)).shapes().subList(0, before.size()));
    }

    @Test
    void aPartThatIsNotDrawnGetsNoNumberAndTheTitleSaysNothing() {
        Circuits.Drawn circuit = Circuits.all().values().iterator().next();
        Figure figure = CircuitFigure.draw(
                "Circuit",
                circuit.schematic(),
                circuit.labels(),
                SymbolStyle.IEC,
                Map.of("nowhere", List.of(1)),
                new Figure.Setting("q", Figure.PAGE_WIDTH, Languages.ENGLISH));
        assertEquals("Circuit", figure.title());
        assertFalse(figure.svg().contains(GROUP));
    }

    @Test
    void theTitleAndTheWalkTellWhatTheNumbersAre() {
        Circuits.Drawn circuit = Circuits.all().values().iterator().next();
        String part = circuit.labels().keySet().iterator().next();
        Figure figure = CircuitFigure.draw(
                "Circuit",
                circuit.schematic(),
                circuit.labels(),
                SymbolStyle.IEC,
                Map.of(part, List.of(2, 3)),
                new Figure.Setting("q", Figure.PAGE_WIDTH, Languages.ENGLISH));
        assertEquals("Circuit, with the numbers of the steps", figure.title());
        assertEquals(
                "What steps 2 and 3 find belongs to "
                        + circuit.labels().get(part).name() + ".",
                figure.walk().get(figure.walk().size() - 1));
        assertTrue(figure.svg().contains("<g data-part=\"" + GROUP + part + "\">"));
    }
}
