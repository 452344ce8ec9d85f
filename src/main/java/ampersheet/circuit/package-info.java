/**
 * Direct-current circuits: parts on a grid, the netlist that coinciding ends make, and the numeric operating point.
 * Returns facts (solved, floating at node X, not settled); the room that knows the author's line makes the sentence.
 * Start reading at {@link ampersheet.circuit.OperatingPointSolver}.
 */
package ampersheet.circuit;
