package ampersheet.problem;

import ampersheet.language.Language;
import ampersheet.template.ExtraLowVoltage;
import java.util.Optional;

/**
 * The boxes that stand where work can hurt: hazard first, then what to do. In the order in which a sheet shows them.
 * None of them replaces local rules or the judgement of a licensed person, and the first one says so.
 */
public enum Caution {
    EXTRA_LOW_VOLTAGE(
            "extra-low-voltage",
            "problem.caution.extra-low-voltage.heading",
            "problem.caution.extra-low-voltage.text",
            "problem.caution.extra-low-voltage.action"),
    LITHIUM_CELLS(
            "lithium-cells",
            "problem.caution.lithium-cells.heading",
            "problem.caution.lithium-cells.text",
            "problem.caution.lithium-cells.action"),
    LED_STRIP_FUSE(
            "led-strip-fuse",
            "problem.caution.led-strip-fuse.heading",
            "problem.caution.led-strip-fuse.text",
            "problem.caution.led-strip-fuse.action"),
    HOT_PARTS(
            "hot-parts",
            "problem.caution.hot-parts.heading",
            "problem.caution.hot-parts.text",
            "problem.caution.hot-parts.action"),
    HOT_RESISTORS(
            "hot-resistors",
            "problem.caution.hot-resistors.heading",
            "problem.caution.hot-resistors.text",
            "problem.caution.hot-resistors.action"),
    LED_EYES(
            "led-eyes",
            "problem.caution.led-eyes.heading",
            "problem.caution.led-eyes.text",
            "problem.caution.led-eyes.action"),
    INDUCTIVE_LOAD(
            "inductive-load",
            "problem.caution.inductive-load.heading",
            "problem.caution.inductive-load.text",
            "problem.caution.inductive-load.action"),
    MOTOR_DRIVER(
            "motor-driver",
            "problem.caution.motor-driver.heading",
            "problem.caution.motor-driver.text",
            "problem.caution.motor-driver.action"),
    MOTOR_ON_SUPPLY(
            "motor-on-supply",
            "problem.caution.motor-on-supply.heading",
            "problem.caution.motor-on-supply.text",
            "problem.caution.motor-on-supply.action"),
    CAPACITOR(
            "capacitor",
            "problem.caution.capacitor.heading",
            "problem.caution.capacitor.text",
            "problem.caution.capacitor.action"),
    BENCH_SUPPLY(
            "bench-supply",
            "problem.caution.bench-supply.heading",
            "problem.caution.bench-supply.text",
            "problem.caution.bench-supply.action"),
    BATTERY(
            "battery",
            "problem.caution.battery.heading",
            "problem.caution.battery.text",
            "problem.caution.battery.action"),
    SOLDERING(
            "soldering",
            "problem.caution.soldering.heading",
            "problem.caution.soldering.text",
            "problem.caution.soldering.action");

    private final String id;
    private final String heading;
    private final String text;
    private final String action;

    /** @param heading key of what it says, as the others */
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

    public String heading(Language language) {
        return language.say(heading);
    }

    /** Two or three sentences of plain text: the hazard, then the action. */
    public String text(Language language) {
        return language.say(text, "limit", ExtraLowVoltage.LIMIT);
    }

    /** What to do, for where the hazard comes up again and its whole box is pages back. */
    public String action(Language language) {
        return language.say(action, "limit", ExtraLowVoltage.LIMIT);
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
