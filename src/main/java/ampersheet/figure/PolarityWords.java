package ampersheet.figure;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Language;
import java.util.Map;

/** Which way round a part lies, and what else of it the ends alone do not tell. */
final class PolarityWords {
    private final Language language;

    PolarityWords(Language language) {
        this.language = language;
    }

    /** @param at what the node at each of its terminals is called */
    String of(PlacedPart part, Map<String, String> at) {
        return switch (part.kind()) {
            case SOURCE -> language.say("figure.polarity.plus", "plus", at.get("to"));
            case VOLTMETER, AMMETER -> language.say("figure.polarity.plus", "plus", at.get("from"));
            case LED, DIODE, ZENER, REFERENCE ->
                language.say("figure.polarity.diode", "anode", at.get("from"), "cathode", at.get("to"));
            case SINK -> language.say("figure.polarity.sink", "from", at.get("from"), "to", at.get("to"));
            case NMOS, PMOS ->
                language.say(
                        channel(part), "drain", at.get("drain"), "gate", at.get("gate"), "source", at.get("source"));
            case NPN ->
                language.say(
                        "figure.polarity.npn",
                        "collector",
                        at.get("collector"),
                        "base",
                        at.get("base"),
                        "emitter",
                        at.get("emitter"));
            case SWITCH -> state(part);
            case TRIMPOT -> language.say("figure.polarity.wiper", "wiper", at.get("wiper"));
            case REGULATOR ->
                language.say(
                        "figure.polarity.regulator",
                        "input",
                        at.get("in"),
                        "output",
                        at.get("out"),
                        "ground",
                        at.get("ground"));
            case STRIP ->
                language.say(
                        "figure.polarity.strip",
                        "plus",
                        at.get("plus"),
                        "minus",
                        at.get("minus"),
                        "taps",
                        language.count("figure.polarity.taps", count(part, PartValue.TAPS)),
                        "fed",
                        fed(part));
            case PANEL -> panel(part, at);
            case RESISTOR, LOAD, CABLE, CAPACITOR, WIRE, GROUND, NODE -> language.say("figure.polarity.none");
        };
    }

    private static String channel(PlacedPart part) {
        if (!part.word("body").equals("shown")) {
            return "figure.polarity.channel";
        }
        return part.kind() == PartKind.NMOS
                ? "figure.polarity.channel-source-to-drain"
                : "figure.polarity.channel-drain-to-source";
    }

    private String panel(PlacedPart part, Map<String, String> at) {
        String[] filled = {
            "plus",
            at.get("plus"),
            "minus",
            at.get("minus"),
            "rows",
            language.count("figure.polarity.rows", count(part, PartValue.ROWS)),
            "pixels",
            language.count("figure.polarity.pixels", count(part, PartValue.COLUMNS)),
            "fed",
            fed(part)
        };
        return language.say(
                part.values().containsKey(PartValue.CROSS)
                        ? "figure.polarity.panel-joined"
                        : "figure.polarity.panel-apart",
                filled);
    }

    /** Where a strip or panel is fed. */
    String fed(PlacedPart part) {
        return language.say(
                switch (part.word("feed")) {
                    case "start" -> "figure.fed.start";
                    case "end" -> "figure.fed.end";
                    case "middle" -> "figure.fed.middle";
                    default -> "figure.fed.both-ends";
                });
    }

    /** Of a switch. */
    String state(PlacedPart part) {
        return language.say(PartSymbol.isClosed(part) ? "figure.switch.closed" : "figure.switch.open");
    }

    private static int count(PlacedPart part, PartValue value) {
        return part.values().get(value).intValue();
    }
}
