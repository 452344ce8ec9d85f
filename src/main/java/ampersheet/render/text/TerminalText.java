package ampersheet.render.text;

import ampersheet.figure.Figure;
import ampersheet.formula.PlainText;
import ampersheet.language.Language;
import ampersheet.render.Wording;
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
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import java.util.List;

/** Blocks as lines of plain text, an empty line between them. */
public final class TerminalText implements BlockVisitor {
    private static final int WIDTH = 96;

    private final Language language;
    private final boolean figures;
    private final StringBuilder out = new StringBuilder();

    /** @param figures whether to describe them in words; else they are left out */
    public TerminalText(Language language, boolean figures) {
        this.language = language;
        this.figures = figures;
    }

    /** A line as it stands, however long. */
    public TerminalText line(String text) {
        out.append(text).append('\n');
        return this;
    }

    public TerminalText blocks(List<Block> blocks) {
        blocks.forEach(block -> block.accept(this));
        return this;
    }

    /** A heading, and sentences below it. */
    public TerminalText list(String heading, List<String> sentences) {
        headed(heading);
        sentences.forEach(sentence -> paragraph("  ", sentence));
        return this;
    }

    /** All lines, without a line end behind the last. */
    @Override
    public String toString() {
        return out.toString().stripTrailing();
    }

    // Problem and words

    /** A picture; the school stands in words. */
    @Override
    public void logo(LogoBlock logo) {}

    @Override
    public void prose(Prose prose) {
        gap();
        PlainWords.of(prose.markdown()).lines().forEach(line -> paragraph("", line));
    }

    @Override
    public void heading(Heading heading) {
        headed(heading.text());
    }

    @Override
    public void problem(ProblemBlock problem) {
        headed(language.say("print.problem", "number", problem.number(), "title", problem.title()));
        blocks(problem.blocks());
    }

    @Override
    public void caution(Caution caution) {
        gap();
        paragraph("  ", language.say("print.text.caution", "heading", caution.heading(), "text", caution.text()));
    }

    @Override
    public void listing(Listing listing) {
        headed(listing.heading());
        listing.text().lines().forEach(this::line);
    }

    @Override
    public void assumptions(Assumptions assumptions) {
        list(
                language.say("print.taken-for-granted"),
                assumptions.all().stream()
                        .map(one -> Wording.sentence(one.that()) + " " + one.really())
                        .toList());
    }

    // Givens and figure

    @Override
    public void givens(Givens givens) {
        headed(language.say("print.given"));
        for (GivenLine given : givens.lines()) {
            line("  " + given.symbol().map(symbol -> symbol.plain() + " = ").orElse("") + given.value() + "   "
                    + given.meaning());
        }
    }

    @Override
    public void figure(FigureBlock block) {
        if (figures) {
            Figure figure = block.figure();
            headed(figure.title());
            paragraph("  ", figure.summary());
            figure.table().rows().forEach(row -> line("  - " + String.join("; ", row)));
            figure.walk().forEach(sentence -> paragraph("  ", sentence));
        }
    }

    // Steps, questions, key

    @Override
    public void steps(Steps steps) {
        headed(language.say("print.text.steps"));
        for (StepBlock step : steps.steps()) {
            line("  " + step.number() + ". " + step.meaning() + " (" + step.principle() + ")");
            step.condition()
                    .ifPresent(condition -> line("     "
                            + language.say(
                                    "print.text.case",
                                    "symbols",
                                    PlainText.symbolic(condition, step.notation()),
                                    "numbers",
                                    PlainText.substituted(condition, step.notation()))));
            line("     " + equation(step));
            paragraph("     ", step.reason());
        }
    }

    private static String equation(StepBlock step) {
        StringBuilder equation = new StringBuilder(step.symbol().plain());
        step.formula().ifPresent(formula -> {
            String letters = PlainText.symbolic(formula, step.notation());
            String numbers = PlainText.substituted(formula, step.notation());
            equation.append(" = ").append(letters);
            if (!numbers.equals(letters)) {
                equation.append(" = ").append(numbers);
            }
        });
        step.result().ifPresent(result -> {
            if (!equation.toString().endsWith("= " + result.text())) {
                equation.append(result.exact() ? " = " : " ≈ ").append(result.text());
            }
        });
        return equation.toString();
    }

    @Override
    public void question(Question question) {
        gap();
        paragraph("", question.id() + " " + PlainWords.of(question.prompt()));
        question.options().forEach(option -> line("  - " + option));
    }

    @Override
    public void keyTable(KeyTable table) {
        headed(language.say("print.answers"));
        for (KeyLine key : table.lines()) {
            line("  " + key.symbol().map(symbol -> symbol.plain() + " = ").orElse("") + key.answer() + "   "
                    + language.say("print.text.accepted", "accepted", key.accepted()));
            line("     " + language.say("print.text.second-route", "value", key.secondRoute())
                    + (key.routesAgree() ? "" : "   " + language.say("print.text.disagree")));
            for (MistakeLine mistake : key.mistakes()) {
                paragraph(
                        "     ",
                        language.say(
                                "print.text.mistake", "value", mistake.value(), "explanation", mistake.explanation()));
            }
        }
    }

    // Tables

    @Override
    public void preferredValues(PreferredValues values) {
        list(
                language.say("print.preferred-values"),
                values.series().stream()
                        .map(series -> series.name() + ": " + String.join(" ", series.values()))
                        .toList());
    }

    @Override
    public void referenceTable(ReferenceTable table) {
        headed(table.caption());
        line("  " + String.join("; ", table.head()));
        table.rows().forEach(row -> line("  - " + String.join("; ", row)));
    }

    @Override
    public void table(Table table) {
        headed(table.caption());
        line("  " + String.join("; ", table.head()));
        table.rows()
                .forEach(row -> line("  - "
                        + String.join(
                                "; ", row.stream().map(cell -> cell.text()).toList())));
    }

    // Lines

    private void headed(String heading) {
        gap();
        line(heading);
    }

    private void gap() {
        out.append('\n');
    }

    private void paragraph(String indent, String text) {
        StringBuilder line = new StringBuilder(indent);
        for (String word : text.split(" ")) {
            if (line.length() > indent.length() && line.length() + 1 + word.length() > WIDTH) {
                line(line.toString());
                line.setLength(0);
                line.append(indent);
            }
            line.append(line.length() > indent.length() ? " " : "").append(word);
        }
        line(line.toString().stripTrailing());
    }
}
