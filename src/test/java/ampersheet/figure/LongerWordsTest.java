package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.PrismNet;
import ampersheet.chain.TileRow;
import ampersheet.language.Language;
import ampersheet.source.OtherLanguage;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A language whose words in the drawings are longer than the English ones. */
class LongerWordsTest {
    private static final double HOW_MUCH_LONGER = 0.35;
    private static final double LARGE_PRINT = 320;
    /** In pixels. */
    private static final double A_LITTLE = 20;

    private static final Language LONGER = longer();

    private static Language longer() {
        return OtherLanguage.of((key, sentence) -> {
            boolean drawn = key.startsWith("figure.") && (key.contains(".drawn.") || key.contains(".legend."));
            return drawn ? sentence + "n".repeat((int) Math.round(HOW_MUCH_LONGER * sentence.length())) : sentence;
        });
    }

    private static Drawing drawing(Assembly assembly, double widest) {
        if (assembly instanceof MatingEdge edge) {
            return new EdgeDrawing(edge, widest, LONGER).drawing();
        } else if (assembly instanceof BranchedTiles tiles) {
            return new BranchDrawing(tiles, List.of(), widest, LONGER).drawing();
        } else if (assembly instanceof PrismNet net) {
            return new NetDrawing(net, widest, LONGER).drawing();
        }
        return new RowDrawing((TileRow) assembly, widest, LONGER).drawing();
    }

    @Test
    void joinedTilesStandClearAndFit() {
        for (double widest : new double[] {Figure.PAGE_WIDTH, LARGE_PRINT}) {
            AssemblyFigureTest.all().forEach((name, assembly) -> {
                Drawing drawing = drawing(assembly, widest);
                Audit.clear(drawing, name + " at " + widest);
                double width = drawing.bounds().width();
                assertTrue(
                        assembly instanceof BranchedTiles || width <= widest + A_LITTLE,
                        name + " is " + width + " px wide");
            });
        }
    }

    @Test
    void panelsStandClear() {
        Panels.all().forEach((name, laid) -> {
            Drawing drawing = ChainFigure.layOut(laid.panel(), laid.path(), laid.marks(), Figure.PAGE_WIDTH, LONGER);
            Audit.clear(drawing, name);
            assertTrue(drawing.bounds().width() <= Figure.PAGE_WIDTH + 8, name);
        });
    }

    @Test
    void circuitsStandClear() {
        Circuits.all()
                .forEach((name, drawn) -> Audit.clear(
                        CircuitFigure.layOut(
                                drawn.schematic(),
                                drawn.labels(),
                                new CircuitFigure.Manner(SymbolStyle.IEC, LONGER),
                                Figure.PAGE_WIDTH),
                        name));
    }
}
