package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Language;

/** What parts and their ends are called in words. */
final class PartWords {
    private final Language language;

    PartWords(Language language) {
        this.language = language;
    }

    /** What a part is, as it is drawn: {@code resistor}. */
    String name(PlacedPart part) {
        return language.say(
                switch (part.kind()) {
                    case SOURCE -> "figure.part.source";
                    case RESISTOR -> "figure.part.resistor";
                    case LOAD ->
                        switch (part.word(PartSymbol.SYMBOL)) {
                            case "fuse" -> "figure.part.fuse";
                            case "motor" -> "figure.part.motor";
                            case "lamp" -> "figure.part.lamp";
                            default -> "figure.part.load";
                        };
                    case CABLE -> "figure.part.cable";
                    case SINK -> "figure.part.sink";
                    case LED -> "figure.part.led";
                    case DIODE -> "figure.part.diode";
                    case ZENER -> "figure.part.zener";
                    case REFERENCE -> "figure.part.reference";
                    case NMOS -> "figure.part.nmos";
                    case PMOS -> "figure.part.pmos";
                    case NPN -> "figure.part.npn";
                    case SWITCH -> "figure.part.switch";
                    case TRIMPOT -> "figure.part.trimpot";
                    case REGULATOR -> "figure.part.regulator";
                    case CAPACITOR -> "figure.part.capacitor";
                    case STRIP -> "figure.part.strip";
                    case PANEL -> "figure.part.panel";
                    case VOLTMETER -> "figure.part.voltmeter";
                    case AMMETER -> "figure.part.ammeter";
                    case WIRE, GROUND, NODE -> throw noComponent(part.kind());
                });
    }

    /** So many of a kind: {@code two resistors}. Loads of one symbol are a kind of their own. */
    String counted(PlacedPart one, int count) {
        return language.count(
                switch (one.kind()) {
                    case SOURCE -> "figure.circuit.of.source";
                    case RESISTOR -> "figure.circuit.of.resistor";
                    case LOAD ->
                        switch (one.word(PartSymbol.SYMBOL)) {
                            case "fuse" -> "figure.circuit.of.fuse";
                            case "motor" -> "figure.circuit.of.motor";
                            case "lamp" -> "figure.circuit.of.lamp";
                            default -> "figure.circuit.of.load";
                        };
                    case CABLE -> "figure.circuit.of.cable";
                    case SINK -> "figure.circuit.of.sink";
                    case LED -> "figure.circuit.of.led";
                    case DIODE -> "figure.circuit.of.diode";
                    case ZENER -> "figure.circuit.of.zener";
                    case REFERENCE -> "figure.circuit.of.reference";
                    case NMOS -> "figure.circuit.of.nmos";
                    case PMOS -> "figure.circuit.of.pmos";
                    case NPN -> "figure.circuit.of.npn";
                    case SWITCH -> "figure.circuit.of.switch";
                    case TRIMPOT -> "figure.circuit.of.trimpot";
                    case REGULATOR -> "figure.circuit.of.regulator";
                    case CAPACITOR -> "figure.circuit.of.capacitor";
                    case STRIP -> "figure.circuit.of.strip";
                    case PANEL -> "figure.circuit.of.panel";
                    case VOLTMETER -> "figure.circuit.of.voltmeter";
                    case AMMETER -> "figure.circuit.of.ammeter";
                    case WIRE, GROUND, NODE -> throw noComponent(one.kind());
                },
                count);
    }

    /** {@code the cathode of D1}. */
    String end(PlacedPart part, String terminal, String caption) {
        return language.say(End.of(part, terminal).of, "part", caption);
    }

    /** {@code its gate at node out}, of a part with three terminals. */
    String joins(PlacedPart part, String terminal, String node) {
        return language.say(End.of(part, terminal).joins, "node", node);
    }

    private static IllegalArgumentException noComponent(PartKind kind) {
        return new IllegalArgumentException("a netlist holds no " + kind.word());
    }

    /** What a terminal is called: by its function, else by where the drawing has it. */
    private enum End {
        PLUS("figure.end.plus"),
        MINUS("figure.end.minus"),
        ANODE("figure.end.anode"),
        CATHODE("figure.end.cathode"),
        INFLOW("figure.end.inflow"),
        OUTFLOW("figure.end.outflow"),
        DRAIN("figure.end.drain", "figure.joins.drain"),
        GATE("figure.end.gate", "figure.joins.gate"),
        SOURCE("figure.end.source", "figure.joins.source"),
        COLLECTOR("figure.end.collector", "figure.joins.collector"),
        BASE("figure.end.base", "figure.joins.base"),
        EMITTER("figure.end.emitter", "figure.joins.emitter"),
        INPUT("figure.end.input", "figure.joins.input"),
        OUTPUT("figure.end.output", "figure.joins.output"),
        GROUND("figure.end.ground", "figure.joins.ground"),
        WIPER("figure.end.wiper", "figure.joins.wiper"),
        LEFT("figure.end.left-end", "figure.joins.left-end"),
        RIGHT("figure.end.right-end", "figure.joins.right-end"),
        TOP("figure.end.top-end", "figure.joins.top-end"),
        BOTTOM("figure.end.bottom-end", "figure.joins.bottom-end");

        private final String of;
        private final String joins;

        /** Of parts with two terminals, which are never told to join in. */
        End(String of) {
            this(of, "");
        }

        End(String of, String joins) {
            this.of = of;
            this.joins = joins;
        }

        static End of(PlacedPart part, String terminal) {
            boolean from = terminal.equals("from");
            return switch (part.kind()) {
                case SOURCE -> from ? MINUS : PLUS;
                case VOLTMETER, AMMETER -> from ? PLUS : MINUS;
                case LED, DIODE, ZENER, REFERENCE -> from ? ANODE : CATHODE;
                case SINK -> from ? INFLOW : OUTFLOW;
                case STRIP, PANEL -> terminal.equals("plus") ? PLUS : MINUS;
                case NMOS, PMOS ->
                    switch (terminal) {
                        case "drain" -> DRAIN;
                        case "gate" -> GATE;
                        default -> SOURCE;
                    };
                case NPN ->
                    switch (terminal) {
                        case "collector" -> COLLECTOR;
                        case "base" -> BASE;
                        default -> EMITTER;
                    };
                case REGULATOR ->
                    switch (terminal) {
                        case "in" -> INPUT;
                        case "out" -> OUTPUT;
                        default -> GROUND;
                    };
                case TRIMPOT -> terminal.equals("wiper") ? WIPER : drawn(part, terminal);
                case RESISTOR, LOAD, CABLE, CAPACITOR, SWITCH -> drawn(part, terminal);
                case WIRE, GROUND, NODE -> throw noComponent(part.kind());
            };
        }

        private static End drawn(PlacedPart part, String terminal) {
            GridPoint here = part.end(terminal);
            GridPoint there = part.end(terminal.equals("from") ? "to" : "from");
            int dx = here.x() - there.x();
            int dy = here.y() - there.y();
            if (Math.abs(dx) > Math.abs(dy)) {
                return dx < 0 ? LEFT : RIGHT;
            }
            return dy > 0 ? TOP : BOTTOM;
        }
    }
}
