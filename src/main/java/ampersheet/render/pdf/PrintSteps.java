package ampersheet.render.pdf;

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
import ampersheet.render.Wording;
import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.UnitBox;
import java.util.List;
import java.util.Optional;

/** The steps of a working, and the places where a learner writes. */
final class PrintSteps {
    static final String EQUALS = "\u00a0=\u00a0";
    /** A longer equation takes the width of the page, with its reason below instead of beside it. */
    private static final int WIDE_LINE = 34;

    /** What a column holds in one line; a longer equation needs the width of the page. */
    private static final int COLUMN_LINE = 38;

    private static final int FOLDED_LINE = 55;

    private static final int WIDEST_IN_COLUMN = 60;

    private static final int TWO_DIGITS = 10;
    /** Characters that stand beside the reason in one line. */
    private static final int ONE_LINE = 44;

    private final Markup markup;
    private final MathBoxes math;
    private final Profile profile;
    private final Language language;
    private final int columnLine;
    private boolean narrow;

    PrintSteps(Markup markup, MathBoxes math, Profile profile, Paper paper, Language language) {
        this.markup = markup;
        this.math = math;
        this.profile = profile;
        this.language = language;
        this.columnLine = paper.isFolded() ? FOLDED_LINE : COLUMN_LINE;
    }

    /** Whether all their lines fit in a column. */
    static boolean fitColumn(List<StepBlock> steps) {
        return steps.stream()
                .filter(step -> step.result().isPresent())
                .allMatch(step -> Derivation.of(step).width() <= WIDEST_IN_COLUMN);
    }

    /** @param narrow whether what follows stands in a column: reasons stand below their lines there */
    void inColumn(boolean narrow) {
        this.narrow = narrow;
    }

    void write(List<StepBlock> steps) {
        boolean many = !steps.isEmpty() && steps.get(steps.size() - 1).number() >= TWO_DIGITS;
        markup.open("ol", "class", many ? "steps many" : "steps").newline();
        steps.forEach(this::step);
        markup.close("ol").newline();
    }

    private void step(StepBlock step) {
        Optional<Derivation> derivation = step.result().map(result -> Derivation.of(step));
        markup.open("li", "value", Integer.toString(step.number()), "class", "step")
                .newline();
        if (derivation.isEmpty()) {
            finding(step);
            place(
                    step.blankId().isEmpty()
                            ? language.say("print.step", "number", Integer.toString(step.number()))
                            : step.blankId(),
                    Optional.of(step.symbol()),
                    step.unitBox(),
                    "",
                    step.check());
        } else {
            boolean beside = derivation.get().width() <= WIDE_LINE && profile != Profile.LARGE && !narrow;
            markup.open("div", "class", beside ? "work beside" : "work");
            finding(step);
            step.condition().ifPresent(condition -> condition(condition, step.notation()));
            equation(step, derivation.get());
            markup.close("div").newline();
            why(step, beside);
        }
        markup.close("li").newline();
    }

    private void finding(StepBlock step) {
        markup.open("p", "class", "finding")
                .line(Wording.capitalised(step.meaning()))
                .close("p")
                .newline();
    }

    private void why(StepBlock step, boolean beside) {
        if (narrow) {
            whyInOne(step);
            return;
        }
        markup.open("div", "class", beside ? "why beside" : "why").newline();
        if (!step.principle().isEmpty()) {
            markup.open("p", "class", "rule").line(step.principle()).close("p").newline();
        }
        if (!step.reason().isEmpty()) {
            markup.open("p", "class", "reason")
                    .line(Wording.sentence(step.reason()))
                    .close("p")
                    .newline();
        }
        markup.close("div").newline();
    }

    private void whyInOne(StepBlock step) {
        if (!step.principle().isEmpty() || !step.reason().isEmpty()) {
            markup.open("p", "class", "why");
            if (!step.principle().isEmpty()) {
                markup.open("b")
                        .line(step.principle())
                        .close("b")
                        .text(step.reason().isEmpty() ? "" : ": ");
            }
            markup.line(Wording.sentence(step.reason())).close("p").newline();
        }
    }

    /**
     * Without a fraction in one sentence; with one on two lines, or a line could begin with the punctuation after it.
     */
    private void condition(Condition condition, Notation notation) {
        String symbolic = MathMl.symbolic(condition, notation);
        Runnable symbols = () -> math.write(symbolic);
        Runnable numbers = () -> math.write(MathMl.substituted(condition, notation));
        markup.open("p", "class", "case");
        if (symbolic.contains("<mfrac")) {
            Slots.write(language.say("print.case.line", "symbols", Slots.mark(0)), markup::text, symbols);
            markup.single("br");
            Slots.write(language.say("print.case.line-here", "numbers", Slots.mark(0)), markup::text, numbers);
        } else {
            Slots.write(
                    language.say("print.case", "symbols", Slots.mark(0), "numbers", Slots.mark(1)),
                    markup::text,
                    symbols,
                    numbers);
        }
        markup.close("p").newline();
    }

    /**
     * {@code symbol = formula = numbers put in = result}, on one line where it is short, else under each other; each
     * part with its wording as it is read aloud.
     */
    private void equation(StepBlock step, Derivation derivation) {
        Printed result = step.result().orElseThrow();
        int parts = (derivation.formula() ? 1 : 0) + (derivation.numbers() ? 1 : 0);
        boolean oneLine = parts * (derivation.width() + 3) + result.text().length() <= (narrow ? columnLine : ONE_LINE)
                && profile != Profile.LARGE;
        String left = MathMl.symbol(step.symbol());
        SpokenLines spoken = new SpokenLines(step.symbol(), language);
        markup.open("div", "class", oneLine ? "equation" : "equation lines").newline();
        if (derivation.formula()) {
            line(
                    left,
                    "=",
                    MathMl.symbolic(step.formula().orElseThrow(), step.notation()),
                    spoken.equal(Spoken.symbolic(step.formula().orElseThrow(), step.notation())));
            left = "";
        }
        if (derivation.numbers()) {
            line(
                    "",
                    "=",
                    MathMl.substituted(step.formula().orElseThrow(), step.notation()),
                    spoken.equal(Spoken.substituted(step.formula().orElseThrow(), step.notation())));
        }
        if (derivation.result()) {
            line(left, result.exact() ? "=" : "≈", MathMl.value(result), spoken.result(result));
        }
        markup.close("div").newline();
    }

    private void line(String left, String relation, String right, String spoken) {
        markup.open("span", "class", left.isEmpty() ? "line on" : "line").open("abbr", "title", spoken);
        if (!left.isEmpty()) {
            math.write(left);
            markup.text("\u00a0");
        }
        markup.text(relation + "\u00a0");
        math.write(right);
        markup.close("abbr").close("span").text(" ").newline();
    }

    /** A box for the number and, where the learner writes it, one for the unit. */
    void place(String label, Optional<Symbol> symbol, UnitBox unitBox, String unit, String check) {
        markup.open("p", "class", "place");
        if (!label.isEmpty()) {
            markup.open("b").line(label).close("b").text(" ");
        }
        symbol.ifPresent(s -> {
            math.write(MathMl.symbol(s));
            markup.text(EQUALS);
        });
        markup.element("span", "\u00a0", "class", "box number").text(" ");
        if (!unit.isEmpty()) {
            markup.open("span").line(unit).close("span");
        } else if (unitBox == UnitBox.ASKED) {
            markup.element("span", "\u00a0", "class", "box unit")
                    .text(" ")
                    .element("span", language.say("print.unit"), "class", "hint");
        } else if (unitBox == UnitBox.SHARE) {
            markup.element("span", language.say("print.share-hint"), "class", "hint");
        }
        if (!check.isEmpty() && !check.matches(CheckLetters.PRINTED)) {
            markup.text(" ").element("span", check, "class", "hint");
        } else if (!check.isEmpty()) {
            markup.text("  ").open("span", "class", "check");
            Slots.write(
                    language.say("print.check", "letters", Slots.mark(0)),
                    markup::text,
                    () -> markup.open("b").line(check).close("b"));
            markup.close("span");
        }
        markup.close("p").newline();
    }
}
