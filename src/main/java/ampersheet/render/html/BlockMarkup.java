package ampersheet.render.html;

import ampersheet.figure.Figure;
import ampersheet.formula.Spoken;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.render.Derivation;
import ampersheet.render.GivensWithFigures;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.render.Wording;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Assumption;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.LogoBlock;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Document.UnitBox;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The blocks of one page. */
final class BlockMarkup implements BlockVisitor {
    /** A longer equation takes the width of the page, with its reason below instead of beside it. */
    private static final int WIDE_LINE = 30;

    /** Title and rule at the top of the first page, in millimetres. */
    private static final int MASTHEAD = 32;

    private final Document document;
    private final Language language;
    private final Markup markup;
    private final FormulaMarkup formulas;
    private final TableMarkup tables;
    private final Places places;
    private final String idPrefix;
    /** Whether a script points at the parts of figures. */
    private final boolean pointedAt;

    private final Set<String> ids = new TreeSet<>();
    private int headingLevel = 2;
    /** Of the last heading outside problems; what comes with one of its own belongs to it. */
    private int above;

    /** On a page of its own, without a script. */
    BlockMarkup(Document document, Markup markup) {
        this(document, markup, new RuledPlaces(markup, document.language()), "", false);
    }

    /** @param idPrefix before every id, where several of these share a page with its script */
    BlockMarkup(Document document, Markup markup, Places places, String idPrefix) {
        this(document, markup, places, idPrefix, true);
    }

    private BlockMarkup(Document document, Markup markup, Places places, String idPrefix, boolean pointedAt) {
        this.document = document;
        this.language = document.language();
        this.markup = markup;
        this.formulas = new FormulaMarkup(markup, language);
        this.tables = new TableMarkup(markup, formulas, language);
        this.places = places;
        this.idPrefix = idPrefix;
        this.pointedAt = pointedAt;
    }

    BlockMarkup under(int heading) {
        headingLevel = heading + 1;
        return this;
    }

    void write() {
        write(document.blocks());
    }

    private void write(List<Block> blocks) {
        for (int i = 0; i < blocks.size(); ) {
            int end = GivensWithFigures.end(blocks, i);
            if (end > i + 1) {
                givensBesideFigures(blocks.subList(i, end));
                i = end;
            } else {
                blocks.get(i).accept(this);
                i++;
            }
        }
    }

    // Problem and words

    @Override
    public void problem(ProblemBlock problem) {
        String id = id("problem-" + problem.number());
        markup.open("section", "class", fitsOnAPage(problem) ? "problem whole" : "problem", "aria-labelledby", id)
                .newline();
        markup.open("h2", "id", id);
        markup.open("span", "class", "number")
                .element("span", language.say("print.problem.before-number") + " ", "class", "unseen");
        markup.line(problem.number())
                .close("span")
                .text(" ")
                .line(problem.title())
                .close("h2")
                .newline();
        markup.open("p", "class", "running");
        markup.open("span")
                .line(String.join(" · ", problem.tags()))
                .close("span")
                .text(" ");
        HtmlPage.sheetId(document, markup);
        markup.close("p").newline();
        above = 0;
        headingLevel++;
        write(problem.blocks());
        headingLevel--;
        markup.close("section").newline();
    }

    /** The first problem shares its page with what stands above it. */
    private boolean fitsOnAPage(ProblemBlock problem) {
        int before = document.blocks().indexOf(problem);
        boolean first =
                before >= 0 && document.blocks().subList(0, before).stream().noneMatch(ProblemBlock.class::isInstance);
        int above = first ? MASTHEAD + PaperHeight.of(document.blocks().subList(0, before)) : 0;
        return above + PaperHeight.of(List.of(problem)) <= PaperHeight.ofPage(document.paper());
    }

    @Override
    public void heading(Heading heading) {
        heading(heading.level(), heading.text());
        above = heading.level();
    }

    private void heading(int level, String text) {
        String element = "h" + Math.min(6, Math.max(headingLevel, level));
        markup.open(element).line(text).close(element).newline();
    }

    /** The page has it with its title. */
    @Override
    public void logo(LogoBlock logo) {}

    @Override
    public void prose(Prose prose) {
        markup.open("div", "class", "prose").newline();
        ProseMarkup.write(prose.markdown(), markup);
        markup.close("div").newline();
    }

    @Override
    public void caution(Caution caution) {
        markup.open("p", "class", "caution", "role", "note");
        markup.element("span", "⚠", "class", "sign", "aria-hidden", "true").text(" ");
        markup.open("strong")
                .line(language.say("print.caution", "heading", Wording.sentence(caution.heading())))
                .close("strong")
                .text(" ");
        markup.line(caution.text()).close("p").newline();
    }

    @Override
    public void listing(Listing listing) {
        markup.open("details", "class", "listing")
                .newline()
                .element("summary", listing.heading())
                .newline();
        markup.open("pre", "tabindex", "0", "aria-label", listing.heading())
                .element("code", listing.text())
                .close("pre")
                .newline();
        markup.close("details").newline();
    }

    @Override
    public void assumptions(Assumptions assumptions) {
        if (assumptions.inFull()) {
            markup.open("div", "class", "granted").newline();
            markup.element("p", language.say("print.taken-for-granted.list"))
                    .newline()
                    .open("ul")
                    .newline();
            for (Assumption one : assumptions.all()) {
                markup.open("li")
                        .line(Wording.sentence(one.that()))
                        .text(" ")
                        .line(one.really())
                        .close("li")
                        .newline();
            }
            markup.close("ul").newline().close("div").newline();
        } else {
            markup.open("p", "class", "granted")
                    .line(Wording.takenForGranted(assumptions, language))
                    .close("p")
                    .newline();
        }
    }

    // Givens and figure

    private void givensBesideFigures(List<Block> blocks) {
        boolean wide = blocks.stream()
                .anyMatch(block -> block instanceof FigureBlock figure
                        && DrawingSize.of(figure.figure().picture()).isWide());
        markup.open("div", "class", wide ? "setting stacked" : "setting").newline();
        blocks.stream().filter(Givens.class::isInstance).forEach(block -> block.accept(this));
        markup.open("div", "class", "figures").newline();
        blocks.stream().filter(FigureBlock.class::isInstance).forEach(block -> block.accept(this));
        markup.close("div").newline().close("div").newline();
    }

    @Override
    public void givens(Givens givens) {
        markup.open("div", "class", "givens").newline();
        heading(headingLevel, language.say("print.given"));
        markup.open("dl").newline();
        for (GivenLine line : givens.lines()) {
            markup.open("div").open("dt").line(line.label()).close("dt").open("dd");
            if (line.symbol().isPresent()) {
                markup.trusted(formulas.isSymbol(line.symbol().get()));
                markup.text(" ");
            }
            markup.line(line.value()).close("dd").close("div").newline();
        }
        markup.close("dl").newline().close("div").newline();
    }

    @Override
    public void figure(FigureBlock block) {
        Figure figure = block.figure();
        String titleId = figure.picture().titleId();
        markup.open("div", "class", "figure").newline();
        markup.open("figure").newline();
        if (DrawingSize.of(figure.picture()).scrollsOnAPhone()) {
            markup.open("div", "class", "drawing long", "tabindex", "0", "role", "group", "aria-labelledby", titleId);
        } else {
            markup.open("div", "class", "drawing");
        }
        markup.trusted(figure.picture().inPage(pointedAt)).close("div").newline();
        markup.open("figcaption")
                .element("b", language.say("print.figure"))
                .text(" ")
                .open("span", "id", titleId)
                .line(figure.title())
                .close("span")
                .close("figcaption");
        markup.newline().close("figure").newline();
        markup.open("details").newline();
        markup.element("summary", language.say("print.figure.in-words")).newline();
        markup.open("p", "id", figure.picture().descriptionId())
                .line(Spoken.words(figure.summary()))
                .close("p")
                .newline();
        if (!figure.table().rows().isEmpty()) {
            markup.open("table");
            markup.open("thead").open("tr");
            figure.table().head().forEach(head -> markup.open("th").line(head).close("th"));
            markup.close("tr").close("thead").newline();
            for (List<String> row : figure.table().rows()) {
                markup.open("tr");
                for (int i = 0; i < row.size(); i++) {
                    if (i == 0) {
                        markup.open("th").line(Spoken.words(row.get(i))).close("th");
                    } else {
                        markup.open("td").line(Spoken.words(row.get(i))).close("td");
                    }
                }
                markup.close("tr").newline();
            }
            markup.close("table").newline();
        }
        if (!figure.walk().isEmpty()) {
            markup.element("p", language.say("print.figure.walk"))
                    .newline()
                    .open("ol")
                    .newline();
            figure.walk()
                    .forEach(sentence -> markup.open("li")
                            .line(Spoken.words(sentence))
                            .close("li")
                            .newline());
            markup.close("ol").newline();
        }
        markup.close("details").newline().close("div").newline();
    }

    // Worked steps

    @Override
    public void steps(Steps steps) {
        markup.open("div", "class", "working").newline();
        heading(
                Math.max(headingLevel, above + 1),
                steps.heading().isEmpty() ? language.say("print.steps") : steps.heading());
        markup.open("ol", "class", "steps", "role", "list").newline();
        steps.steps().forEach(this::step);
        markup.close("ol").newline().close("div").newline();
    }

    /**
     * A blank step shows what is to be found and where to write it; neither rule nor reason, which would give it away.
     */
    private void step(StepBlock step) {
        Optional<Derivation> derivation = step.result().map(result -> Derivation.of(step));
        boolean wide = derivation.isPresent() && derivation.get().width() > WIDE_LINE;
        markup.open("li", "value", Integer.toString(step.number()), "class", wide ? "step wide" : "step");
        markup.open("div", "class", "work").newline();
        markup.open("p", "class", "finding")
                .line(Wording.capitalised(step.meaning()))
                .close("p")
                .newline();
        if (derivation.isPresent()) {
            step.condition().ifPresent(condition -> formulas.condition(condition, step.notation()));
            formulas.equation(step, derivation.get());
            markup.close("div").newline();
            why(step);
        } else {
            String label = step.blankId().isEmpty()
                    ? language.say("print.step", "number", Integer.toString(step.number()))
                    : step.blankId();
            place(label, Optional.of(step.symbol()), step.meaning(), "");
            markup.close("div").newline();
        }
        markup.close("li").newline();
    }

    /** The rule used and the reason, beside the working or below it. */
    private void why(StepBlock step) {
        if (step.principle().isEmpty() && step.reason().isEmpty()) {
            return;
        }
        markup.open("div", "class", "why").newline();
        if (!step.principle().isEmpty()) {
            markup.open("p", "class", "rule").element("span", language.say("print.rule-used") + " ", "class", "unseen");
            markup.line(step.principle()).close("p").newline();
        }
        if (!step.reason().isEmpty()) {
            markup.open("p", "class", "reason")
                    .line(Wording.sentence(step.reason()))
                    .close("p")
                    .newline();
        }
        markup.close("div").newline();
    }

    // Answers and key

    @Override
    public void question(Question question) {
        String id = id("answer-" + question.id());
        markup.open("div", "class", "question", "id", id).newline();
        if (question.options().isEmpty()) {
            markup.open("p", "class", "prompt")
                    .open("b")
                    .line(question.id())
                    .close("b")
                    .text(" ");
            ProseMarkup.writeLine(question.prompt(), markup);
            markup.close("p").newline();
            place(
                    question.id(),
                    question.symbol(),
                    question.meaning(),
                    question.unitBox() == UnitBox.SHARE ? language.say("print.share-hint") : question.unitHint());
        } else {
            places.options(question, id + "-option");
        }
        markup.close("div").newline();
    }

    private void place(String label, Optional<Symbol> symbol, String meaning, String hint) {
        String symbolMarkup = symbol.map(s -> formulas.isSymbol(s) + " ").orElse("");
        places.place(id("place-" + label), label, symbolMarkup, meaning, hint);
    }

    // Tables

    @Override
    public void keyTable(KeyTable table) {
        tables.write(table);
    }

    @Override
    public void preferredValues(PreferredValues values) {
        tables.write(values);
    }

    @Override
    public void referenceTable(ReferenceTable table) {
        tables.write(table);
    }

    @Override
    public void table(Table table) {
        tables.write(table);
    }

    /** Made of letters, digits and hyphens, and used once on the page. */
    private String id(String wanted) {
        StringBuilder letters = new StringBuilder();
        wanted.codePoints().forEach(c -> letters.append(c < 0x80 && Character.isLetterOrDigit(c) ? (char) c : '-'));
        letters.insert(0, idPrefix);
        String id = letters.toString();
        for (int i = 2; !ids.add(id); i++) {
            id = letters + "-" + i;
        }
        return id;
    }
}
