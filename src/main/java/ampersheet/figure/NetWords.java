package ampersheet.figure;

import ampersheet.chain.PrismNet;
import java.util.ArrayList;
import java.util.List;

/** How the tiles of a net lie and what is joined while it is flat; not what meets when it is folded. */
record NetWords(PrismNet net) implements AssemblyWords {
    @Override
    public String summary() {
        return "A flat net: a band of " + English.count(net.sides(), "square tile", "square tiles")
                + " in a row and two lids with " + English.count(net.sides(), "side", "sides") + ".";
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int tile = 1; tile <= net.tiles(); tile++) {
            List<String> row = new ArrayList<>(List.of(name(net, tile), joined(tile)));
            if (net.hasContacts()) {
                row.add(sides(tile));
            }
            rows.add(row);
        }
        List<String> head = new ArrayList<>(List.of("Tile", "Lies"));
        if (net.hasContacts()) {
            head.add("Sides clockwise, from the top");
        }
        return new Figure.Table(head, rows);
    }

    @Override
    public List<String> walk() {
        List<String> sentences = new ArrayList<>();
        sentences.add("The band runs from left to right; neighbours are joined where they touch.");
        if (net.hasContacts()) {
            sentences.add("Each tile has the numbers of its sides written on it; a bar marks its plain sides.");
        } else {
            sentences.add("The sides of a lid are numbered clockwise; side 1 is where it is joined to the band.");
        }
        return sentences;
    }

    private String joined(int tile) {
        return tile <= net.sides()
                ? tile == 1 ? "at the left end of the band" : "to the right of " + name(net, tile - 1)
                : tile == net.sides() + 1 ? "above " + name(net, net.top()) : "below " + name(net, net.bottom());
    }

    /**
     * From the side that lies at the top; that of the lower lid is joined to the band, that of the upper one is not.
     */
    private String sides(int tile) {
        int count = net.sidesOf(tile);
        int first = tile == net.sides() + 1 ? 1 + count / 2 : 1;
        List<String> sides = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            PrismNet.Place place = new PrismNet.Place(tile, (first - 1 + i) % count + 1);
            sides.add(net.ownSide(place) + (net.isPlain(place) ? " plain" : " mirrored"));
        }
        return String.join(", ", sides);
    }

    /** With contacts the tiles have letters, so that their numbers are not taken for those of sides. */
    static String letter(PrismNet net, int tile) {
        return net.hasContacts()
                ? Character.toString((char) ('A' + tile - 1))
                : tile <= net.sides() ? Integer.toString(tile) : tile == net.sides() + 1 ? "top lid" : "bottom lid";
    }

    static String name(PrismNet net, int tile) {
        return net.hasContacts() || tile <= net.sides() ? "tile " + letter(net, tile) : "the " + letter(net, tile);
    }
}
