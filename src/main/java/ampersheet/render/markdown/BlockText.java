package ampersheet.render.markdown;

import ampersheet.figure.Figure;
import ampersheet.formula.Condition;
import ampersheet.formula.Notation;
import ampersheet.formula.PlainText;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.render.Address;
import ampersheet.render.Derivation;
import ampersheet.render.KeyHead;
import ampersheet.render.Wording;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.LogoBlock;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The blocks of one page. Equations and places to write are indented code: what is in them is never read as Markdown.
 */
final class BlockText implements BlockVisitor {
    private static final String RULED = "____________";

    /** A longer equation is broken at its equals signs. */
    private static final int LINE = 78;

    private final Page page;
    private final FigureFiles figures;
    private final Language language;
    private int headingLevel = 2;

    BlockText(Page page, FigureFiles figures, Language language) {
        this.page = page;
        this.figures = figures;
        this.language = language;
    }

    void write(List<Block> blocks) {
        blocks.forEach(block -> block.accept(this));
    }

    // Problem and words

    @Override
    public void problem(ProblemBlock problem) {
        page.paragraph("---");
        heading(headingLevel, language.say("print.problem", "number", problem.number(), "title", problem.title()));
        if (!problem.tags().isEmpty()) {
            page.paragraph(Escaped.start(String.join(" · ", problem.tags())));
        }
        headingLevel++;
        write(problem.blocks());
        headingLevel--;
    }

    @Override
    public void heading(Heading heading) {
        heading(heading.level(), heading.text());
    }

    private void heading(int level, String text) {
        page.paragraph("#".repeat(Math.min(6, Math.max(headingLevel, level))) + " " + Escaped.text(text));
    }

    /** A picture; the school stands in words. */
    @Override
    public void logo(LogoBlock logo) {}

    @Override
    public void prose(Prose prose) {
        String source = ProseSource.harmless(prose.markdown());
        if (!source.isEmpty()) {
            page.paragraph(source);
        }
    }

    @Override
    public void listing(Listing listing) {
        page.paragraph(Escaped.start(listing.heading()) + ":");
        String text = Wording.lines(listing.text()).stripTrailing();
        StringBuilder fence = new StringBuilder("```");
        while (text.contains(fence)) {
            fence.append('`'); // or a line of the listing would end it
        }
        page.paragraph(fence + "\n" + text + "\n" + fence);
    }

    @Override
    public void assumptions(Assumptions assumptions) {
        if (!assumptions.inFull()) {
            page.paragraph(Escaped.start(Wording.takenForGranted(assumptions, language)));
            return;
        }
        page.paragraph(language.say("print.taken-for-granted.list"));
        page.paragraph(String.join(
                "\n",
                assumptions.all().stream()
                        .map(one -> "- " + Escaped.start(Wording.sentence(one.that()) + " " + one.really()))
                        .toList()));
    }

    @Override
    public void referenceTable(ReferenceTable table) {
        page.paragraph(Escaped.bold(table.caption()));
        page.paragraph(TextTable.of(
                cells(table.head()), table.rows().stream().map(BlockText::cells).toList()));
    }

    /** A list, because a table would need a head that says nothing. */
    @Override
    public void preferredValues(PreferredValues values) {
        page.paragraph(Escaped.bold(language.say("print.preferred-values")));
        page.paragraph(String.join(
                "\n",
                values.series().stream()
                        .map(series -> "- " + Escaped.start(series.name() + ": " + String.join(" ", series.values())))
                        .toList()));
    }

    @Override
    public void caution(Caution caution) {
        String heading = language.say("print.caution", "heading", Escaped.text(caution.heading()));
        page.paragraph("> **⚠ " + heading + "**\n>\n> " + Escaped.start(caution.text()));
    }

    // Givens and figure

    @Override
    public void givens(Givens givens) {
        heading(headingLevel, language.say("print.given"));
        List<String> lines = new ArrayList<>();
        for (GivenLine line : givens.lines()) {
            String symbol = line.symbol().map(s -> s.plain() + " = ").orElse("");
            lines.add("- " + Escaped.start(line.label() + " " + symbol + line.value()));
        }
        page.paragraph(String.join("\n", lines));
    }

    @Override
    public void figure(FigureBlock block) {
        Figure figure = block.figure();
        page.paragraph("**" + language.say("print.figure") + " " + Escaped.text(figure.title()) + "**");
        figures.keep(figure).ifPresent(file -> page.paragraph("![" + Escaped.text(figure.title()) + "](" + file + ")"));
        page.paragraph(Escaped.start(figure.summary()));
        if (!figure.table().rows().isEmpty()) {
            page.paragraph(TextTable.of(
                    cells(figure.table().head()),
                    figure.table().rows().stream().map(BlockText::cells).toList()));
        }
        if (!figure.walk().isEmpty()) {
            page.paragraph(language.say("print.figure.walk"));
            List<String> walk = new ArrayList<>();
            for (String sentence : figure.walk()) {
                walk.add(walk.size() + 1 + ". " + Escaped.start(sentence));
            }
            page.paragraph(String.join("\n", walk));
        }
    }

    private static List<String> cells(List<String> plain) {
        return plain.stream().map(Escaped::cell).toList();
    }

    // Worked steps

    @Override
    public void steps(Steps steps) {
        heading(headingLevel, steps.heading().isEmpty() ? language.say("print.steps") : steps.heading());
        steps.steps().forEach(this::step);
    }

    /**
     * A blank step shows what is to be found and where to write it; neither rule nor reason, which would give it away.
     */
    private void step(StepBlock step) {
        String number = step.number() + ". ";
        int inItem = number.length();
        boolean shown = step.result().isPresent();
        String rule = shown && !step.principle().isEmpty() ? " — " + Escaped.text(step.principle()) : "";
        page.paragraph(number + Escaped.bold(Wording.capitalised(step.meaning())) + rule);
        if (shown) {
            step.condition().ifPresent(condition -> page.indented(inItem, condition(condition, step.notation())));
            page.indented(inItem + 4, equation(step, step.result().get()));
            if (!step.reason().isEmpty()) {
                page.indented(inItem, Escaped.start(Wording.sentence(step.reason())));
            }
        } else {
            String label = step.blankId().isEmpty()
                    ? language.say("print.step", "number", Integer.toString(step.number()))
                    : step.blankId();
            page.indented(inItem + 4, place(label, Optional.of(step.symbol()), ""));
        }
    }

    private String condition(Condition condition, Notation notation) {
        return language.say(
                "print.case",
                "symbols",
                Escaped.text(PlainText.symbolic(condition, notation)),
                "numbers",
                Escaped.text(PlainText.substituted(condition, notation)));
    }

    /** {@code R = (V_s − V_f) / I_f = (9 V − 2 V) / 16 mA ≈ 437.5 Ω}, on one line or broken before each sign. */
    private static String equation(StepBlock step, Printed result) {
        Derivation derivation = Derivation.of(step);
        String symbol = Wording.oneLine(step.symbol().plain());
        List<String> parts = new ArrayList<>();
        if (derivation.formula()) {
            parts.add("= " + Wording.oneLine(PlainText.symbolic(step.formula().orElseThrow(), step.notation())));
        }
        if (derivation.numbers()) {
            parts.add(
                    "= " + Wording.oneLine(PlainText.substituted(step.formula().orElseThrow(), step.notation())));
        }
        if (derivation.result()) {
            parts.add((result.exact() ? "= " : "≈ ") + Wording.oneLine(result.text()));
        }
        String line = symbol + " " + String.join(" ", parts);
        return line.length() <= LINE ? line : symbol + " " + String.join("\n" + " ".repeat(symbol.length() + 1), parts);
    }

    // Answers and key

    @Override
    public void question(Question question) {
        String prompt = ProseSource.harmlessLine(question.prompt());
        page.paragraph((Escaped.bold(question.id()) + " " + prompt).strip());
        if (question.options().isEmpty()) {
            page.indented(4, place(question.id(), question.symbol(), question.unitHint()));
        } else {
            page.paragraph(language.say("print.tick-one"));
            page.paragraph(String.join(
                    "\n",
                    question.options().stream()
                            .map(option -> "- [ ] " + Escaped.start(option))
                            .toList()));
        }
    }

    private static String place(String label, Optional<Symbol> symbol, String hint) {
        return Wording.oneLine(label) + "  "
                + symbol.map(s -> Wording.oneLine(s.plain()) + " = ").orElse("") + RULED
                + (hint.isEmpty() ? "" : "  " + Wording.oneLine(hint));
    }

    @Override
    public void keyTable(KeyTable table) {
        heading(headingLevel, language.say("print.answers"));
        List<List<String>> rows = new ArrayList<>();
        for (KeyLine line : table.lines()) {
            String symbol = line.symbol().map(s -> " " + s.plain()).orElse("");
            rows.add(List.of(
                    Escaped.cell(line.question() + symbol),
                    Escaped.bold(line.answer()).replace("|", "\\|"),
                    Escaped.cell(line.accepted()),
                    Escaped.cell(line.secondRoute())));
        }
        page.paragraph(TextTable.of(KeyHead.in(language), rows));
        List<String> mistakes = new ArrayList<>();
        for (KeyLine line : table.lines()) {
            if (!line.mistakes().isEmpty()) {
                mistakes.add("- " + Escaped.start(line.question()));
                for (MistakeLine mistake : line.mistakes()) {
                    mistakes.add(
                            "  - **" + Escaped.text(mistake.value()) + "** — " + Escaped.text(mistake.explanation()));
                }
            }
        }
        if (!mistakes.isEmpty()) {
            page.paragraph(language.say("print.wrong-methods"));
            page.paragraph(String.join("\n", mistakes));
        }
    }

    // Tables

    @Override
    public void table(Table table) {
        if (!table.caption().isEmpty()) {
            page.paragraph(Escaped.bold(table.caption()));
        }
        page.paragraph(TextTable.of(
                cells(table.head()),
                table.rows().stream()
                        .map(row -> row.stream().map(BlockText::content).toList())
                        .toList()));
    }

    private static String content(Cell cell) {
        String text = Escaped.cell(cell.text());
        return Address.isAllowed(cell.href())
                ? "[" + text + "](" + Address.encoded(cell.href()).replace("&", "&amp;") + ")"
                : text;
    }
}
