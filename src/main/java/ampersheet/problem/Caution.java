package ampersheet.problem;

import ampersheet.template.ExtraLowVoltage;
import java.util.Optional;

/**
 * The boxes that stand where work can hurt: hazard first, then what to do. In the order in which a sheet shows them.
 * None of them replaces local rules or the judgement of a licensed person, and the first one says so.
 */
public enum Caution {
    EXTRA_LOW_VOLTAGE(
            "extra-low-voltage",
            "Extra-low voltage only",
            "Higher voltages can kill. Build and measure this with a supply that is certified as safe to touch at "
                    + "its output, set"
                    + " to the voltage of the circuit and never above " + ExtraLowVoltage.LIMIT
                    + " DC. Mains wiring is outside these"
                    + " sheets: it is work for a licensed person under the rules of your country.",
            "Use a supply that is certified as safe to touch at its output, set to the voltage of the circuit and "
                    + "never above "
                    + ExtraLowVoltage.LIMIT + " DC."),
    LITHIUM_CELLS(
            "lithium-cells",
            "Lithium cells can burn",
            "A lithium cell that is shorted, overcharged, bent or punctured can catch fire. Charge it only with a "
                    + "charger made"
                    + " for it, on a surface that does not burn, and stay with it. Fit a fuse right beside the "
                    + "cell, even where the"
                    + " figure shows none. Never use a swollen or dented cell; follow your local rules for "
                    + "carrying and disposal.",
            "Charge a lithium cell only with a charger made for it and stay with it. Fit a fuse right beside it, "
                    + "even where the"
                    + " figure shows none. Never use a swollen or dented cell."),
    LED_STRIP_FUSE(
            "led-strip-fuse",
            "A short can set wires on fire",
            "A large supply may not switch off when there is a short at the far end of thin wires. Fit a fuse at "
                    + "the supply, even"
                    + " where the figure shows none: large enough to carry the load's current all the time, and "
                    + "small enough to protect"
                    + " the thinnest wire by your local wiring rules.",
            "Fit a fuse at the supply, even where the figure shows none: large enough to carry the load's current "
                    + "all the time,"
                    + " and small enough to protect the thinnest wire, which a short can set on fire."),
    HOT_PARTS(
            "hot-parts",
            "Hot parts",
            "Parts in this circuit can get hot enough to burn skin. Do not touch the parts while the circuit is "
                    + "on; switch off"
                    + " and let them cool first.",
            "Parts can burn skin. Do not touch them while the circuit is on; switch off and let them cool first."),
    HOT_RESISTORS(
            "hot-resistors",
            "Hot resistors",
            "Resistors in this circuit, and what is near them, can get hot enough to burn skin. Do not touch the "
                    + "resistors"
                    + " while the circuit is on; switch off and let them cool first. Fit resistors rated for at "
                    + "least twice the power"
                    + " that they turn into heat.",
            "Resistors can burn skin: do not touch them while the circuit is on. Fit resistors rated for at least "
                    + "twice the power"
                    + " that they turn into heat."),
    LED_EYES(
            "led-eyes",
            "Bright light",
            "Bright LEDs dazzle, and from close by they can hurt the eyes. Do not look straight into them: turn "
                    + "them away or put"
                    + " a diffuser in front before switching on.",
            "Do not look straight into bright LEDs: turn them away or put a diffuser in front before switching on."),
    INDUCTIVE_LOAD(
            "inductive-load",
            "A coil strikes back when it is switched off",
            "The coil of a relay or an electromagnet makes a high voltage spike the moment its current is cut. A "
                    + "coil that one"
                    + " switch or transistor switches needs a flyback diode across it, cathode towards plus, "
                    + "before the first test. Never"
                    + " unplug it while it is on, and keep fingers off the terminals.",
            "A coil makes a high voltage spike when its current is cut. Switched by one switch or transistor, it "
                    + "needs a flyback"
                    + " diode across it before the first test. Never unplug it while it is on."),
    MOTOR_DRIVER(
            "motor-driver",
            "A motor strikes back when it is unplugged",
            "A motor's winding makes a high voltage spike the moment its current is cut. A driver that sends the "
                    + "current through"
                    + " the winding both ways has diodes of its own for that: here, and only here, fit no flyback "
                    + "diode across the"
                    + " winding, since it would short the driver whenever the current is reversed. Never plug or "
                    + "unplug the motor while the driver"
                    + " is on, and keep fingers off the terminals.",
            "Across a winding whose current a driver sends both ways fit no flyback diode: the driver has diodes "
                    + "of its own. Never"
                    + " plug or unplug the motor while the driver is on: the spike can destroy it."),
    MOTOR_ON_SUPPLY(
            "motor-on-supply",
            "A motor strikes back when it is switched off",
            "A motor's winding makes a high voltage spike the moment its current is cut. A motor that turns one "
                    + "way only gets a"
                    + " flyback diode across it, cathode towards plus, even where the figure shows none, and a "
                    + "switch made for its"
                    + " starting current. Never plug or unplug it while it is on, and keep fingers off the "
                    + "terminals and off what turns.",
            "A motor makes a high voltage spike when its current is cut. Turning one way only, it gets a flyback "
                    + "diode across it,"
                    + " even where the figure shows none. Never plug or unplug it while it is on; keep fingers "
                    + "off what turns."),
    CAPACITOR(
            "capacitor",
            "Capacitors stay charged",
            "A capacitor can give a spark or a burn after the supply is off. Discharge it through a resistor, and "
                    + "measure the"
                    + " voltage across it before touching it. Check the polarity of an electrolytic capacitor "
                    + "before switching on:"
                    + " reversed, it can burst.",
            "Discharge a capacitor through a resistor and measure the voltage across it before touching it; check "
                    + "the polarity"
                    + " before switching on."),
    BENCH_SUPPLY(
            "bench-supply",
            "Before you switch on",
            "A wrong setting or swapped leads can destroy parts and burn you. Set the bench supply first: its "
                    + "voltage, and its own"
                    + " current limit a little above the largest current that the circuit is to draw. Check the "
                    + "polarity, then connect."
                    + " Switch off before changing the wiring.",
            "Set the bench supply first: its voltage, and its own current limit just above what the circuit is to "
                    + "draw. Check the"
                    + " polarity, then connect. Switch off before changing the wiring."),
    BATTERY(
            "battery",
            "Before you connect the battery",
            "A shorted battery gives enough current to burn you and to set wires on fire; swapped leads can "
                    + "destroy parts. Fit a"
                    + " fuse at the battery, even where the figure shows none, and check the polarity, then "
                    + "connect. Take the battery off"
                    + " before changing the wiring.",
            "A shorted battery can set wires on fire. Fit a fuse at the battery, even where the figure shows "
                    + "none, and check the"
                    + " polarity, then connect. Take the battery off before changing the wiring."),
    SOLDERING(
            "soldering",
            "Soldering",
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
