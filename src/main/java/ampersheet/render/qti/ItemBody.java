package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.figure.Figure;
import ampersheet.formula.MathMl;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.render.Derivation;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.render.Slots;
import ampersheet.render.Wording;
import ampersheet.render.qti.ItemModel.Place;
import ampersheet.render.qti.ItemWriter.PackedFigure;
import ampersheet.sheet.Document.Assumptions;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes what an item shows: the problem as on a sheet, with places to answer in, and what is said of the answers. */
final class ItemBody implements BlockVisitor {
    private static final String MATHML = "http://www.w3.org/1998/Math/MathML";
    private static final String NUMBER = "[+\\-]?[0-9]*\\.?[0-9]+([eE][+\\-]?[0-9]+)?";
    /** As long as version 2.1 allows, less the unit. */
    private static final int LONGEST_NAME = 240;

    private final ItemModel model;
    private final ExchangeItem item;
    private final Language language;
    private final QtiMarkup out;
    private final List<PackedFigure> figures = new ArrayList<>();

    ItemBody(ItemModel model, QtiMarkup out) {
        this.model = model;
        this.item = model.item();
        this.language = item.about().language();
        this.out = out;
    }

    /** What was shown so far. */
    List<PackedFigure> figures() {
        return List.copyOf(figures);
    }

    void write() {
        out.open("qti-item-body").newline();
        item.shown().example().ifPresent(this::example);
        out.element("p", howToType()).newline();
        item.shown().block().blocks().forEach(block -> block.accept(this));
        feedbackBlock(ItemModel.SOLUTION, ItemModel.SHOWN, this::working);
        out.close("qti-item-body").newline();
    }

    private void example(ProblemBlock example) {
        out.open("div", "class", "example").newline();
        strong(language.say("print.exchange.example", "title", example.title()));
        example.blocks().forEach(block -> block.accept(this));
        out.close("div").newline();
        strong(language.say("print.exchange.your-turn"));
    }

    private String howToType() {
        boolean numbers = model.places().stream().anyMatch(place -> !place.isChoice());
        if (!numbers) {
            return language.say("print.tick-one");
        }
        List<String> how = new ArrayList<>();
        how.add(
                item.shown().decimal() == DecimalMarker.COMMA
                        ? language.say("print.exchange.type.comma")
                        : language.say("print.exchange.type.point"));
        if (model.places().stream().anyMatch(place -> place.key().isShare())) {
            how.add(language.say("print.exchange.type.share"));
        }
        String figures = language.number(UsualAcceptance.FIGURES);
        how.add(language.say("print.exchange.type.figures", "number", figures, "Number", Wording.capitalised(figures)));
        return String.join(" ", how);
    }

    /** No item is under a heading. */
    @Override
    public void logo(LogoBlock logo) {}

    @Override
    public void prose(Prose prose) {
        prose(prose.markdown());
    }

    @Override
    public void caution(Caution caution) {
        out.open("div", "class", "caution")
                .open("p")
                .open("strong")
                .line("⚠ " + language.say("print.caution", "heading", Wording.sentence(caution.heading())))
                .close("strong")
                .text(" ")
                .line(caution.text())
                .close("p")
                .close("div")
                .newline();
    }

    @Override
    public void givens(Givens givens) {
        strong(language.say("print.given"));
        out.open("ul").newline();
        givens.lines().forEach(this::given);
        out.close("ul").newline();
    }

    @Override
    public void assumptions(Assumptions assumptions) {
        out.open("p")
                .line(Wording.takenForGranted(assumptions, language))
                .close("p")
                .newline();
    }

    @Override
    public void preferredValues(PreferredValues values) {
        strong(language.say("print.preferred-values"));
        out.open("ul").newline();
        values.series()
                .forEach(series -> out.open("li")
                        .line(series.name() + ": " + String.join(" ", series.values()))
                        .close("li")
                        .newline());
        out.close("ul").newline();
    }

    @Override
    public void heading(Heading heading) {
        throw notInAnItem("heading");
    }

    @Override
    public void problem(ProblemBlock problem) {
        throw notInAnItem("problem inside the problem");
    }

    /** Of a worked example, or with places for what is left out. */
    @Override
    public void steps(Steps steps) {
        strong(steps.heading().isEmpty() ? language.say("print.steps") : steps.heading());
        out.open("ol").newline();
        steps.steps().forEach(this::step);
        out.close("ol").newline();
    }

    @Override
    public void keyTable(KeyTable table) {
        throw notInAnItem("key");
    }

    @Override
    public void listing(Listing listing) {
        throw notInAnItem("listing");
    }

    @Override
    public void table(Table table) {
        throw notInAnItem("table of a class");
    }

    private static IllegalArgumentException notInAnItem(String block) {
        return new IllegalArgumentException("an item holds no " + block);
    }

    /**
     * A page's wide tables can be reached by keyboard in order to scroll; the attribute for that is not one of this
     * format.
     */
    private void prose(String markdown) {
        Markup prose = new Markup();
        ProseMarkup.write(markdown, prose);
        out.trusted(prose.toString().replace(" tabindex=\"0\"", ""));
    }

    private void strong(String text) {
        out.open("p").open("strong").line(text).close("strong").close("p").newline();
    }

    @Override
    public void referenceTable(ReferenceTable table) {
        out.open("div", "class", "scroll")
                .open("table")
                .open("caption")
                .line(table.caption())
                .close("caption")
                .open("thead")
                .open("tr");
        table.head().forEach(head -> out.open("th", "scope", "col").line(head).close("th"));
        out.close("tr").close("thead").open("tbody").newline();
        table.rows().forEach(this::row);
        out.close("tbody").close("table").close("div").newline();
    }

    private void given(GivenLine line) {
        out.open("li").line(line.label() + " ");
        line.symbol().ifPresent(symbol -> {
            math("<mrow>" + MathMl.symbol(symbol) + "<mo>=</mo></mrow>");
            out.text(" ");
        });
        out.line(line.value()).close("li").newline();
    }

    /** The drawing is a file of its own; its description stands in the text for whoever cannot see it. */
    @Override
    public void figure(FigureBlock block) {
        Figure figure = block.figure();
        String path = "figures/" + item.identifier() + "-" + (figures.size() + 1) + ".svg";
        figures.add(new PackedFigure(path, figure.svg()));
        out.open("p")
                .single("img", "src", "../" + path, "alt", figure.title() + ". " + figure.summary())
                .close("p")
                .newline();
        out.open("div", "class", out.version().hiddenClass())
                .element("p", language.say("print.figure.in-words"))
                .newline();
        if (!figure.table().rows().isEmpty()) {
            out.open("table").open("thead").open("tr");
            figure.table()
                    .head()
                    .forEach(head -> out.open("th", "scope", "col").line(head).close("th"));
            out.close("tr").close("thead").open("tbody").newline();
            figure.table().rows().forEach(this::row);
            out.close("tbody").close("table").newline();
        }
        if (!figure.walk().isEmpty()) {
            out.open("ol");
            figure.walk().forEach(sentence -> out.open("li").line(sentence).close("li"));
            out.close("ol").newline();
        }
        out.close("div").newline();
    }

    /** The first cell names the row. */
    private void row(List<String> cells) {
        out.open("tr").open("th", "scope", "row").line(cells.get(0)).close("th");
        cells.subList(1, cells.size()).forEach(cell -> out.open("td").line(cell).close("td"));
        out.close("tr").newline();
    }

    @Override
    public void question(Question asked) {
        Place place = model.place(asked.id());
        if (place.key().acceptance() instanceof Acceptance.Choice choice) {
            choice(place, choice, asked.prompt());
        } else {
            out.open("p");
            ProseMarkup.writeLine(asked.prompt(), out.html());
            out.close("p").newline();
            box(place, asked.symbol(), asked.prompt());
        }
        said(place);
    }

    private void choice(Place place, Acceptance.Choice choice, String prompt) {
        out.open(
                "qti-choice-interaction",
                "response-identifier",
                place.response(),
                "shuffle",
                "false",
                "max-choices",
                "1");
        out.open("qti-prompt");
        ProseMarkup.writeLine(prompt, out.html());
        out.close("qti-prompt").newline();
        for (int i = 0; i < choice.options().size(); i++) {
            out.open("qti-simple-choice", "identifier", ItemModel.option(i))
                    .line(choice.options().get(i).text())
                    .close("qti-simple-choice")
                    .newline();
        }
        out.close("qti-choice-interaction").newline();
    }

    /** @param asks from which the box has its name for those who do not see what stands beside it */
    private void box(Place place, Optional<Symbol> symbol, String asks) {
        AnswerKey key = place.key();
        String unit = key.unit().symbol();
        out.open("p");
        symbol.ifPresent(of -> math("<mrow>" + MathMl.symbol(of) + "<mo>=</mo></mrow>"));
        List<String> attributes = new ArrayList<>(List.of(
                "response-identifier",
                place.response(),
                "expected-length",
                "12",
                "pattern-mask",
                NUMBER,
                "aria-label",
                name(asks) + (unit.isEmpty() ? "" : " (" + unit + ")")));
        if (out.version() == QtiVersion.V3_0) {
            attributes.addAll(List.of("data-patternmask-message", language.say("print.exchange.number-expected")));
        }
        out.text(" ").single("qti-text-entry-interaction", attributes.toArray(String[]::new));
        if (!unit.isEmpty()) {
            out.text("\u00A0").line(unit);
        }
        out.close("p").newline();
    }

    private static String name(String asks) {
        String words = ProseMarkup.words(asks);
        return words.length() <= LONGEST_NAME ? words : words.substring(0, LONGEST_NAME - 1) + "…";
    }

    private void said(Place place) {
        place.said()
                .forEach(said -> feedbackBlock(
                        place.feedback(),
                        said.identifier(),
                        () -> out.open("p").line(said.words()).close("p")));
    }

    private void feedbackBlock(String outcome, String identifier, Runnable content) {
        out.open("qti-feedback-block", "outcome-identifier", outcome, "identifier", identifier, "show-hide", "show");
        boolean wrapped = out.version() == QtiVersion.V3_0;
        if (wrapped) {
            out.open("qti-content-body");
        }
        content.run();
        if (wrapped) {
            out.close("qti-content-body");
        }
        out.close("qti-feedback-block").newline();
    }

    private void working() {
        out.newline();
        steps(new Steps("", item.shown().working().steps()));
    }

    private void step(StepBlock step) {
        out.open("li").open("p").line(Wording.capitalised(step.meaning()));
        if (!step.principle().isEmpty()) {
            out.line(" (" + step.principle() + ")");
        }
        out.close("p");
        if (step.result().isEmpty()) {
            Place place = model.place(step.blankId());
            box(place, Optional.of(step.symbol()), step.meaning());
            said(place);
            out.close("li").newline();
            return;
        }
        step.condition().ifPresent(condition -> {
            out.open("p");
            Slots.write(
                    language.say("print.case", "symbols", Slots.mark(0), "numbers", Slots.mark(1)),
                    out::text,
                    () -> math("<mrow>" + MathMl.symbolic(condition, step.notation()) + "</mrow>"),
                    () -> math("<mrow>" + MathMl.substituted(condition, step.notation()) + "</mrow>"));
            out.close("p");
        });
        equation(step);
        if (!step.reason().isEmpty()) {
            out.open("p").line(Wording.sentence(step.reason())).close("p");
        }
        out.close("li").newline();
    }

    /** Formula, numbers and result each by themselves, so that a narrow page can break the line between them. */
    private void equation(StepBlock step) {
        Printed result = step.result().orElseThrow();
        Derivation derivation = Derivation.of(step);
        List<String> parts = new ArrayList<>();
        if (derivation.formula()) {
            parts.add("<mo>=</mo>" + MathMl.symbolic(step.formula().orElseThrow(), step.notation()));
        }
        if (derivation.numbers()) {
            parts.add("<mo>=</mo>" + MathMl.substituted(step.formula().orElseThrow(), step.notation()));
        }
        if (derivation.result()) {
            parts.add((result.exact() ? "<mo>=</mo>" : "<mo>≈</mo>") + MathMl.value(result));
        }
        out.open("p");
        String before = MathMl.symbol(step.symbol());
        for (String part : parts) {
            math("<mrow>" + before + part + "</mrow>");
            out.text(" ");
            before = "";
        }
        out.close("p");
    }

    private void math(String content) {
        out.open("math", "xmlns", MATHML).trusted(content).close("math");
    }
}
