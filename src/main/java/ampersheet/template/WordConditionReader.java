package ampersheet.template;

import ampersheet.template.StatementReader.Fault;
import ampersheet.template.StatementSyntax.Both;
import ampersheet.template.StatementSyntax.Compared;
import ampersheet.template.StatementSyntax.Either;
import ampersheet.template.StatementSyntax.Not;
import ampersheet.template.StatementSyntax.WordCondition;
import ampersheet.template.StatementTokens.Token;
import java.util.List;
import java.util.Optional;

/** Reads one condition by recursive descent: or, and, not, comparison. */
final class WordConditionReader {
    private final List<Token> tokens;
    private final int end;
    private final List<Fault> faults;
    private int next;
    private int depth;

    private WordConditionReader(List<Token> tokens, int end, List<Fault> faults) {
        this.tokens = tokens;
        this.end = end;
        this.faults = faults;
    }

    /**
     * Empty after a fault.
     *
     * @param end of the directive, where a fault lies if a comparison is missing
     */
    static Optional<WordCondition> read(List<Token> tokens, int end, List<Fault> faults) {
        return new WordConditionReader(tokens, end, faults).whole();
    }

    private Optional<WordCondition> whole() {
        Optional<WordCondition> condition = either();
        if (condition.isPresent() && next < tokens.size()) {
            Token left = tokens.get(next);
            fault(
                    left.index(),
                    left.text().equals(")")
                            ? "this parenthesis closes nothing"
                            : "nothing joins " + left.text() + " to what stands before it",
                    StatementReader.ALLOWED_CONDITION + ", joined by && or ||",
                    "Correct the condition.");
            return Optional.empty();
        }
        return condition;
    }

    private boolean takes(String token) {
        boolean there = next < tokens.size() && tokens.get(next).text().equals(token);
        next += there ? 1 : 0;
        return there;
    }

    private Optional<WordCondition> either() {
        Optional<WordCondition> left = both();
        while (left.isPresent() && takes("||")) {
            WordCondition before = left.get();
            left = both().map(right -> new Either(before, right));
        }
        return left;
    }

    private Optional<WordCondition> both() {
        Optional<WordCondition> left = one();
        while (left.isPresent() && takes("&&")) {
            WordCondition before = left.get();
            left = one().map(right -> new Both(before, right));
        }
        return left;
    }

    private Optional<WordCondition> one() {
        int at = next < tokens.size() ? tokens.get(next).index() : end;
        if (depth == StatementReader.DEEPEST) {
            fault(
                    at,
                    "the condition is more than " + StatementReader.DEEPEST + " deep",
                    "a condition that can be read at sight",
                    "Make it simpler.");
            return Optional.empty();
        }
        depth++;
        Optional<WordCondition> read;
        if (takes("!")) {
            read = one().map(Not::new);
        } else if (takes("(")) {
            read = either();
            if (read.isPresent() && !takes(")")) {
                fault(at, "this parenthesis is not closed", "a ) before the end of the directive", "Close it.");
                read = Optional.empty();
            }
        } else {
            read = comparison(at);
        }
        depth--;
        return read;
    }

    private Optional<WordCondition> comparison(int at) {
        if (next == tokens.size() || !tokens.get(next).isName()) {
            fault(
                    at,
                    "a comparison is missing here",
                    StatementReader.ALLOWED_CONDITION,
                    "Compare a given that is drawn from words.");
            return Optional.empty();
        }
        Token name = tokens.get(next);
        if (next + 2 >= tokens.size()
                || !tokens.get(next + 1).isComparison()
                || !tokens.get(next + 2).isText()) {
            faults.add(new Fault(
                    name.index(),
                    "the word " + name.text() + " is compared with nothing",
                    StatementReader.ALLOWED_CONDITION,
                    "Compare it with == or != and one of its words in quotes.",
                    Optional.of(name.text())));
            return Optional.empty();
        }
        Token word = tokens.get(next + 2);
        boolean equal = tokens.get(next + 1).text().equals("==");
        next += 3;
        return Optional.of(new Compared(
                name.text(),
                equal,
                word.text().substring(1, word.text().length() - 1),
                name.index(),
                word.index() + 1));
    }

    private void fault(int index, String problem, String expected, String nextAction) {
        faults.add(new Fault(index, problem, expected, nextAction, Optional.empty()));
    }
}
