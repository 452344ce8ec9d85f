package ampersheet.render.pdf;

import ampersheet.language.Language;
import ampersheet.render.pdf.PackedPages.Page;
import ampersheet.render.pdf.PackedPages.Row;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * Puts what was measured into pages and columns. What is parted, a problem or its list of steps, stands in both places
 * with what of it belongs there. What a page has left is ruled, to work on; not below what is worked in full.
 */
final class PageAssembly {
    private static final double MILLIMETRES_PER_POINT = 25.4 / 72;
    /** Less is not worth ruling. */
    private static final double LEAST_FREE = 20;
    /** Above the lines and to spare. */
    private static final double AROUND_FREE = 8;

    /** Class of the line that tells whose problem goes on. */
    static final String CONTINUED = "goes-on";

    private final Document nodes;
    private final Map<Node, Integer> starts = new LinkedHashMap<>();
    /** Elements that are parted. */
    private final Map<Node, Boolean> parted = new LinkedHashMap<>();
    /** Where the piece with this number goes. */
    private final List<Element> places = new ArrayList<>();
    /** What was last put in a place: the copies of the elements that hold it, the outermost first. */
    private final Map<Element, List<Holder>> open = new LinkedHashMap<>();

    private final List<OnPaper> drawings;
    /** Columns that begin a page. */
    private final Set<Element> heads = new LinkedHashSet<>();
    /** Points that columns leave free beside longer ones. */
    private final Map<Element, Double> rests = new LinkedHashMap<>();
    /** Parted elements of which a copy stands somewhere. */
    private final Set<Element> begun = new LinkedHashSet<>();

    private final Room room;
    private final Language language;
    /** Id of the problem of each piece; empty for what belongs to none. */
    private final List<String> problems = new ArrayList<>();

    private int current = -1;

    /**
     * What may be ruled.
     *
     * @param width of a page between its margins, in millimetres
     * @param worked ids of the problems that leave nothing to write
     */
    record Room(double width, Set<String> worked) {
        Room {
            worked = Set.copyOf(worked);
        }
    }

    /** @param original that is parted; @param copy of it in one place */
    private record Holder(Element original, Element copy) {}

    private PageAssembly(MarkupTree measured, Room room, Language language) {
        this.room = room;
        this.language = language;
        this.nodes = measured.nodes();
        this.drawings = new ArrayList<>(measured.drawings());
    }

    /** The same markup, each page of it a division; it changes the nodes of the one given. */
    static MarkupTree of(MarkupTree measured, List<Piece> pieces, List<Page> pages, Room room, Language language) {
        PageAssembly assembly = new PageAssembly(measured, room, language);
        for (int i = 0; i < pieces.size(); i++) {
            Element start = pieces.get(i).start();
            assembly.starts.put(start, i);
            assembly.problems.add(problem(start));
            for (Node holder = start.getParentNode(); holder != null; holder = holder.getParentNode()) {
                assembly.parted.put(holder, true);
            }
        }
        Element body = (Element) measured.nodes().getElementsByTagName("body").item(0);
        List<Node> children = children(body);
        children.forEach(body::removeChild);
        for (Page page : pages) {
            body.appendChild(assembly.page(page, page == pages.get(0)));
        }
        children.forEach(child -> assembly.put(child, List.of()));
        assembly.rests.forEach((column, height) -> column.appendChild(
                assembly.free(PrintStyle.COLUMN * room.width(), height * MILLIMETRES_PER_POINT - AROUND_FREE)));
        children(body).forEach(page -> assembly.pointToCautionsAbove(page, new TreeSet<>()));
        return new MarkupTree(measured.nodes(), List.copyOf(assembly.drawings));
    }

    /** A caution stands in full once on a page; where it comes again, its heading. */
    private void pointToCautionsAbove(Node node, Set<String> seen) {
        if (node instanceof Element element && element.hasAttribute(PrintMarkup.CAUTION)) {
            if (!seen.add(element.getAttribute(PrintMarkup.CAUTION))) {
                children(element).stream()
                        .filter(Text.class::isInstance)
                        .skip(1)
                        .forEach(element::removeChild);
                element.appendChild(nodes.createTextNode(" " + language.say("print.caution.as-above")));
            }
        } else {
            children(node).forEach(child -> pointToCautionsAbove(child, seen));
        }
    }

    private static List<Node> children(Node parent) {
        List<Node> children = new ArrayList<>();
        for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
            children.add(child);
        }
        return children;
    }

    private static String problem(Element start) {
        for (Node at = start; at instanceof Element element; at = at.getParentNode()) {
            if (element.getAttribute("id").startsWith(PrintMarkup.PROBLEM_ID)) {
                return element.getAttribute("id");
            }
        }
        return "";
    }

    /** Whether these pieces are of problems, all of which leave nothing to write. */
    private boolean isWorked(int from, int to) {
        Set<String> ids = new TreeSet<>(problems.subList(from, to));
        ids.remove("");
        return !ids.isEmpty() && room.worked().containsAll(ids);
    }

    private Element page(Page page, boolean first) {
        Element division = division(first ? "page" : "page next-page");
        for (Row row : page.rows()) {
            if (row.hasColumns()) {
                Element columns = division("columns");
                Element left = division("column");
                columns.appendChild(left);
                if (row == page.rows().get(0)) {
                    heads.add(left);
                }
                rest(left, row.shorter(), row.right());
                fill(left, row.from(), row.right());
                if (row.right() < row.to()) {
                    Element right = division("column");
                    columns.appendChild(right);
                    rest(right, -row.shorter(), row.to());
                    fill(right, row.right(), row.to());
                }
                division.appendChild(columns);
            } else {
                Element wide = division("wide");
                fill(wide, row.from(), row.to());
                division.appendChild(wide);
            }
        }
        double free = page.rest() * MILLIMETRES_PER_POINT - AROUND_FREE;
        Row above = page.rows().isEmpty()
                ? new Row(0, 0, problems.size(), 0)
                : page.rows().get(page.rows().size() - 1);
        if (free >= LEAST_FREE && !isWorked(above.from(), above.to())) {
            division.appendChild(free(room.width(), free));
        }
        return division;
    }

    /** @param end before which piece the column ends */
    private void rest(Element column, double shorter, int end) {
        if (shorter * MILLIMETRES_PER_POINT - AROUND_FREE >= LEAST_FREE && !isWorked(end - 1, end)) {
            rests.put(column, shorter);
        }
    }

    private Element free(double width, double height) {
        Element free = division("free");
        Element lines = nodes.createElementNS("http://www.w3.org/2000/svg", "svg");
        lines.setAttribute(FigureDrawer.NUMBER, Integer.toString(drawings.size()));
        lines.setAttribute("alt", language.say("print.room-for-working"));
        lines.setAttribute("style", "width:" + tenths(width) + "mm;height:" + tenths(height) + "mm");
        drawings.add(new RuledSpace(tenths(width), tenths(height)));
        free.appendChild(lines);
        return free;
    }

    private static double tenths(double millimetres) {
        return Math.floor(millimetres * 10) / 10;
    }

    private void fill(Element place, int from, int to) {
        for (int i = from; i < to; i++) {
            places.add(place);
        }
    }

    private Element division(String look) {
        Element division = nodes.createElementNS("http://www.w3.org/1999/xhtml", "div");
        division.setAttribute("class", look);
        return division;
    }

    /** @param holders elements around the node that are parted, the outermost first */
    private void put(Node node, List<Element> holders) {
        current = starts.getOrDefault(node, current);
        if (parted.containsKey(node)) {
            List<Element> inside = new ArrayList<>(holders);
            inside.add((Element) node);
            children(node).forEach(child -> put(child, inside));
        } else if (node instanceof Element || !node.getTextContent().isBlank()) {
            Element place = places.get(Math.max(0, current));
            into(place, holders).appendChild(node);
        }
    }

    private Element continued(String problem) {
        Element words = nodes.createElementNS("http://www.w3.org/1999/xhtml", "p");
        words.setAttribute("class", CONTINUED);
        words.setTextContent(
                language.say("print.problem.continued", "number", problem.substring(PrintMarkup.PROBLEM_ID.length())));
        return words;
    }

    /** The innermost of the copies of these in the place, made where they are not there yet. */
    private Element into(Element place, List<Element> holders) {
        List<Holder> there = open.computeIfAbsent(place, first -> new ArrayList<>());
        int same = 0;
        while (same < there.size() && same < holders.size() && there.get(same).original() == holders.get(same)) {
            same++;
        }
        there.subList(same, there.size()).clear();
        for (Element holder : holders.subList(same, holders.size())) {
            Element copy = (Element) holder.cloneNode(false);
            if (!begun.add(holder)) {
                if (there.isEmpty()
                        && heads.remove(place)
                        && !copy.getAttribute("id").isEmpty()) {
                    place.appendChild(continued(copy.getAttribute("id")));
                }
                copy.removeAttribute("id");
                copy.setAttribute("class", (copy.getAttribute("class") + " continued").strip());
            }
            (there.isEmpty() ? place : there.get(there.size() - 1).copy()).appendChild(copy);
            there.add(new Holder(holder, copy));
        }
        return there.isEmpty() ? place : there.get(there.size() - 1).copy();
    }
}
