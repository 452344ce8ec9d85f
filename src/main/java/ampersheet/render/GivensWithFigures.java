package ampersheet.render;

import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Givens;
import java.util.List;

/** Givens directly followed or preceded by figures stand beside them where the page is wide enough. */
public final class GivensWithFigures {
    private GivensWithFigures() {}

    /** Index behind the last of them; {@code start} itself if none stand there. */
    public static int end(List<Block> blocks, int start) {
        int givens = 0;
        int figures = 0;
        int end = start;
        while (end < blocks.size()) {
            if (blocks.get(end) instanceof Givens && givens == 0) {
                givens++;
            } else if (blocks.get(end) instanceof FigureBlock) {
                figures++;
            } else {
                break;
            }
            end++;
        }
        return givens == 1 && figures > 0 ? end : start;
    }
}
