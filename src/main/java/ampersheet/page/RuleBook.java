package ampersheet.page;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What the principles of templates do, in a clause behind their name, and which of them say the same in other words. A
 * principle that nobody told of here is only named.
 */
final class RuleBook {
    private static final String[][] DOES = {
        {"Ohm's law", "ties the voltage across one resistance to the current through it"},
        {"electrical power", "multiplies voltage and current of one part"},
        {"Joule heating", "gives the heat that a current makes in a resistance, with its square"},
        {"Kirchhoff's voltage law", "adds up the voltages along a loop"},
        {"Kirchhoff's current law", "adds up the currents at a node"},
        {"voltage divider", "shares a voltage between resistors in series as their resistances"},
        {"current divider", "shares a current between resistors side by side against their resistances"},
        {"preferred values", "goes from a calculated value to one that is made"},
        {"thermal resistance", "ties a rise in temperature to the power that flows as heat"},
        {"proportion", "scales a value by a ratio"},
        {"series resistance", "adds resistances that one current passes one after the other"},
        {"parallel resistance", "joins resistances that lie across the same two points"},
        {"worst case at a corner", "puts each tolerance at the end that counts"},
        {"worst case", "takes the end of a tolerance that counts"},
        {"safety margin", "leaves room between what is and what is allowed"},
        {"exponential approach", "tells how a value nears its end over time"},
        {"time constant", "multiplies resistance and capacitance to a time"},
        {"analogue-to-digital conversion", "counts how many small steps fit into a voltage"},
        {"resolution", "gives the smallest step that can be told apart"},
        {"counting from zero", "counts what lies before a place"},
        {"counting", "multiplies how many there are each way"},
        {"division with remainder", "counts whole groups and what is left over"},
        {"order of a tile", "follows the data line through one tile"},
        {"serpentine order", "turns round at the end of every row"},
        {"serial transmission", "sends one bit after the other, so that times add up"},
        {"halving what is left", "probes in the middle, so that either reading rules out half"},
        {"folding a net", "finds which edges meet when flat tiles are closed to a solid"},
        {"frequency and period", "turns events a second into the time of one"},
        {"pulse-width modulation", "sets a mean by the share of time switched on"},
        {"mean value", "spreads what comes in pulses evenly over the time"},
        {"amplifier gain", "multiplies an input by what the amplifier makes of it"},
        {"wire gauge", "gives the cross-section that belongs to a number"},
        {"resistivity", "ties resistance to length, cross-section and metal"},
        {"temperature coefficient", "changes a value by so much for each kelvin"},
        {"out and back", "counts both conductors of a line"},
        {"energy in a capacitor", "gives what a charged capacitor holds"},
        {"logic levels", "compares a voltage with what counts as high or low"},
        {"torque constant", "ties a motor's current to its torque"},
        {"back-EMF", "is the voltage that a turning motor makes itself"},
        {"diode equation", "ties voltage and current of a junction by an exponential"},
    };

    /** In each row, rules of which one can stand for another at some line. */
    private static final String[][] ALIKE = {
        {"Ohm's law", "voltage divider", "current divider", "voltage drop", "zener regulator", "proportion"},
        {"Ohm's law", "Thevenin's theorem", "Thévenin equivalent", "amplifier gain", "temperature coefficient"},
        {"voltage divider", "proportion", "bridge balance", "Thevenin's theorem", "Thévenin equivalent"},
        {"parallel resistance", "Thevenin's theorem", "Thévenin equivalent"},
        {"Kirchhoff's voltage law", "zener regulator", "zener clamp", "voltage drop", "back-EMF", "logic levels"},
        {"Kirchhoff's voltage law", "saturation", "straight line of a diode", "one datum for all"},
        {"Kirchhoff's current law", "current divider", "current gain"},
        {"electrical power", "Joule heating"},
        {"series resistance", "out and back", "resistivity", "wire gauge", "proportion"},
        {"current gain", "forced gain", "saturation", "safety margin"},
        {
            "worst case",
            "worst case at a corner",
            "one datum for all",
            "safety margin",
            "power derating",
            "errors in a chain add up",
            "superposition"
        },
        {"exponential approach", "time constant", "diode equation", "beta equation"},
        {"thermal resistance", "power derating", "positive feedback", "temperature scales", "track heating formula"},
        {"proportion", "amplifier gain", "resolution", "safety margin", "torque constant", "temperature coefficient"},
        {"proportion", "power derating", "pulse-width modulation", "wire gauge", "resistivity", "thermal resistance"},
        {"resolution", "analogue-to-digital conversion", "counting bits"},
        {"frequency and period", "bit time", "pulse-width modulation", "serial transmission", "whole frames only"},
        {"counting", "counting pairs", "counting pixels", "counting sides", "counting bits", "counting from zero"},
        {"counting", "arithmetic series", "division with remainder", "proportion", "dealing out evenly", "symmetry"},
        {"counting pixels", "counting from zero", "order of a tile", "one chain through branches"},
        {"division with remainder", "counting from zero", "order of a tile", "dealing out evenly", "serpentine order"},
        {"order of a tile", "serpentine order", "one chain through branches", "counting from zero"},
        {"whole tiles only", "whole frames only", "whole bytes per pixel", "division with remainder", "counting"},
        {"whole pixels only", "whole bytes only", "division with remainder", "counting", "dealing out evenly"},
        {"serial transmission", "delay of each pixel", "whole bytes only", "counting bits"},
        {"folding a net", "counting round a ring", "faults at a seam", "mirroring at a seam"},
        {"rotation by half", "rotation by a quarter", "mirroring at a seam", "symmetry", "order of a tile"},
        {"serpentine order", "mirroring at a seam", "rotation by half", "faults at a seam", "distance along a row"},
        {"geometry", "regular polygons", "distance along a row", "counting sides", "symmetry", "proportion"},
        {"arithmetic series", "symmetry", "Ohm's law", "voltage drop"},
        {"counting pairs", "faults at a seam", "mirroring at a seam"},
    };

    private RuleBook() {}

    static Optional<String> does(String rule) {
        for (String[] told : DOES) {
            if (told[0].equals(rule)) {
                return Optional.of(told[1]);
            }
        }
        return Optional.empty();
    }

    /** Of these rules, what is told of them. */
    static Map<String, String> does(Iterable<String> rules) {
        Map<String, String> does = new LinkedHashMap<>();
        rules.forEach(rule -> does(rule).ifPresent(told -> does.put(rule, told)));
        return Collections.unmodifiableMap(does);
    }

    /** The rule itself, and those that can stand for it. */
    static Set<String> alike(String rule) {
        Set<String> alike = new TreeSet<>(Set.of(rule));
        for (String[] row : ALIKE) {
            if (Set.of(row).contains(rule)) {
                alike.addAll(Set.of(row));
            }
        }
        return alike;
    }
}
