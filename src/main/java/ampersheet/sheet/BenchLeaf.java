package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.BenchMeter;
import ampersheet.bench.BenchSupply;
import ampersheet.bench.CommonParts;
import ampersheet.problem.Inventory;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
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

    BenchLeaf(ProblemSet set) {
        this.set = set;
        this.writer = new QuantityWriter(set.plan().decimal());
    }

    /** @param made the circuits of all cards, by what they are drawn from */
    Document of(Map<String, List<BenchCircuit>> made, List<LeftOut> left) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading(2, "How the cards go with the sheets"));
        blocks.add(new Prose("A card has the number of its problem on the learner's sheet, and other numbers than any "
                + "sheet of this class: it gives no answer away, and can be handed out with the sheets. Values that "
                + "one cannot buy, and parts that one cannot lay out, are replaced by what a bench has; the circuit "
                + "is solved again with these. So a reading is right for the card, and for nothing else."));
        blocks.add(new Heading(2, "What has to be at hand"));
        blocks.add(new Prose(atHand()));
        blocks.add(new Prose(parts(made)));
        blocks.add(new Heading(2, "What the band is"));
        blocks.add(new Prose(band()));
        if (!left.isEmpty()) {
            blocks.add(new Heading(2, "Problems without a card"));
            blocks.add(new Table(
                    "",
                    List.of("Problem", "Why there is none"),
                    left.stream()
                            .map(one -> List.of(
                                    new Cell(one.title() + " (" + one.template() + ")", ""),
                                    new Cell(sentence(one.because()), "")))
                            .toList()));
        }
        return new Document(
                Document.Kind.KEY,
                set.plan().language(),
                "Bench cards: " + set.plan().title(),
                "For the host",
                "",
                set.plan().paper(),
                blocks);
    }

    /** What the band on a card holds for, in one line. */
    static String meterInShort(Optional<Inventory> parts, QuantityWriter writer) {
        BenchMeter meter = new BenchMeter(parts);
        boolean listed = meter.isListed(Dimension.VOLTAGE) && meter.isListed(Dimension.CURRENT);
        return "Band: these parts; "
                + (listed
                        ? "meter as in the parts list."
                        : "meter 3¾ digits, "
                                + kept(print(writer, BenchMeter.VOLTS_SHARE, "%") + " + " + BenchMeter.VOLTS_DIGITS)
                                + " "
                                + kept("(A: " + print(writer, BenchMeter.AMPS_SHARE, "%") + " + "
                                        + BenchMeter.AMPS_DIGITS + ")."));
    }

    /** In one line. */
    private static String kept(String words) {
        return words.replace(" ", SPACE);
    }

    private static String sentence(String clause) {
        return clause.substring(0, 1).toUpperCase(Locale.ROOT) + clause.substring(1) + ".";
    }

    /** Everybody builds one problem at the same time; before the next one, the parts go back. */
    private String parts(Map<String, List<BenchCircuit>> made) {
        StringBuilder list = new StringBuilder("For all cards of a problem together:\n\n");
        made.values().forEach(circuits -> {
            TreeMap<String, Integer> counts = new TreeMap<>();
            for (BenchCircuit circuit : circuits) {
                BenchWords words = new BenchWords(circuit, writer);
                circuit.parts()
                        .forEach(part -> words.fetched(part)
                                .ifPresent(fetched -> counts.merge(fetched, part.count(), Integer::sum)));
            }
            List<String> lines = new ArrayList<>();
            counts.forEach((part, count) -> lines.add(count + SPACE + "×" + SPACE + part));
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
        return Statement.escape(
                "A bench supply with " + BenchSupply.OUTPUTS + " outputs of up to "
                        + volts(BenchSupply.MOST_VOLTS) + " and " + amps(BenchSupply.MOST_AMPS)
                        + ", with a current limit that can be set. For some cards an electronic load of "
                        + print(BenchSupply.MOST_SUNK_WATTS, "W") + ". A meter" + meter()
                        + ". Parts as each card lists them" + (set.parts().isPresent() ? ", from your bins" : "")
                        + ". Above " + amps(1)
                        + " use screw terminals or solder, no breadboard. Show first how a current is measured: switch off, open the wire, meter in between, switch on; never across a part.");
    }

    private String meter() {
        BenchMeter meter = new BenchMeter(set.parts());
        boolean listed = meter.isListed(Dimension.VOLTAGE) && meter.isListed(Dimension.CURRENT);
        return listed
                ? " as your list has it"
                : " of 4000 counts (3¾ digits), assumed to be off by at most " + percent(BenchMeter.VOLTS_SHARE) + " + "
                        + BenchMeter.VOLTS_DIGITS + " digits for volts, with " + print(BenchMeter.VOLTMETER_OHMS, "ohm")
                        + " between its probes, and by " + percent(BenchMeter.AMPS_SHARE) + " + "
                        + BenchMeter.AMPS_DIGITS + " digits for amperes, with up to "
                        + print(BenchMeter.MICROAMMETER_OHMS, "ohm") + " in the way below " + amps(0.004) + ", "
                        + print(BenchMeter.MILLIAMMETER_OHMS, "ohm") + " below " + amps(0.4) + " and "
                        + print(BenchMeter.AMMETER_OHMS, "ohm") + " above";
    }

    private String band() {
        return Statement.escape("The meter shows the expected value with parts exactly as marked, and something in the "
                + "band as long as every part keeps the tolerance on the card and the meter its own. The circuit is "
                + "solved with each tolerance at either end, then with all at the ends that make the reading largest, "
                + "and smallest; the meter is in the circuit each time. "
                + (set.parts().isPresent()
                        ? "What the bins do not list has common tolerances: "
                        : "Common tolerances are assumed: ")
                + "resistors " + percent(CommonParts.RESISTOR) + ", trimpots " + percent(CommonParts.TRIMPOT)
                + ", zener diodes " + percent(CommonParts.ZENER) + ", references " + percent(CommonParts.REFERENCE)
                + ", regulators " + percent(CommonParts.REGULATOR) + ", LEDs " + volts(CommonParts.LED)
                + " (white ones " + volts(0.3) + "), diodes " + volts(CommonParts.DIODE)
                + ", a supply set by the meter " + percent(CommonParts.SUPPLY) + ", an electronic load "
                + percent(CommonParts.ELECTRONIC_LOAD) + ". A reading outside its band means another part, another "
                + "wiring or another range of the meter: look there first.");
    }

    private String percent(double share) {
        return print(share, "%");
    }

    private String volts(double si) {
        return print(si, "V");
    }

    private String amps(double si) {
        return print(si, "A");
    }

    private String print(double si, String unit) {
        return print(writer, si, unit);
    }

    private static String print(QuantityWriter writer, double si, String unit) {
        return si >= 0.1 && si < 1 && !unit.equals("%")
                ? writer.plain(si, Unit.parse("1"), 3).text() + SPACE + unit
                : writer.plain(si, Unit.parse(unit), 3).text();
    }
}
