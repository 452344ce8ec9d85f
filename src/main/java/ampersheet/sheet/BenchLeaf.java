package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.BenchMeter;
import ampersheet.bench.BenchSupply;
import ampersheet.bench.CommonParts;
import ampersheet.language.Language;
import ampersheet.problem.Inventory;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.BenchCards.LeftOut;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** For whoever hands out bench cards: how they go with the sheets, what is assumed, and which are not made and why. */
final class BenchLeaf {
    private static final String SPACE = String.valueOf(QuantityWriter.NO_BREAK_SPACE);

    private final ProblemSet set;
    private final QuantityWriter writer;
    private final MarkedNumbers numbers;
    private final Language language;

    BenchLeaf(ProblemSet set) {
        this.set = set;
        this.writer = new QuantityWriter(set.plan().decimal());
        this.numbers = new MarkedNumbers(writer);
        this.language = set.plan().language();
    }

    /** @param made the circuits of all cards, by what they are drawn from */
    Document of(Map<String, List<BenchCircuit>> made, List<LeftOut> left) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading(2, language.say("sheet.leaf.sheets.heading")));
        blocks.add(new Prose(language.say("sheet.leaf.sheets")));
        blocks.add(new Heading(2, language.say("sheet.leaf.at-hand.heading")));
        blocks.add(new Prose(atHand()));
        blocks.add(new Prose(parts(made)));
        blocks.add(new Heading(2, language.say("sheet.leaf.band.heading")));
        blocks.add(new Prose(band()));
        if (!left.isEmpty()) {
            blocks.add(new Heading(2, language.say("sheet.leaf.without.heading")));
            blocks.add(new Table(
                    "",
                    List.of(language.say("sheet.leaf.without.problem"), language.say("sheet.leaf.without.why")),
                    left.stream()
                            .map(one -> List.of(
                                    new Cell(one.title() + " (" + one.template() + ")", ""),
                                    new Cell(sentence(one.because()), "")))
                            .toList()));
        }
        return new Document(
                Document.Kind.KEY,
                language,
                language.say("sheet.card.title", "title", set.plan().title()),
                language.say("sheet.leaf.for-the-host"),
                "",
                set.plan().paper(),
                blocks);
    }

    /** What the band on a card holds for, in one line. */
    static String meterInShort(Optional<Inventory> parts, MarkedNumbers numbers, Language language) {
        return isListed(parts)
                ? language.say("sheet.card.meter-listed")
                : language.say(
                        "sheet.card.meter-assumed",
                        "volts",
                        error(numbers, BenchMeter.VOLTS_SHARE, BenchMeter.VOLTS_DIGITS),
                        "amps",
                        error(numbers, BenchMeter.AMPS_SHARE, BenchMeter.AMPS_DIGITS));
    }

    private static boolean isListed(Optional<Inventory> parts) {
        BenchMeter meter = new BenchMeter(parts);
        return meter.isListed(Dimension.VOLTAGE) && meter.isListed(Dimension.CURRENT);
    }

    /** Such as {@code 0.5 % + 3}, in one line. */
    private static String error(MarkedNumbers numbers, double share, int digits) {
        return (numbers.percent(share) + " + " + digits).replace(" ", SPACE);
    }

    private static String sentence(String clause) {
        return clause.substring(0, 1).toUpperCase(Locale.ROOT) + clause.substring(1) + ".";
    }

    /** Everybody builds one problem at the same time; before the next one, the parts go back. */
    private String parts(Map<String, List<BenchCircuit>> made) {
        StringBuilder list = new StringBuilder(language.say("sheet.leaf.together") + "\n\n");
        made.values().forEach(circuits -> {
            TreeMap<String, Integer> counts = new TreeMap<>();
            for (BenchCircuit circuit : circuits) {
                PartWords words = new PartWords(circuit, writer, language);
                circuit.parts()
                        .forEach(part -> words.fetched(part)
                                .ifPresent(fetched -> counts.merge(fetched, part.count(), Integer::sum)));
            }
            List<String> lines = new ArrayList<>();
            counts.forEach((part, count) ->
                    lines.add(language.say("sheet.leaf.fetched", "count", Integer.toString(count), "part", part)));
            list.append("- **")
                    .append(Statement.escape(
                            circuits.get(0).problem().template().title()))
                    .append("**: ")
                    .append(Statement.escape(String.join("; ", lines)))
                    .append('\n');
        });
        return list.toString();
    }

    private String atHand() {
        List<String> sentences = new ArrayList<>();
        sentences.add(language.say(
                "sheet.leaf.supply",
                "outputs",
                Integer.toString(BenchSupply.OUTPUTS),
                "volts",
                numbers.volts(BenchSupply.MOST_VOLTS),
                "amps",
                numbers.amps(BenchSupply.MOST_AMPS)));
        sentences.add(language.say("sheet.leaf.load", "watts", numbers.watts(BenchSupply.MOST_SUNK_WATTS)));
        sentences.add(isListed(set.parts()) ? language.say("sheet.leaf.meter-listed") : assumedMeter());
        sentences.add(
                set.parts().isPresent()
                        ? language.say("sheet.leaf.parts-from-bins")
                        : language.say("sheet.leaf.parts"));
        sentences.add(language.say("sheet.leaf.screw-terminals", "amps", numbers.amps(1)));
        sentences.add(language.say("sheet.leaf.show-first"));
        return Statement.escape(String.join(" ", sentences));
    }

    private String assumedMeter() {
        return language.say(
                "sheet.leaf.meter-assumed",
                "volts",
                numbers.percent(BenchMeter.VOLTS_SHARE),
                "voltdigits",
                Integer.toString(BenchMeter.VOLTS_DIGITS),
                "voltohms",
                numbers.ohms(BenchMeter.VOLTMETER_OHMS),
                "amps",
                numbers.percent(BenchMeter.AMPS_SHARE),
                "ampdigits",
                Integer.toString(BenchMeter.AMPS_DIGITS),
                "microohms",
                numbers.ohms(BenchMeter.MICROAMMETER_OHMS),
                "microamps",
                numbers.amps(0.004),
                "milliohms",
                numbers.ohms(BenchMeter.MILLIAMMETER_OHMS),
                "milliamps",
                numbers.amps(0.4),
                "ohms",
                numbers.ohms(BenchMeter.AMMETER_OHMS));
    }

    private String band() {
        String tolerances = tolerances();
        List<String> sentences = List.of(
                language.say("sheet.leaf.band"),
                set.parts().isPresent()
                        ? language.say("sheet.leaf.tolerances-beside-bins", "tolerances", tolerances)
                        : language.say("sheet.leaf.tolerances", "tolerances", tolerances),
                language.say("sheet.leaf.outside"));
        return Statement.escape(String.join(" ", sentences));
    }

    private String tolerances() {
        return language.say(
                "sheet.leaf.common-tolerances",
                "resistors",
                numbers.percent(CommonParts.RESISTOR),
                "trimpots",
                numbers.percent(CommonParts.TRIMPOT),
                "zeners",
                numbers.percent(CommonParts.ZENER),
                "references",
                numbers.percent(CommonParts.REFERENCE),
                "regulators",
                numbers.percent(CommonParts.REGULATOR),
                "leds",
                numbers.volts(CommonParts.LED),
                "white",
                numbers.volts(0.3),
                "diodes",
                numbers.volts(CommonParts.DIODE),
                "supply",
                numbers.percent(CommonParts.SUPPLY),
                "load",
                numbers.percent(CommonParts.ELECTRONIC_LOAD));
    }
}
