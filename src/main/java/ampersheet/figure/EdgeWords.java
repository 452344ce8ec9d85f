package ampersheet.figure;

import ampersheet.chain.MatingEdge;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** The contacts of an edge, place by place, and which sides carry them mirrored. */
record EdgeWords(MatingEdge edge, Language language) implements AssemblyWords {
    @Override
    public String summary() {
        return language.say(
                "figure.edge.summary",
                "sides",
                language.count("figure.edge.sides", edge.sides()),
                "places",
                language.count("figure.edge.places", edge.contacts()));
    }

    @Override
    public Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (int place = 1; place <= edge.contacts(); place++) {
            MatingEdge.Contact contact = edge.at(place);
            rows.add(List.of(
                    Integer.toString(place), contact == null ? language.say("figure.edge.no-contact") : name(contact)));
        }
        return new Figure.Table(
                List.of(language.say("figure.edge.head.place"), language.say("figure.edge.head.contact")), rows);
    }

    @Override
    public List<String> walk() {
        List<String> sentences = new ArrayList<>();
        if (edge.plainSides() == edge.sides()) {
            sentences.add(language.say("figure.edge.all-plain"));
            return sentences;
        }
        sentences.add(language.say("figure.edge.some-plain"));
        for (int side = 0; side < edge.sides(); side++) {
            sentences.add(language.say(
                    edge.isPlain(side) ? "figure.edge.plain" : "figure.edge.mirrored",
                    "side",
                    Integer.toString(side + 1)));
        }
        sentences.add(language.say("figure.edge.clockwise"));
        return sentences;
    }

    private String name(MatingEdge.Contact contact) {
        return language.say(
                switch (contact) {
                    case SUPPLY -> "figure.edge.supply";
                    case GROUND -> "figure.edge.ground";
                    case OUTPUT -> "figure.edge.output";
                    case INPUT -> "figure.edge.input";
                });
    }

    /** What stands on a contact. */
    String letter(MatingEdge.Contact contact) {
        return language.say(
                switch (contact) {
                    case SUPPLY -> "figure.edge.letter.supply";
                    case GROUND -> "figure.edge.letter.ground";
                    case OUTPUT -> "figure.edge.letter.output";
                    case INPUT -> "figure.edge.letter.input";
                });
    }

    /** What the letters are, in one line. */
    String legend() {
        return language.say(
                "figure.edge.legend.whole",
                "supply",
                letter(MatingEdge.Contact.SUPPLY),
                "ground",
                letter(MatingEdge.Contact.GROUND),
                "output",
                letter(MatingEdge.Contact.OUTPUT),
                "input",
                letter(MatingEdge.Contact.INPUT));
    }

    /** The same in shorter lines. */
    List<String> shortLegend() {
        return List.of(
                language.say(
                        "figure.edge.legend.power",
                        "supply",
                        letter(MatingEdge.Contact.SUPPLY),
                        "ground",
                        letter(MatingEdge.Contact.GROUND)),
                language.say(
                        "figure.edge.legend.data",
                        "output",
                        letter(MatingEdge.Contact.OUTPUT),
                        "input",
                        letter(MatingEdge.Contact.INPUT)),
                language.say("figure.edge.legend.arrows"));
    }
}
