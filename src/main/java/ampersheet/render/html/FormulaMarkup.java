package ampersheet.render.html;

import ampersheet.formula.Condition;
import ampersheet.formula.MathMl;
import ampersheet.formula.Notation;
import ampersheet.formula.Spoken;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.render.Derivation;
import ampersheet.render.Markup;
import ampersheet.render.Slots;
import ampersheet.render.SpokenLines;
import ampersheet.sheet.Document.StepBlock;
import java.util.ArrayList;
import java.util.List;

/** Formulas of a page as MathML: in a line of words, and the lines of a working under each other. */
record FormulaMarkup(Markup markup, Language language) {
    /**
     * What the narrowest phone's width surely holds; a longer equation may scroll and must be reachable by keyboard.
     */
    private static final int NARROW_LINE = 17;

    /** The whole element as text. */
    private static String element(String children, String spoken) {
        Markup markup = Markup.inLongLines();
        inLine(children, spoken, markup);
        return markup.toString();
    }

    void condition(Condition condition, Notation notation) {
        markup.open("p", "class", "case");
        Slots.write(
                language.say("print.case", "symbols", Slots.mark(0), "numbers", Slots.mark(1)),
                markup::text,
                () -> inLine(MathMl.symbolic(condition, notation), Spoken.symbolic(condition, notation)),
                () -> inLine(MathMl.substituted(condition, notation), Spoken.substituted(condition, notation)));
        markup.close("p").newline();
    }

    /** The lines {@code symbol = formula}, {@code = numbers put in}, {@code = result}, under each other at the sign. */
    void equation(StepBlock step, Derivation derivation) {
        Printed result = step.result().orElseThrow();
        if (derivation.width() > NARROW_LINE) {
            markup.open("div", "class", "equation", "tabindex", "0", "role", "group", "aria-label", step.meaning());
        } else {
            markup.open("div", "class", "equation");
        }
        markup.open("math", "display", "block", "aria-label", spoken(step, derivation));
        markup.open("mtable").newline();
        String left = MathMl.symbol(step.symbol());
        if (derivation.formula()) {
            line(left, "=", MathMl.symbolic(step.formula().orElseThrow(), step.notation()));
            left = "";
        }
        if (derivation.numbers()) {
            line("", "=", MathMl.substituted(step.formula().orElseThrow(), step.notation()));
        }
        if (derivation.result()) {
            line(left, result.exact() ? "=" : "≈", MathMl.value(result));
        }
        markup.close("mtable").close("math").close("div").newline();
    }

    /** The lines as they are read aloud, set apart by semicolons. */
    private String spoken(StepBlock step, Derivation derivation) {
        SpokenLines spoken = new SpokenLines(step.symbol(), language);
        List<String> lines = new ArrayList<>();
        if (derivation.formula()) {
            lines.add(spoken.equal(Spoken.symbolic(step.formula().orElseThrow(), step.notation())));
        }
        if (derivation.numbers()) {
            lines.add(spoken.equal(Spoken.substituted(step.formula().orElseThrow(), step.notation())));
        }
        if (derivation.result()) {
            lines.add(spoken.result(step.result().orElseThrow()));
        }
        return String.join("; ", lines);
    }

    private void line(String left, String relation, String right) {
        markup.open("mtr").open("mtd").trusted(MathMl.inRow(left)).close("mtd");
        markup.open("mtd").element("mo", relation).close("mtd");
        markup.open("mtd")
                .trusted(MathMl.inRow(right))
                .close("mtd")
                .close("mtr")
                .newline();
    }

    /**
     * @param children MathML
     * @param spoken the same in words, for whoever hears the page: few readers speak MathML by themselves
     */
    void inLine(String children, String spoken) {
        inLine(children, spoken, markup);
    }

    private static void inLine(String children, String spoken, Markup markup) {
        markup.open("math", "aria-label", spoken)
                .trusted(MathMl.inRow(children))
                .close("math");
    }

    /** {@code V_s =}, before a value or a place for one. */
    String isSymbol(Symbol symbol) {
        return element(
                MathMl.symbol(symbol) + "<mo>=</mo>",
                language.say("print.spoken.symbol", "symbol", Spoken.symbol(symbol, language)));
    }
}
