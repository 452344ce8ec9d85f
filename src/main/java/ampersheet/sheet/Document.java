package ampersheet.sheet;

import ampersheet.figure.Figure;
import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter.Printed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A page's content without a format: all that a renderer may see.
 *
 * @param language of its words
 * @param title the only first-level heading
 * @param subtitle such as the learner's name and seat; may be empty
 * @param sheetId printed at head and foot; empty on pages without one
 */
public record Document(
        Kind kind, Language language, String title, String subtitle, String sheetId, Paper paper, List<Block> blocks) {
    public Document {
        blocks = List.copyOf(blocks);
    }

    /** The same for other paper. */
    public Document on(Paper other) {
        return new Document(kind, language, title, subtitle, sheetId, other, blocks);
    }

    /** The same head and foot around other blocks. */
    public Document holding(List<Block> other) {
        return new Document(kind, language, title, subtitle, sheetId, paper, other);
    }

    public enum Kind {
        SHEET,
        KEY,
        INDEX,
        FEEDBACK,
        REPORT
    }

    public enum Paper {
        A4,
        LETTER,
        /** Pages of half an A4 leaf, which is folded once. */
        A4_FOLDED,
        LETTER_FOLDED;

        public boolean isFolded() {
            return this == A4_FOLDED || this == LETTER_FOLDED;
        }

        /** Pages of half its size. */
        public Paper folded() {
            return this == LETTER || this == LETTER_FOLDED ? LETTER_FOLDED : A4_FOLDED;
        }

        /** As it lies in the printer. */
        public Paper leaf() {
            return this == LETTER || this == LETTER_FOLDED ? LETTER : A4;
        }
    }

    public sealed interface Block {
        void accept(BlockVisitor visitor);
    }

    /** A new kind of block is a new method here, so that a renderer that forgets it does not compile. */
    public interface BlockVisitor {
        void logo(LogoBlock logo);

        void prose(Prose prose);

        void heading(Heading heading);

        void problem(ProblemBlock problem);

        void givens(Givens givens);

        void figure(FigureBlock figure);

        void steps(Steps steps);

        void question(Question question);

        void assumptions(Assumptions assumptions);

        void preferredValues(PreferredValues values);

        void referenceTable(ReferenceTable table);

        void caution(Caution caution);

        void keyTable(KeyTable table);

        void listing(Listing listing);

        void table(Table table);
    }

    /**
     * Lines for a program, as they stand; looked up on a screen, and left out on paper, from which nobody types them.
     */
    public record Listing(String heading, String text) implements Block {
        @Override
        public void accept(BlockVisitor visitor) {
            visitor.listing(this);
        }
    }

    /**
     * The picture of a school. It stands with the title, wherever a renderer has its place for that.
     *
     * @param address that holds the picture itself
     * @param alt the school's name, or empty
     * @param width in millimetres, as the height
     */
    public record LogoBlock(String address, String alt, double width, double height) implements Block {
        /** How every address begins. */
        public static final String WITHIN = "data:image/png;base64,";

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.logo(this);
        }
    }

    /** The picture over the page, if there is one. */
    public Optional<LogoBlock> logo() {
        return blocks.stream()
                .filter(LogoBlock.class::isInstance)
                .map(LogoBlock.class::cast)
                .findFirst();
    }

    /** Second level or lower; problems make their own. */
    public record Heading(int level, String text) implements Block {
        @Override
        public void accept(BlockVisitor visitor) {
            visitor.heading(this);
        }
    }

    /** Markdown of a limited kind: paragraphs, emphasis, lists, code, tables; no HTML. */
    public record Prose(String markdown) implements Block {
        @Override
        public void accept(BlockVisitor visitor) {
            visitor.prose(this);
        }
    }

    /**
     * One problem; never split from its figure in print.
     *
     * @param tags such as family, level and skill, in words
     * @param followsExample whether the problem before it is its example, which had better be seen beside it
     */
    public record ProblemBlock(
            String number, String title, List<String> tags, boolean followsExample, List<Block> blocks)
            implements Block {
        public ProblemBlock(String number, String title, List<String> tags, List<Block> blocks) {
            this(number, title, tags, false, blocks);
        }

        /** Whether every step and answer is shown, so that nothing in it is left to write. */
        public boolean isWorked() {
            return blocks.stream()
                    .noneMatch(block -> block instanceof Question
                            || block instanceof Steps steps
                                    && steps.steps().stream()
                                            .anyMatch(step -> !step.blankId().isEmpty()));
        }

        /** The same with other blocks in it. */
        public ProblemBlock holding(List<Block> other) {
            return new ProblemBlock(number, title, tags, followsExample, other);
        }

        /** The same behind its example. */
        ProblemBlock behindExample() {
            return new ProblemBlock(number, title, tags, true, blocks);
        }

        public ProblemBlock {
            tags = List.copyOf(tags);
            blocks = List.copyOf(blocks);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.problem(this);
        }
    }

    /** The givens as a list. */
    public record Givens(List<GivenLine> lines) implements Block {
        public Givens {
            lines = List.copyOf(lines);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.givens(this);
        }
    }

    /** @param symbol empty for a word given; @param value as printed, unit included */
    public record GivenLine(Optional<Symbol> symbol, String meaning, String value) {
        /** Stands before the value; the colon keeps a word apart from what it is the value of. */
        public String label() {
            return meaning + ":";
        }
    }

    public record FigureBlock(Figure figure) implements Block {
        @Override
        public void accept(BlockVisitor visitor) {
            visitor.figure(this);
        }
    }

    /** Worked steps, numbered. */
    public record Steps(String heading, List<StepBlock> steps) implements Block {
        public Steps {
            steps = List.copyOf(steps);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.steps(this);
        }
    }

    /**
     * A step of the working: {@code symbol = formula = numbers put in = result}.
     *
     * @param condition why this case applies ("row is odd"), symbolic and with numbers; empty where there is one case
     * @param principle the rule that gives the line
     * @param reason one sentence
     * @param result empty where the step is left blank for the learner (faded): then formula and numbers are hidden too
     * @param blankId question-like label of a blank step, empty if shown
     * @param unitBox whether a blank step has a place for a unit
     * @param check code and letter by which a learner checks what fills the blank; may be empty
     */
    public record StepBlock(
            int number,
            Symbol symbol,
            String meaning,
            Optional<Condition> condition,
            Optional<Expression> formula,
            Notation notation,
            Optional<Printed> result,
            String principle,
            String reason,
            String blankId,
            UnitBox unitBox,
            String check) {
        /** The same step, blank under another name. */
        public StepBlock named(String label) {
            return new StepBlock(
                    number, symbol, meaning, condition, formula, notation, result, principle, reason, label, unitBox,
                    check);
        }

        /** The line alone, without its rule and reason. */
        public StepBlock withoutReason() {
            return new StepBlock(
                    number, symbol, meaning, condition, formula, notation, result, "", "", blankId, unitBox, check);
        }

        StepBlock checkedBy(String letter) {
            return new StepBlock(
                    number, symbol, meaning, condition, formula, notation, result, principle, reason, blankId, unitBox,
                    letter);
        }
    }

    /** What a learner writes behind the number. */
    public enum UnitBox {
        /** The unit. */
        ASKED,
        /** Nothing: it is a count, a place or a ratio, or the unit is printed. */
        NONE,
        /** A percent sign, or nothing where the share is written as a fraction. */
        SHARE
    }

    /**
     * A place for an answer.
     *
     * @param unitHint the unit where it is printed; else empty
     * @param check code and letter by which a learner checks it; may be empty
     * @param meaning what is to be found, for whoever comes to the place without its prompt; may be empty
     */
    public record Question(
            String id,
            String prompt,
            Optional<Symbol> symbol,
            UnitBox unitBox,
            String unitHint,
            List<String> options,
            String check,
            String meaning)
            implements Block {
        public Question {
            options = List.copyOf(options);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.question(this);
        }

        public Question(
                String id,
                String prompt,
                Optional<Symbol> symbol,
                UnitBox unitBox,
                String unitHint,
                List<String> options,
                String check) {
            this(id, prompt, symbol, unitBox, unitHint, options, check, "");
        }

        /** With a place for the unit unless it is printed. */
        public Question(String id, String prompt, Optional<Symbol> symbol, String unitHint, List<String> options) {
            this(id, prompt, symbol, unitHint.isEmpty() ? UnitBox.ASKED : UnitBox.NONE, unitHint, options, "");
        }

        /** The same question under another name. */
        public Question named(String other) {
            return new Question(other, prompt, symbol, unitBox, unitHint, options, check, meaning);
        }

        Question checkedBy(String letter) {
            return new Question(id, prompt, symbol, unitBox, unitHint, options, letter, meaning);
        }

        /** The same question with what is to be found. */
        public Question meaning(String what) {
            return new Question(id, prompt, symbol, unitBox, unitHint, options, check, what);
        }
    }

    /** What a problem takes for granted: a quiet line, or where it is told what happens really, a list. */
    public record Assumptions(List<Assumption> all) implements Block {
        public Assumptions {
            all = List.copyOf(all);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.assumptions(this);
        }

        /** Whether each tells what happens really. */
        public boolean inFull() {
            return all.stream().noneMatch(one -> one.really().isEmpty());
        }

        /** Without what happens really. */
        Assumptions inShort() {
            return new Assumptions(
                    all.stream().map(one -> new Assumption(one.that(), "")).toList());
        }
    }

    /**
     * @param that a phrase without full stop; @param really a sentence or two, empty where only the phrase is printed
     */
    public record Assumption(String that, String really) {}

    /** Series of preferred values to look a value up in, each with all its members of one decade. */
    public record PreferredValues(List<Series> series) implements Block {
        public PreferredValues {
            series = List.copyOf(series);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.preferredValues(this);
        }
    }

    /** @param values all of the same length, as the standard prints them */
    public record Series(String name, List<String> values) {
        public Series {
            values = List.copyOf(values);
        }

        /** In rows of so many. */
        public List<List<String>> rows(int length) {
            List<List<String>> rows = new ArrayList<>();
            for (int from = 0; from < values.size(); from += length) {
                rows.add(values.subList(from, Math.min(values.size(), from + length)));
            }
            return rows;
        }
    }

    /** A small table to look numbers up in; the first cell of a row names it. */
    public record ReferenceTable(String caption, List<String> head, List<List<String>> rows) implements Block {
        public ReferenceTable {
            head = List.copyOf(head);
            rows = rows.stream().map(List::copyOf).toList();
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.referenceTable(this);
        }

        /** With rows and columns exchanged. */
        public ReferenceTable turned() {
            List<List<String>> all = new ArrayList<>(List.of(head));
            all.addAll(rows);
            List<List<String>> columns = new ArrayList<>();
            for (int column = 0; column < head.size(); column++) {
                int at = column;
                columns.add(all.stream().map(row -> row.get(at)).toList());
            }
            return new ReferenceTable(caption, columns.get(0), columns.subList(1, columns.size()));
        }
    }

    /** A box: hazard first, action second. */
    public record Caution(String heading, String text) implements Block {
        @Override
        public void accept(BlockVisitor visitor) {
            visitor.caution(this);
        }
    }

    /** Answer lines of a key. */
    public record KeyTable(List<KeyLine> lines) implements Block {
        public KeyTable {
            lines = List.copyOf(lines);
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.keyTable(this);
        }
    }

    /**
     * @param accepted band in words, such as {@code 428.8 Ω to 446.3 Ω}
     * @param secondRoute the other route's value and the gap, in words
     * @param routesAgree whether the gap is as small as it has to be
     * @param mistakes value and explanation of each modelled mistake
     */
    public record KeyLine(
            String question,
            Optional<Symbol> symbol,
            String answer,
            String accepted,
            String secondRoute,
            boolean routesAgree,
            List<MistakeLine> mistakes) {
        public KeyLine {
            mistakes = List.copyOf(mistakes);
        }
    }

    public record MistakeLine(String value, String explanation) {}

    /**
     * A table of the index page; cells are plain text, or a link where {@code href} is not empty.
     *
     * @param wide whether each cell is read in one line, in as many columns as it takes
     */
    public record Table(String caption, List<String> head, List<List<Cell>> rows, boolean wide) implements Block {
        /** One whose cells may be wrapped. */
        public Table(String caption, List<String> head, List<List<Cell>> rows) {
            this(caption, head, rows, false);
        }

        public Table {
            head = List.copyOf(head);
            rows = rows.stream().map(List::copyOf).toList();
        }

        @Override
        public void accept(BlockVisitor visitor) {
            visitor.table(this);
        }
    }

    public record Cell(String text, String href) {}
}
