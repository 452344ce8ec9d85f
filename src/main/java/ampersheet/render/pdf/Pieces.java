package ampersheet.render.pdf;

import ampersheet.render.pdf.Piece.Before;
import com.openhtmltopdf.layout.LayoutContext;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.w3c.dom.Element;

/**
 * Takes a handout apart where a page may end. What fits on a page stays in one piece: a problem; if it is longer, its
 * opening, which is the words and the figure, and every step and question; if even the opening is longer, the words,
 * the givens and the figure. A heading goes with what stands below it, the answers of an example with its last step or
 * the curve below it.
 */
final class Pieces {
    private static final Set<String> HEADINGS = Set.of("h1", "h2", "h3", "h4", "h5", "h6");
    private static final List<String> LIKE_HEADINGS = List.of("masthead", "tags", "prompt");

    /** Letters; with its sign and "as above" it takes one line of a column. */
    private static final int SHORT_HEADING = 26;

    private final double dotsPerPoint;
    private final LayoutContext context;
    private final Set<String> twins;
    private final double page;
    private final List<Piece> pieces = new ArrayList<>();
    private final Map<String, Double> lower;
    private final Set<String> withoutCurve;
    private Optional<Piece> heading = Optional.empty();
    /** Whether what is being taken apart is as wide as a column. */
    private boolean narrow;
    /** Height won so far by setting problems closer than they were measured, or without their curve. */
    private double won;

    private Pieces(
            PdfBoxRenderer renderer,
            Set<String> twins,
            Map<String, Double> lower,
            Set<String> withoutCurve,
            double page) {
        this.dotsPerPoint = renderer.getDotsPerPoint();
        this.context = renderer.getSharedContext().newLayoutContextInstance();
        this.twins = twins;
        this.lower = lower;
        this.withoutCurve = withoutCurve;
        this.page = page;
    }

    /** In points, of each problem that has been laid out, by id. */
    static Map<String, Double> heights(PdfBoxRenderer endless) {
        Pieces measured = new Pieces(endless, Set.of(), Map.of(), Set.of(), 0);
        Map<String, Double> heights = new TreeMap<>();
        for (Box part : endless.getRootBox().getChildren()) {
            blocks(part).stream()
                    .filter(block -> is(block, "problem"))
                    .forEach(problem -> heights.put(
                            problem.getElement().getAttribute("id"), measured.bottom(problem) - measured.top(problem)));
        }
        return heights;
    }

    /** In points, of the curve of each problem that has one: the figure outside its opening, behind the steps. */
    static Map<String, Double> curves(PdfBoxRenderer endless) {
        Pieces measured = new Pieces(endless, Set.of(), Map.of(), Set.of(), 0);
        Map<String, Double> curves = new TreeMap<>();
        for (Box part : endless.getRootBox().getChildren()) {
            blocks(part).stream()
                    .filter(block -> is(block, "problem"))
                    .forEach(problem -> blocks(problem).stream()
                            .filter(block -> is(block, "figure"))
                            .forEach(curve -> curves.put(
                                    problem.getElement().getAttribute("id"),
                                    measured.bottom(curve) - measured.top(curve))));
        }
        return curves;
    }

    /**
     * @param endless laid out on a page so long that nothing is divided
     * @param twins ids of the problems that follow an example worked for them
     * @param lower height in points of those that will be lower than here and fit on a page, by id
     * @param withoutCurve ids of those whose curve will be left out
     * @param page height of a page between its margins, in points
     */
    static List<Piece> of(
            PdfBoxRenderer endless,
            Set<String> twins,
            Map<String, Double> lower,
            Set<String> withoutCurve,
            double page) {
        Pieces taken = new Pieces(endless, twins, lower, withoutCurve, page);
        for (Box part : endless.getRootBox().getChildren()) {
            Box above = part;
            for (Box block : blocks(part)) {
                taken.take(block, above);
                above = block;
            }
        }
        taken.heading.ifPresent(taken.pieces::add);
        return taken.pieces;
    }

    private static List<Box> blocks(Box parent) {
        return parent.getChildren().stream()
                .filter(box -> box instanceof BlockBox && box.getElement() != null)
                .toList();
    }

    private void take(Box block, Box above) {
        narrow = is(block, "narrow");
        Element start = block.getElement();
        int columnsOnSpread = narrow ? 4 : 2;
        boolean onSpread = bottom(block) - top(above) <= columnsOnSpread * page;
        Before before = twins.contains(start.getAttribute("id")) && onSpread ? Before.TWIN : Before.PROBLEM;
        Double height = lower.get(start.getAttribute("id"));
        if (height != null) {
            pieces.add(new Piece(start, top(block), top(block) + height, before, false, Map.of()));
            won += bottom(block) - top(block) - height;
        } else if ((narrow || !fits(block)) && is(block, "problem")) {
            problem(block, start, before);
        } else if (!fits(block) && is(block, "halves")) {
            blocks(block).forEach(half -> add(half, half.getElement(), Before.PROBLEM));
        } else {
            add(block, start, before);
        }
    }

    private void problem(Box problem, Element start, Before before) {
        Box above = null;
        for (Box child : blocks(problem)) {
            if (above == null && is(child, PrintMarkup.OPENING)) {
                opening(child, start, before);
            } else if (above == null) {
                add(child, start, before);
            } else if (is(child, "steps")) {
                for (Box step : blocks(child)) {
                    add(step, step.getElement(), Before.QUESTION);
                }
                endsWith(child);
            } else if (is(child, "figure") && withoutCurve.contains(start.getAttribute("id"))) {
                won += bottom(child) - top(child);
            } else if ((is(above, "steps") || is(above, "figure")) && is(child, "prose")) {
                endsWith(child);
            } else {
                add(child, child.getElement(), is(above, PrintMarkup.OPENING) ? Before.REST : Before.QUESTION);
            }
            above = child;
        }
    }

    private void opening(Box opening, Element start, Before before) {
        if (fits(opening) && !narrow) {
            add(opening, start, before);
            return;
        }
        boolean first = true;
        for (Box child : blocks(opening)) {
            Before next = is(child, "setting") ? Before.GIVENS : Before.WORDS;
            for (Box part : is(child, "setting") ? drawn(child) : List.of(child)) {
                if (first) {
                    heading = Optional.of(new Piece(
                            start,
                            top(opening),
                            bottom(part),
                            before,
                            narrow,
                            cautions(part))); // the line above it included
                } else {
                    add(part, part.getElement(), next);
                }
                first = false;
                next = Before.FIGURE;
            }
        }
        endsWith(opening);
    }

    /** The givens and the figures, each by itself where they stand under each other. */
    private static List<Box> drawn(Box setting) {
        List<Box> parts = new ArrayList<>();
        for (Box part : blocks(setting)) {
            List<Box> figures = is(part, "figures") ? blocks(part) : List.of();
            parts.addAll(figures.isEmpty() ? List.of(part) : figures);
        }
        return parts;
    }

    /** The last piece is the end of this container as well. */
    private void endsWith(Box container) {
        Piece last = pieces.remove(pieces.size() - 1);
        pieces.add(
                last.and(new Piece(last.start(), top(container), bottom(container), last.before(), narrow, Map.of())));
    }

    private void add(Box box, Element start, Before before) {
        Piece piece = piece(box, start, before);
        Piece whole = heading.map(above -> above.and(piece)).orElse(piece);
        boolean more = HEADINGS.contains(box.getElement().getTagName())
                || LIKE_HEADINGS.stream().anyMatch(name -> is(box, name));
        heading = more ? Optional.of(whole) : Optional.empty();
        if (!more) {
            pieces.add(whole);
        }
    }

    private Piece piece(Box box, Element start, Before before) {
        return new Piece(start, top(box), bottom(box), before, narrow, cautions(box));
    }

    /** What each caution in it would take less if it only pointed to the same one above. */
    private Map<String, Double> cautions(Box box) {
        Map<String, Double> less = new TreeMap<>();
        String heading = box.getElement() == null ? "" : box.getElement().getAttribute(PrintMarkup.CAUTION);
        if (!heading.isEmpty()) {
            double line = box.getStyle().getLineHeight(context) / dotsPerPoint;
            double lines = heading.length() > SHORT_HEADING ? 2 : 1;
            less.put(heading, Math.max(0, box.getHeight() / dotsPerPoint - lines * line));
        }
        blocks(box).forEach(inside -> less.putAll(cautions(inside)));
        return less;
    }

    private boolean fits(Box box) {
        return bottom(box) - top(box) <= page;
    }

    private double top(Box box) {
        return (box.getAbsY() + box.getMargin(context).top()) / dotsPerPoint - won;
    }

    /** With the margin that the box has where nothing follows on its page; what follows now may have swallowed it. */
    private double bottom(Box box) {
        double border = box.getAbsY() + box.getHeight() - box.getMargin(context).bottom();
        return (border + marginBelow(box)) / dotsPerPoint - won;
    }

    private double marginBelow(Box box) {
        double own = box.getStyle()
                .getMarginRect(box.getContainingBlockWidth(), context)
                .bottom();
        List<Box> inside = blocks(box);
        boolean open =
                box.getPadding(context).bottom() == 0 && box.getBorder(context).bottom() == 0;
        return inside.isEmpty() || !open ? own : Math.max(own, marginBelow(inside.get(inside.size() - 1)));
    }

    private static boolean is(Box box, String look) {
        return (" " + box.getElement().getAttribute("class") + " ").contains(" " + look + " ");
    }
}
