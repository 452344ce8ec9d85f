package ampersheet.problem;

import ampersheet.template.ExtraLowVoltage;
import java.util.Optional;

/**
 * The boxes that stand where work can hurt: hazard first, then what to do. In the order in which a sheet shows them. None
 * of them replaces local rules or the judgement of a licensed person, and the first one says so.
 */
public enum Caution {
  EXTRA_LOW_VOLTAGE("extra-low-voltage", "Extra-low voltage only",
      "Higher voltages can kill. Build and measure this with a certified supply, set to the voltage of the circuit and never"
          + " above " + ExtraLowVoltage.LIMIT + " DC. Mains wiring is outside these sheets: it is work for a licensed person"
          + " under the rules of your country.",
      "Use a certified supply, set to the voltage of the circuit and never above " + ExtraLowVoltage.LIMIT + " DC."),
  LITHIUM_CELLS("lithium-cells", "Lithium cells can burn",
      "A lithium cell that is shorted, overcharged, bent or punctured can catch fire. Charge it only with a charger made"
          + " for it, on a surface that does not burn, and stay with it. Fit a fuse right beside the cell. Never use a swollen"
          + " or dented cell; follow your local rules for carrying and disposal.",
      "Charge a lithium cell only with a charger made for it and stay with it. Fit a fuse right beside it. Never use a"
          + " swollen or dented cell."),
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
          + " while the circuit is on; switch off and let them cool first. Fit resistors rated for at least twice the power that"
          + " they turn into heat.",
      "Do not touch the resistors while the circuit is on. Fit resistors rated for at least twice the power that they turn"
          + " into heat."),
  LED_EYES("led-eyes", "Bright light",
      "An LED as bright as here can hurt the eyes, even when it is seen from the side. Do not look into the LED: aim it"
          + " away or put a diffuser in front before switching on.",
      "Do not look into the LED: aim it away or put a diffuser in front before switching on."),
  INDUCTIVE_LOAD("inductive-load", "A coil strikes back when it is switched off",
      "The coil of a relay or a magnet makes a high voltage spike the moment its current is cut. Behind a single switch or"
          + " transistor it needs a flyback diode across it before the first test. Never unplug it while it is on, and keep"
          + " fingers off the terminals.",
      "A coil behind a single switch or transistor needs a flyback diode across it before the first test. Never unplug it"
          + " while it is on."),
  MOTOR_DRIVER("motor-driver", "A motor strikes back when it is unplugged",
      "A motor's winding makes a high voltage spike the moment its current is cut. The driver gives that current a path of"
          + " its own: fit no flyback diode across the winding. Never plug or unplug the motor while the driver is on, and"
          + " keep fingers off the terminals.",
      "Fit no flyback diode across a winding on a driver. Never plug or unplug the motor while the driver is on."),
  MOTOR_ON_SUPPLY("motor-on-supply", "A motor strikes back when it is switched off",
      "A motor's winding makes a high voltage spike the moment its current is cut. Switch the motor on and off at the"
          + " supply: never plug or unplug it while it is on, and keep fingers off the terminals and off what turns.",
      "Switch a motor on and off at its supply: never plug or unplug it while it is on."),
  CAPACITOR("capacitor", "Capacitors stay charged",
      "A capacitor can give a spark or a burn after the supply is off. Discharge it through a resistor and measure"
          + " before touching. Check the polarity of an electrolytic capacitor before switching on: reversed, it can burst.",
      "Discharge a capacitor through a resistor and measure before touching; check the polarity before switching on."),
  BENCH_SUPPLY("bench-supply", "Before you switch on",
      "A wrong setting or swapped leads can destroy parts and burn you. Set voltage and current limit first, check the"
          + " polarity, then connect. Switch off before changing the wiring.",
      "Set voltage and current limit first, check the polarity, then connect. Switch off before changing the wiring."),
  BATTERY("battery", "Before you connect the battery",
      "A shorted battery gives enough current to burn you and to set wires on fire; swapped leads can destroy parts. Fit a"
          + " fuse at the battery and check the polarity, then connect. Take the battery off before changing the wiring.",
      "Fit a fuse at the battery and check the polarity, then connect. Take the battery off before changing the wiring."),
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
