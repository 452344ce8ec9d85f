package ampersheet.render;

import ampersheet.source.Remembered;
import com.vladsch.flexmark.ast.AutoLink;
import com.vladsch.flexmark.ast.Link;
import com.vladsch.flexmark.ast.LinkRef;
import com.vladsch.flexmark.ast.MailLink;
import com.vladsch.flexmark.ast.Reference;
import com.vladsch.flexmark.ext.tables.TablesExtension;
import com.vladsch.flexmark.html.HtmlRenderer;
import com.vladsch.flexmark.parser.Parser;
import com.vladsch.flexmark.util.ast.Document;
import com.vladsch.flexmark.util.ast.Node;
import com.vladsch.flexmark.util.ast.TextCollectingVisitor;
import com.vladsch.flexmark.util.data.DataHolder;
import com.vladsch.flexmark.util.data.MutableDataSet;
import java.util.List;
import java.util.Optional;

/**
 * The Markdown that prose may be written in: CommonMark with tables. What it may not do (headings, HTML, pictures,
 * links that run something) is decided here once, so that no format lets through what another holds back.
 */
public final class LimitedMarkdown {
    private static final DataHolder OPTIONS = new MutableDataSet()
            .set(Parser.EXTENSIONS, List.of(TablesExtension.create()))
            .set(TablesExtension.COLUMN_SPANS, false)
            .set(TablesExtension.APPEND_MISSING_COLUMNS, true)
            .set(TablesExtension.DISCARD_EXTRA_COLUMNS, true)
            .set(TablesExtension.HEADER_SEPARATOR_COLUMN_MATCH, true)
            .toImmutable();

    /** Shared, as is the renderer: they keep no state between texts. */
    private static final Parser PARSER = Parser.builder(OPTIONS).build();

    private static final HtmlRenderer MEANING = HtmlRenderer.builder(OPTIONS).build();

    /**
     * What was read last, by its text: sheet and key hold the same prose, in three formats, and a class the same words.
     * Nothing changes a tree that was read.
     */
    private static final Remembered<String, Optional<Document>> PARSED = new Remembered<>(300);

    /** A long text comes once. */
    private static final int LONGEST_PARSED = 4_000;

    /** Nested deeper than this, quotes, lists and emphasis are no prose but an attack on the stack. */
    private static final int DEEPEST = 24;

    private LimitedMarkdown() {}

    public static Document read(String prose) {
        String source = Wording.lines(prose);
        return parsedIfShallow(source).orElseGet(() -> PARSER.parse(allEscaped(source)));
    }

    /** What the prose says without its marks, on one line: for a cell of a table. */
    public static String plain(String prose) {
        return new TextCollectingVisitor()
                .collectAndGetText(read(prose))
                .replaceAll("\\s*\n\\s*", " ")
                .strip();
    }

    /**
     * The Markdown that {@link #read} reads: the prose with {@code \n} as its only line end and no control characters;
     * or, if it nests too deeply, with every mark escaped, so that it is plain text.
     */
    public static String source(String prose) {
        String source = Wording.lines(prose);
        return parsedIfShallow(source).isPresent() ? source : allEscaped(source);
    }

    private static Optional<Document> parsedIfShallow(String source) {
        return source.length() > LONGEST_PARSED ? parsedAnew(source) : PARSED.of(source, LimitedMarkdown::parsedAnew);
    }

    private static Optional<Document> parsedAnew(String source) {
        try {
            Document document = PARSER.parse(source);
            return isDeeper(document, DEEPEST) ? Optional.empty() : Optional.of(document);
        } catch (StackOverflowError e) {
            return Optional.empty(); // the parser recurses; what exhausts the stack is far deeper than the limit on any
            // machine
        }
    }

    private static boolean isDeeper(Node node, int levels) {
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            if (levels == 0 || isDeeper(child, levels - 1)) {
                return true;
            }
        }
        return false;
    }

    private static String allEscaped(String source) {
        StringBuilder escaped = new StringBuilder(source.length() * 2);
        for (int i = 0; i < source.length(); i++) {
            char c = source.charAt(i);
            if (c > ' ' && c < 0x7F && !Character.isLetterOrDigit(c)) {
                escaped.append('\\');
            }
            escaped.append(c);
        }
        return escaped.toString();
    }

    /** Whether two texts are the same to a reader of the rendered page. */
    public static boolean meanTheSame(String source, String other) {
        return MEANING.render(PARSER.parse(source)).equals(MEANING.render(PARSER.parse(other)));
    }

    /** Where a link leads; empty for a node that is no link, or one that may not be followed. */
    public static Optional<String> address(Node node) {
        String address = "";
        if (node instanceof Link link) {
            address = link.getUrl().unescape();
        } else if (node instanceof LinkRef link) {
            Reference reference = link.getReferenceNode(node.getDocument());
            address = reference == null ? "" : reference.getUrl().unescape();
        } else if (node instanceof Reference reference) {
            address = reference.getUrl().unescape();
        } else if (node instanceof MailLink link) {
            address = "mailto:" + link.getText().unescape();
        } else if (node instanceof AutoLink link) {
            address = link.getText().unescape();
        }
        return Address.isAllowed(address) ? Optional.of(address) : Optional.empty();
    }
}
