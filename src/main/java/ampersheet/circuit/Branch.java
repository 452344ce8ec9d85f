package ampersheet.circuit;

/**
 * One path of current inside a part.
 *
 * @param part index in {@link Netlist#parts()}
 * @param from node number; the reference is 0
 * @param fromTerminal where the part takes this current in
 */
record Branch(int part, String fromTerminal, int from, String toTerminal, int to, Law law) {
    Branch with(Law other) {
        return new Branch(part, fromTerminal, from, toTerminal, to, other);
    }
}
