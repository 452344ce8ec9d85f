package ampersheet.sheet;

import ampersheet.circuit.PartKind;
import ampersheet.language.Language;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** An end of a part whose ends are not alike. */
enum PartEnd {
    MINUS("−"),
    PLUS("+"),
    ANODE("A"),
    CATHODE("K"),
    GATE("sheet.card.end.gate", "sheet.card.its.gate"),
    DRAIN("sheet.card.end.drain", "sheet.card.its.drain"),
    SOURCE("sheet.card.end.source", "sheet.card.its.source"),
    BASE("sheet.card.end.base", "sheet.card.its.base"),
    COLLECTOR("sheet.card.end.collector", "sheet.card.its.collector"),
    EMITTER("sheet.card.end.emitter", "sheet.card.its.emitter"),
    IN("sheet.card.end.in", "sheet.card.its.in"),
    OUT("sheet.card.end.out", "sheet.card.its.out"),
    GROUND("sheet.card.end.ground", "sheet.card.its.ground"),
    LOWER("sheet.card.end.lower", "sheet.card.its.lower"),
    UPPER("sheet.card.end.upper", "sheet.card.its.upper"),
    WIPER("sheet.card.end.wiper", "sheet.card.its.wiper");

    private final String sign;
    private final String word;
    private final String own;

    /** @param sign that parts and knobs have in every language */
    PartEnd(String sign) {
        this.sign = sign;
        this.word = "";
        this.own = "";
    }

    /** @param own key of what it is called as the end of the part that is spoken of */
    PartEnd(String word, String own) {
        this.sign = "";
        this.word = word;
        this.own = own;
    }

    /** Of every terminal; none if the ends of such parts are alike. */
    static Map<String, PartEnd> of(PartKind kind) {
        return switch (kind) {
            case SOURCE -> Map.of("from", MINUS, "to", PLUS);
            case LED, DIODE, ZENER, REFERENCE -> Map.of("from", ANODE, "to", CATHODE);
            case TRIMPOT -> Map.of("from", LOWER, "to", UPPER, "wiper", WIPER);
            case NMOS, PMOS, NPN, REGULATOR -> byName(kind);
            default -> Map.of();
        };
    }

    private static Map<String, PartEnd> byName(PartKind kind) {
        Map<String, PartEnd> ends = new LinkedHashMap<>();
        kind.terminals().forEach(terminal -> ends.put(terminal, named(terminal)));
        return ends;
    }

    private static PartEnd named(String terminal) {
        return switch (terminal) {
            case "gate" -> GATE;
            case "drain" -> DRAIN;
            case "source" -> SOURCE;
            case "base" -> BASE;
            case "collector" -> COLLECTOR;
            case "emitter" -> EMITTER;
            case "in" -> IN;
            case "out" -> OUT;
            case "ground" -> GROUND;
            default -> throw new IllegalStateException("a terminal without a name: " + terminal);
        };
    }

    static boolean areNamed(PartKind kind) {
        return !of(kind).isEmpty();
    }

    /** Of this terminal, if it has a name. */
    static Optional<PartEnd> of(PartKind kind, String terminal) {
        return Optional.ofNullable(of(kind).get(terminal));
    }

    /** Such as {@code K} or {@code gate}. */
    String said(Language language) {
        return sign.isEmpty() ? language.say(word) : sign;
    }

    /** Such as {@code its K} or {@code its gate}. */
    String itsOwn(Language language) {
        return sign.isEmpty() ? language.say(own) : language.say("sheet.card.its.sign", "end", sign);
    }
}
