package ampersheet.desk;

import ampersheet.language.Language;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The template guide, which comes with the program, as a page. It is our own text, so that only those forms of Markdown
 * are read that stand in it; the page writes the words, and none of them as markup.
 */
final class Guide {
    private static final String FILE = "/problem-templates/README.md";
    private static final String FENCE = "```";
    private static final Pattern HEADING = Pattern.compile("(#{1,3}) (.*)");
    private static final Pattern SPAN =
            Pattern.compile("`` (.+?) ``|`([^`]+)`|\\*\\*(.+?)\\*\\*|\\[([^\\]]+)\\]\\([^)]*\\)");

    private final List<Map<String, Object>> blocks = new ArrayList<>();
    private final List<String> paragraph = new ArrayList<>();
    private final List<Object> items = new ArrayList<>();
    private final List<List<Object>> rows = new ArrayList<>();

    private Guide() {}

    /** Its title, the headings below it, and its blocks in their order. */
    static Map<String, Object> page() {
        return of(text());
    }

    static Map<String, Object> of(String markdown) {
        Guide guide = new Guide();
        List<String> code = null;
        for (String line : markdown.split("\n", -1)) {
            if (code != null && line.startsWith(FENCE)) {
                guide.blocks.add(Pages.values("kind", "code", "text", String.join("\n", code)));
                code = null;
            } else if (code != null) {
                code.add(line);
            } else if (line.startsWith(FENCE)) {
                guide.end();
                code = new ArrayList<>();
            } else {
                guide.line(line);
            }
        }
        guide.end();
        List<Map<String, Object>> headings = guide.blocks.stream()
                .filter(block -> List.of("1", "2").contains(String.valueOf(block.get("level"))))
                .toList();
        return Pages.values("blocks", guide.blocks, "headings", headings);
    }

    private static String text() {
        try (InputStream in = Guide.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException(FILE + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private void line(String line) {
        Matcher heading = HEADING.matcher(line);
        if (heading.matches()) {
            end();
            String title = heading.group(2).replace("`", "");
            blocks.add(Pages.values(
                    "kind",
                    "heading",
                    "level",
                    Integer.toString(heading.group(1).length()),
                    "id",
                    "guide-" + Language.keyOf(title),
                    "text",
                    title));
        } else if (line.startsWith("|")) {
            row(line);
        } else if (line.stripLeading().startsWith("- ")) {
            endOfParagraph();
            items.add(spans(line.strip().substring(2)));
        } else if (line.isBlank()) {
            end();
        } else {
            paragraph.add(line.strip());
        }
    }

    /** The line below the head of a table only draws it. */
    private void row(String line) {
        endOfParagraph();
        if (!line.matches("[|:\\- ]+")) {
            String[] cells = line.strip().replaceAll("^[|]|[|]$", "").split("[|]", -1);
            rows.add(List.copyOf(Arrays.stream(cells)
                    .map(cell -> (Object) spans(cell.strip()))
                    .toList()));
        }
    }

    private void endOfParagraph() {
        if (!paragraph.isEmpty()) {
            blocks.add(Pages.values("kind", "text", "spans", spans(String.join(" ", paragraph))));
            paragraph.clear();
        }
    }

    private void end() {
        endOfParagraph();
        if (!items.isEmpty()) {
            blocks.add(Pages.values("kind", "list", "items", List.copyOf(items)));
            items.clear();
        }
        if (!rows.isEmpty()) {
            blocks.add(Pages.values(
                    "kind", "table", "head", rows.get(0), "rows", List.copyOf(rows.subList(1, rows.size()))));
            rows.clear();
        }
    }

    /** Words, code and what is stressed; a link within the program's files is only its words. */
    private static List<Map<String, Object>> spans(String text) {
        List<Map<String, Object>> spans = new ArrayList<>();
        Matcher marked = SPAN.matcher(text);
        int at = 0;
        while (marked.find()) {
            add(spans, "words", text.substring(at, marked.start()));
            String code = marked.group(1) == null ? marked.group(2) : marked.group(1);
            if (code != null) {
                add(spans, "code", code);
            } else if (marked.group(3) != null) {
                add(spans, "strong", marked.group(3).replace("`", ""));
            } else {
                add(spans, "words", marked.group(4));
            }
            at = marked.end();
        }
        add(spans, "words", text.substring(at));
        return spans;
    }

    private static void add(List<Map<String, Object>> spans, String kind, String text) {
        if (!text.isEmpty()) {
            spans.add(Pages.values("kind", kind, "text", text));
        }
    }
}
