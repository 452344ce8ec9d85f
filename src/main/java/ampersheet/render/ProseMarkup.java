package ampersheet.render;

import com.vladsch.flexmark.ast.BlockQuote;
import com.vladsch.flexmark.ast.BulletList;
import com.vladsch.flexmark.ast.Code;
import com.vladsch.flexmark.ast.DelimitedLinkNode;
import com.vladsch.flexmark.ast.Emphasis;
import com.vladsch.flexmark.ast.FencedCodeBlock;
import com.vladsch.flexmark.ast.HardLineBreak;
import com.vladsch.flexmark.ast.Heading;
import com.vladsch.flexmark.ast.HtmlBlockBase;
import com.vladsch.flexmark.ast.HtmlInlineBase;
import com.vladsch.flexmark.ast.IndentedCodeBlock;
import com.vladsch.flexmark.ast.ListBlock;
import com.vladsch.flexmark.ast.ListItem;
import com.vladsch.flexmark.ast.OrderedList;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ast.RefNode;
import com.vladsch.flexmark.ast.Reference;
import com.vladsch.flexmark.ast.SoftLineBreak;
import com.vladsch.flexmark.ast.StrongEmphasis;
import com.vladsch.flexmark.ast.ThematicBreak;
import com.vladsch.flexmark.ext.tables.TableBlock;
import com.vladsch.flexmark.ext.tables.TableBody;
import com.vladsch.flexmark.ext.tables.TableCell;
import com.vladsch.flexmark.ext.tables.TableHead;
import com.vladsch.flexmark.ext.tables.TableRow;
import com.vladsch.flexmark.ext.tables.TableSeparator;
import com.vladsch.flexmark.util.ast.Node;
import com.vladsch.flexmark.util.ast.TextCollectingVisitor;
import java.util.Map;
import java.util.Optional;

/**
 * Prose as markup. Only what is named here becomes an element; everything else, HTML above all, is shown as the text it
 * is. A heading becomes a bold paragraph: the headings of a page belong to its problems. A picture becomes its words.
 */
public final class ProseMarkup {
    private static final Map<Class<? extends Node>, String> ELEMENTS = Map.of(
            Emphasis.class, "em",
            StrongEmphasis.class, "strong",
            BlockQuote.class, "blockquote",
            BulletList.class, "ul",
            TableHead.class, "thead",
            TableBody.class, "tbody",
            TableRow.class, "tr");

    private final Markup markup;

    private ProseMarkup(Markup markup) {
        this.markup = markup;
    }

    public static void write(String prose, Markup markup) {
        if (!PlainProse.write(prose, markup)) {
            writeParsed(prose, markup);
        }
    }

    /** By its tree of nodes, whatever it is. */
    static void writeParsed(String prose, Markup markup) {
        new ProseMarkup(markup).children(LimitedMarkdown.read(prose));
    }

    /** One line's worth: a single paragraph without its element. */
    public static void writeLine(String prose, Markup markup) {
        Node document = LimitedMarkdown.read(prose);
        Node only = document.getFirstChild();
        if (only instanceof Paragraph && only.getNext() == null) {
            new ProseMarkup(markup).children(only);
        } else {
            markup.line(prose.strip());
        }
    }

    /** The words of such a line, without any markup. */
    public static String words(String prose) {
        Node document = LimitedMarkdown.read(prose);
        return new TextCollectingVisitor().collectAndGetText(document).strip();
    }

    private void children(Node node) {
        for (Node child = node.getFirstChild(); child != null; child = child.getNext()) {
            node(child);
        }
    }

    private void node(Node node) {
        String element = ELEMENTS.get(node.getClass());
        if (element != null) {
            within(element, node);
        } else if (node instanceof Paragraph) {
            paragraph(node);
        } else if (node instanceof Heading) {
            markup.open("p").open("strong");
            children(node);
            markup.close("strong").close("p").newline();
        } else if (node instanceof OrderedList list) {
            orderedList(list);
        } else if (node instanceof ListItem) {
            within("li", node);
            markup.newline();
        } else if (node instanceof FencedCodeBlock code) {
            codeBlock(code.getContentChars().toString());
        } else if (node instanceof IndentedCodeBlock code) {
            codeBlock(code.getContentChars().toString());
        } else if (node instanceof Code code) {
            markup.element("code", code.getText().toString());
        } else if (node instanceof ThematicBreak) {
            markup.single("hr").newline();
        } else if (node instanceof HardLineBreak) {
            markup.single("br").newline();
        } else if (node instanceof SoftLineBreak) {
            markup.newline();
        } else if (node instanceof TableBlock) {
            markup.open("div", "class", "scroll", "tabindex", "0");
            within("table", node);
            markup.close("div").newline();
        } else if (node instanceof TableCell cell) {
            cell(cell);
        } else if (!(node instanceof TableSeparator) && !(node instanceof Reference)) {
            inline(node);
        }
    }

    private void within(String element, Node node) {
        markup.open(element);
        children(node);
        markup.close(element);
    }

    private void paragraph(Node paragraph) {
        boolean tight = paragraph.getParent() instanceof ListItem item
                && item.getParent() instanceof ListBlock list
                && list.isTight();
        if (tight) {
            children(paragraph);
        } else {
            within("p", paragraph);
            markup.newline();
        }
    }

    private void orderedList(OrderedList list) {
        if (list.getStartNumber() == 1) {
            markup.open("ol");
        } else {
            markup.open("ol", "start", Integer.toString(list.getStartNumber()));
        }
        children(list);
        markup.close("ol").newline();
    }

    private void codeBlock(String code) {
        markup.open("pre", "tabindex", "0").element("code", code).close("pre").newline();
    }

    private void cell(TableCell cell) {
        String element = cell.isHeader() ? "th" : "td";
        String alignment = cell.getAlignment() == TableCell.Alignment.RIGHT
                ? "right"
                : cell.getAlignment() == TableCell.Alignment.CENTER ? "centre" : "left";
        if (cell.isHeader()) {
            markup.open(element, "scope", "col", "class", alignment);
        } else {
            markup.open(element, "class", alignment);
        }
        children(cell);
        markup.close(element);
    }

    private void inline(Node node) {
        Optional<String> address = LimitedMarkdown.address(node);
        if (node instanceof HtmlBlockBase) {
            markup.element("p", node.getChars().toString().strip());
        } else if (address.isPresent()) {
            markup.open("a", "href", Address.encoded(address.get()));
            wording(node);
            markup.close("a");
        } else {
            wording(node);
        }
    }

    private void wording(Node node) {
        boolean bracketsOnly = node instanceof RefNode reference && !reference.isDefined();
        if (node.hasChildren() && !bracketsOnly) {
            children(node);
        } else if (node instanceof DelimitedLinkNode link) {
            markup.text(link.getText().toString());
        } else if (node instanceof HtmlInlineBase) {
            markup.text(node.getChars().toString());
        } else {
            markup.text(Wording.bound(node.getChars().unescape()));
        }
    }
}
