package ampersheet.page;

import ampersheet.language.Language;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What the principles of templates do, in a clause behind their name, and which of them say the same in other words. A
 * principle that nobody told of is only named.
 */
final class RuleBook {
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

    /** Of these rules, what is told of them in a language, by what it calls them. */
    static Map<String, String> does(Iterable<String> rules, Language language) {
        Map<String, String> does = new LinkedHashMap<>();
        for (String rule : rules) {
            String told = language.does(rule);
            if (!told.isEmpty()) {
                does.put(language.name(rule), told);
            }
        }
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
