package ampersheet.render.markdown;

import ampersheet.render.LimitedMarkdown;
import ampersheet.render.Wording;
import com.vladsch.flexmark.ast.AutoLink;
import com.vladsch.flexmark.ast.FencedCodeBlock;
import com.vladsch.flexmark.ast.Heading;
import com.vladsch.flexmark.ast.HtmlBlockBase;
import com.vladsch.flexmark.ast.HtmlInlineBase;
import com.vladsch.flexmark.ast.Image;
import com.vladsch.flexmark.ast.ImageRef;
import com.vladsch.flexmark.ast.Link;
import com.vladsch.flexmark.ast.LinkRef;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ast.Reference;
import com.vladsch.flexmark.ast.Text;
import com.vladsch.flexmark.util.ast.Document;
import com.vladsch.flexmark.util.ast.Node;
import java.util.Arrays;
import java.util.TreeSet;

/**
 * The author's Markdown as it was written, except that what prose may not do is escaped (so that every reader of the
 * file shows it as text) and that backslashes without effect, which protect the values put in, are taken out.
 */
final class ProseSource {
    private ProseSource() {}

    static String harmless(String prose) {
        String source = LimitedMarkdown.source(prose);
        TreeSet<Integer> places = forbidden(LimitedMarkdown.read(source));
        while (!places
                .isEmpty()) { // each round escapes something for good, and what that uncovers is found by the next
            StringBuilder escaped = new StringBuilder(source);
            places.descendingSet().forEach(place -> escaped.insert(place.intValue(), "\\"));
            source = escaped.toString();
            places = forbidden(LimitedMarkdown.read(source));
        }
        return readable(closed(withoutBlankEnds(source)));
    }

    /** Blank lines go, but not the blanks before the first word: four of them are code. */
    private static String withoutBlankEnds(String source) {
        String[] lines = source.split("\n", -1);
        int first = 0;
        while (first < lines.length && lines[first].isBlank()) {
            first++;
        }
        return String.join("\n", Arrays.asList(lines).subList(first, lines.length))
                .stripTrailing();
    }

    /** For the middle of a line: what is more than one paragraph is shown as text. */
    static String harmlessLine(String prose) {
        String line = Wording.oneLine(prose).strip();
        Node first = LimitedMarkdown.read(line).getFirstChild();
        return first instanceof Paragraph && first.getNext() == null ? harmless(line) : Escaped.text(line);
    }

    /** Where a backslash has to go. */
    private static TreeSet<Integer> forbidden(Document document) {
        TreeSet<Integer> places = new TreeSet<>();
        collect(document, places);
        return places;
    }

    private static void collect(Node node, TreeSet<Integer> places) {
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            int before = places.size();
            judge(child, places);
            if (places.size() == before) {
                collect(child, places);
            }
        }
    }

    private static void judge(Node node, TreeSet<Integer> places) {
        int start = node.getStartOffset();
        if (node instanceof HtmlBlockBase) {
            String html = node.getChars().toString();
            for (int i = html.indexOf('<'); i >= 0; i = html.indexOf('<', i + 1)) {
                places.add(start + i);
            }
        } else if (node instanceof Heading heading) {
            places.add(
                    heading.isSetextHeading()
                            ? heading.getClosingMarker().getStartOffset()
                            : heading.getOpeningMarker().getStartOffset());
        } else if (node instanceof HtmlInlineBase
                || node instanceof Image
                || node instanceof ImageRef
                || isLink(node) && LimitedMarkdown.address(node).isEmpty()) {
            places.add(start);
        }
    }

    private static boolean isLink(Node node) {
        return node instanceof Link
                || node instanceof AutoLink
                || node instanceof Reference
                || node instanceof LinkRef reference && reference.isDefined();
    }

    /** A code block left open would swallow the rest of the page. */
    private static String closed(String source) {
        if (!source.contains("```") && !source.contains("~~~")) {
            return source;
        }
        Node last = LimitedMarkdown.read(source).getLastChild();
        if (last instanceof FencedCodeBlock code && code.getClosingMarker().isEmpty()) {
            return source + "\n" + code.getOpeningMarker();
        }
        return source;
    }

    /** {@code 4\.7 kΩ} back to {@code 4.7 kΩ}, if the page then still means the same. */
    private static String readable(String source) {
        if (source.indexOf('\\') < 0) {
            return source;
        }
        TreeSet<Integer> backslashes = new TreeSet<>();
        collectNeedless(LimitedMarkdown.read(source), source, backslashes);
        StringBuilder plain = new StringBuilder(source);
        backslashes.descendingSet().forEach(plain::deleteCharAt);
        return LimitedMarkdown.meanTheSame(source, plain.toString()) ? plain.toString() : source;
    }

    private static void collectNeedless(Node node, String source, TreeSet<Integer> backslashes) {
        if (node instanceof Text) {
            for (int i = node.getStartOffset(); i + 1 < node.getEndOffset(); i++) {
                if (source.charAt(i) == '\\') {
                    boolean needless =
                            ".,:;/%+-=()'\"?!@$^{}".indexOf(source.charAt(i + 1)) >= 0 && !startsLine(source, i);
                    if (needless) {
                        backslashes.add(i);
                    }
                    i++;
                }
            }
        }
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            collectNeedless(child, source, backslashes);
        }
    }

    /** Whether only blanks and digits stand before it: there a full stop or a dash could begin a list. */
    private static boolean startsLine(String source, int at) {
        for (int i = at - 1; i >= 0 && source.charAt(i) != '\n'; i--) {
            char c = source.charAt(i);
            if (c != ' ' && c != '\t' && c != '>' && (c < '0' || c > '9')) {
                return false;
            }
        }
        return true;
    }
}
