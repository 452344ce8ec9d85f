package ampersheet.template;

import ampersheet.template.StatementSyntax.Both;
import ampersheet.template.StatementSyntax.Branch;
import ampersheet.template.StatementSyntax.Choice;
import ampersheet.template.StatementSyntax.Comment;
import ampersheet.template.StatementSyntax.Compared;
import ampersheet.template.StatementSyntax.Either;
import ampersheet.template.StatementSyntax.Not;
import ampersheet.template.StatementSyntax.Otherwise;
import ampersheet.template.StatementSyntax.Piece;
import ampersheet.template.StatementSyntax.Plain;
import ampersheet.template.StatementSyntax.Printed;
import ampersheet.template.StatementSyntax.WordCondition;
import ampersheet.template.StatementSyntax.WordConditionFold;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Writes parsed words for FreeMarker. Every tag, comment and expression is written here, and what could begin one in
 * plain text, in any of FreeMarker's syntaxes, is printed from a table, so that nothing is in what it reads but what
 * the parse has. Line breaks within tags stay, since FreeMarker leaves out lines that hold tags alone.
 */
final class StatementWriter implements StatementSyntax.PieceVisitor {
    static final String VALUES = "value";
    static final String SYMBOLS = "symbol";
    static final String CHARACTERS = "character";
    /** What tags and interpolations begin with: a character, and those that may follow it. */
    private static final Map<Character, String> BEGINNINGS = Map.of('<', "#@/", '$', "{", '#', "{", '[', "#@/=");

    private final StringBuilder out = new StringBuilder();

    private StatementWriter() {}

    static String write(List<Piece> pieces) {
        StatementWriter writer = new StatementWriter();
        pieces.forEach(piece -> piece.accept(writer));
        return writer.out.toString();
    }

    @Override
    public void comment(Comment comment) {
        out.append("<#--").append("\n".repeat(comment.lines())).append("-->");
    }

    @Override
    public void printed(Printed printed) {
        out.append("${").append(named(printed.symbol() ? SYMBOLS : VALUES, printed.name()));
        printed.cases().forEach(change -> out.append('?').append(change));
        out.append('}');
    }

    @Override
    public void plain(Plain plain) {
        String text = plain.text();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean begins =
                    i + 1 < text.length() && BEGINNINGS.getOrDefault(c, "").indexOf(text.charAt(i + 1)) >= 0;
            if (begins) {
                out.append("${").append(named(CHARACTERS, Integer.toString(c))).append('}');
            } else {
                out.append(c);
            }
        }
    }

    @Override
    public void choice(Choice choice) {
        String directive = "<#if ";
        for (Branch branch : choice.branches()) {
            out.append(directive).append(condition(branch.condition()));
            tagEnd(branch.lines());
            branch.pieces().forEach(piece -> piece.accept(this));
            directive = "<#elseif ";
        }
        Optional<Otherwise> otherwise = choice.otherwise();
        if (otherwise.isPresent()) {
            out.append("<#else");
            tagEnd(otherwise.get().lines());
            otherwise.get().pieces().forEach(piece -> piece.accept(this));
        }
        out.append("</#if");
        tagEnd(choice.lines());
    }

    private void tagEnd(int lines) {
        out.append("\n".repeat(lines)).append('>');
    }

    private static String condition(WordCondition condition) {
        return condition.fold(new WordConditionFold<String>() {
            @Override
            public String compared(Compared compared) {
                return "(" + named(VALUES, compared.name()) + (compared.equal() ? " == " : " != ")
                        + quoted(compared.word()) + ")";
            }

            @Override
            public String both(Both both) {
                return "(" + both.left().fold(this) + " && " + both.right().fold(this) + ")";
            }

            @Override
            public String either(Either either) {
                return "(" + either.left().fold(this) + " || " + either.right().fold(this) + ")";
            }

            @Override
            public String not(Not not) {
                return "!" + not.of().fold(this);
            }
        });
    }

    private static String named(String table, String key) {
        return table + "[" + quoted(key) + "]";
    }

    /** @throws IllegalArgumentException for a text that no name and no word can be */
    private static String quoted(String text) {
        if (!text.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == ' ' || c == '-' || c == '_' || c == '.')) {
            throw new IllegalArgumentException("neither a name nor a word: " + text);
        }
        return "\"" + text + "\"";
    }
}
