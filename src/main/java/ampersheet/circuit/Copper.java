package ampersheet.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One of the two equal conductors of a strip or panel: sections of copper that join its feed, its taps and, of a panel,
 * the joints of its bus with its rows. Points are numbers: the feed is 0, the taps are 1, 2, …, of a panel row by row
 * from the top; the joints follow.
 */
record Copper(int taps, int joints, List<Section> sections) {
    static final List<String> FEEDS = List.of("start", "end", "both ends", "middle");

    private static final int FEED = 0;
    /** Loads; solving must not take a stranger's template for ever. */
    private static final int MOST = 2_000;

    /** @param ohms 0 or more */
    record Section(int from, int to, double ohms) {}

    Copper {
        sections = List.copyOf(sections);
    }

    static boolean isIn(PlacedPart part) {
        return part.kind() == PartKind.STRIP || part.kind() == PartKind.PANEL;
    }

    /** What is wrong with the values of the strip or panel, as the rest of a sentence that starts with it. */
    static Optional<String> fault(PlacedPart part) {
        int loads = 1;
        for (PartValue count :
                part.kind() == PartKind.STRIP ? List.of(PartValue.TAPS) : List.of(PartValue.COLUMNS, PartValue.ROWS)) {
            double value = part.values().get(count);
            if (!(value >= 1 && value <= MOST && value == Math.rint(value))) {
                return Optional.of("has " + value + " " + count + "; needs a whole number from 1 to " + MOST);
            }
            loads = ((int) value) * loads;
        }
        if (loads > MOST) {
            return Optional.of("has " + loads + " pixels; no more than " + MOST + " are solved");
        }
        if (part.values().containsKey(PartValue.AMPS) == part.values().containsKey(PartValue.LOAD_OHMS)) {
            return Optional.of("needs either amps or load_ohms, for what each of its loads draws");
        }
        return Optional.empty();
    }

    /** Of a strip or panel without fault. */
    static Copper of(PlacedPart part) {
        double ohms = part.values().get(PartValue.OHMS);
        if (part.kind() == PartKind.STRIP) {
            int taps = part.values().get(PartValue.TAPS).intValue();
            List<Section> sections = new ArrayList<>();
            run(sections, part.word("feed"), 1, taps, ohms);
            return new Copper(taps, 0, sections);
        }
        return panel(
                part,
                part.values().get(PartValue.COLUMNS).intValue(),
                part.values().get(PartValue.ROWS).intValue(),
                ohms);
    }

    private static Copper panel(PlacedPart part, int columns, int rows, double ohms) {
        double bus = part.values().get(PartValue.BUS);
        int joints = bus == 0 ? 0 : rows;
        List<Section> sections = new ArrayList<>();
        if (joints > 0) {
            run(sections, part.word("feed"), columns * rows + 1, rows, bus);
        }
        for (int row = 0; row < rows; row++) {
            int first = row * columns + 1;
            sections.add(new Section(joints > 0 ? columns * rows + 1 + row : FEED, first, ohms));
            chain(sections, first, columns, ohms);
        }
        if (part.values().containsKey(PartValue.CROSS)) {
            for (int pixel = 1; pixel <= columns * (rows - 1); pixel++) {
                sections.add(new Section(pixel, pixel + columns, part.values().get(PartValue.CROSS)));
            }
        }
        return new Copper(columns * rows, joints, sections);
    }

    /** Points in a row, fed where {@code feed} says; at an end there is a section between feed and first point. */
    private static void run(List<Section> sections, String feed, int first, int count, double ohms) {
        int last = first + count - 1;
        if (!feed.equals("middle")) {
            if (!feed.equals("end")) {
                sections.add(new Section(FEED, first, ohms));
            }
            if (!feed.equals("start")) {
                sections.add(new Section(FEED, last, ohms));
            }
            chain(sections, first, count, ohms);
            return;
        }
        int half = count / 2;
        chain(sections, first, count - half, ohms);
        chain(sections, last - half + 1, half, ohms);
        if (count % 2 == 1) {
            sections.add(new Section(FEED, first + half, 0));
            if (half > 0) {
                sections.add(new Section(first + half, first + half + 1, ohms));
            }
        } else {
            sections.add(new Section(FEED, first + half - 1, ohms / 2));
            sections.add(new Section(FEED, first + half, ohms / 2));
        }
    }

    private static void chain(List<Section> sections, int first, int count, double ohms) {
        for (int i = 1; i < count; i++) {
            sections.add(new Section(first + i - 1, first + i, ohms));
        }
    }

    /** The node of a point; no name in a template has a blank. */
    static String node(PlacedPart part, String conductor, int point) {
        return point == FEED ? conductor : part.name() + " " + conductor + " " + point;
    }

    /** The netlist with the nodes inside of its strips and panels, after the others. */
    static Netlist withInsides(Netlist netlist) {
        List<String> nodes = new ArrayList<>(netlist.nodes());
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            if (isIn(part) && fault(part).isEmpty()) {
                Copper copper = of(part);
                for (String conductor : part.kind().terminals()) {
                    for (int point = 1; point <= copper.taps() + copper.joints(); point++) {
                        nodes.add(node(part, conductor, point));
                    }
                }
            }
        }
        return nodes.size() == netlist.nodes().size()
                ? netlist
                : new Netlist(netlist.parts(), nodes, netlist.nodeAt(), netlist.doubts());
    }
}
