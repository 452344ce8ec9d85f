package ampersheet.answer;

import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads what {@link KeyWriter} wrote. What only serves an author is gone: where in a file a formula stood, and how its
 * constants were spelled.
 */
public final class KeyReader {
    private static final int NOWHERE = 0;

    private final String text;
    private int at;
    private int lines;

    private KeyReader(String text) {
        this.text = text;
    }

    /**
     * A page has one language and one decimal marker for all its keys.
     *
     * @throws IllegalArgumentException with the number of the line that does not fit
     */
    public static ProblemKey read(String text, Language language, DecimalMarker decimal) {
        KeyReader reader = new KeyReader(text);
        if (!reader.line().equals(KeyWriter.FIRST_LINE)) {
            throw reader.unfit("a key of another version, or none");
        }
        Values givens = reader.givens();
        List<Step> steps = new ArrayList<>();
        for (int left = reader.count(); left > 0; left--) {
            steps.add(reader.step());
        }
        List<AnswerKey> answers = new ArrayList<>();
        for (int left = reader.count(); left > 0; left--) {
            answers.add(reader.answer());
        }
        List<DesignKey> designs = new ArrayList<>();
        for (int left = reader.count(); left > 0; left--) {
            designs.add(reader.design());
        }
        Map<String, String> meanings = new LinkedHashMap<>();
        for (int left = reader.count(); left > 0; left--) {
            meanings.put(reader.text(), reader.text());
        }
        return new ProblemKey(answers, givens, new Working(steps), designs, meanings, language, decimal);
    }

    private DesignKey design() {
        String id = text();
        List<String> steps = new ArrayList<>();
        for (int left = count(); left > 0; left--) {
            steps.add(text());
        }
        List<DesignKey.Criterion> criteria = new ArrayList<>();
        for (int left = count(); left > 0; left--) {
            criteria.add(new DesignKey.Criterion(
                    text(), new Parts(line()).condition(), text(), text(), Unit.parse(line()), text(), text()));
        }
        return new DesignKey(id, steps, criteria);
    }

    private Values givens() {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        for (int left = count(); left > 0; left--) {
            String name = text();
            double value = number(line());
            Parts d = new Parts(line());
            quantities.put(
                    name, new Quantity(value, new Dimension(d.whole(), d.whole(), d.whole(), d.whole(), d.whole())));
        }
        Map<String, String> words = new LinkedHashMap<>();
        for (int left = count(); left > 0; left--) {
            words.put(text(), text());
        }
        return Values.of(quantities, words);
    }

    private Step step() {
        String id = text();
        List<Step.Case> cases = new ArrayList<>();
        for (int left = count(); left > 0; left--) {
            String when = line();
            Optional<Condition> condition =
                    when.equals("always") ? Optional.empty() : Optional.of(new Parts(when).condition());
            cases.add(new Step.Case(condition, new Parts(line()).expression()));
        }
        return new Step(id, cases);
    }

    private AnswerKey answer() {
        String question = text();
        String step = text();
        double expected = number(line());
        Unit unit = Unit.parse(line());
        int figures = count();
        boolean printed = line().equals("printed");
        Acceptance acceptance = accepted(new Parts(line()));
        List<KnownMistake> mistakes = new ArrayList<>();
        for (int left = count(); left > 0; left--) {
            mistakes.add(new KnownMistake(text(), number(line()), text()));
        }
        return new AnswerKey(question, step, expected, unit, figures, printed, acceptance, mistakes);
    }

    private Acceptance accepted(Parts parts) {
        String kind = parts.next();
        switch (kind) {
            case "within":
                return new Acceptance.Within(number(parts.next()), number(parts.next()));
            case "preferred":
                return new Acceptance.Preferred(series(parts.next()));
            case "designed":
                String members = parts.next();
                return new Acceptance.Designed(
                        members.equals("whole") ? Optional.empty() : Optional.of(series(members)),
                        number(parts.next()),
                        number(parts.next()));
            case "count":
                return new Acceptance.Count();
            case "choice":
                List<Acceptance.Option> options = new ArrayList<>();
                for (int left = parts.whole(); left > 0; left--) {
                    options.add(new Acceptance.Option(text(), text()));
                }
                return new Acceptance.Choice(options);
            default:
                throw unfit("no way to accept an answer is called " + kind);
        }
    }

    private PreferredSeries series(String name) {
        for (PreferredSeries series : PreferredSeries.values()) {
            if (series.name().equals(name)) {
                return series;
            }
        }
        throw unfit("no series is called " + name);
    }

    /** A whole number times a power of two: every step here is exact. */
    double number(String written) {
        boolean negative = written.startsWith("-");
        int power = written.indexOf('p');
        String digits = written.substring(negative ? 1 : 0, power < 0 ? written.length() : power);
        double value = 0;
        for (int i = 0; i < digits.length(); i++) {
            value = value * 10 + digit(digits.charAt(i));
        }
        int left = power < 0 ? 0 : whole(written.substring(power + 1));
        for (; left > 0; left--) {
            value *= 2;
        }
        for (; left < 0; left++) {
            value /= 2;
        }
        return negative ? -value : value;
    }

    private int whole(String written) {
        boolean negative = written.startsWith("-");
        int value = 0;
        for (int i = negative ? 1 : 0; i < written.length(); i++) {
            value = value * 10 + digit(written.charAt(i));
        }
        return negative ? -value : value;
    }

    private int digit(char c) {
        if (c < '0' || c > '9') {
            throw unfit("a digit was expected, not " + c);
        }
        return c - '0';
    }

    private int count() {
        return whole(line());
    }

    private String text() {
        return unescaped(line());
    }

    private String line() {
        int end = text.indexOf('\n', at);
        if (end < 0) {
            throw unfit("the key ends too early");
        }
        String line = text.substring(at, end);
        at = end + 1;
        lines++;
        return line;
    }

    private static String unescaped(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '\\' && i + 1 < text.length()) {
                i++;
                char escaped = text.charAt(i);
                out.append(escaped == 'n' ? '\n' : escaped == '_' ? ' ' : escaped);
            } else {
                out.append(c);
            }
        }
        return out.toString();
    }

    private IllegalArgumentException unfit(String what) {
        return new IllegalArgumentException("line " + lines + " of a key: " + what);
    }

    /** One line in parts, read from the left. */
    private final class Parts {
        private final String line;
        private int from;

        Parts(String line) {
            this.line = line;
        }

        String next() {
            if (from >= line.length()) {
                throw unfit("a part is missing at its end");
            }
            int blank = line.indexOf(' ', from);
            int end = blank < 0 ? line.length() : blank;
            String part = line.substring(from, end);
            from = end + 1;
            return part;
        }

        int whole() {
            return KeyReader.this.whole(next());
        }

        Condition condition() {
            String head = next();
            switch (head) {
                case "and":
                    return new Condition.Both(condition(), condition(), NOWHERE);
                case "or":
                    return new Condition.Either(condition(), condition(), NOWHERE);
                case "not":
                    return new Condition.Not(condition(), NOWHERE);
                default:
                    return new Condition.Comparison(expression(), relation(head), expression(), NOWHERE);
            }
        }

        private Condition.Relation relation(String sign) {
            for (Condition.Relation relation : Condition.Relation.values()) {
                if (relation.asWritten().equals(sign)) {
                    return relation;
                }
            }
            throw unfit("no comparison is written " + sign);
        }

        Expression expression() {
            String head = next();
            if (head.startsWith("=")) {
                return new Expression.Name(unescaped(head.substring(1)), NOWHERE);
            }
            if (head.startsWith("#")) {
                int unit = head.indexOf('@');
                String number = head.substring(1, unit);
                return new Expression.Constant(number(number), Unit.parse(head.substring(unit + 1)), number, NOWHERE);
            }
            switch (head) {
                case "call":
                    String function = next();
                    List<Expression> arguments = new ArrayList<>();
                    for (int left = whole(); left > 0; left--) {
                        arguments.add(expression());
                    }
                    return new Expression.Call(function, arguments, NOWHERE);
                case "neg":
                    return new Expression.Negative(expression(), NOWHERE);
                case "+":
                    return new Expression.Sum(expression(), expression(), NOWHERE);
                case "-":
                    return new Expression.Difference(expression(), expression(), NOWHERE);
                case "*":
                    return new Expression.Product(expression(), expression(), NOWHERE);
                case "/":
                    return new Expression.Quotient(expression(), expression(), NOWHERE);
                case "^":
                    return new Expression.Power(expression(), expression(), NOWHERE);
                default:
                    throw unfit("no part of a formula begins " + head);
            }
        }
    }
}
