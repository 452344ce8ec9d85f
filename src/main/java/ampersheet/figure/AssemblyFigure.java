package ampersheet.figure;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.PrismNet;
import ampersheet.chain.TileRow;
import ampersheet.language.Language;
import java.util.List;

/**
 * Draws tiles that are joined: the row of contacts at an edge, branching tiles with their return line, a row of tiles,
 * a net that is still flat.
 */
public final class AssemblyFigure {
    private AssemblyFigure() {}

    /** @param arm of branching tiles, from 1; @param tile within the arm, from 1 */
    public record Mark(int arm, int tile, String label) {}

    /**
     * Turns of tiles, contacts that touch and the errors' sum are not printed, so that the figure gives no answer away.
     *
     * @param marks of branching tiles; others have none
     * @param setting with a width that is not exceeded where numbers can be told apart
     */
    public static Figure draw(String title, Assembly assembly, List<Mark> marks, Figure.Setting setting) {
        double widest = setting.widest();
        Language language = setting.language();
        AssemblyWords words;
        Drawing drawing;
        if (assembly instanceof MatingEdge edge) {
            words = new EdgeWords(edge, language);
            drawing = new EdgeDrawing(edge, widest, language).drawing();
        } else if (assembly instanceof BranchedTiles tiles) {
            words = new BranchWords(tiles, marks, language);
            drawing = new BranchDrawing(tiles, marks, widest, language).drawing();
        } else if (assembly instanceof PrismNet net) {
            words = new NetWords(net, language);
            drawing = new NetDrawing(net, widest, language).drawing();
        } else {
            words = new RowWords((TileRow) assembly, language);
            drawing = new RowDrawing((TileRow) assembly, widest, language).drawing();
        }
        return new Figure(
                drawing.picture(title, words.summary(), setting.idPrefix()),
                title,
                words.summary(),
                words.table(),
                words.walk());
    }
}
