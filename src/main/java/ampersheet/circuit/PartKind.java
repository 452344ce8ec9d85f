package ampersheet.circuit;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Every part that can be placed: its terminals, and the values it needs.
 *
 * <p>Two-terminal parts run {@code from} to {@code to}; current through a part is positive in that direction, except
 * that a source's current is what it delivers out of {@code to}, its plus.
 */
public enum PartKind {
    /** Ideal voltage source; {@code to} is plus. */
    SOURCE("source", List.of("from", "to"), Set.of(PartValue.VOLTS), Set.of()),
    RESISTOR("resistor", List.of("from", "to"), Set.of(PartValue.OHMS), Set.of()),
    /**
     * A resistor to the solver. Drawn as a box with its name (a module), unless {@code symbol} says that it is one of
     * the loads with a symbol of their own.
     */
    LOAD(
            "load",
            List.of("from", "to"),
            Set.of(PartValue.OHMS),
            Set.of(),
            Map.of("symbol", List.of("box", "fuse", "motor", "lamp"))),
    /**
     * One conductor of copper, {@code metres} long, of American wire gauge number {@code gauge}, at 20 °C. A supply has
     * two: there and back. Its resistance is that of {@link CopperWire}, which knows the gauges that are sold.
     */
    CABLE("cable", List.of("from", "to"), Set.of(PartValue.GAUGE, PartValue.METRES), Set.of()),
    /** Draws a constant current from {@code from} to {@code to}. */
    SINK("sink", List.of("from", "to"), Set.of(PartValue.AMPS), Set.of()),
    /**
     * Shockley with series resistance through the stated point, at 27 °C (300.15 K); {@code from} is the anode. Left
     * out, {@code series} is 0 and {@code emission} 2.
     */
    LED(
            "led",
            List.of("from", "to"),
            Set.of(PartValue.VOLTS, PartValue.AMPS),
            Set.of(PartValue.SERIES, PartValue.EMISSION)),
    /** As the LED, other symbol; {@code from} is the anode. Left out, {@code series} is 0 and {@code emission} 1.8. */
    DIODE(
            "diode",
            List.of("from", "to"),
            Set.of(PartValue.VOLTS, PartValue.AMPS),
            Set.of(PartValue.SERIES, PartValue.EMISSION)),
    /**
     * {@code from} is the anode; conducts backwards from {@code volts} on, which it has at {@code amps} (5 mA when left
     * out), rising from there by {@code slope} (0 when left out). Its knee is sharp: 10 µV for a factor e in current.
     * Forwards it is a diode of 0.7 V at the same current (emission 1).
     */
    ZENER("zener", List.of("from", "to"), Set.of(PartValue.VOLTS), Set.of(PartValue.AMPS, PartValue.SLOPE)),
    /**
     * Two-terminal shunt reference; {@code from} is the anode, {@code to} the cathode held at {@code volts}. Up to
     * {@code minimum} (0 when left out) its current is in proportion to its voltage; above, the voltage rises by
     * {@code slope} (0 when left out) only. Given too little current it therefore falls visibly short of its voltage.
     * Forwards it is a diode of 0.7 V at 5 mA (emission 1).
     */
    REFERENCE("reference", List.of("from", "to"), Set.of(PartValue.VOLTS), Set.of(PartValue.MINIMUM, PartValue.SLOPE)),
    /**
     * N-channel enhancement MOSFET as a switch: {@code on} ohms from gate-source {@code threshold} upwards, 1 TΩ from
     * half of it downwards, a smooth passage between. Carries current both ways when on; its body diode, source to
     * drain, (0.7 V at 10 mA, emission 1) always conducts. It is drawn where {@code body} says {@code shown}.
     */
    NMOS(
            "nmos",
            List.of("drain", "gate", "source"),
            Set.of(PartValue.ON, PartValue.THRESHOLD),
            Set.of(),
            Map.of("body", List.of("hidden", "shown"))),
    /**
     * The mirror image: gate below source by {@code threshold} (a positive number), body diode from drain to source.
     */
    PMOS(
            "pmos",
            List.of("drain", "gate", "source"),
            Set.of(PartValue.ON, PartValue.THRESHOLD),
            Set.of(),
            Map.of("body", List.of("hidden", "shown"))),
    /**
     * Bipolar transistor as a switch. Base to emitter is a diode with {@code volts} at a base current of {@code amps}
     * (emission 1); the collector draws {@code gain} times the base current, unless collector-emitter voltage would
     * fall below {@code saturation}, where it is held.
     */
    NPN(
            "npn",
            List.of("collector", "base", "emitter"),
            Set.of(PartValue.GAIN, PartValue.VOLTS, PartValue.AMPS, PartValue.SATURATION),
            Set.of()),
    /** {@code closed} 1 joins its ends, 0 parts them. */
    SWITCH("switch", List.of("from", "to"), Set.of(PartValue.CLOSED), Set.of()),
    /** {@code position} 0 puts the wiper at {@code from}, 1 at {@code to}. */
    TRIMPOT("trimpot", List.of("from", "to", "wiper"), Set.of(PartValue.OHMS, PartValue.POSITION), Set.of()),
    /**
     * Linear regulator: holds {@code out} at {@code volts} above {@code ground}; what leaves at out enters at in, and
     * {@code quiescent} flows from in to ground besides. Needs {@code dropout} (0 when left out) between in and out.
     */
    REGULATOR(
            "regulator",
            List.of("in", "out", "ground"),
            Set.of(PartValue.VOLTS),
            Set.of(PartValue.QUIESCENT, PartValue.DROPOUT)),
    /** Carries no direct current. {@code initial} is its voltage, from against to, at time 0 (0 when left out). */
    CAPACITOR("capacitor", List.of("from", "to"), Set.of(PartValue.FARADS), Set.of(PartValue.INITIAL)),
    /**
     * Two equal conductors side by side with {@code taps} loads between them, all alike: each draws {@code amps}, or is
     * a resistor of {@code load_ohms}. {@code ohms} is the copper of one conductor from a tap to the next, and from an
     * end to the tap there. {@code feed} says where both conductors are fed, at the start unless said; tap 1 is at the
     * start.
     */
    STRIP(
            "strip",
            List.of("plus", "minus"),
            Set.of(PartValue.TAPS, PartValue.OHMS),
            Set.of(PartValue.AMPS, PartValue.LOAD_OHMS),
            Map.of("feed", Copper.FEEDS)),
    /**
     * Rows that are strips of {@code columns} pixels, {@code ohms} from one pixel to the next, hung side by side on a
     * bus along their left edge: {@code bus} is its copper, one conductor, from one row to the next and from an end to
     * the row there; 0 makes it one solid bar. {@code cross}, when given, joins each pixel to the one below as well, so
     * that the copper is a mesh. {@code feed} says where the bus is fed: its start is at the top.
     */
    PANEL(
            "panel",
            List.of("plus", "minus"),
            Set.of(PartValue.COLUMNS, PartValue.ROWS, PartValue.OHMS, PartValue.BUS),
            Set.of(PartValue.AMPS, PartValue.LOAD_OHMS, PartValue.CROSS),
            Map.of("feed", Copper.FEEDS)),
    /** Ideal: carries no current; drawn as a circle with V. */
    VOLTMETER("voltmeter", List.of("from", "to"), Set.of(), Set.of()),
    /** Ideal: drops no voltage; drawn as a circle with A. */
    AMMETER("ammeter", List.of("from", "to"), Set.of(), Set.of()),
    WIRE("wire", List.of("from", "to"), Set.of(), Set.of()),
    /** The reference node, 0 V. */
    GROUND("ground", List.of("at"), Set.of(), Set.of()),
    /** Names the node at a point, so that {@code voltage(name)} can be asked; drawn as a dot with the name. */
    NODE("node", List.of("at"), Set.of(), Set.of());

    private final String word;
    private final List<String> terminals;
    private final Set<PartValue> needed;
    private final Set<PartValue> optional;
    private final Map<String, List<String>> words;

    PartKind(String word, List<String> terminals, Set<PartValue> needed, Set<PartValue> optional) {
        this(word, terminals, needed, optional, Map.of());
    }

    PartKind(
            String word,
            List<String> terminals,
            Set<PartValue> needed,
            Set<PartValue> optional,
            Map<String, List<String>> words) {
        this.word = word;
        this.terminals = terminals;
        this.needed = Collections.unmodifiableSet(new TreeSet<>(needed));
        this.optional = Collections.unmodifiableSet(new TreeSet<>(optional));
        this.words = Collections.unmodifiableMap(new TreeMap<>(words));
    }

    /** The key that names this kind in a template. */
    public String word() {
        return word;
    }

    public List<String> terminals() {
        return terminals;
    }

    /** Dimension of each value that must be given. */
    public Set<PartValue> needed() {
        return needed;
    }

    /** Dimension of each value that may be given. */
    public Set<PartValue> optional() {
        return optional;
    }

    /** What may be said in words, each with the words there are; the first holds when nothing is said. */
    public Map<String, List<String>> words() {
        return words;
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
