package ampersheet.figure;

import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws a heat path from the losses to the ambients. */
public final class HeatFigure {
    /** Distances in pixels to begin with. */
    private static final double COLUMNS = 96;

    private static final double LANES = 62;
    private static final double CLOSEST_COLUMNS = 64;

    private HeatFigure() {}

    /**
     * @param labels by name of ambient, node, resistance or loss; of a node's capacity by {@link #capacityOf}
     * @param setting with a width that is not exceeded where labels find room
     */
    public static Figure draw(
            String title, HeatNetwork network, Map<String, Label> labels, SymbolStyle style, Figure.Setting setting) {
        return draw(title, network, labels, style, Map.of(), setting);
    }

    /** @param steps numbers of the steps whose results belong to an element, by its name; printed in circles */
    public static Figure draw(
            String title,
            HeatNetwork network,
            Map<String, Label> labels,
            SymbolStyle style,
            Map<String, List<Integer>> steps,
            Figure.Setting setting) {
        HeatWords words = new HeatWords(network, labels, setting.language());
        Drawing drawing = layOut(network, labels, style, setting.widest()).drawing();
        String told = StepNumbers.add(drawing, steps, setting.widest())
                ? StepNumbers.inTitle(title, setting.language())
                : title;
        List<String> walk = new ArrayList<>(words.walk());
        walk.addAll(StepNumbers.walk(steps, labels, setting.language()));
        return new Figure(
                drawing.picture(told, words.summary(), setting.idPrefix()), told, words.summary(), words.table(), walk);
    }

    /** The key of a node's capacity among the labels. */
    public static String capacityOf(String node) {
        return HeatDrawing.capacityKey(node);
    }

    /** With columns closer than usual, if the labels have room all the same. */
    private static Optional<HeatDrawing> closer(
            HeatNetwork network, Map<String, Label> labels, SymbolStyle style, double widest) {
        for (double across = COLUMNS - 4; across >= CLOSEST_COLUMNS; across -= 4) {
            HeatDrawing drawing = new HeatDrawing(network, labels, style, across, LANES, true);
            if (drawing.legible() && drawing.drawing().width() <= widest) {
                return Optional.of(drawing);
            }
        }
        return Optional.empty();
    }

    /** Columns move apart until every label has its place or the page is full. */
    static HeatDrawing layOut(HeatNetwork network, Map<String, Label> labels, SymbolStyle style, double widest) {
        HeatDrawing best = null;
        for (int attempt = 0; attempt < 14; attempt++) {
            HeatDrawing drawing =
                    new HeatDrawing(network, labels, style, COLUMNS + 12 * attempt, LANES + 4 * attempt, false);
            if (best != null && drawing.drawing().bounds().width() > widest - 10) {
                break;
            }
            best = drawing;
            if (!drawing.cramped()) {
                break;
            }
        }
        return best.drawing().width() <= widest
                ? best
                : closer(network, labels, style, widest).orElse(best);
    }
}
