package ampersheet.circuit;

import ampersheet.quantity.Dimension;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Every part that can be placed: its terminals, and the values it needs.
 *
 * <p>Two-terminal parts run {@code from} to {@code to}; current through a part is positive in that direction, except
 * that a source's current is what it delivers out of {@code to}, its plus.
 */
public enum PartKind {
  /** Ideal voltage source; {@code to} is plus. */
  SOURCE("source", List.of("from", "to"), Map.of("volts", Dimension.VOLTAGE), Map.of()),
  RESISTOR("resistor", List.of("from", "to"), Map.of("ohms", Dimension.RESISTANCE), Map.of()),
  /** Drawn as a box with its name (a motor winding, a module): a resistor to the solver. */
  LOAD("load", List.of("from", "to"), Map.of("ohms", Dimension.RESISTANCE), Map.of()),
  /** Draws a constant current from {@code from} to {@code to}. */
  SINK("sink", List.of("from", "to"), Map.of("amps", Dimension.CURRENT), Map.of()),
  /** Shockley with series resistance through the stated point; {@code from} is the anode. */
  LED("led", List.of("from", "to"), Map.of("volts", Dimension.VOLTAGE, "amps", Dimension.CURRENT),
      Map.of("series", Dimension.RESISTANCE, "emission", Dimension.ONE)),
  /** As the LED, other symbol; {@code from} is the anode. */
  DIODE("diode", List.of("from", "to"), Map.of("volts", Dimension.VOLTAGE, "amps", Dimension.CURRENT),
      Map.of("series", Dimension.RESISTANCE, "emission", Dimension.ONE)),
  /** {@code from} is the anode; conducts backwards from {@code volts} on, with slope resistance {@code slope}. */
  ZENER("zener", List.of("from", "to"), Map.of("volts", Dimension.VOLTAGE),
      Map.of("amps", Dimension.CURRENT, "slope", Dimension.RESISTANCE)),
  /** Two-terminal shunt reference; {@code from} is the anode, {@code to} the cathode held at {@code volts}. */
  REFERENCE("reference", List.of("from", "to"), Map.of("volts", Dimension.VOLTAGE),
      Map.of("minimum", Dimension.CURRENT, "slope", Dimension.RESISTANCE)),
  /** N-channel enhancement MOSFET as a switch: {@code on} ohms when gate-source reaches {@code threshold}. */
  NMOS("nmos", List.of("drain", "gate", "source"),
      Map.of("on", Dimension.RESISTANCE, "threshold", Dimension.VOLTAGE), Map.of()),
  /** P-channel, gate below source by {@code threshold} (a positive number). */
  PMOS("pmos", List.of("drain", "gate", "source"),
      Map.of("on", Dimension.RESISTANCE, "threshold", Dimension.VOLTAGE), Map.of()),
  /** {@code position} 0 puts the wiper at {@code from}, 1 at {@code to}. */
  TRIMPOT("trimpot", List.of("from", "to", "wiper"),
      Map.of("ohms", Dimension.RESISTANCE, "position", Dimension.ONE), Map.of()),
  /** Linear regulator: holds {@code out} at {@code volts} above {@code ground}; what leaves at out enters at in. */
  REGULATOR("regulator", List.of("in", "out", "ground"), Map.of("volts", Dimension.VOLTAGE),
      Map.of("quiescent", Dimension.CURRENT)),
  /** Carries no direct current. */
  CAPACITOR("capacitor", List.of("from", "to"), Map.of("farads", Dimension.CAPACITANCE), Map.of()),
  /** Ideal: carries no current; drawn as a circle with V. */
  VOLTMETER("voltmeter", List.of("from", "to"), Map.of(), Map.of()),
  /** Ideal: drops no voltage; drawn as a circle with A. */
  AMMETER("ammeter", List.of("from", "to"), Map.of(), Map.of()),
  WIRE("wire", List.of("from", "to"), Map.of(), Map.of()),
  /** The reference node, 0 V. */
  GROUND("ground", List.of("at"), Map.of(), Map.of()),
  /** Names the node at a point, so that {@code voltage(name)} can be asked; drawn as a dot with the name. */
  NODE("node", List.of("at"), Map.of(), Map.of());

  private final String word;
  private final List<String> terminals;
  private final Map<String, Dimension> needed;
  private final Map<String, Dimension> optional;

  PartKind(String word, List<String> terminals, Map<String, Dimension> needed, Map<String, Dimension> optional) {
    this.word = word;
    this.terminals = terminals;
    this.needed = needed;
    this.optional = optional;
  }

  /** The key that names this kind in a template. */
  public String word() {
    return word;
  }

  public List<String> terminals() {
    return terminals;
  }

  /** Dimension of each value that must be given. */
  public Map<String, Dimension> needed() {
    return needed;
  }

  /** Dimension of each value that may be given. */
  public Map<String, Dimension> optional() {
    return optional;
  }

  public static Optional<PartKind> named(String word) {
    for (PartKind kind : values()) {
      if (kind.word.equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
