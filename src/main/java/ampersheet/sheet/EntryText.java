package ampersheet.sheet;

import ampersheet.sheet.Plan.Entry;
import ampersheet.sheet.Plan.Source;
import java.util.HexFormat;
import java.util.StringJoiner;
import java.util.function.UnaryOperator;

/** How an entry of a plan's list stands in its text, on one line, and the values in it. */
final class EntryText {
    /** As a person writes it: in quotes only what needs them. */
    static final EntryText READABLE = new EntryText(EntryText::readable);
    /** As it is written where nobody writes, and has been: archives hold it. */
    static final EntryText QUOTED = new EntryText(EntryText::quoted);

    private final UnaryOperator<String> spelling;

    private EntryText(UnaryOperator<String> spelling) {
        this.spelling = spelling;
    }

    String of(Entry entry) {
        StringJoiner text = new StringJoiner(", ", "{", "}");
        text.add(source(entry.source()));
        if (entry.count() > 1) {
            text.add("count: " + entry.count());
        }
        if (entry.example()) {
            text.add("example: yes");
        }
        support(entry.support(), text);
        if (!entry.fixed().isEmpty()) {
            StringJoiner fixed = new StringJoiner(", ", "given: {", "}");
            entry.fixed()
                    .forEach(given -> fixed.add(spelling.apply(given.name()) + ": " + spelling.apply(given.value())));
            text.add(fixed.toString());
        }
        return text.toString();
    }

    private String source(Source source) {
        if (source instanceof Source.One one) {
            return "template: " + spelling.apply(one.template());
        } else if (source instanceof Source.Pool pool) {
            StringJoiner members = new StringJoiner(", ", "pool: [", "]");
            pool.templates().forEach(one -> members.add(spelling.apply(one.template())));
            return members.toString();
        }
        return "skill: " + spelling.apply(((Source.Skill) source).skill());
    }

    private void support(Support support, StringJoiner text) {
        if (support instanceof Support.Full) {
            text.add("support: full");
        } else if (support instanceof Support.Faded faded) {
            text.add("support: faded");
            if (faded.fade() instanceof Support.Fade.Forward forward) {
                text.add("fade: forward").add("blank: " + forward.blank());
            } else if (faded.fade() instanceof Support.Fade.Backward backward) {
                text.add("fade: backward").add("blank: " + backward.blank());
            } else if (faded.fade() instanceof Support.Fade.Principle principle) {
                text.add("fade: " + spelling.apply("principle " + principle.name()));
            }
        }
    }

    /** As it is where that says the same, in quotes otherwise, with the ends of lines as people know them. */
    static String readable(String text) {
        if (text.matches("[\\p{L}0-9][\\p{L}0-9 ._/%-]*") && text.equals(text.strip())) {
            return text;
        }
        return quoted(text.replace('\t', ' '), "\\n");
    }

    /** In double quotes, in which every letter has a spelling. */
    static String quoted(String text) {
        return quoted(text, "\\u000a");
    }

    private static String quoted(String text, String lineEnd) {
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints().forEach(letter -> {
            if (letter == '\n') {
                quoted.append(lineEnd);
            } else if (letter == '"' || letter == '\\') {
                quoted.append('\\').appendCodePoint(letter);
            } else if (letter < ' '
                    || letter == 0x7f
                    || letter >= 0x80 && letter < 0xa0
                    || letter == 0x2028
                    || letter == 0x2029
                    || letter == 0xfeff) {
                quoted.append("\\u").append(HexFormat.of().toHexDigits((char) letter));
            } else {
                quoted.appendCodePoint(letter);
            }
        });
        return quoted.append('"').toString();
    }
}
