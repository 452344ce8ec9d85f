package ampersheet.figure;

import ampersheet.chain.BranchedTiles;
import java.util.ArrayList;
import java.util.List;

/** Which tile sits on which, arm by arm, without the order in which the data meets them. */
record BranchWords(BranchedTiles tiles, List<AssemblyFigure.Mark> marks) implements AssemblyWords {
    @Override
    public String summary() {
        int arms = (int) tiles.arms().stream().filter(arm -> arm.tiles() > 0).count();
        return "A first tile with " + English.count(tiles.sides(), "side", "sides") + ", fed by a controller, and "
                + English.count(arms, "arm", "arms") + " of tiles on it; data and return line join neighbours.";
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int arm = 0; arm < tiles.arms().size(); arm++) {
            rows.add(List.of(
                    letter(arm),
                    Integer.toString(tiles.arms().get(arm).at()),
                    Integer.toString(tiles.arms().get(arm).tiles())));
        }
        return new Figure.Table(List.of("Arm", "On side of the first tile", "Tiles"), rows);
    }

    @Override
    public List<String> walk() {
        List<String> sentences = new ArrayList<>();
        sentences.add(
                "The sides of the first tile are numbered clockwise from 0, where the controller's data line comes in "
                        + "and the return line leaves.");
        sentences.add("The tiles of an arm are numbered from the first tile outwards: A1, A2 and so on.");
        sentences.add("Between neighbours the data line leads outwards and the return line, dashed, back inwards.");
        for (AssemblyFigure.Mark mark : marks) {
            sentences.add("Tile " + letter(mark.arm() - 1) + mark.tile() + " is marked " + mark.label() + ".");
        }
        return sentences;
    }

    static String letter(int arm) {
        return Character.toString((char) ('A' + arm));
    }
}
