package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.Faults;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A plan's text, to be changed at one place with everything else left as somebody wrote it: line ends, order, comments.
 * What a change cannot keep it tells. The text need not be a right plan, but it must be YAML with keys.
 */
public final class PlanText {
    private static final String PROBLEMS = "problems";
    private static final String INDENT = "  ";

    private final List<String> lines;
    private final Yaml.Mapping root;
    private final List<Integer> starts;
    private final boolean listed;

    private PlanText(List<String> lines, Yaml.Mapping root) {
        this.lines = List.copyOf(lines);
        this.root = root;
        this.starts = items().stream().map(item -> item.place().line() - 1).toList();
        this.listed = isListed();
    }

    /**
     * Reads a text.
     *
     * @param file as its reader knows it
     * @throws DiagnosticException if it is no YAML, or if its keys stand in braces
     */
    public static PlanText of(String file, String text) {
        String plain = text.replace("\r\n", "\n");
        if (plain.isBlank()) {
            return new PlanText(List.of(), new Yaml.Mapping(List.of(), false, Place.inFile(file)));
        }
        Faults faults = new Faults();
        Optional<Yaml> root = YamlReader.read(new SourceText(file, plain), faults);
        if (root.isPresent() && root.get() instanceof Yaml.Mapping mapping && !mapping.flow()) {
            if (faults.hasErrors()) {
                throw new DiagnosticException(faults.inOrder());
            }
            List<String> lines = new ArrayList<>(List.of(plain.split("\n", -1)));
            if (lines.get(lines.size() - 1).isEmpty()) {
                lines.remove(lines.size() - 1);
            }
            return new PlanText(lines, mapping);
        }
        if (!faults.hasErrors()) {
            faults.error(
                    root.orElseThrow().place(),
                    say("plan.text.unlisted"),
                    say("plan.text.unlisted.expected"),
                    say("plan.text.unlisted.next"));
        }
        throw new DiagnosticException(faults.inOrder());
    }

    /**
     * A changed text.
     *
     * @param told what of the text before is not in it, or stands elsewhere, each in a sentence
     */
    public record Edited(String text, List<String> told) {
        public Edited {
            told = List.copyOf(told);
        }
    }

    private List<Yaml> items() {
        return root.value(PROBLEMS)
                .filter(Yaml.Sequence.class::isInstance)
                .map(list -> ((Yaml.Sequence) list).items())
                .orElse(List.of());
    }

    /** Whether each problem begins a line of its own with a dash. */
    private boolean isListed() {
        int before = keyLine(PROBLEMS);
        for (int start : starts) {
            if (start <= before || !lines.get(start).stripLeading().startsWith("-")) {
                return false;
            }
            before = start;
        }
        return true;
    }

    /** −1 if there is no such key. */
    private int keyLine(String key) {
        return root.entries().stream()
                .filter(entry -> entry.key().text().equals(key))
                .mapToInt(entry -> entry.key().place().line() - 1)
                .findFirst()
                .orElse(-1);
    }

    /** The line behind what belongs to a key: blank lines and comments before the next key are no more of it. */
    private int end(String key) {
        int start = keyLine(key);
        int next = root.entries().stream()
                .mapToInt(entry -> entry.key().place().line() - 1)
                .filter(line -> line > start)
                .min()
                .orElse(lines.size());
        return trimmed(start + 1, next);
    }

    private int trimmed(int from, int to) {
        int end = to;
        while (end > from && isComment(lines.get(end - 1))) {
            end--;
        }
        return end;
    }

    /** Blank lines, too. */
    private static boolean isComment(String line) {
        return line.isBlank() || line.stripLeading().startsWith("#");
    }

    /** How many problems the list has. */
    public int size() {
        return starts.size();
    }

    /** Where a problem ends: before the next, or before what follows the list. */
    private int itemEnd(int at) {
        int next = at + 1 < starts.size() ? starts.get(at + 1) : end(PROBLEMS);
        return trimmed(starts.get(at) + 1, next);
    }

    /** Comments directly above a problem go where it goes. */
    private int lead(int at) {
        int least = at == 0 ? keyLine(PROBLEMS) + 1 : itemEnd(at - 1);
        int line = starts.get(at);
        while (line > least && !lines.get(line - 1).isBlank() && isComment(lines.get(line - 1))) {
            line--;
        }
        return line;
    }

    /** @param value empty to leave the key out */
    public Edited with(String key, String value) {
        int line = keyLine(key);
        List<String> changed = new ArrayList<>(lines);
        if (line >= 0) {
            int end = end(key);
            String comment = comments(line, end);
            changed.subList(line, end).clear();
            if (!value.isEmpty()) {
                changed.add(
                        line, key + ": " + EntryText.readable(value) + (comment.isEmpty() ? "" : "   # " + comment));
            } else if (!comment.isEmpty()) {
                changed.add(line, "# " + comment);
            }
        } else if (!value.isEmpty()) {
            changed.add(beforeProblems(), key + ": " + EntryText.readable(value));
        }
        return edited(changed, List.of());
    }

    /** @param group lines of keys and values below the key; none to leave it out */
    public Edited withGroup(String key, List<String> group) {
        int line = keyLine(key);
        List<String> changed = new ArrayList<>(lines);
        List<String> told = new ArrayList<>();
        int at = beforeProblems();
        if (line >= 0) {
            int end = end(key);
            String comment = comments(line, end);
            changed.subList(line, end).clear();
            at = line;
            if (!comment.isEmpty()) {
                changed.add(at++, "# " + comment);
                told.add(say("plan.text.comment-above", "key", key));
            }
        }
        if (!group.isEmpty()) {
            changed.add(at++, key + ":");
            for (String one : group) {
                changed.add(at++, INDENT + one);
            }
        }
        return edited(changed, told);
    }

    /**
     * A key of one item of a list, such as a week of a course.
     *
     * @param value empty to leave the key out
     * @throws DiagnosticException if the item's keys do not stand in lines of their own
     */
    public Edited withInItem(String list, int at, String key, String value) {
        Yaml item = root.value(list)
                .filter(Yaml.Sequence.class::isInstance)
                .map(items -> ((Yaml.Sequence) items).items().get(at))
                .orElseThrow(() -> unlisted(root.place()));
        if (!(item instanceof Yaml.Mapping written) || written.flow()) {
            throw unlisted(item.place());
        }
        Yaml.Entry first = written.entries().get(0);
        Optional<Yaml.Entry> known = written.entries().stream()
                .filter(entry -> entry.key().text().equals(key))
                .findFirst();
        boolean leads = known.isPresent() && known.get().equals(first);
        boolean isLone = leads && value.isEmpty() && written.entries().size() == 1;
        if (isLone || !isOneLine(first) || !known.map(this::isOneLine).orElse(true)) {
            throw unlisted(item.place());
        }
        List<String> changed = new ArrayList<>(lines);
        String indent = " ".repeat(first.key().place().column() - 1);
        String wanted = key + ": " + EntryText.readable(value);
        if (known.isPresent()) {
            int line = known.get().key().place().line() - 1;
            String before = lines.get(line).substring(0, indent.length());
            int comment = comment(lines.get(line));
            String noted = comment < 0 ? "" : lines.get(line).substring(comment);
            changed.remove(line);
            if (!value.isEmpty()) {
                changed.add(line, before + wanted + (noted.isEmpty() ? "" : "   " + noted));
            } else {
                if (leads) { // the next key takes over the mark of the item
                    int next = written.entries().get(1).key().place().line() - 2;
                    changed.set(next, before + changed.get(next).substring(indent.length()));
                }
                if (!noted.isEmpty()) {
                    changed.add(line, (leads ? before.replaceFirst("-\\s+$", "") : indent) + noted);
                }
            }
        } else if (!value.isEmpty()) {
            changed.add(first.key().place().line(), indent + wanted);
        }
        return edited(changed, List.of());
    }

    /** Whether a key and its value fill a line that begins with the key. */
    private boolean isOneLine(Yaml.Entry entry) {
        int line = entry.key().place().line() - 1;
        int column = entry.key().place().column() - 1;
        return entry.value() instanceof Yaml.Scalar value
                && value.place().line() - 1 == line
                && lines.get(line).substring(0, column).matches("\\s*(-\\s+)?")
                && (line + 1 == lines.size() || isComment(lines.get(line + 1)) || startsKey(line + 1, column));
    }

    /** Whether a value above has ended: what goes on in the next line is indented further than its key. */
    private boolean startsKey(int line, int column) {
        return indentOf(lines.get(line)).length() <= column;
    }

    private static DiagnosticException unlisted(Place place) {
        return new DiagnosticException(Diagnostic.error(
                place, say("plan.text.unlisted"), say("plan.text.unlisted.expected"), say("plan.text.unlisted.next")));
    }

    private int beforeProblems() {
        int line = keyLine(PROBLEMS);
        if (line < 0) {
            return lines.size();
        }
        while (line > 0 && !lines.get(line - 1).isBlank() && isComment(lines.get(line - 1))) {
            line--;
        }
        return line;
    }

    /** @param entries of the same plan as it was read, needed where the list is written anew */
    public Edited moved(int from, int to, List<Plan.Entry> entries) {
        if (!listed) {
            List<String> anew = written(entries);
            anew.add(to, anew.remove(from));
            return anew(anew);
        }
        List<List<String>> blocks = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            blocks.add(lines.subList(lead(i), itemEnd(i)));
        }
        List<String> changed = new ArrayList<>(lines.subList(0, lead(0)));
        List<List<String>> between = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            between.add(lines.subList(itemEnd(i), i + 1 < size() ? lead(i + 1) : lines.size()));
        }
        blocks.add(to, blocks.remove(from));
        for (int i = 0; i < blocks.size(); i++) {
            changed.addAll(blocks.get(i));
            changed.addAll(between.get(i));
        }
        return edited(changed, List.of());
    }

    /** The same without one problem; comments above it stay. */
    public Edited without(int at, List<Plan.Entry> entries) {
        if (!listed) {
            List<String> anew = written(entries);
            anew.remove(at);
            return anew(anew);
        }
        List<String> changed = new ArrayList<>(lines);
        String comment = comments(starts.get(at), itemEnd(at));
        changed.subList(starts.get(at), itemEnd(at)).clear();
        if (size() == 1) {
            changed.set(keyLine(PROBLEMS), PROBLEMS + ": []");
        }
        return edited(
                changed, comment.isEmpty() ? List.of() : List.of(say("plan.text.comment-gone", "comment", comment)));
    }

    /** @param entry as {@link #written(Plan.Entry)} writes it; comments beside the old one come to stand above it */
    public Edited replaced(int at, String entry, List<Plan.Entry> entries) {
        if (!listed) {
            List<String> anew = written(entries);
            anew.set(at, entry);
            return anew(anew);
        }
        List<String> changed = new ArrayList<>(lines);
        String comment = comments(starts.get(at), itemEnd(at));
        String indent = indentOf(lines.get(starts.get(at)));
        changed.subList(starts.get(at), itemEnd(at)).clear();
        changed.add(starts.get(at), indent + "- " + entry);
        if (!comment.isEmpty()) {
            changed.add(starts.get(at), indent + "# " + comment);
        }
        return edited(changed, List.of());
    }

    /** One more problem behind the others. */
    public Edited added(String entry, List<Plan.Entry> entries) {
        if (keyLine(PROBLEMS) < 0) {
            List<String> changed = new ArrayList<>(lines);
            changed.addAll(List.of(PROBLEMS + ":", INDENT + "- " + entry));
            return edited(changed, List.of());
        }
        if (!listed || size() == 0) {
            List<String> anew = written(entries);
            anew.add(entry);
            return anew(anew);
        }
        int last = size() - 1;
        List<String> changed = new ArrayList<>(lines);
        changed.add(itemEnd(last), indentOf(lines.get(starts.get(last))) + "- " + entry);
        return edited(changed, List.of());
    }

    private static List<String> written(List<Plan.Entry> entries) {
        return new ArrayList<>(entries.stream().map(PlanText::written).toList());
    }

    /** The whole list, a problem a line. */
    private Edited anew(List<String> entries) {
        int line = keyLine(PROBLEMS);
        int end = end(PROBLEMS);
        String comment = comments(line, end);
        List<String> changed = new ArrayList<>(lines);
        changed.subList(line, end).clear();
        int at = line;
        if (!comment.isEmpty()) {
            changed.add(at++, "# " + comment);
        }
        changed.add(at++, PROBLEMS + ":" + (entries.isEmpty() ? " []" : ""));
        for (String entry : entries) {
            changed.add(at++, INDENT + "- " + entry);
        }
        List<String> told = new ArrayList<>();
        if (size() > 0) {
            told.add(comment.isEmpty() ? say("plan.text.anew") : say("plan.text.anew-with-comment"));
        }
        return edited(changed, told);
    }

    private static Edited edited(List<String> lines, List<String> told) {
        return new Edited(lines.isEmpty() ? "" : String.join("\n", lines) + "\n", told);
    }

    private static String indentOf(String line) {
        return line.substring(0, line.length() - line.stripLeading().length());
    }

    /** What is noted behind and between these lines, in one. */
    private String comments(int from, int to) {
        List<String> found = new ArrayList<>();
        for (String line : lines.subList(from, to)) {
            int at = comment(line);
            if (at >= 0) {
                found.add(line.substring(at + 1).strip());
            }
        }
        return String.join("; ", found);
    }

    /** Where a comment begins in a line; −1 if it has none. */
    private static int comment(String line) {
        char quote = 0;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (quote == '"' && c == '\\') {
                i++;
            } else if (quote != 0) {
                quote = c == quote ? 0 : quote;
            } else if ((c == '"' || c == '\'') && (i == 0 || " [{,:".indexOf(line.charAt(i - 1)) >= 0)) {
                quote = c;
            } else if (c == '#' && (i == 0 || Character.isWhitespace(line.charAt(i - 1)))) {
                return i;
            }
        }
        return -1;
    }

    /** An entry of the list in one line. */
    public static String written(Plan.Entry entry) {
        return EntryText.READABLE.of(entry);
    }
}
