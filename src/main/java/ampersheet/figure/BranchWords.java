package ampersheet.figure;

import ampersheet.chain.BranchedTiles;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** Which tile sits on which, arm by arm, without the order in which the data meets them. */
record BranchWords(BranchedTiles tiles, List<AssemblyFigure.Mark> marks, Language language) implements AssemblyWords {
    @Override
    public String summary() {
        int arms = (int) tiles.arms().stream().filter(arm -> arm.tiles() > 0).count();
        return language.say(
                "figure.branches.summary",
                "sides",
                language.count("figure.branches.sides", tiles.sides()),
                "arms",
                language.count("figure.branches.arms", arms));
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
        return new Figure.Table(
                List.of(
                        language.say("figure.branches.head.arm"),
                        language.say("figure.branches.head.side"),
                        language.say("figure.branches.head.tiles")),
                rows);
    }

    @Override
    public List<String> walk() {
        List<String> sentences = new ArrayList<>();
        sentences.add(language.say("figure.branches.sides-numbered"));
        sentences.add(language.say("figure.branches.tiles-numbered"));
        sentences.add(language.say("figure.branches.lines"));
        for (AssemblyFigure.Mark mark : marks) {
            sentences.add(language.say(
                    "figure.branches.marked", "tile", letter(mark.arm() - 1) + mark.tile(), "label", mark.label()));
        }
        return sentences;
    }

    static String letter(int arm) {
        return Character.toString((char) ('A' + arm));
    }
}
