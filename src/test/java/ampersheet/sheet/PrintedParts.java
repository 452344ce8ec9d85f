package ampersheet.sheet;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The parts of a bench card as somebody reads them who goes to the drawer with it. */
final class PrintedParts {
    static final String NUMBER = "(\\d+(?:\\.\\d+)?[ \\u00a0][kMmµn]?[VAΩWF%])";

    private final List<PlacedPart> drawn;
    private final Map<String, String> partOf;
    private final List<String> objections;
    private final Map<String, Double> ratings = new LinkedHashMap<>();
    private final Map<String, PlacedPart> parts = new LinkedHashMap<>();

    /** @param partOf the part of each name in the figure */
    PrintedParts(List<PlacedPart> drawn, Map<String, String> partOf, List<String> objections) {
        this.drawn = drawn;
        this.partOf = partOf;
        this.objections = objections;
    }

    /** Those read so far, by name; {@link #put} changes them. */
    Map<String, PlacedPart> parts() {
        return parts;
    }

    double rating(String part) {
        return ratings.get(part);
    }

    /** @param line of the list of parts */
    void read(String line) {
        Matcher matcher = Pattern.compile("- \\*\\*(.*?)\\*\\*: (.*)").matcher(line);
        if (!matcher.matches()) {
            objections.add("a line of parts that is none: " + line);
            return;
        }
        for (String name : matcher.group(1).split(", ")) {
            String part = partOf.get(name);
            if (part == null) {
                objections.add("no part is drawn by the name " + name);
            } else {
                laidOut(drawn(part), matcher.group(2).replaceFirst(", each$", ""));
            }
        }
    }

    PlacedPart drawn(String name) {
        return drawn.stream()
                .filter(part -> part.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private void laidOut(PlacedPart part, String words) {
        if (words.startsWith("resistor ")) {
            double ohms = first(words);
            if (!(ohms < 1 ? PreferredSeries.E12 : PreferredSeries.E24).contains(ohms) || ohms < 0.1 || ohms > 10e6) {
                objections.add(part.name() + ": no such resistor is sold, " + ohms + " ohms");
            }
            quantity(words, ".*, " + NUMBER + "(?:, in its place)?")
                    .ifPresentOrElse(
                            watts -> ratings.put(part.name(), watts),
                            () -> objections.add(part.name() + " has no rating: " + words));
            put(part, part.kind() == PartKind.SINK ? PartKind.RESISTOR : part.kind(), Map.of(PartValue.OHMS, ohms));
        } else if (words.startsWith("electronic load")) {
            double amps = first(words);
            if (Math.abs(amps * 100 - Math.rint(amps * 100)) > 1e-6 || amps < 0.05 || amps > 3) {
                objections.add(part.name() + ": an electronic load is not set to " + amps + " A");
            }
            put(part, PartKind.SINK, Map.of(PartValue.AMPS, amps));
        } else if (words.startsWith("bench supply")) {
            put(part, PartKind.SOURCE, Map.of(PartValue.VOLTS, first(words)));
        } else if (words.contains("LED")) {
            Matcher several =
                    Pattern.compile("(\\d+) .*LEDs in series, each .*").matcher(words);
            int count = several.matches() ? Integer.parseInt(several.group(1)) : 1;
            double each = first(words);
            if (each < 1.5 || each > 3.8) {
                objections.add(part.name() + ": no LED has " + each + " V");
            }
            double amps = quantity(words, ".* at " + NUMBER).orElse(0);
            put(
                    part,
                    PartKind.LED,
                    Map.of(PartValue.VOLTS, count * each, PartValue.AMPS, amps, PartValue.EMISSION, 2.0 * count));
        } else if (words.contains("diode, ")) {
            put(
                    part,
                    PartKind.DIODE,
                    Map.of(
                            PartValue.VOLTS,
                            first(words),
                            PartValue.AMPS,
                            quantity(words, ".* at " + NUMBER).orElse(0)));
        } else if (words.startsWith("zener diode")) {
            put(part, PartKind.ZENER, Map.of(PartValue.VOLTS, first(words)));
        } else if (words.startsWith("shunt reference")) {
            Map<PartValue, Double> values = new TreeMap<>(Map.of(PartValue.VOLTS, first(words)));
            quantity(words, ".*, at least " + NUMBER).ifPresent(amps -> values.put(PartValue.MINIMUM, amps));
            put(part, PartKind.REFERENCE, values);
        } else if (words.contains("-channel MOSFET")) {
            put(
                    part,
                    words.startsWith("n") ? PartKind.NMOS : PartKind.PMOS,
                    Map.of(
                            PartValue.THRESHOLD,
                            first(words),
                            PartValue.ON,
                            quantity(words, ".* about " + NUMBER + " then").orElse(0)));
        } else if (words.startsWith("NPN transistor")) {
            Matcher gain = Pattern.compile("NPN transistor, gain (\\d+) .*").matcher(words);
            if (!gain.matches()) {
                objections.add("a transistor without a gain: " + words);
                return;
            }
            put(
                    part,
                    PartKind.NPN,
                    Map.of(
                            PartValue.GAIN,
                            Double.parseDouble(gain.group(1)),
                            PartValue.VOLTS,
                            quantity(words, ".*, " + NUMBER + " from base to emitter.*")
                                    .orElse(0),
                            PartValue.AMPS,
                            quantity(words, ".* at " + NUMBER + ",.*").orElse(0),
                            PartValue.SATURATION,
                            quantity(words, ".*, " + NUMBER + " when saturated").orElse(0)));
        } else {
            Map<PartValue, Double> values = new TreeMap<>(part.values());
            if (words.startsWith("linear regulator")) {
                values.put(PartValue.VOLTS, first(words));
            } else if (words.startsWith("trimpot")) {
                values.put(PartValue.OHMS, first(words));
            } else if (words.startsWith("capacitor")) {
                values.put(PartValue.FARADS, first(words));
            } else if (!words.startsWith("switch, ") && !words.matches("the meter, on (volts|amperes)")) {
                objections.add("nobody knows what to take: " + words);
            }
            put(part, part.kind(), values);
        }
    }

    void put(PlacedPart drawnPart, PartKind kind, Map<PartValue, Double> values) {
        parts.put(drawnPart.name(), new PlacedPart(kind, drawnPart.name(), drawnPart.ends(), values));
    }

    private double first(String words) {
        return quantity(words, ".*?" + NUMBER + ".*").orElse(Double.NaN);
    }

    private OptionalDouble quantity(String words, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(words);
        return matcher.matches() ? OptionalDouble.of(si(matcher.group(1))) : OptionalDouble.empty();
    }

    static double si(String quantity) {
        Reading.Value value = (Reading.Value) QuantityReader.read(quantity.replace('\u00a0', ' '));
        return value.si(value.unit().orElseThrow());
    }
}
