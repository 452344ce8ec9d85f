package ampersheet.problem;

import java.util.Optional;

/**
 * The boxes that stand where work can hurt: hazard first, then what to do. In the order in which a sheet shows them. None
 * of them replaces local rules or the judgement of a licensed person, and the first one says so.
 */
public enum Caution {
  EXTRA_LOW_VOLTAGE("extra-low-voltage", "Extra-low voltage only",
      "Higher voltages can kill. Build and measure this with a certified supply of at most 60 V DC. Mains"
          + " wiring is outside these sheets: it is work for a licensed person under the rules of your country.",
      "Use a certified supply of at most 60 V DC."),
  LITHIUM_CELLS("lithium-cells", "Lithium cells can burn",
      "A lithium cell that is shorted, overcharged, bent or punctured can catch fire. Charge it only with a charger made"
          + " for it, on a surface that does not burn, and stay with it. Never use a swollen or dented cell; follow your"
          + " local rules for carrying and disposal.",
      "Charge a lithium cell only with a charger made for it and stay with it. Never use a swollen or dented cell."),
  LED_STRIP_FUSE("led-strip-fuse", "A short can set wires on fire",
      "A large supply may not switch off when there is a short at the far end of thin wires. Fit a fuse at the supply: rated"
          + " above the load's current, and no larger than your local wiring rules allow for the thinnest wire.",
      "Fit a fuse at the supply: rated above the load's current, and no larger than your local wiring rules allow for the"
          + " thinnest wire."),
  HOT_PARTS("hot-parts", "Hot parts",
      "Parts in this circuit can get hot enough to burn skin. Do not touch the parts while the circuit is on; switch off"
          + " and let them cool first.",
      "Do not touch the parts while the circuit is on; switch off and let them cool first."),
  HOT_RESISTORS("hot-resistors", "Hot resistors",
      "Resistors in this circuit, and what is near them, can get hot enough to burn skin. Do not touch the resistors"
          + " while the circuit is on; switch off and let them cool first. Fit resistors rated for at least twice the power worked"
          + " out here.",
      "Do not touch the resistors while the circuit is on. Fit resistors rated for at least twice the power worked out"
          + " here."),
  LED_EYES("led-eyes", "Bright light",
      "An LED as bright as here can hurt the eyes, even when it is seen from the side. Do not look into the LED: aim it"
          + " away or put a diffuser in front before switching on.",
      "Do not look into the LED: aim it away or put a diffuser in front before switching on."),
  INDUCTIVE_LOAD("inductive-load", "A coil strikes back when it is switched off",
      "A motor, relay or coil makes a high voltage spike the moment its current is cut. A coil with a single"
          + " switch needs a flyback diode across it before the first test. A motor on a bridge driver must not have one:"
          + " the driver brings its own. Never plug or unplug a motor while it is on, and keep fingers off the terminals.",
      "A coil with a single switch needs a flyback diode before the first test; a bridge driver brings its own. Never plug"
          + " or unplug a motor while it is on."),
  CAPACITOR("capacitor", "Capacitors stay charged",
      "A capacitor can give a spark or a burn after the supply is off. Discharge it through a resistor and measure"
          + " before touching. Check the polarity of an electrolytic capacitor before switching on: reversed, it can burst.",
      "Discharge a capacitor through a resistor and measure before touching; check the polarity before switching on."),
  BENCH_SUPPLY("bench-supply", "Before you switch on",
      "A wrong setting or swapped leads can destroy parts and burn you. Set voltage and current limit first, check the"
          + " polarity, then connect. Switch off before changing the wiring.",
      "Set voltage and current limit first, check the polarity, then connect. Switch off before changing the wiring."),
  SOLDERING("soldering", "Soldering",
      "The tip is at about 400 °C and the fumes irritate the lungs. Wear eye protection, use a stand and fume"
          + " extraction, and wash your hands afterwards.",
      "Wear eye protection, use a stand and fume extraction, and wash your hands afterwards.");

  private final String id;
  private final String heading;
  private final String text;
  private final String action;

  Caution(String id, String heading, String text, String action) {
    this.id = id;
    this.heading = heading;
    this.text = text;
    this.action = action;
  }

  /** As written in a template. */
  public String id() {
    return id;
  }

  public String heading() {
    return heading;
  }

  /** Two or three sentences of plain text: the hazard, then the action. */
  public String text() {
    return text;
  }

  /** What to do, for where the hazard comes up again and its whole box is pages back. */
  public String action() {
    return action;
  }

  public static Optional<Caution> named(String id) {
    for (Caution caution : values()) {
      if (caution.id.equals(id)) {
        return Optional.of(caution);
      }
    }
    return Optional.empty();
  }
}
