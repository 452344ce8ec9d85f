package ampersheet.template;

import java.util.List;

/** The caution boxes a template can ask for, by id. */
public final class Cautions {
    public static final List<String> IDS = List.of(
            "extra-low-voltage",
            "hot-parts",
            "hot-resistors",
            "led-eyes",
            "led-strip-fuse",
            "bench-supply",
            "battery",
            "lithium-cells",
            "soldering",
            "inductive-load",
            "motor-driver",
            "motor-on-supply",
            "capacitor");

    private Cautions() {}
}
