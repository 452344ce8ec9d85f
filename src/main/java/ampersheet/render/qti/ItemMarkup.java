package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.figure.Figure;
import ampersheet.formula.MathMl;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.render.Derivation;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.render.ShortestDecimal;
import ampersheet.render.Wording;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Listing;
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

/** One item: declarations, body, and the processing that gives each response its credit and its feedback. */
final class ItemMarkup implements BlockVisitor {
    static final String NAMESPACE = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";
    private static final String MATHML = "http://www.w3.org/1998/Math/MathML";
    private static final String HOW_TO_TYPE =
            "Type each number with a decimal point, so that it fits the unit printed behind "
                    + "its place; a share in % may also be a fraction of 1. "
                    + Wording.capitalised(UsualAcceptance.figures())
                    + " are enough unless a question asks for more; preferred values and "
                    + "counts must be exact.";
    private static final String NUMBER = "[+\\-]?[0-9]*\\.?[0-9]+([eE][+\\-]?[0-9]+)?";

    private final ExchangeItem item;
    private final List<AnswerKey> keys;
    private final Markup out = new Markup();
    private final List<PackedFigure> figures = new ArrayList<>();
    private int question;

    /** @param path in the package */
    record PackedFigure(String path, String svg) {}

    private ItemMarkup(ExchangeItem item) {
        this.item = item;
        this.keys = item.key().answers();
    }

    /** @param figures that it shows, as files of their own */
    record Written(String xml, List<PackedFigure> figures) {
        Written {
            figures = List.copyOf(figures);
        }
    }

    static Written write(ExchangeItem item) {
        ItemMarkup markup = new ItemMarkup(item);
        markup.write();
        return new Written(markup.out.toString(), markup.figures);
    }

    private void write() {
        out.trusted("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.open(
                        "qti-assessment-item",
                        "xmlns",
                        NAMESPACE,
                        "identifier",
                        item.identifier(),
                        "title",
                        item.block().title(),
                        "adaptive",
                        "false",
                        "time-dependent",
                        "false",
                        "xml:lang",
                        item.language())
                .newline();
        for (int i = 0; i < keys.size(); i++) {
            responseDeclaration(i);
        }
        outcome("SCORE", "float", "0");
        outcome("MAXSCORE", "float", Integer.toString(keys.size()));
        for (int i = 0; i < keys.size(); i++) {
            outcome(feedback(i), "identifier", "");
        }
        outcome("SOLUTION", "identifier", "");
        body();
        processing();
        out.close("qti-assessment-item").newline();
    }

    private static String response(int question) {
        return "RESPONSE_" + ExchangeItem.letter(question);
    }

    private static String feedback(int question) {
        return "FEEDBACK_" + ExchangeItem.letter(question);
    }

    private static String option(int index) {
        return "OPTION_" + (index + 1);
    }

    private boolean isChoice(int question) {
        return keys.get(question).acceptance() instanceof Acceptance.Choice;
    }

    // Declarations

    private void responseDeclaration(int index) {
        AnswerKey key = keys.get(index);
        boolean choice = isChoice(index);
        out.open(
                        "qti-response-declaration",
                        "identifier",
                        response(index),
                        "cardinality",
                        "single",
                        "base-type",
                        choice ? "identifier" : "float")
                .open("qti-correct-response");
        out.element(
                "qti-value",
                choice ? option((int) key.expected()) : ShortestDecimal.of(ScoringRules.printed(key, key.expected())));
        out.close("qti-correct-response").close("qti-response-declaration").newline();
    }

    private void outcome(String identifier, String type, String value) {
        out.open("qti-outcome-declaration", "identifier", identifier, "cardinality", "single", "base-type", type);
        if (!value.isEmpty()) {
            out.open("qti-default-value").element("qti-value", value).close("qti-default-value");
        }
        out.close("qti-outcome-declaration").newline();
    }

    // Body

    private void body() {
        out.open("qti-item-body").newline();
        out.element("p", HOW_TO_TYPE).newline();
        item.block().blocks().forEach(block -> block.accept(this));
        feedbackBlock("SOLUTION", "SHOWN", this::working);
        out.close("qti-item-body").newline();
    }

    @Override
    public void prose(Prose prose) {
        prose(prose.markdown());
    }

    @Override
    public void caution(Caution caution) {
        out.open("div", "class", "caution")
                .open("p")
                .open("strong")
                .text("⚠ " + Wording.CAUTION + ": ")
                .line(Wording.sentence(caution.heading()))
                .close("strong")
                .text(" ")
                .line(caution.text())
                .close("p")
                .close("div")
                .newline();
    }

    @Override
    public void givens(Givens givens) {
        out.open("p")
                .element("strong", Wording.GIVEN)
                .close("p")
                .newline()
                .open("ul")
                .newline();
        givens.lines().forEach(this::given);
        out.close("ul").newline();
    }

    @Override
    public void assumptions(Assumptions assumptions) {
        out.open("p").line(Wording.takenForGranted(assumptions)).close("p").newline();
    }

    @Override
    public void preferredValues(PreferredValues values) {
        out.open("p")
                .element("strong", Wording.PREFERRED_VALUES)
                .close("p")
                .newline()
                .open("ul")
                .newline();
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

    /** The working is shown when the item is answered, see {@link #working}. */
    @Override
    public void steps(Steps steps) {
        throw notInAnItem("working before the answers");
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

    @Override
    public void referenceTable(ReferenceTable table) {
        out.open("table")
                .open("caption")
                .line(table.caption())
                .close("caption")
                .open("thead")
                .open("tr");
        table.head().forEach(head -> out.open("th", "scope", "col").line(head).close("th"));
        out.close("tr").close("thead").open("tbody").newline();
        for (List<String> row : table.rows()) {
            out.open("tr").open("th", "scope", "row").line(row.get(0)).close("th");
            row.subList(1, row.size()).forEach(cell -> out.open("td").line(cell).close("td"));
            out.close("tr").newline();
        }
        out.close("tbody").close("table").newline();
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
        out.open("div", "class", "qti-visually-hidden")
                .element("p", Wording.FIGURE_IN_WORDS)
                .newline();
        if (!figure.table().rows().isEmpty()) {
            out.open("table").open("thead").open("tr");
            figure.table().head().forEach(head -> out.open("th").line(head).close("th"));
            out.close("tr").close("thead").open("tbody").newline();
            for (List<String> row : figure.table().rows()) {
                out.open("tr");
                row.forEach(cell -> out.open("td").line(cell).close("td"));
                out.close("tr").newline();
            }
            out.close("tbody").close("table").newline();
        }
        if (!figure.walk().isEmpty()) {
            out.open("ol");
            figure.walk().forEach(sentence -> out.open("li").line(sentence).close("li"));
            out.close("ol").newline();
        }
        out.close("div").newline();
    }

    @Override
    public void question(Question asked) {
        int index = question++;
        AnswerKey key = keys.get(index);
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            out.open(
                    "qti-choice-interaction",
                    "response-identifier",
                    response(index),
                    "shuffle",
                    "false",
                    "max-choices",
                    "1");
            out.open("qti-prompt");
            ProseMarkup.writeLine(asked.prompt(), out);
            out.close("qti-prompt").newline();
            for (int i = 0; i < choice.options().size(); i++) {
                out.open("qti-simple-choice", "identifier", option(i))
                        .line(choice.options().get(i).text())
                        .close("qti-simple-choice")
                        .newline();
            }
            out.close("qti-choice-interaction").newline();
        } else {
            out.open("p");
            ProseMarkup.writeLine(asked.prompt(), out);
            out.close("p").newline().open("p");
            asked.symbol().ifPresent(symbol -> math("<mrow>" + MathMl.symbol(symbol) + "<mo>=</mo></mrow>"));
            out.text(" ")
                    .single(
                            "qti-text-entry-interaction",
                            "response-identifier",
                            response(index),
                            "expected-length",
                            "12",
                            "pattern-mask",
                            NUMBER);
            if (!key.unit().symbol().isEmpty()) {
                out.text("\u00A0").line(key.unit().symbol());
            }
            out.close("p").newline();
        }
        feedbacks(index, key);
    }

    private void feedbacks(int index, AnswerKey key) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            said(index, Feedback.BLANK.name(), Feedback.BLANK.says(key));
            said(index, Feedback.CORRECT.name(), Feedback.CORRECT.says(key));
            for (int i = 0; i < choice.options().size(); i++) {
                if (i != (int) key.expected()) {
                    String says = choice.options().get(i).explanation();
                    said(index, option(i), says.isEmpty() ? Feedback.UNEXPLAINED.says(key) : says);
                }
            }
            return;
        }
        List<ScoringRules.Rule> rules = ScoringRules.of(item.key(), key);
        for (Feedback feedback : Feedback.values()) {
            boolean comes = feedback == Feedback.BLANK
                    || feedback == Feedback.UNEXPLAINED
                    || rules.stream().anyMatch(rule -> rule.feedback().equals(feedback.name()));
            if (comes) {
                said(index, feedback.name(), feedback.says(key));
            }
        }
        for (int i = 0; i < key.mistakes().size(); i++) {
            said(index, ScoringRules.mistake(i), key.mistakes().get(i).explanation());
        }
    }

    private void said(int index, String identifier, String says) {
        feedbackBlock(
                feedback(index), identifier, () -> out.open("p").line(says).close("p"));
    }

    private void feedbackBlock(String outcome, String identifier, Runnable content) {
        out.open("qti-feedback-block", "outcome-identifier", outcome, "identifier", identifier, "show-hide", "show");
        out.open("qti-content-body");
        content.run();
        out.close("qti-content-body").close("qti-feedback-block").newline();
    }

    private void working() {
        out.newline()
                .open("p")
                .element("strong", Wording.WORKED_STEPS)
                .close("p")
                .newline()
                .open("ol")
                .newline();
        for (StepBlock step : item.working().steps()) {
            out.open("li").open("p").line(Wording.capitalised(step.meaning()));
            if (!step.principle().isEmpty()) {
                out.line(" (" + step.principle() + ")");
            }
            out.close("p");
            step.condition().ifPresent(condition -> {
                out.open("p").text(Wording.CASE + " ");
                math("<mrow>" + MathMl.symbolic(condition, step.notation()) + "</mrow>");
                out.text("; " + Wording.CASE_HERE + " ");
                math("<mrow>" + MathMl.substituted(condition, step.notation()) + "</mrow>");
                out.text(".").close("p");
            });
            equation(step);
            if (!step.reason().isEmpty()) {
                out.open("p").line(Wording.sentence(step.reason())).close("p");
            }
            out.close("li").newline();
        }
        out.close("ol").newline();
    }

    private void equation(StepBlock step) {
        Printed result = step.result().orElseThrow();
        Derivation derivation = Derivation.of(step);
        StringBuilder line = new StringBuilder("<mrow>").append(MathMl.symbol(step.symbol()));
        if (derivation.formula()) {
            line.append("<mo>=</mo>").append(MathMl.symbolic(step.formula().orElseThrow(), step.notation()));
        }
        if (derivation.numbers()) {
            line.append("<mo>=</mo>").append(MathMl.substituted(step.formula().orElseThrow(), step.notation()));
        }
        if (derivation.result()) {
            line.append(result.exact() ? "<mo>=</mo>" : "<mo>≈</mo>").append(MathMl.value(result));
        }
        out.open("p");
        math(line.append("</mrow>").toString());
        out.close("p");
    }

    private void math(String content) {
        out.open("math", "xmlns", MATHML).trusted(content).close("math");
    }

    // Processing

    private void processing() {
        out.open("qti-response-processing").newline();
        for (int i = 0; i < keys.size(); i++) {
            condition(i);
        }
        showSolution();
        out.close("qti-response-processing").newline();
    }

    /** Nothing typed comes first: every comparison with it would fail, and an open place is no mistake. */
    private void condition(int index) {
        AnswerKey key = keys.get(index);
        out.open("qti-response-condition").newline();
        out.open("qti-response-if").open("qti-is-null");
        variable(index);
        out.close("qti-is-null");
        outcome(index, Feedback.BLANK.name(), 0);
        out.close("qti-response-if").newline();
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            options(index, choice);
        } else {
            ScoringRules.of(item.key(), key).forEach(rule -> rule(index, rule));
        }
        out.open("qti-response-else");
        outcome(index, Feedback.UNEXPLAINED.name(), 0);
        out.close("qti-response-else").newline();
        out.close("qti-response-condition").newline();
    }

    private void options(int index, Acceptance.Choice choice) {
        for (int i = 0; i < choice.options().size(); i++) {
            boolean right = i == (int) keys.get(index).expected();
            out.open("qti-response-else-if").open("qti-match");
            out.element("qti-base-value", option(i), "base-type", "identifier");
            variable(index);
            out.close("qti-match");
            outcome(index, right ? Feedback.CORRECT.name() : option(i), right ? 1 : 0);
            out.close("qti-response-else-if").newline();
        }
    }

    private void rule(int index, ScoringRules.Rule rule) {
        out.open("qti-response-else-if");
        if (rule.anyOf().size() > 1) {
            out.open("qti-or");
        }
        rule.anyOf().forEach(comparison -> comparison(index, comparison));
        if (rule.anyOf().size() > 1) {
            out.close("qti-or");
        }
        outcome(index, rule.feedback(), rule.credit());
        out.close("qti-response-else-if").newline();
    }

    private void comparison(int index, ScoringRules.Comparison comparison) {
        String tolerance = ShortestDecimal.of(comparison.tolerance());
        out.open("qti-equal", "tolerance-mode", "absolute", "tolerance", tolerance + " " + tolerance);
        if (comparison instanceof ScoringRules.Comparison.WithValue other) {
            number(other.value());
            variable(index);
        } else {
            out.single("qti-correct", "identifier", response(index));
            if (comparison instanceof ScoringRules.Comparison.Reciprocal reciprocal) {
                out.open("qti-divide");
                number(reciprocal.numerator());
                variable(index);
                out.close("qti-divide");
            } else {
                variable(index);
            }
        }
        out.close("qti-equal");
    }

    private void number(double value) {
        out.element("qti-base-value", ShortestDecimal.of(value), "base-type", "float");
    }

    private void variable(int index) {
        out.single("qti-variable", "identifier", response(index));
    }

    private void outcome(int index, String said, double credit) {
        if (credit > 0) {
            out.open("qti-set-outcome-value", "identifier", "SCORE").open("qti-sum");
            out.single("qti-variable", "identifier", "SCORE");
            number(credit);
            out.close("qti-sum").close("qti-set-outcome-value");
        }
        out.open("qti-set-outcome-value", "identifier", feedback(index));
        out.element("qti-base-value", said, "base-type", "identifier");
        out.close("qti-set-outcome-value");
    }

    /** Once nothing is left open. */
    private void showSolution() {
        out.open("qti-response-condition").newline().open("qti-response-if").open("qti-and");
        for (int i = 0; i < keys.size(); i++) {
            out.open("qti-not").open("qti-is-null");
            variable(i);
            out.close("qti-is-null").close("qti-not");
        }
        out.close("qti-and");
        out.open("qti-set-outcome-value", "identifier", "SOLUTION");
        out.element("qti-base-value", "SHOWN", "base-type", "identifier");
        out.close("qti-set-outcome-value")
                .close("qti-response-if")
                .newline()
                .close("qti-response-condition")
                .newline();
    }
}
