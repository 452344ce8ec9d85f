package ampersheet.figure;

import ampersheet.chain.MatingEdge;
import java.util.ArrayList;
import java.util.List;

/** The contacts of an edge, place by place, and which sides carry them mirrored. */
record EdgeWords(MatingEdge edge) implements AssemblyWords {
    @Override
    public String summary() {
        return "A tile with " + English.count(edge.sides(), "side", "sides") + " and a row of "
                + English.count(edge.contacts(), "place", "places") + " for contacts on each.";
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int place = 1; place <= edge.contacts(); place++) {
            MatingEdge.Contact contact = edge.at(place);
            rows.add(List.of(Integer.toString(place), contact == null ? "no contact" : name(contact)));
        }
        return new Figure.Table(List.of("Place", "Contact"), rows);
    }

    @Override
    public List<String> walk() {
        List<String> sentences = new ArrayList<>();
        if (edge.plainSides() == edge.sides()) {
            sentences.add("The table gives the row of every side from left to right, as seen from outside the tile.");
            return sentences;
        }
        sentences.add("The table gives the row of a plain side from left to right, as seen from outside the tile.");
        for (int side = 0; side < edge.sides(); side++) {
            sentences.add("Side " + (side + 1) + " is "
                    + (edge.isPlain(side)
                            ? "plain: its row runs from left to right."
                            : "mirrored: its row runs from right to left."));
        }
        sentences.add("Sides are counted clockwise.");
        return sentences;
    }

    static String name(MatingEdge.Contact contact) {
        return switch (contact) {
            case SUPPLY -> "supply";
            case GROUND -> "ground";
            case OUTPUT -> "data output";
            case INPUT -> "data input";
        };
    }
}
