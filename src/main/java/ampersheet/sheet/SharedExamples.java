package ampersheet.sheet;

import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Worked examples printed once for a room instead of once a learner. They are one learner's, whose numbers nobody else
 * has to work; the problems keep the numbers that they have on everybody's sheet.
 */
public final class SharedExamples {
    private SharedExamples() {}

    /** The sheet without them; a problem that follows its example says where that is. */
    public static Document without(Document sheet) {
        List<Block> blocks = new ArrayList<>();
        List<Block> all = sheet.blocks();
        for (int i = 0; i < all.size(); i++) {
            if (isExample(all, i)) {
                continue;
            }
            if (all.get(i) instanceof ProblemBlock problem && problem.followsExample()) {
                List<Block> inside = new ArrayList<>();
                inside.add(new Prose(sheet.language()
                        .say("sheet.examples.elsewhere", "number", ((ProblemBlock) all.get(i - 1)).number())));
                inside.addAll(problem.blocks());
                blocks.add(problem.holding(inside));
            } else {
                blocks.add(all.get(i));
            }
        }
        return with(sheet, sheet.title(), sheet.subtitle(), sheet.sheetId(), blocks);
    }

    /** The examples of the sheet alone; empty if it has none. */
    public static Optional<Document> of(Document sheet) {
        List<Block> examples = new ArrayList<>();
        for (int i = 0; i < sheet.blocks().size(); i++) {
            if (isExample(sheet.blocks(), i)) {
                examples.add(sheet.blocks().get(i));
            }
        }
        return examples.isEmpty()
                ? Optional.empty()
                : Optional.of(with(
                        sheet,
                        sheet.language().say("sheet.examples.title", "title", sheet.title()),
                        sheet.language().say("sheet.examples.for-all"),
                        "",
                        examples));
    }

    private static boolean isExample(List<Block> blocks, int at) {
        return blocks.get(at) instanceof ProblemBlock
                && at + 1 < blocks.size()
                && blocks.get(at + 1) instanceof ProblemBlock next
                && next.followsExample();
    }

    private static Document with(Document sheet, String title, String subtitle, String id, List<Block> blocks) {
        return new Document(sheet.kind(), sheet.language(), title, subtitle, id, sheet.paper(), blocks);
    }
}
