package ampersheet.circuit;

/**
 * A place where a drawing probably says something else than its author meant. Parts are given by their place in
 * {@link Schematic#parts()}, because a name may be the very thing in doubt.
 */
public sealed interface Doubt {
    /** Index in the schematic of the part to look at first. */
    int part();

    /** An end touches the line of another part or wire between its ends: on paper a connection, here none. */
    record EndOnLine(int part, String terminal, GridPoint point, int line) implements Doubt {}

    /** Two lines run on top of each other for some way. */
    record Overlap(int part, int other) implements Doubt {}

    /** A wire that runs neither straight across nor straight up. */
    record DiagonalWire(int part) implements Doubt {}

    /** The name belongs to an earlier part, or an earlier node name, already. */
    record DuplicateName(int part, String name, int earlier) implements Doubt {}

    /** The node at this point has a name already, which it keeps. */
    record SecondNodeName(int part, String name, String kept) implements Doubt {}

    /** Every end of the part is on one node: on one point, or joined by wires. */
    record ShortedPart(int part, boolean onOnePoint) implements Doubt {}

    /** An end, or a ground or node name, that nothing else meets. */
    record LooseEnd(int part, String terminal, GridPoint point) implements Doubt {}
}
