package ampersheet.template;

import ampersheet.template.StatementReader.Fault;
import ampersheet.template.StatementReader.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** What a value or a condition within words is made of, piece by piece; what neither may hold becomes a fault. */
final class StatementTokens {
    private static final Set<String> CASES =
            new TreeSet<>(List.of("cap_first", "uncap_first", "upper_case", "lower_case"));
    private static final Set<String> SIGNS = new TreeSet<>(List.of("==", "!=", "&&", "||"));

    record Token(String text, int index) {
        boolean isName() {
            return isLetter(text.charAt(0));
        }

        boolean isText() {
            return text.charAt(0) == '"' || text.charAt(0) == '\'';
        }

        boolean isComparison() {
            return text.equals("==") || text.equals("!=");
        }
    }

    private final String text;
    private final Region region;
    private final boolean condition;
    private final List<Fault> faults;
    private int at;

    private StatementTokens(String text, Region region, boolean condition, List<Fault> faults) {
        this.text = text;
        this.region = region;
        this.condition = condition;
        this.faults = faults;
        this.at = region.from();
    }

    /** A name and changes of its case; none after a fault. */
    static List<Token> ofValue(String text, Region region, List<Fault> faults) {
        return new StatementTokens(text, region, false, faults).read();
    }

    /** Names, texts in quotes and the signs that join them; none after a fault. */
    static List<Token> ofCondition(String text, Region region, List<Fault> faults) {
        return new StatementTokens(text, region, true, faults).read();
    }

    private List<Token> read() {
        List<Token> tokens = new ArrayList<>();
        while (at < region.to()) {
            char c = text.charAt(at);
            if (c == ' ' || c == '\n') {
                at++;
                continue;
            }
            OptionalInt end = end(c);
            if (end.isEmpty()) {
                return List.of();
            }
            tokens.add(new Token(text.substring(at, end.getAsInt()), at));
            at = end.getAsInt();
        }
        return tokens;
    }

    /** Behind the piece that begins here; empty after a fault. */
    private OptionalInt end(char c) {
        if (isLetter(c)) {
            return OptionalInt.of(endOfName());
        }
        if (c == '?' && !condition) {
            return endOfCase();
        }
        if (condition && (c == '"' || c == '\'')) {
            return endOfText(c);
        }
        if (condition && at + 2 <= text.length() && SIGNS.contains(text.substring(at, at + 2))) {
            return OptionalInt.of(at + 2);
        }
        if (condition && (c == '!' || c == '(' || c == ')')) {
            return OptionalInt.of(at + 1);
        }
        return fault(
                "the character " + c + " is not allowed here: the words only print and choose, they compute nothing",
                allowed(),
                "Work the value out in a step, or change the words.");
    }

    private int endOfName() {
        int end = at + 1;
        while (end < region.to()
                && (isLetter(text.charAt(end))
                        || isDigit(text.charAt(end))
                        || text.charAt(end) == '.' && end + 1 < region.to() && isLetter(text.charAt(end + 1)))) {
            end++;
        }
        return end;
    }

    private OptionalInt endOfCase() {
        int end = at + 1;
        while (end < region.to() && isLetter(text.charAt(end))) {
            end++;
        }
        return CASES.contains(text.substring(at + 1, end))
                ? OptionalInt.of(end)
                : fault(
                        text.substring(at, end) + " is not allowed in the words",
                        "one of ?" + String.join(", ?", CASES),
                        "Remove it.");
    }

    private OptionalInt endOfText(char quote) {
        int end = text.indexOf(quote, at + 1) + 1;
        return hasSpecial(text.substring(at + 1, end - 1))
                ? fault("this text holds a character that is not allowed here", allowed(), "Use the plain word.")
                : OptionalInt.of(end);
    }

    private String allowed() {
        return condition ? StatementReader.ALLOWED_CONDITION : StatementReader.ALLOWED_EXPRESSION;
    }

    private OptionalInt fault(String problem, String expected, String nextAction) {
        faults.add(new Fault(at, problem, expected, nextAction, Optional.empty()));
        return OptionalInt.empty();
    }

    private static boolean hasSpecial(String quoted) {
        return quoted.indexOf('\\') >= 0 || quoted.indexOf('$') >= 0 || quoted.indexOf('#') >= 0;
    }

    static boolean isLetter(char c) {
        return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_';
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
