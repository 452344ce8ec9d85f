package ampersheet.template;

import ampersheet.template.StatementSyntax.Branch;
import ampersheet.template.StatementSyntax.Choice;
import ampersheet.template.StatementSyntax.Comment;
import ampersheet.template.StatementSyntax.Otherwise;
import ampersheet.template.StatementSyntax.Piece;
import ampersheet.template.StatementSyntax.Plain;
import ampersheet.template.StatementSyntax.Printed;
import ampersheet.template.StatementSyntax.WordCondition;
import ampersheet.template.StatementTokens.Token;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Parses words that are filled in. Of FreeMarker's language they may use: comments, {@code ${name}} with at most a
 * change of case, {@code ${symbol.name}}, and {@code <#if>}, {@code <#elseif>}, {@code <#else>} on names compared with
 * words.
 *
 * <p>Where a tag ends is decided here alone. FreeMarker reads a {@code >} within parentheses as a comparison; so what
 * it is given is written from this parse, never the author's own characters.
 */
final class StatementReader {
    /** Two to five sentences need about a tenth. */
    static final int LONGEST = 4_000;
    /** Of parentheses, of negations, of choices within choices: words that a person can follow need two or three. */
    static final int DEEPEST = 20;

    static final String SYMBOL = "symbol";
    static final String ALLOWED_EXPRESSION = "the name of a given, such as ${Vs}, or ${symbol.Vs}";
    static final String ALLOWED_CONDITION = "word givens compared with their words, such as order == \"serpentine\"";

    private static final String CLOSED = "every <#if> with its </#if>";
    private static final String CLOSE = "Correct or close the directive.";

    /**
     * @param index of the character
     * @param name that stands in a condition without a comparison; empty for every other fault
     */
    record Fault(int index, String problem, String expected, String nextAction, Optional<String> name) {}

    /** @param pieces as far as they could be read */
    record Read(List<Piece> pieces, List<Fault> faults) {
        Read {
            pieces = List.copyOf(pieces);
            faults = List.copyOf(faults);
        }
    }

    /** From after the opening characters to the closing one. */
    record Region(int from, int to) {}

    /** A choice that is not closed yet. */
    private static final class Open {
        private final List<Branch> branches = new ArrayList<>();
        private Optional<WordCondition> condition;
        private int lines;
        private boolean otherwise;
        private List<Piece> pieces = new ArrayList<>();
        /** Of branches whose condition is at fault: their names are looked at all the same. */
        private final List<Piece> unowned = new ArrayList<>();

        Open(Optional<WordCondition> condition, int lines) {
            this.condition = condition;
            this.lines = lines;
        }

        /** Without a condition that could be read there is no branch; then a fault was told. */
        void endBranch() {
            condition.ifPresentOrElse(
                    read -> branches.add(new Branch(read, pieces, lines)), () -> unowned.addAll(pieces));
            condition = Optional.empty();
            pieces = new ArrayList<>();
        }
    }

    private final String text;
    private final List<Fault> faults = new ArrayList<>();
    private final List<Piece> root = new ArrayList<>();
    private final Deque<Open> open = new ArrayDeque<>();

    private StatementReader(String text) {
        this.text = text;
    }

    static Read read(String text) {
        StatementReader reader = new StatementReader(text);
        reader.words();
        return new Read(reader.root, reader.faults);
    }

    private void words() {
        if (text.length() > LONGEST) {
            fault(
                    LONGEST,
                    "the words are longer than " + LONGEST + " characters",
                    "two to five short sentences",
                    "Shorten them.");
            return;
        }
        int plain = 0;
        int i = 0;
        while (i < text.length()) {
            boolean comment = text.startsWith("<#--", i);
            boolean value = text.startsWith("${", i);
            boolean tag = text.startsWith("<#", i)
                    || text.startsWith("</#", i)
                    || text.startsWith("<@", i)
                    || text.startsWith("</@", i);
            if (!comment && !value && !tag) {
                i++;
                continue;
            }
            plain(plain, i);
            i = comment ? comment(i) : value ? value(i) : tag(i);
            plain = i;
        }
        plain(plain, text.length());
        if (!open.isEmpty() && faults.isEmpty()) {
            fault(
                    text.stripTrailing().length(),
                    "the words cannot be read: unexpected end of file reached",
                    CLOSED,
                    CLOSE);
        }
        while (!open.isEmpty()) {
            end(0);
        }
    }

    private void add(Piece piece) {
        (open.isEmpty() ? root : open.peek().pieces).add(piece);
    }

    private void plain(int from, int to) {
        if (to > from) {
            add(new Plain(text.substring(from, to), from));
        }
    }

    private int comment(int start) {
        int end = text.indexOf("-->", start + 4);
        if (end < 0) {
            fault(start, "this comment is not closed", "--> after the comment", "Close it.");
            return text.length();
        }
        add(new Comment(lines(start, end)));
        return end + 3;
    }

    private int value(int start) {
        Optional<Region> found = region(start + 2, '}', "this ${ is not closed", "a } after the name");
        if (found.isEmpty()) {
            return text.length();
        }
        Region region = found.get();
        int told = faults.size();
        List<Token> tokens = StatementTokens.ofValue(text, region, faults);
        if (tokens.isEmpty()) {
            if (faults.size() == told) {
                notOneName(region);
            }
            return region.to() + 1;
        }
        if (!tokens.get(0).isName()
                || tokens.stream().skip(1).anyMatch(token -> token.text().charAt(0) != '?')) {
            notOneName(region);
            return region.to() + 1;
        }
        String written = tokens.get(0).text();
        boolean symbol = written.startsWith(SYMBOL + ".");
        String name = symbol ? written.substring(SYMBOL.length() + 1) : written;
        add(new Printed(
                symbol,
                name,
                tokens.stream().skip(1).map(token -> token.text().substring(1)).toList(),
                tokens.get(0).index() + written.length() - name.length()));
        return region.to() + 1;
    }

    private void notOneName(Region region) {
        fault(region.from(), "this is not one name", ALLOWED_EXPRESSION, "Print one given at a time.");
    }

    private int tag(int start) {
        boolean closing = text.charAt(start + 1) == '/';
        int name = start + (closing ? 3 : 2);
        int end = name;
        while (end < text.length() && StatementTokens.isLetter(text.charAt(end))) {
            end++;
        }
        String directive = text.substring(name, end);
        boolean call = text.charAt(name - 1) == '@';
        boolean allowed = !call
                && (directive.equals("if")
                        || !closing && directive.equals("elseif")
                        || !closing && directive.equals("else"));
        if (!allowed) {
            fault(
                    start,
                    "<" + (call ? "@" : "#") + directive + "> is not allowed in the words",
                    "only <#if>, <#elseif>, <#else> and comments",
                    "Remove it, or say it in plain words.");
        }
        Optional<Region> found = region(end, '>', "this directive is not closed", "a > after the condition");
        if (found.isEmpty()) {
            return text.length();
        }
        Region region = found.get();
        List<Token> tokens = StatementTokens.ofCondition(text, region, faults);
        if (!allowed) {
            return region.to() + 1;
        }
        int lines = lines(start, region.to());
        if (closing) {
            bare(tokens, "</#if>");
            close(start, lines);
        } else if (directive.equals("if")) {
            begin(start, condition(tokens, region), lines);
        } else {
            Optional<WordCondition> condition = Optional.empty();
            if (directive.equals("else")) {
                bare(tokens, "<#else>");
            } else {
                condition = condition(tokens, region);
            }
            goOn(start, directive, condition, lines);
        }
        return region.to() + 1;
    }

    private void begin(int start, Optional<WordCondition> condition, int lines) {
        if (open.size() == DEEPEST) {
            fault(
                    start,
                    "choices stand more than " + DEEPEST + " deep in one another",
                    "one choice beside the other",
                    "Say it with fewer choices.");
        }
        open.push(new Open(condition, lines));
    }

    private void goOn(int start, String directive, Optional<WordCondition> condition, int lines) {
        Open choice = open.peek();
        if (choice == null || choice.otherwise) {
            fault(
                    start,
                    "the words cannot be read: <#" + directive + "> "
                            + (choice == null ? "stands outside of <#if>" : "stands after <#else>"),
                    CLOSED + ", and at most one <#else>, the last",
                    "Correct the directive.");
            return;
        }
        choice.endBranch();
        choice.condition = condition;
        choice.otherwise = directive.equals("else");
        choice.lines = lines;
    }

    private void close(int start, int lines) {
        if (open.isEmpty()) {
            fault(start, "the words cannot be read: </#if> closes nothing", CLOSED, "Remove it, or write its <#if>.");
            return;
        }
        end(lines);
    }

    private void end(int lines) {
        Open choice = open.pop();
        Optional<Otherwise> otherwise =
                choice.otherwise ? Optional.of(new Otherwise(choice.pieces, choice.lines)) : Optional.empty();
        if (!choice.otherwise) {
            choice.endBranch();
        }
        choice.unowned.forEach(this::add);
        if (choice.branches.isEmpty()) {
            otherwise.ifPresent(read -> read.pieces().forEach(this::add));
        } else {
            add(new Choice(choice.branches, otherwise, lines));
        }
    }

    private void bare(List<Token> tokens, String tag) {
        if (!tokens.isEmpty()) {
            fault(
                    tokens.get(0).index(),
                    tag + " has no condition",
                    tag + " alone",
                    "Remove the condition, or write <#elseif>.");
        }
    }

    /** From {@code from} to the closing character outside quotes. */
    private Optional<Region> region(int from, char closing, String problem, String expected) {
        char quote = 0;
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quote != 0) {
                quote = c == quote ? 0 : quote;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == closing) {
                return Optional.of(new Region(from, i));
            }
        }
        fault(Math.max(0, from - 2), problem, expected, "Close it.");
        return Optional.empty();
    }

    /** Empty after a fault. */
    private Optional<WordCondition> condition(List<Token> tokens, Region region) {
        if (tokens.isEmpty()) {
            if (text.substring(region.from(), region.to()).isBlank()) {
                fault(region.from(), "the directive has no condition", ALLOWED_CONDITION, "Write the condition.");
            }
            return Optional.empty();
        }
        return WordConditionReader.read(tokens, region.to(), faults);
    }

    private int lines(int from, int to) {
        return (int) text.substring(from, to).chars().filter(c -> c == '\n').count();
    }

    private void fault(int index, String problem, String expected, String nextAction) {
        faults.add(new Fault(index, problem, expected, nextAction, Optional.empty()));
    }
}
