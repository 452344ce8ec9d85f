package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Draws a schematic. */
public final class CircuitFigure {
    /** Between columns of the grid, in pixels: as usual, and closer where a page is too narrow for that. */
    private static final double[] GAPS = {Spacing.USUAL, 21, 18, 16};

    private static final int ATTEMPTS = 24;
    private static final double STRETCH = 12;
    /** So many parts may do with little room before the circuit is rather cut in two. */
    private static final int FEW_CRAMPED = 2;

    private static final double BETWEEN_PIECES = 26;

    private CircuitFigure() {}

    /** How symbols look, and in which language the few words beside them are. */
    record Manner(SymbolStyle style, Language language) {}

    /** @param labels by part name; a part without one is drawn without text, a node with its own name */
    public static Figure draw(
            String title, Schematic schematic, Map<String, Label> labels, SymbolStyle style, Figure.Setting setting) {
        return draw(title, schematic, labels, style, Map.of(), setting);
    }

    /** @param steps numbers of the steps whose results belong to a part, by its name; printed in circles */
    public static Figure draw(
            String title,
            Schematic schematic,
            Map<String, Label> labels,
            SymbolStyle style,
            Map<String, List<Integer>> steps,
            Figure.Setting setting) {
        Language language = setting.language();
        CircuitWords words = new CircuitWords(schematic, labels, language);
        Drawing drawing = layOut(schematic, labels, new Manner(style, language), setting.widest());
        String told = StepNumbers.add(drawing, steps, setting.widest()) ? StepNumbers.inTitle(title, language) : title;
        List<String> walk = new ArrayList<>(words.walk());
        walk.addAll(StepNumbers.walk(steps, labels, language));
        return new Figure(
                drawing.picture(told, words.summary(), setting.idPrefix()), told, words.summary(), words.table(), walk);
    }

    static Drawing layOut(Schematic schematic, Map<String, Label> labels, Manner manner, double widest) {
        CircuitDrawing usual = null;
        for (double gap : GAPS) {
            CircuitDrawing drawing = layOut(schematic, labels, manner, Figure.PAGE_WIDTH, gap);
            if (usual == null || drawing.legible()) {
                usual = drawing;
            }
            if (usual.drawing().bounds().width() <= Figure.PAGE_WIDTH) {
                break;
            }
        }
        if (widest >= Figure.PAGE_WIDTH || usual.drawing().width() <= widest && usual.faults() == 0) {
            return usual.drawing();
        }
        return narrower(schematic, labels, manner, usual.spacing(), widest);
    }

    /** In pieces where only 0 V joins them, else with its columns closer, else in pieces with a supply between them. */
    private static Drawing narrower(
            Schematic schematic, Map<String, Label> labels, Manner manner, Spacing spacing, double widest) {
        Function<Schematic, CircuitDrawing> pen = piece -> piece(piece, labels, manner, widest);
        Optional<Pair> apart = Pair.best(Folding.of(schematic, labels, true, manner.language()), pen, widest);
        if (apart.isPresent()) {
            return apart.get().drawing();
        }
        CircuitDrawing whole = narrowed(schematic, labels, manner, spacing, widest);
        if (fits(whole, widest) && whole.cramped().size() <= FEW_CRAMPED) {
            return whole.drawing();
        }
        return Pair.best(Folding.of(schematic, labels, false, manner.language()), pen, widest)
                .filter(pair -> !fits(whole, widest) || pair.cost() + FEW_CRAMPED < Narrowing.cost(whole))
                .map(Pair::drawing)
                .orElse(whole.drawing());
    }

    private record Pair(CircuitDrawing upper, CircuitDrawing lower) {
        int cost() {
            return Narrowing.cost(upper) + Narrowing.cost(lower);
        }

        double width() {
            return Math.max(upper.drawing().width(), lower.drawing().width());
        }

        Drawing drawing() {
            return upper.drawing().above(lower.drawing(), BETWEEN_PIECES);
        }

        /** The one with most room among those that are narrow enough. */
        static Optional<Pair> best(List<Folding.Fold> folds, Function<Schematic, CircuitDrawing> pen, double widest) {
            return folds.stream()
                    .map(fold -> new Pair(pen.apply(fold.upper()), pen.apply(fold.lower())))
                    .filter(pair -> fits(pair.upper, widest) && fits(pair.lower, widest))
                    .min(Comparator.comparingInt(Pair::cost).thenComparingDouble(Pair::width));
        }
    }

    private static boolean fits(CircuitDrawing drawing, double widest) {
        return drawing.drawing().width() <= widest && drawing.faults() == 0;
    }

    private static CircuitDrawing piece(Schematic piece, Map<String, Label> labels, Manner manner, double widest) {
        CircuitDrawing usual = layOut(piece, labels, manner, widest, Spacing.USUAL);
        return fits(usual, widest) ? usual : narrowed(piece, labels, manner, usual.spacing(), widest);
    }

    private static CircuitDrawing narrowed(
            Schematic schematic, Map<String, Label> labels, Manner manner, Spacing spacing, double widest) {
        return new Narrowing(
                        schematic,
                        (closer, beside) -> new CircuitDrawing(schematic, labels, manner, closer, beside),
                        widest)
                .of(spacing);
    }

    private static CircuitDrawing layOut(
            Schematic schematic, Map<String, Label> labels, Manner manner, double widest, double gap) {
        Spacing spacing = new Spacing(
                schematic.parts().stream()
                        .flatMap(part -> part.ends().values().stream())
                        .toList(),
                gap);
        CircuitDrawing best = null;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            CircuitDrawing drawing = new CircuitDrawing(schematic, labels, manner, spacing);
            boolean wide = drawing.drawing().bounds().width() > widest - 10;
            if (best == null
                    || !wide && (drawing.legible() || !best.legible())
                    || drawing.legible() && !best.legible()) {
                best = drawing;
            }
            if (drawing.cramped().isEmpty() || wide && best.legible()) {
                break;
            }
            spacing = spacing.copy();
            for (PlacedPart part : drawing.cramped()) {
                stretch(spacing, part, drawing.vertical(part), attempt % 2 == 0);
            }
        }
        return best;
    }

    /**
     * Makes room where text goes first: beside upright parts, over lying ones; by turns along the part and across it.
     */
    private static void stretch(Spacing spacing, PlacedPart part, boolean vertical, boolean firstTurn) {
        int left = part.ends().values().stream().mapToInt(GridPoint::x).min().getAsInt();
        int right = part.ends().values().stream().mapToInt(GridPoint::x).max().getAsInt();
        int low = part.ends().values().stream().mapToInt(GridPoint::y).min().getAsInt();
        int high = part.ends().values().stream().mapToInt(GridPoint::y).max().getAsInt();
        if (vertical == firstTurn) {
            boolean outermost = right == spacing.rightmost();
            spacing.widen(
                    vertical ? outermost ? left - 1 : right : left,
                    vertical ? outermost ? left : right + 1 : right,
                    STRETCH);
        } else {
            boolean outermost = high == spacing.topmost();
            spacing.heighten(
                    vertical ? low : outermost ? low - 1 : high, vertical ? high : outermost ? low : high + 1, STRETCH);
        }
    }
}
