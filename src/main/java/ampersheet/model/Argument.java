package ampersheet.model;

import ampersheet.quantity.Dimension;
import java.util.Optional;

/** What an argument of a measure is: the name of a thing in the model, or a quantity. */
public enum Argument {
    /** A named node of the circuit. */
    CIRCUIT_NODE("node", "a named node of the circuit", null),
    /** A part of the circuit. */
    PART("part", "a part of the circuit", null),
    STRIP("strip", "a strip of the circuit", null),
    PANEL("panel", "a panel of the circuit", null),
    STRIP_OR_PANEL("strip or panel", "a strip or panel of the circuit", null),
    /** An ambient or node of the heat network. */
    HEAT_NODE("node", "a node of the heat network", null),
    /** A resistance or loss of the heat network. */
    HEAT_FLOW("resistance or loss", "a resistance or loss of the heat network", null),
    TIME("time", "a time", Dimension.TIME),
    VOLTAGE("voltage", "a voltage", Dimension.VOLTAGE),
    TEMPERATURE("temperature", "a temperature", Dimension.TEMPERATURE),
    TAP("tap", "a plain number", Dimension.ONE),
    COLUMN("x", "a plain number", Dimension.ONE),
    ROW("y", "a plain number", Dimension.ONE),
    TURN("turn", "a plain number", Dimension.ONE),
    PLACE("place", "a plain number", Dimension.ONE),
    SIDE("side", "a plain number", Dimension.ONE),
    ARM("arm", "a plain number", Dimension.ONE),
    TILE("tile", "a plain number", Dimension.ONE);

    private final String word;
    private final String told;
    private final Dimension dimension;

    Argument(String word, String told, Dimension dimension) {
        this.word = word;
        this.told = told;
        this.dimension = dimension;
    }

    /** As it stands in the shape of a measure, such as {@code voltage(node, node)}. */
    public String word() {
        return word;
    }

    /** With its article, for a message. */
    public String told() {
        return told;
    }

    /** Empty for the name of a thing. */
    public Optional<Dimension> dimension() {
        return Optional.ofNullable(dimension);
    }
}
