package ampersheet.figure;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import java.util.ArrayList;
import java.util.List;

/**
 * Bodies of strips and panels: loads between two heavy conductors, with the points where these are fed. Along u the
 * plus comes first; v runs from the start of a strip to its end, and along the rows of a panel.
 */
final class CopperSymbol {
    private static final double RAIL = 18;
    private static final double FEED_LINE = RAIL + 13;
    private static final double HALF_STRIP = 126;
    private static final double HALF_STRIP_IF_NARROW = 84;
    private static final double TAP_HEIGHT = 18;
    /** A longer strip shows its first and last taps. */
    private static final int TAPS_SHOWN = 6;

    private static final int TAPS_SHOWN_IF_NARROW = 5;
    private static final double DOT = 3;
    private static final double ARROW = 9;
    /** From a lead in the middle to a word beside it and beside its plus sign. */
    private static final double PAST_THE_SIGN = 20;

    private static final double HALF_PANEL = 96;
    private static final double HALF_PANEL_IF_NARROW = 82;
    /** A feed at an end stands outside the rows: from there to the first row there is one more section of the bus. */
    private static final double OUTER_FEED = HALF_PANEL + 10;

    private static final double INNER_FEED = HALF_PANEL + 4;
    private static final double PLUS_BUS = 24;
    private static final double MINUS_BUS = 34;
    private static final double HOP = 4;
    /** Of a row without joints to the next: the rest is the gap between them. */
    private static final double ROW_SHARE = 0.6;
    /** Lines closer than this run together. */
    private static final double CLOSEST_LINES = 6;

    private final Drawing drawing;
    private final PlacedPart part;
    private final Frame frame;
    private final boolean narrow;
    private final Lettering word;
    private final double halfStrip;
    private final int tapsShown;
    /** Along v; along u it is as on a wide page. */
    private final double halfPanel;

    /** @param narrow shorter along v; @param feed the word where a strip is fed */
    CopperSymbol(Drawing drawing, PlacedPart part, Frame frame, boolean narrow, String feed) {
        this.drawing = drawing;
        this.part = part;
        this.frame = frame;
        this.narrow = narrow;
        this.word = Lettering.plain(feed, Lettering.SMALL);
        this.halfStrip = narrow ? HALF_STRIP_IF_NARROW : HALF_STRIP;
        this.tapsShown = narrow ? TAPS_SHOWN_IF_NARROW : TAPS_SHOWN;
        this.halfPanel = narrow ? HALF_PANEL_IF_NARROW : HALF_PANEL;
    }

    /** How far along u the leads end. */
    static double halfLength(PartKind kind) {
        return kind == PartKind.STRIP ? FEED_LINE : HALF_PANEL + 12;
    }

    void draw() {
        if (part.kind() == PartKind.STRIP) {
            strip();
        } else {
            panel();
        }
    }

    private void strip() {
        String fed = part.word("feed");
        List<String> shown = numbers(part.values().get(PartValue.TAPS).intValue(), fed.equals("middle"));
        double pitch = 2 * halfStrip / shown.size();
        double from = fed.equals("start") || fed.equals("both ends") ? -halfStrip : -halfStrip + pitch / 2;
        double to = fed.equals("end") || fed.equals("both ends") ? halfStrip : halfStrip - pitch / 2;
        conductor(-RAIL, from, -RAIL, to);
        conductor(RAIL, from, RAIL, to);
        for (int i = 0; i < shown.size(); i++) {
            tap(shown.get(i), -halfStrip + (i + 0.5) * pitch);
        }
        List<Double> feeds = switch (fed) {
            case "start" -> List.of(-halfStrip);
            case "end" -> List.of(halfStrip);
            case "both ends" -> List.of(-halfStrip, halfStrip);
            default -> List.of(0.0);
        };
        for (double side : new double[] {-1, 1}) {
            for (double v : feeds) {
                drawing.line(
                        part.name(),
                        Stroke.LINE,
                        frame.at(side * FEED_LINE, 0),
                        frame.at(side * FEED_LINE, v),
                        frame.at(side * RAIL, v));
                drawing.dot(part.name(), frame.at(side * RAIL, v), DOT);
            }
        }
        if (narrow) {
            // There is no room for words and arrows beside three strips.
            return;
        }
        feeds.forEach(v -> {
            if (v == 0) {
                fedInTheMiddle();
            } else {
                fedHere(v);
            }
        });
    }

    private void fedInTheMiddle() {
        double tip = RAIL + (FEED_LINE - RAIL - ARROW) / 2;
        drawing.arrowHead(part.name(), frame.at(-tip - ARROW, 0), frame.at(-tip, 0), ARROW);
        drawing.arrowHead(part.name(), frame.at(tip, 0), frame.at(tip + ARROW, 0), ARROW);
        boolean lying = Math.abs(frame.at(1, 0).x() - frame.at(0, 0).x()) > 0.5;
        double alongLead = (lying ? word.width() : word.size()) / 2;
        double alongStrip = (lying ? word.size() : word.width()) / 2;
        drawing.words(part.name(), word, frame.at(-RAIL - 6 - alongLead, PAST_THE_SIGN + alongStrip));
    }

    /** The leads come to the middle of the strip: arrows and a word tell at which end the current goes in. */
    private void fedHere(double v) {
        double out = v < 0 ? -1 : 1;
        drawing.arrowHead(part.name(), frame.at(-FEED_LINE, v / 2 - out * ARROW), frame.at(-FEED_LINE, v / 2), ARROW);
        drawing.arrowHead(part.name(), frame.at(FEED_LINE, v / 2), frame.at(FEED_LINE, v / 2 - out * ARROW), ARROW);
        drawing.words(part.name(), word, frame.at(0, v + out * (word.width() / 2 + 4)));
    }

    /**
     * @param aroundTheMiddle with those on either side of a feed there; a longer strip has them in the middle of the
     *     list
     */
    private List<String> numbers(int taps, boolean aroundTheMiddle) {
        if (aroundTheMiddle && taps % 2 == 0 && taps > TAPS_SHOWN) {
            return List.of(
                    "1", "…", Integer.toString(taps / 2), Integer.toString(taps / 2 + 1), "…", Integer.toString(taps));
        }
        List<String> numbers = new ArrayList<>();
        for (int tap = 1; tap <= taps; tap++) {
            boolean last = tap > taps - 2;
            if (taps <= tapsShown || tap <= tapsShown - 3 || last) {
                numbers.add(Integer.toString(tap));
            } else if (tap == tapsShown - 2) {
                numbers.add("…");
            }
        }
        return numbers;
    }

    private void tap(String number, double v) {
        Lettering lettering = Lettering.plain(number, Lettering.SMALL);
        if (!number.equals("…")) {
            double half = TAP_HEIGHT / 2;
            double across = Math.max(TAP_HEIGHT, lettering.width() + 8) / 2;
            drawing.outlined(
                    part.name(),
                    Stroke.LINE,
                    frame.at(-half, v - across),
                    frame.at(-half, v + across),
                    frame.at(half, v + across),
                    frame.at(half, v - across));
            drawing.line(part.name(), Stroke.LINE, frame.at(-RAIL, v), frame.at(-half, v));
            drawing.line(part.name(), Stroke.LINE, frame.at(half, v), frame.at(RAIL, v));
        }
        drawing.words(part.name(), lettering, frame.at(0, v));
    }

    private void panel() {
        double far = MINUS_BUS + 2 * halfPanel;
        String feed = part.word("feed");
        double first = feed.equals("start") || feed.equals("both ends") ? OUTER_FEED : HALF_PANEL;
        double last = feed.equals("end") || feed.equals("both ends") ? OUTER_FEED : HALF_PANEL;
        conductor(-first, PLUS_BUS, last, PLUS_BUS);
        conductor(-first, MINUS_BUS, last, MINUS_BUS);
        List<Double> columns = shares(part.values().get(PartValue.COLUMNS).intValue());
        List<Double> rows = shares(part.values().get(PartValue.ROWS).intValue());
        if (part.values().containsKey(PartValue.CROSS)) {
            pixels(-HALF_PANEL, HALF_PANEL, columns);
            for (double share : rows) {
                double u = -HALF_PANEL + share * 2 * HALF_PANEL;
                drawing.line(part.name(), Stroke.FINE, frame.at(u, MINUS_BUS), frame.at(u, far));
            }
        } else {
            double pitch = 2 * HALF_PANEL / (rows.size() + 1);
            for (int row = 0; row <= rows.size(); row++) {
                double middle = -HALF_PANEL + (row + 0.5) * pitch;
                row(middle - ROW_SHARE * pitch / 2, middle + ROW_SHARE * pitch / 2, columns);
            }
        }
        switch (feed) {
            case "start" -> feed(-OUTER_FEED, 0, -INNER_FEED, 0);
            case "end" -> feed(INNER_FEED, 0, OUTER_FEED, 0);
            case "both ends" -> {
                feed(-OUTER_FEED, 0, -INNER_FEED, 10);
                feed(INNER_FEED, 0, OUTER_FEED, 10);
            }
            default -> feed(-5, 0, 5, 0);
        }
    }

    /** Its plus conductor leads over the minus bus; the pixels lie between it and the minus conductor. */
    private void row(double uPlus, double uMinus, List<Double> columns) {
        double far = MINUS_BUS + 2 * halfPanel;
        double gap = (uMinus - uPlus) * (1 / ROW_SHARE - 1);
        over(uPlus, PLUS_BUS, MINUS_BUS, far, Math.min(HOP, 0.75 * gap), Stroke.FINE);
        drawing.line(
                part.name(), Stroke.FINE, frame.at(uPlus, far), frame.at(uMinus, far), frame.at(uMinus, MINUS_BUS));
        for (double share : columns) {
            double v = MINUS_BUS + share * 2 * halfPanel;
            drawing.line(part.name(), Stroke.FINE, frame.at(uPlus, v), frame.at(uMinus, v));
        }
    }

    /** A line along v that a hop takes over a bus it does not touch. */
    private void over(double u, double from, double bus, double to, double hop, Stroke stroke) {
        drawing.line(
                part.name(),
                stroke,
                frame.at(u, from),
                frame.at(u, bus - HOP),
                frame.at(u - hop, bus - HOP / 2),
                frame.at(u - hop, bus + HOP / 2),
                frame.at(u, bus + HOP),
                frame.at(u, to));
    }

    /** Pixels side by side from the bus to the far end, where the rows are joined. */
    private void pixels(double u1, double u2, List<Double> columns) {
        double far = MINUS_BUS + 2 * halfPanel;
        drawing.outlined(
                part.name(),
                Stroke.FINE,
                frame.at(u1, MINUS_BUS),
                frame.at(u1, far),
                frame.at(u2, far),
                frame.at(u2, MINUS_BUS));
        for (double share : columns) {
            double v = MINUS_BUS + share * 2 * halfPanel;
            drawing.line(part.name(), Stroke.FINE, frame.at(u1, v), frame.at(u2, v));
        }
    }

    /** Where between the two sides the lines stand. */
    private static List<Double> shares(int cells) {
        int drawn = (int) Math.min(cells, 2 * HALF_PANEL / CLOSEST_LINES);
        List<Double> shares = new ArrayList<>();
        for (int line = 1; line < drawn; line++) {
            shares.add((double) line / drawn);
        }
        return shares;
    }

    /** Plus from its lead to its bus at {@code uPlus}, minus at {@code uMinus}, each along its own line. */
    private void feed(double uPlus, double vPlus, double uMinus, double vMinus) {
        double end = halfLength(PartKind.PANEL);
        drawing.line(
                part.name(),
                Stroke.LINE,
                frame.at(-end, 0),
                frame.at(-end, vPlus),
                frame.at(uPlus, vPlus),
                frame.at(uPlus, PLUS_BUS));
        drawing.dot(part.name(), frame.at(uPlus, PLUS_BUS), DOT);
        drawing.line(part.name(), Stroke.LINE, frame.at(end, 0), frame.at(end, vMinus), frame.at(uMinus, vMinus));
        over(uMinus, vMinus, PLUS_BUS, MINUS_BUS, HOP, Stroke.LINE);
        drawing.dot(part.name(), frame.at(uMinus, MINUS_BUS), DOT);
    }

    private void conductor(double u1, double v1, double u2, double v2) {
        drawing.line(part.name(), Stroke.STRONG, frame.at(u1, v1), frame.at(u2, v2));
    }
}
