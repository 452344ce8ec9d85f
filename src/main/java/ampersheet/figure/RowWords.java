package ampersheet.figure;

import ampersheet.chain.TileRow;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** The tiles of a row and where each can be off. */
record RowWords(TileRow row, Language language) implements AssemblyWords {
    @Override
    public String summary() {
        return language.count("figure.row.summary", row.tiles());
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int tile = 1; tile <= row.tiles(); tile++) {
            rows.add(List.of(
                    Integer.toString(tile),
                    tile == 1
                            ? language.say("figure.row.stop")
                            : language.say("figure.row.tile", "tile", Integer.toString(tile - 1)),
                    language.say("figure.row.error")));
        }
        return new Figure.Table(
                List.of(
                        language.say("figure.row.head.tile"),
                        language.say("figure.row.head.from"),
                        language.say("figure.row.head.error")),
                rows);
    }

    @Override
    public List<String> walk() {
        return List.of(
                language.say("figure.row.begins"),
                language.say("figure.row.measured"),
                language.say("figure.row.asked"));
    }
}
