package ampersheet.figure;

import ampersheet.chain.PrismNet;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** How the tiles of a net lie and what is joined while it is flat; not what meets when it is folded. */
record NetWords(PrismNet net, Language language) implements AssemblyWords {
    @Override
    public String summary() {
        return language.say(
                "figure.net.summary",
                "tiles",
                language.count("figure.net.tiles", net.sides()),
                "sides",
                language.count("figure.net.sides", net.sides()));
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int tile = 1; tile <= net.tiles(); tile++) {
            List<String> row = new ArrayList<>(List.of(name(tile), joined(tile)));
            if (net.hasContacts()) {
                row.add(sides(tile));
            }
            rows.add(row);
        }
        List<String> head =
                new ArrayList<>(List.of(language.say("figure.net.head.tile"), language.say("figure.net.head.lies")));
        if (net.hasContacts()) {
            head.add(language.say("figure.net.head.sides"));
        }
        return new Figure.Table(head, rows);
    }

    @Override
    public List<String> walk() {
        return List.of(
                language.say("figure.net.band"),
                language.say(net.hasContacts() ? "figure.net.own-numbers" : "figure.net.lid-numbers"));
    }

    private String joined(int tile) {
        if (tile == 1) {
            return language.say("figure.net.leftmost");
        } else if (tile <= net.sides()) {
            return language.say("figure.net.right-of", "tile", sign(net, tile - 1));
        }
        return tile == net.sides() + 1
                ? language.say("figure.net.above", "tile", sign(net, net.top()))
                : language.say("figure.net.below", "tile", sign(net, net.bottom()));
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
            sides.add(language.say(
                    net.isPlain(place) ? "figure.net.plain" : "figure.net.mirrored",
                    "side",
                    Integer.toString(net.ownSide(place))));
        }
        return String.join(language.say("list.comma"), sides);
    }

    /** What stands on a tile. */
    String onIt(int tile) {
        return hasSign(net, tile)
                ? sign(net, tile)
                : language.say(isTop(net, tile) ? "figure.net.drawn.top-lid" : "figure.net.drawn.bottom-lid");
    }

    private String name(int tile) {
        return hasSign(net, tile)
                ? language.say("figure.net.tile", "tile", sign(net, tile))
                : language.say(isTop(net, tile) ? "figure.net.the-top-lid" : "figure.net.the-bottom-lid");
    }

    /** With contacts the lids have letters, too. */
    static boolean hasSign(PrismNet net, int tile) {
        return net.hasContacts() || tile <= net.sides();
    }

    static boolean isTop(PrismNet net, int tile) {
        return tile == net.sides() + 1;
    }

    /** With contacts the tiles have letters, so that their numbers are not taken for those of sides. */
    static String sign(PrismNet net, int tile) {
        return net.hasContacts() ? Character.toString((char) ('A' + tile - 1)) : Integer.toString(tile);
    }
}
