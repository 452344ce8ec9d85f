package ampersheet.render.html;

import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.LogoBlock;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import java.util.List;

/**
 * About how many millimetres of paper blocks take at 12 point: enough to tell a problem that fits on a page, which is
 * then kept whole, from one that does not and had better start where the last one ended. Found by measuring printed
 * pages; a little on the high side, since fonts differ.
 */
final class PaperHeight {
    private static final int CHARACTERS_PER_LINE = 60;
    private static final int TEXT_LINE = 6;
    private static final double MILLIMETRES_PER_PIXEL = 25.4 / 96;

    private PaperHeight() {}

    /** Between the margins. */
    static int ofPage(Paper paper) {
        return paper == Paper.LETTER ? 243 : 261;
    }

    static int of(List<Block> blocks) {
        int height = 0;
        int givensBefore = 0;
        for (Block block : blocks) {
            int more = of(block);
            boolean besideGivens = block instanceof FigureBlock figure
                    && !DrawingSize.of(figure.figure().picture()).isWide();
            height += besideGivens ? Math.max(0, more - givensBefore) : more;
            givensBefore = block instanceof Givens ? more : 0;
        }
        return height;
    }

    private static int of(Block block) {
        OfOne of = new OfOne();
        block.accept(of);
        return of.height;
    }

    private static final class OfOne implements BlockVisitor {
        private int height;

        /** It stands beside the title, which has its height anyway. */
        @Override
        public void logo(LogoBlock logo) {}

        @Override
        public void prose(Prose prose) {
            height = text(prose.markdown()) + 4;
        }

        @Override
        public void heading(Heading heading) {
            height = 14;
        }

        @Override
        public void problem(ProblemBlock problem) {
            height = 32 + of(problem.blocks());
        }

        @Override
        public void givens(Givens givens) {
            height = 10
                    + givens.lines().stream().mapToInt(PaperHeight::givenLine).sum();
        }

        @Override
        public void figure(FigureBlock figure) {
            height = 16 + (int) (DrawingSize.of(figure.figure().picture()).height() * MILLIMETRES_PER_PIXEL);
        }

        @Override
        public void steps(Steps steps) {
            height = 14 + steps.steps().stream().mapToInt(PaperHeight::step).sum();
        }

        @Override
        public void question(Question question) {
            height = text(question.prompt())
                    + (question.options().isEmpty()
                            ? 22
                            : 16 + 10 * question.options().size());
        }

        @Override
        public void listing(Listing listing) {
            height = 0;
        }

        @Override
        public void assumptions(Assumptions assumptions) {
            height = 4
                    + assumptions.all().stream()
                            .mapToInt(one -> text(one.that() + one.really()))
                            .sum();
        }

        @Override
        public void preferredValues(PreferredValues values) {
            height = 12
                    + 7
                            * values.series().stream()
                                    .mapToInt(series -> series.rows(12).size())
                                    .sum();
        }

        @Override
        public void referenceTable(ReferenceTable table) {
            height = 20 + 7 * table.rows().size();
        }

        @Override
        public void caution(Caution caution) {
            height = 14 + text(caution.heading() + caution.text());
        }

        @Override
        public void keyTable(KeyTable table) {
            height = 20 + table.lines().stream().mapToInt(PaperHeight::keyLine).sum();
        }

        @Override
        public void table(Table table) {
            height = 20 + 9 * table.rows().size();
        }
    }

    private static int text(String text) {
        return (int) text.lines()
                        .mapToLong(line -> 1 + line.length() / CHARACTERS_PER_LINE)
                        .sum()
                * TEXT_LINE;
    }

    private static int givenLine(GivenLine line) {
        return line.meaning().length() > 18 ? 14 : 8;
    }

    private static int step(StepBlock step) {
        if (step.result().isEmpty()) {
            return 28;
        }
        return 14
                + (step.formula().isPresent() ? 26 : 8)
                + step.condition().map(c -> 2 * TEXT_LINE).orElse(0)
                + text(step.reason());
    }

    private static int keyLine(KeyLine line) {
        int height = 14;
        for (MistakeLine mistake : line.mistakes()) {
            height += text(mistake.value() + mistake.explanation()) + 1;
        }
        return height;
    }
}
