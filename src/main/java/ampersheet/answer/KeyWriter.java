package ampersheet.answer;

import ampersheet.formula.Condition;
import ampersheet.formula.ConditionFold;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes a key as text, so that it can be judged against where the template is not: in a page. {@link KeyReader} reads
 * it back to a key that gives the same verdicts.
 *
 * <p>One field per line; a list is its length and then its members. In this order: {@code key} and the version of the
 * format; the givens that are quantities (name, SI value, exponents of m kg s A K), the givens that are words (name,
 * word), the steps (id, cases), each case being a condition, or {@code always}, and a formula; the answers (question,
 * step, SI value, unit, figures, {@code printed} or {@code written}, what is accepted, mistakes); the designs (id,
 * steps, criteria, each with id, condition, step shown, its symbol and unit, what is wanted, what is said); what givens
 * and steps are called (name, words).
 *
 * <p>Formulas are in Polish notation, their parts set apart by blanks: {@code / - =Vs =Vf =If}. A name follows
 * {@code =}, a constant {@code #} with its unit after {@code @}. Numbers are whole, with a power of two after {@code p}
 * where there is one: decimal text would not be read to the same last bit in every browser.
 */
public final class KeyWriter {
    static final String FIRST_LINE = "key 3";
    private static final double TWO_TO_53 = 9007199254740992.0;

    private final StringBuilder out = new StringBuilder();

    private KeyWriter() {}

    public static String write(ProblemKey key) {
        KeyWriter writer = new KeyWriter();
        writer.line(FIRST_LINE);
        writer.givens(key);
        writer.steps(key.working().steps());
        writer.count(key.answers());
        key.answers().forEach(writer::answer);
        writer.count(key.designs());
        key.designs().forEach(writer::design);
        writer.line(String.valueOf(key.meanings().size()));
        key.meanings().forEach((name, meaning) -> {
            writer.text(name);
            writer.text(meaning);
        });
        return writer.out.toString();
    }

    private void givens(ProblemKey key) {
        Map<String, Quantity> quantities = key.givens().quantities();
        line(String.valueOf(quantities.size()));
        quantities.forEach((name, quantity) -> {
            Dimension d = quantity.dimension();
            text(name);
            line(number(quantity.value()));
            line(d.metre() + " " + d.kilogram() + " " + d.second() + " " + d.ampere() + " " + d.kelvin());
        });
        Map<String, String> words = key.givens().words();
        line(String.valueOf(words.size()));
        words.forEach((name, word) -> {
            text(name);
            text(word);
        });
    }

    private void steps(List<Step> steps) {
        count(steps);
        for (Step step : steps) {
            text(step.id());
            count(step.cases());
            for (Step.Case one : step.cases()) {
                Optional<Condition> when = one.when();
                line(when.isEmpty() ? "always" : prefix(when.get()));
                line(prefix(one.is()));
            }
        }
    }

    private void answer(AnswerKey answer) {
        text(answer.question());
        text(answer.step());
        line(number(answer.expected()));
        line(unit(answer.unit()));
        line(String.valueOf(answer.figures()));
        line(answer.unitPrinted() ? "printed" : "written");
        accepted(answer.acceptance());
        count(answer.mistakes());
        for (KnownMistake mistake : answer.mistakes()) {
            text(mistake.id());
            line(number(mistake.value()));
            text(mistake.explanation());
        }
    }

    private void design(DesignKey design) {
        text(design.id());
        count(design.steps());
        design.steps().forEach(this::text);
        count(design.criteria());
        for (DesignKey.Criterion criterion : design.criteria()) {
            text(criterion.id());
            line(prefix(criterion.where()));
            text(criterion.shown());
            text(criterion.symbol());
            line(unit(criterion.unit()));
            text(criterion.wanted());
            text(criterion.says());
        }
    }

    private void accepted(Acceptance acceptance) {
        if (acceptance instanceof Acceptance.Within within) {
            line(within.kind() + " " + number(within.relative()) + " " + number(within.floor()));
        } else if (acceptance instanceof Acceptance.Preferred preferred) {
            line(preferred.kind() + " " + preferred.series().name());
        } else if (acceptance instanceof Acceptance.Count) {
            line(acceptance.kind());
        } else if (acceptance instanceof Acceptance.Designed designed) {
            line(designed.kind() + " "
                    + (designed.series().isPresent() ? designed.series().get().name() : "whole") + " "
                    + number(designed.from()) + " " + number(designed.to()));
        } else if (acceptance instanceof Acceptance.Choice choice) {
            line(choice.kind() + " " + choice.options().size());
            for (Acceptance.Option option : choice.options()) {
                text(option.text());
                text(option.explanation());
            }
        } else {
            throw new IllegalArgumentException("an acceptance nobody told of: " + acceptance);
        }
    }

    /** In Polish notation; two formulas that differ in their places in a file only are written alike. */
    public static String formula(Expression expression) {
        return prefix(expression);
    }

    static String prefix(Condition condition) {
        return condition.fold(new Prefixed());
    }

    private static final class Prefixed implements ConditionFold<String> {
        @Override
        public String comparison(Condition.Comparison comparison) {
            return comparison.relation().asWritten() + " " + prefix(comparison.left()) + " "
                    + prefix(comparison.right());
        }

        @Override
        public String both(Condition.Both both) {
            return "and " + prefix(both.left()) + " " + prefix(both.right());
        }

        @Override
        public String either(Condition.Either either) {
            return "or " + prefix(either.left()) + " " + prefix(either.right());
        }

        @Override
        public String not(Condition.Not not) {
            return "not " + prefix(not.of());
        }
    }

    static String prefix(Expression expression) {
        StringBuilder parts = new StringBuilder(head(expression));
        for (Expression part : expression.parts()) {
            parts.append(' ').append(prefix(part));
        }
        return parts.toString();
    }

    private static String head(Expression expression) {
        if (expression instanceof Expression.Constant constant) {
            return "#" + number(constant.number()) + "@" + unit(constant.unit());
        } else if (expression instanceof Expression.Name name) {
            return "=" + word(name.id());
        } else if (expression instanceof Expression.Call call) {
            return "call " + call.function() + " " + call.arguments().size();
        } else if (expression instanceof Expression.Negative) {
            return "neg";
        } else if (expression instanceof Expression.Sum) {
            return "+";
        } else if (expression instanceof Expression.Difference) {
            return "-";
        } else if (expression instanceof Expression.Product) {
            return "*";
        } else if (expression instanceof Expression.Quotient) {
            return "/";
        }
        return "^";
    }

    private static String unit(Unit unit) {
        return unit.symbol().isEmpty() ? "1" : unit.symbol();
    }

    static String number(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a key holds finite numbers only, not " + value);
        }
        double whole = Math.abs(value);
        int power = 0;
        while (whole != Math.floor(whole)) {
            whole *= 2;
            power--;
        }
        while (whole >= TWO_TO_53) {
            whole /= 2;
            power++;
        }
        return (value < 0 ? "-" : "") + (long) whole + (power == 0 ? "" : "p" + power);
    }

    private void count(List<?> list) {
        line(String.valueOf(list.size()));
    }

    private void text(String text) {
        line(escaped(text));
    }

    private void line(String line) {
        out.append(line).append('\n');
    }

    /** A part of a formula has no blank in it. */
    private static String word(String text) {
        return escaped(text).replace(" ", "\\_");
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("\n", "\\n");
    }
}
