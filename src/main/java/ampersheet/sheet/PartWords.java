package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.CommonParts;
import ampersheet.bench.FittedPart;
import ampersheet.bench.Tolerance;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.SignificantFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a bench card says is to be taken for each part. */
final class PartWords {
    private static final int FIGURES = 3;
    /** Below this a diode is a Schottky diode. */
    private static final double SCHOTTKY_VOLTS = 0.5;

    private final BenchCircuit circuit;
    private final Netlist netlist;
    private final Map<String, String> captions;
    private final MarkedNumbers numbers;
    private final Language language;

    PartWords(BenchCircuit circuit, QuantityWriter writer, Language language) {
        this.circuit = circuit;
        this.netlist = circuit.schematic().netlist();
        this.captions = BenchWords.captions(circuit.problem().template());
        this.numbers = new MarkedNumbers(writer);
        this.language = language;
    }

    /** Beside the part in the figure. */
    String label(FittedPart part) {
        return switch (part.part().kind()) {
            case SOURCE, ZENER, REFERENCE, REGULATOR -> numbers.volts(value(part, PartValue.VOLTS));
            case RESISTOR, LOAD, TRIMPOT -> numbers.ohms(value(part, PartValue.OHMS));
            case SINK -> numbers.amps(value(part, PartValue.AMPS));
            case LED ->
                part.count() == 1
                        ? language.say(
                                switch (colour(part)) {
                                    case RED -> "sheet.card.label.red";
                                    case GREEN -> "sheet.card.label.green";
                                    case BLUE_OR_WHITE -> "sheet.card.label.white";
                                })
                        : language.say("sheet.card.label.leds", "count", Integer.toString(part.count()));
            case CAPACITOR -> numbers.farads(value(part, PartValue.FARADS));
            default -> "";
        };
    }

    private static double value(FittedPart part, PartValue value) {
        return part.part().values().get(value);
    }

    /** What to take for a part, with its tolerance. */
    String take(FittedPart part) {
        return switch (part.part().kind()) {
            case SOURCE -> language.say("sheet.card.take.supply", "volts", volts(part));
            case RESISTOR, LOAD ->
                listed(language.say("sheet.card.take.resistor", "ohms", ohms(part)), rating(part), inPlace(part));
            case SINK -> listed(load(part), inPlace(part));
            case LED -> leds(part);
            case DIODE -> diode(part);
            case ZENER -> listed(language.say("sheet.card.take.zener", "volts", volts(part)), rating(part));
            case REFERENCE -> reference(part);
            case NMOS -> channel("sheet.card.take.n-channel", part);
            case PMOS -> channel("sheet.card.take.p-channel", part);
            case NPN -> transistor(part);
            case SWITCH ->
                value(part, PartValue.CLOSED) == 1
                        ? language.say("sheet.card.take.switch-closed")
                        : language.say("sheet.card.take.switch-open");
            case TRIMPOT -> language.say("sheet.card.take.trimpot", "ohms", ohms(part));
            case REGULATOR -> language.say("sheet.card.take.regulator", "volts", volts(part));
            case CAPACITOR ->
                language.say(
                        "sheet.card.take.capacitor",
                        "farads",
                        numbers.farads(value(part, PartValue.FARADS)),
                        "volts",
                        numbers.volts(highest()));
            case VOLTMETER -> language.say("sheet.card.take.voltmeter");
            case AMMETER -> language.say("sheet.card.take.ammeter");
            default -> throw new IllegalStateException("nothing to take for " + part);
        };
    }

    /** What one fetches from the drawer for a part, one of several in series; empty for what stands on every bench. */
    Optional<String> fetched(FittedPart part) {
        return switch (part.part().kind()) {
            case SOURCE, SINK, VOLTMETER, AMMETER -> Optional.empty();
            case RESISTOR, LOAD -> {
                String ohms = numbers.ohms(value(part, PartValue.OHMS));
                yield Optional.of(listed(language.say("sheet.card.take.resistor", "ohms", ohms), rating(part)));
            }
            case LED -> {
                String each = numbers.volts(value(part, PartValue.VOLTS) / part.count());
                yield Optional.of(
                        part.bin().isPresent()
                                ? language.say("sheet.card.fetch.led", "volts", each)
                                : language.say(colouredLed(part)));
            }
            case REGULATOR -> {
                String volts = numbers.volts(value(part, PartValue.VOLTS));
                yield Optional.of(language.say("sheet.card.fetch.regulator", "volts", volts));
            }
            default -> Optional.of(take(part));
        };
    }

    @SafeVarargs
    private static String listed(String first, Optional<String>... others) {
        List<String> all = new ArrayList<>(List.of(first));
        for (Optional<String> other : others) {
            other.ifPresent(all::add);
        }
        return String.join(", ", all);
    }

    private String load(FittedPart part) {
        String amps = numbers.amps(value(part, PartValue.AMPS)) + off(part);
        return floats(part)
                ? language.say("sheet.card.take.load-floating", "amps", amps)
                : language.say("sheet.card.take.load", "amps", amps);
    }

    private boolean floats(FittedPart part) {
        return part.part().kind().terminals().stream()
                .map(terminal -> netlist.nodeAt().get(part.part().end(terminal)))
                .noneMatch(netlist.reference()::equals);
    }

    /** Unless its author calls it a resistor, and not a motor, a sensor or a load. */
    private Optional<String> inPlace(FittedPart part) {
        boolean plain = captions.get(part.name()).matches("R\\w?");
        return part.drawn() == PartKind.SINK || !plain
                ? Optional.of(language.say("sheet.card.take.in-place"))
                : Optional.empty();
    }

    private String leds(FittedPart part) {
        Tolerance tolerance = part.tolerances().get(0);
        double off = SignificantFigures.round((tolerance.high() - tolerance.low()) / 2 / part.count(), FIGURES);
        String volts = numbers.volts(value(part, PartValue.VOLTS) / part.count()) + " ± " + numbers.volts(off);
        String amps = numbers.amps(value(part, PartValue.AMPS));
        boolean coloured = part.bin().isEmpty();
        if (part.count() == 1) {
            String led = language.say(coloured ? colouredLed(part) : "sheet.card.led");
            return language.say("sheet.card.take.led", "led", led, "volts", volts, "amps", amps);
        }
        String leds = language.say(coloured ? colouredLeds(part) : "sheet.card.leds");
        return language.say(
                "sheet.card.take.leds",
                "count",
                Integer.toString(part.count()),
                "leds",
                leds,
                "volts",
                volts,
                "amps",
                amps);
    }

    private static CommonParts.Colour colour(FittedPart part) {
        return CommonParts.Colour.of(value(part, PartValue.VOLTS) / part.count());
    }

    private static String colouredLed(FittedPart part) {
        return switch (colour(part)) {
            case RED -> "sheet.card.led.red";
            case GREEN -> "sheet.card.led.green";
            case BLUE_OR_WHITE -> "sheet.card.led.white";
        };
    }

    private static String colouredLeds(FittedPart part) {
        return switch (colour(part)) {
            case RED -> "sheet.card.leds.red";
            case GREEN -> "sheet.card.leds.green";
            case BLUE_OR_WHITE -> "sheet.card.leds.white";
        };
    }

    private String diode(FittedPart part) {
        String amps = numbers.amps(value(part, PartValue.AMPS));
        return value(part, PartValue.VOLTS) < SCHOTTKY_VOLTS
                ? language.say("sheet.card.take.schottky", "volts", volts(part), "amps", amps)
                : language.say("sheet.card.take.silicon", "volts", volts(part), "amps", amps);
    }

    private String reference(FittedPart part) {
        return part.part().values().containsKey(PartValue.MINIMUM)
                ? language.say(
                        "sheet.card.take.reference-with-least",
                        "volts",
                        volts(part),
                        "amps",
                        numbers.amps(value(part, PartValue.MINIMUM)))
                : language.say("sheet.card.take.reference", "volts", volts(part));
    }

    private String channel(String key, FittedPart part) {
        return language.say(
                key,
                "volts",
                numbers.volts(value(part, PartValue.THRESHOLD)),
                "ohms",
                numbers.ohms(value(part, PartValue.ON)));
    }

    private String transistor(FittedPart part) {
        Tolerance gain = part.tolerances().stream()
                .filter(one -> one.value().equals(PartValue.GAIN))
                .findFirst()
                .orElseThrow();
        return language.say(
                "sheet.card.take.npn",
                "gain",
                numbers.plain(value(part, PartValue.GAIN)),
                "low",
                numbers.plain(gain.low()),
                "high",
                numbers.plain(gain.high()),
                "volts",
                numbers.volts(value(part, PartValue.VOLTS)),
                "amps",
                numbers.amps(value(part, PartValue.AMPS)),
                "saturation",
                numbers.volts(value(part, PartValue.SATURATION)));
    }

    private String volts(FittedPart part) {
        return numbers.volts(value(part, PartValue.VOLTS)) + off(part);
    }

    private String ohms(FittedPart part) {
        return numbers.ohms(value(part, PartValue.OHMS)) + off(part);
    }

    /** Such as " ± 5 %". */
    private String off(FittedPart part) {
        if (part.tolerances().isEmpty()) {
            return "";
        }
        Tolerance tolerance = part.tolerances().get(0);
        double middle = (tolerance.low() + tolerance.high()) / 2;
        boolean amount = part.part().kind() == PartKind.DIODE;
        double off = SignificantFigures.round((tolerance.high() - tolerance.low()) / 2, FIGURES);
        return " ± " + (amount ? numbers.volts(off) : numbers.percent(off / middle));
    }

    private Optional<String> rating(FittedPart part) {
        return part.rating().isPresent()
                ? Optional.of(numbers.watts(part.rating().getAsDouble()))
                : Optional.empty();
    }

    private double highest() {
        return circuit.parts().stream()
                .filter(part -> part.part().kind() == PartKind.SOURCE)
                .mapToDouble(part -> value(part, PartValue.VOLTS))
                .sum();
    }
}
