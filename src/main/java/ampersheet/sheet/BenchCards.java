package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.Drawer;
import ampersheet.bench.FittedPart;
import ampersheet.bench.MeterReading;
import ampersheet.bench.Probes;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.figure.CircuitFigure;
import ampersheet.figure.Figure;
import ampersheet.formula.Values;
import ampersheet.language.Language;
import ampersheet.problem.Caution;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Cards for the bench: for each problem that can be laid out, a circuit of the same kind with other numbers than on any
 * sheet of the class, made of parts that one has, and what a meter then shows. Readings are those of the circuit as
 * laid out, solved; a card gives no answer of a sheet away.
 */
public final class BenchCards {
    private final ProblemSet set;
    private final QuantityWriter writer;
    private final Language language;
    private final Map<String, BenchDraws> draws = new LinkedHashMap<>();
    private final Map<String, List<BenchCircuit>> made = new LinkedHashMap<>();

    /** @param number of its problem on the sheet */
    record Card(int number, BenchCircuit circuit) {}

    /**
     * A card that is not made.
     *
     * @param template whose circuit it would be
     * @param because a clause
     */
    public record LeftOut(String template, String title, String because) {}

    /**
     * @param set with the bins of the workshop, if the cards shall be made from them
     * @param roster whose sheets show numbers that no card shows
     */
    public BenchCards(ProblemSet set, Roster roster) {
        this.set = set;
        this.writer = new QuantityWriter(set.plan().decimal());
        this.language = set.plan().language();
        Map<String, List<Values>> onSheets = onSheets(set, roster);
        set.sources()
                .forEach((source, template) -> draws.put(
                        source,
                        new BenchDraws(
                                new Draws(
                                        new Workshop(template),
                                        set.plan().seed(),
                                        set.plan().portion().ofCards()),
                                new Drawer(set.parts()),
                                onSheets.getOrDefault(template.name(), List.of()),
                                language)));
    }

    /** Of the sheets as they are made without bins and, where they can be made so, with them. */
    private static Map<String, List<Values>> onSheets(ProblemSet set, Roster roster) {
        Map<String, List<Values>> numbers = new LinkedHashMap<>();
        addNumbers(new SheetMaker(ProblemSet.of(set.plan(), set.library())), roster, numbers);
        if (set.parts().isPresent()) {
            try {
                addNumbers(new SheetMaker(set), roster, numbers);
            } catch (DiagnosticException cannotBeBuilt) {
                return numbers; // nobody has a sheet made from these bins
            }
        }
        return numbers;
    }

    private static void addNumbers(SheetMaker maker, Roster roster, Map<String, List<Values>> numbers) {
        maker.prepare(roster);
        for (Roster.Seat seat : roster.seats()) {
            for (SheetProblem problem : maker.sheet(seat.number()).problems()) {
                numbers.computeIfAbsent(problem.template().name(), name -> new ArrayList<>())
                        .add(problem.problem().givens());
            }
        }
    }

    /**
     * The cards of a seat, one for each template of its sheet that can be laid out; to be asked for once for each seat.
     *
     * @param widest widths in pixels that drawings are to keep, one for each size of a card
     * @return for each width the same cards, with drawings of that width
     */
    public List<Document> of(Roster.Seat seat, List<Double> widest) {
        List<Card> cards = cards(seat.number());
        String subtitle = Composer.learner(seat.name(), seat.number(), language);
        return widest.stream()
                .map(width -> new Document(
                        Document.Kind.KEY,
                        language,
                        language.say("sheet.card.title", "title", set.plan().title()),
                        subtitle,
                        set.id(seat.number()).toString(),
                        set.plan().paper(),
                        cards.stream().map(card -> (Block) block(card, width)).toList()))
                .toList();
    }

    /** The next of each template of the sheet; examples have the circuit of their twin. */
    List<Card> cards(int seat) {
        List<Card> cards = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        int number = 0;
        for (SeatDraw draw : set.draws(seat)) {
            number++;
            if (!draw.slot().example() && seen.add(draw.source())) {
                int at = number;
                draws.get(draw.source()).next().ifPresent(circuit -> {
                    cards.add(new Card(at, circuit));
                    made.computeIfAbsent(draw.source(), source -> new ArrayList<>())
                            .add(circuit);
                });
            }
        }
        return cards;
    }

    /** Templates of the plan of which no card, or none for the later seats, could be made. */
    public List<LeftOut> leftOut() {
        List<LeftOut> left = new ArrayList<>();
        draws.forEach((source, of) -> of.given()
                .ifPresent(because -> left.add(new LeftOut(source, of.template().title(), because))));
        return left;
    }

    /**
     * A card that has more to say than the largest holds.
     *
     * @param title of its problem
     * @param seats such as "seat 3"
     */
    public LeftOut tooLong(String title, List<String> seats) {
        String template = draws.values().stream()
                .map(BenchDraws::template)
                .filter(one -> one.title().equals(title))
                .findFirst()
                .orElseThrow()
                .name();
        return new LeftOut(
                template, title, language.say("sheet.leaf.because.too-long", "seats", String.join(", ", seats)));
    }

    /** For whoever hands the cards out, once all are made. */
    public Document leaf(List<LeftOut> left) {
        return new BenchLeaf(set).of(made, left);
    }

    private ProblemBlock block(Card card, double widest) {
        BenchCircuit circuit = card.circuit();
        BenchWords words = new BenchWords(circuit, writer, language);
        List<Block> blocks = new ArrayList<>(cautions(circuit, language));
        blocks.add(new FigureBlock(CircuitFigure.draw(
                language.say("sheet.figure.of-card", "number", Integer.toString(card.number())),
                circuit.schematic(),
                words.labels(),
                set.plan().symbols(),
                new Figure.Setting("card" + card.number(), widest, set.plan().language()))));
        blocks.add(new Prose(parts(circuit, words)));
        blocks.add(new Prose(steps(circuit, words)));
        blocks.add(readings(circuit, words));
        blocks.add(
                new Prose(Statement.escape(BenchLeaf.meterInShort(set.parts(), new MarkedNumbers(writer), language))));
        return new ProblemBlock(
                Integer.toString(card.number()),
                circuit.problem().template().title(),
                List.of(language.say("sheet.card.other-numbers")),
                blocks);
    }

    /** Those that what is laid out calls for: a bench supply stands for a battery, and no motor turns. */
    private static List<Document.Caution> cautions(BenchCircuit circuit, Language language) {
        List<String> ofTheProblem = circuit.problem().cautions();
        Set<Caution> cautions = EnumSet.of(Caution.BENCH_SUPPLY);
        if (ofTheProblem.contains(Caution.EXTRA_LOW_VOLTAGE.id())) {
            cautions.add(Caution.EXTRA_LOW_VOLTAGE);
        }
        if (!circuit.hot().isEmpty()) {
            cautions.add(Caution.HOT_PARTS);
        }
        if (ofTheProblem.contains(Caution.CAPACITOR.id())
                && circuit.parts().stream().anyMatch(part -> part.part().kind() == PartKind.CAPACITOR)) {
            cautions.add(Caution.CAPACITOR);
        }
        return cautions.stream()
                .map(caution -> new Document.Caution(caution.heading(language), caution.text(language)))
                .toList();
    }

    /** Those alike in one line. */
    private String parts(BenchCircuit circuit, BenchWords words) {
        PartWords parts = new PartWords(circuit, writer, language);
        Map<String, List<String>> names = new LinkedHashMap<>();
        for (FittedPart part : circuit.parts()) {
            names.computeIfAbsent(parts.take(part), take -> new ArrayList<>()).add(words.name(part.name()));
        }
        StringBuilder list = new StringBuilder();
        names.forEach((take, alike) -> list.append("- **")
                .append(Statement.escape(String.join(", ", alike)))
                .append("**: ")
                .append(Statement.escape(alike.size() > 1 ? language.say("sheet.card.each", "part", take) : take))
                .append('\n'));
        return list.toString();
    }

    private String steps(BenchCircuit circuit, BenchWords words) {
        List<String> steps = new ArrayList<>();
        List<String> pins = words.threePins();
        String wire = language.say("sheet.card.wire", "signs", words.signs());
        steps.add(
                pins.isEmpty()
                        ? wire
                        : wire + " " + language.say("sheet.card.pin-order", "parts", escaped(String.join(", ", pins))));
        steps.add(language.say("sheet.card.set", "settings", String.join("; ", settings(circuit, words))));
        steps.add(switchOn(circuit, words));
        if (circuit.readings().stream().anyMatch(reading -> reading.probes() instanceof Probes.Current)) {
            steps.add(language.say("sheet.card.current"));
        }
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < steps.size(); i++) {
            list.append(i + 1).append(". ").append(steps.get(i)).append('\n');
        }
        return list.toString();
    }

    private List<String> settings(BenchCircuit circuit, BenchWords words) {
        MarkedNumbers numbers = new MarkedNumbers(writer);
        List<String> settings = new ArrayList<>();
        for (FittedPart part : circuit.parts()) {
            if (part.part().kind() == PartKind.SOURCE) {
                settings.add(language.say(
                        "sheet.card.setting",
                        "part",
                        escaped(words.name(part.name())),
                        "volts",
                        escaped(numbers.volts(part.part().values().get(PartValue.VOLTS))),
                        "amps",
                        escaped(numbers.amps(circuit.limits().get(part.name())))));
            }
        }
        return settings;
    }

    private String switchOn(BenchCircuit circuit, BenchWords words) {
        List<String> sentences = new ArrayList<>(List.of(language.say("sheet.card.switch-on")));
        if (!circuit.hot().isEmpty()) {
            sentences.add(language.say("sheet.card.hot", "parts", escaped(words.hot())));
        }
        circuit.settings()
                .forEach((part, reading) -> sentences.add(language.say(
                        "sheet.card.turn",
                        "part",
                        escaped(words.name(part)),
                        "value",
                        escaped(words.expected(reading)),
                        "probes",
                        escaped(words.probes(reading.probes())))));
        sentences.add(language.say("sheet.card.measure"));
        return String.join(" ", sentences);
    }

    private static String escaped(String plain) {
        return Statement.escape(plain);
    }

    private Table readings(BenchCircuit circuit, BenchWords words) {
        List<List<Cell>> rows = new ArrayList<>();
        for (MeterReading reading : circuit.readings()) {
            String where = words.where(reading.probes());
            rows.add(List.of(
                    new Cell(
                            words.range(reading)
                                    .map(range -> where + " " + range)
                                    .orElse(where),
                            ""),
                    new Cell(words.expected(reading) + " (" + words.band(reading) + ")", ""),
                    new Cell("", "")));
        }
        List<String> head = List.of(
                language.say("sheet.card.probes"),
                language.say("sheet.card.shows"),
                language.say("sheet.card.measured"));
        return new Table("", head, rows);
    }
}
