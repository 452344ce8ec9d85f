package ampersheet.render.pdf;

import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.w3c.dom.Text;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The markup of a handout, read once: it is measured in one style and set in another.
 *
 * @param drawings that elements of it refer to
 */
record MarkupTree(Document nodes, List<OnPaper> drawings) {
    /** Class of the words on a page that stays empty. */
    static final String LEFT_EMPTY = "left-empty";

    private static final String NEXT_PAGE = "next-page";

    private static final List<String> EMPHASES = List.of("strong", "em");
    private static final String PUNCTUATION = ".,;:?!)";

    static MarkupTree of(PrintMarkup.Print print) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            Document nodes = factory.newDocumentBuilder().parse(new InputSource(new StringReader(print.xhtml())));
            for (String emphasis : EMPHASES) {
                keepPunctuation(nodes.getElementsByTagName(emphasis));
            }
            keepUnits(nodes.getElementsByTagName("body").item(0));
            return new MarkupTree(nodes, print.drawings());
        } catch (ParserConfigurationException | SAXException | IOException failure) {
            throw new IllegalStateException("markup for print that is no XML", failure);
        }
    }

    /** Whether any of its words run from right to left. */
    boolean runsRightToLeft() {
        return Writing.runsRightToLeft(nodes.getDocumentElement().getTextContent())
                || drawings.stream().anyMatch(drawing -> Writing.runsRightToLeft(drawing.letters()));
    }

    /** The page setter may break a line between an element and the text after it: no line begins with a full stop. */
    private static void keepPunctuation(NodeList elements) {
        // Copied first: the list is alive, and would be made anew after every change.
        List<Node> emphasised = new ArrayList<>();
        for (Node element = elements.item(0); element != null; element = elements.item(emphasised.size())) {
            emphasised.add(element);
        }
        for (Node element : emphasised) {
            if (element.getNextSibling() instanceof Text after) {
                String text = after.getData();
                int end = 0;
                while (end < text.length() && PUNCTUATION.indexOf(text.charAt(end)) >= 0) {
                    end++;
                }
                if (end > 0) {
                    append(element, text.substring(0, end));
                    after.setData(text.substring(end));
                }
            }
        }
    }

    /** In one piece with the last word, which the page setter does not part; but in the look of the text around it. */
    private static void append(Node element, String punctuation) {
        Document nodes = element.getOwnerDocument();
        Element kept = nodes.createElementNS(element.getNamespaceURI(), "span");
        kept.setAttribute("class", "kept");
        if (element.getLastChild() instanceof Text last) {
            String words = last.getData();
            int from = Math.max(words.lastIndexOf(' '), words.lastIndexOf('\n')) + 1;
            kept.appendChild(nodes.createTextNode(words.substring(from)));
            last.setData(words.substring(0, from));
        }
        Element mark = nodes.createElementNS(element.getNamespaceURI(), "span");
        mark.setAttribute("class", "mark");
        mark.setTextContent(punctuation);
        kept.appendChild(mark);
        element.appendChild(kept);
    }

    /** No line ends between a number and its unit, however an author wrote the space. */
    private static void keepUnits(Node node) {
        if (node instanceof Text text) {
            String kept = unitsKept(text.getData());
            if (!kept.equals(text.getData())) {
                text.setData(kept);
            }
        } else if (!node.getNodeName().equals("svg")) {
            for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
                keepUnits(child);
            }
        }
    }

    static String unitsKept(String text) {
        StringBuilder kept = new StringBuilder(text);
        for (int space = text.indexOf(' ', 1); space > 0; space = text.indexOf(' ', space + 1)) {
            char before = text.charAt(space - 1);
            boolean number = Character.isDigit(before) || "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(before) >= 0;
            int end = space + 1;
            while (end < text.length()
                    && (Character.isLetter(text.charAt(end)) || "°%".indexOf(text.charAt(end)) >= 0)) {
                end++;
            }
            if (number && Unit.isSymbol(text.substring(space + 1, end))) {
                kept.setCharAt(space, QuantityWriter.NO_BREAK_SPACE);
            }
        }
        return kept.toString();
    }

    /** Another style sheet takes the place of the one in the head. */
    void style(String sheet) {
        nodes.getElementsByTagName("style").item(0).setTextContent(sheet);
    }

    /** A copy of the elements with these ids alone, set closer. */
    MarkupTree closer(Set<String> ids) {
        MarkupTree copy = new MarkupTree((Document) nodes.cloneNode(true), drawings);
        Node body = copy.nodes.getElementsByTagName("body").item(0);
        for (Node child = body.getFirstChild(); child != null; ) {
            Node next = child.getNextSibling();
            if (!(child instanceof Element element && ids.contains(element.getAttribute("id")))) {
                body.removeChild(child);
            }
            child = next;
        }
        copy.setCloser(ids);
        return copy;
    }

    /** Sets what is in the elements with these ids closer. */
    void setCloser(Set<String> ids) {
        NodeList divisions = nodes.getElementsByTagName("div");
        for (int i = 0; i < divisions.getLength(); i++) {
            Element division = (Element) divisions.item(i);
            if (ids.contains(division.getAttribute("id"))) {
                mark(division, "closer");
            }
        }
    }

    /** Takes out the curves of the problems with these ids. */
    void removeCurves(Set<String> ids) {
        NodeList divisions = nodes.getElementsByTagName("div");
        List<Element> curves = new ArrayList<>();
        for (int i = 0; i < divisions.getLength(); i++) {
            Element division = (Element) divisions.item(i);
            if (division.getAttribute("class").equals("figure")
                    && division.getParentNode() instanceof Element problem
                    && ids.contains(problem.getAttribute("id"))) {
                curves.add(division);
            }
        }
        curves.forEach(curve -> curve.getParentNode().removeChild(curve));
    }

    /** Tells the elements that begin a page, and what holds them, which would else be kept together. */
    void breakBefore(List<PageBreaks.Start> starts, Language language) {
        for (PageBreaks.Start start : starts) {
            if (start.kind() != PageBreaks.Kind.NEXT_PAGE) {
                Element empty = leftEmpty(language.say("print.left-empty.facing"));
                start.element().getParentNode().insertBefore(empty, start.element());
            }
            mark(start.element(), NEXT_PAGE);
            for (Node holder = start.element().getParentNode();
                    holder instanceof Element element;
                    holder = element.getParentNode()) {
                mark(element, "divided");
            }
        }
    }

    /** One more page at the end, which says why it is empty. */
    void leaveBackEmpty(Language language) {
        nodes.getElementsByTagName("body").item(0).appendChild(leftEmpty(language.say("print.left-empty.back")));
    }

    /** The page that stays empty says why. */
    private Element leftEmpty(String why) {
        Element page = nodes.createElementNS("http://www.w3.org/1999/xhtml", "p");
        page.setAttribute("class", LEFT_EMPTY + " " + NEXT_PAGE);
        page.setTextContent(why);
        return page;
    }

    private static void mark(Element element, String name) {
        String names = element.getAttribute("class");
        if (!(" " + names + " ").contains(" " + name + " ")) {
            element.setAttribute("class", (names + " " + name).strip());
        }
    }
}
