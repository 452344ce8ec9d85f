package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.figure.CircuitFigure;
import ampersheet.figure.Label;
import ampersheet.figure.PartWords;
import ampersheet.problem.BenchReading;
import ampersheet.problem.Caution;
import ampersheet.problem.Inventory;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.template.ExtraLowVoltage;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Cards for the bench: the circuit of a problem as it is built, and what a meter should then read. Readings are those
 * of the solved circuit; the values of parts are the problem's own, worked out.
 */
public final class BenchCards {
    /** What lies on a bench; panels and long cables are measured elsewhere. */
    private static final Set<PartKind> BUILT = EnumSet.of(
            PartKind.SOURCE,
            PartKind.RESISTOR,
            PartKind.LOAD,
            PartKind.SINK,
            PartKind.LED,
            PartKind.DIODE,
            PartKind.ZENER,
            PartKind.REFERENCE,
            PartKind.NMOS,
            PartKind.PMOS,
            PartKind.NPN,
            PartKind.SWITCH,
            PartKind.TRIMPOT,
            PartKind.REGULATOR,
            PartKind.CAPACITOR,
            PartKind.VOLTMETER,
            PartKind.AMMETER);

    private static final Set<PartKind> UNSEEN = EnumSet.of(PartKind.WIRE, PartKind.GROUND, PartKind.NODE);
    /** Across these a meter shows something worth knowing. */
    private static final Set<PartKind> MEASURED = EnumSet.of(
            PartKind.RESISTOR, PartKind.LED, PartKind.DIODE, PartKind.ZENER, PartKind.REFERENCE, PartKind.SINK);

    private static final Map<PartKind, List<Value>> VALUES = values();
    private static final Unit VOLT = Unit.parse("V");
    private static final Unit AMPERE = Unit.parse("A");
    private static final int FIGURES = 3;
    private static final int MOST_READINGS = 5;
    /** Below it a bench supply and a meter show nothing that could be told from zero. */
    private static final double LEAST_VOLTS = 0.01;

    private BenchCards() {}

    private record Value(String key, Unit unit) {}

    private static Map<PartKind, List<Value>> values() {
        Unit ohm = Unit.parse("ohm");
        Map<PartKind, List<Value>> values = new EnumMap<>(PartKind.class);
        values.put(PartKind.SOURCE, List.of(new Value("volts", Unit.parse("V"))));
        values.put(PartKind.RESISTOR, List.of(new Value("ohms", ohm)));
        values.put(PartKind.LOAD, List.of(new Value("ohms", ohm)));
        values.put(PartKind.TRIMPOT, List.of(new Value("ohms", ohm)));
        values.put(PartKind.SINK, List.of(new Value("amps", Unit.parse("A"))));
        values.put(PartKind.LED, List.of(new Value("volts", Unit.parse("V")), new Value("amps", Unit.parse("A"))));
        values.put(PartKind.ZENER, List.of(new Value("volts", Unit.parse("V"))));
        values.put(PartKind.REFERENCE, List.of(new Value("volts", Unit.parse("V"))));
        values.put(PartKind.REGULATOR, List.of(new Value("volts", Unit.parse("V"))));
        values.put(PartKind.CAPACITOR, List.of(new Value("farads", Unit.parse("F"))));
        return values;
    }

    /** One problem block for each card; none for a problem that is not built on a bench. */
    public static Document of(Sheet sheet, String name, double widest) {
        List<Block> cards = new ArrayList<>();
        for (SheetProblem problem : sheet.problems()) {
            problem.problem()
                    .schematic()
                    .filter(BenchCards::isBuilt)
                    .ifPresent(schematic -> cards.add(card(problem, schematic, widest, sheet.parts())));
        }
        String seat = "Seat " + sheet.id().seat();
        return new Document(
                Document.Kind.KEY,
                sheet.plan().language(),
                "Bench cards: " + sheet.plan().title(),
                name.isEmpty() ? seat : name + " · " + seat,
                sheet.id().toString(),
                sheet.plan().paper(),
                cards);
    }

    private static boolean isBuilt(Schematic schematic) {
        return schematic.parts().stream().allMatch(part -> BUILT.contains(part.kind()) || UNSEEN.contains(part.kind()))
                && schematic.parts().stream()
                        .allMatch(part -> part.values().getOrDefault("volts", 0.0) <= ExtraLowVoltage.VOLTS);
    }

    private static ProblemBlock card(
            SheetProblem problem, Schematic schematic, double widest, Optional<Inventory> workshop) {
        List<Block> blocks = new ArrayList<>();
        for (String id : problem.problem().cautions()) {
            Caution caution =
                    Caution.named(id).orElseThrow(() -> new IllegalStateException("a caution nobody wrote: " + id));
            blocks.add(new Document.Caution(caution.heading(), caution.text()));
        }
        blocks.add(new FigureBlock(CircuitFigure.draw(
                "Circuit of problem " + problem.number(),
                schematic,
                new PartLabels(problem).ofCircuit(),
                problem.plan().symbols(),
                "card" + problem.number(),
                widest)));
        Outcome outcome = OperatingPointSolver.solve(schematic.netlist());
        List<BenchReading> worst =
                workshop.map(bins -> BenchReading.of(problem.problem(), bins)).orElse(List.of());
        List<List<Cell>> readings = asked(problem, worst);
        blocks.add(new Prose(steps(problem, schematic, outcome)));
        if (outcome instanceof Outcome.Solved solved) {
            readings.addAll(across(problem, schematic, solved.point()));
        }
        blocks.add(new Table(
                "",
                List.of("Measure", "Expected", "Band", "Measured"),
                readings.subList(0, Math.min(MOST_READINGS, readings.size()))));
        blocks.add(new Prose(
                worst.isEmpty()
                        ? "Band: what the check of an answer accepts, " + UsualAcceptance.percent()
                                + " where nothing else is said. The meter's own error comes on top."
                        : "Band of asked values: the workshop's parts and meter within their tolerances. Voltages "
                                + "across parts: "
                                + UsualAcceptance.percent() + "."));
        return new ProblemBlock(
                Integer.toString(problem.number()), problem.template().title(), List.of(), blocks);
    }

    private static String steps(SheetProblem problem, Schematic schematic, Outcome outcome) {
        QuantityWriter writer = problem.writer();
        Map<String, Label> captions = new PartLabels(problem).ofCircuit();
        List<String> parts = new ArrayList<>();
        StringBuilder supplies = new StringBuilder();
        for (PlacedPart part : schematic.parts()) {
            if (!UNSEEN.contains(part.kind())) {
                List<String> values = new ArrayList<>();
                for (Value value : VALUES.getOrDefault(part.kind(), List.of())) {
                    Double si = part.values().get(value.key());
                    if (si != null) {
                        values.add(writer.plain(si, value.unit(), FIGURES).text());
                    }
                }
                parts.add(captions.get(part.name()).name() + " (" + PartWords.of(part.kind()) + ")"
                        + (values.isEmpty() ? "" : " " + String.join(" at ", values)));
                if (part.kind() == PartKind.SOURCE && outcome instanceof Outcome.Solved solved) {
                    supplies.append(' ')
                            .append(captions.get(part.name()).name())
                            .append(" gives about ")
                            .append(writer.rounded(Math.abs(solved.point().current(part.name())), AMPERE, 2)
                                    .text())
                            .append(": set its current limit a little above.");
                }
            }
        }
        return "1. Supply off. Lay out: " + Statement.escape(String.join("; ", parts)) + ".\n"
                + "2. Wire them as drawn. Compare every A, K, + and − with the drawing.\n"
                + "3. Set voltage and current limit before connecting." + Statement.escape(supplies.toString()) + "\n"
                + "4. Switch on, measure line by line, switch off before you change anything.";
    }

    /** Asked values that a meter shows. */
    private static List<List<Cell>> asked(SheetProblem problem, List<BenchReading> worst) {
        List<List<Cell>> rows = new ArrayList<>();
        for (AnswerKey key : problem.answers()) {
            Dimension dimension = key.unit().dimension();
            boolean shown = key.acceptance() instanceof Acceptance.Within
                    && (dimension.equals(Dimension.VOLTAGE)
                            || dimension.equals(Dimension.CURRENT)
                            || key.unit().offset() != 0);
            if (shown) {
                Optional<BenchReading> reading = worst.stream()
                        .filter(one -> one.of().equals(key.step()))
                        .findFirst();
                rows.add(row(
                        problem.template().line(key.step()).meaning(),
                        ProblemText.answer(key, problem.writer()),
                        reading.map(one -> ProblemText.precise(key, one.low(), problem.writer()) + " to "
                                        + ProblemText.precise(key, one.high(), problem.writer()))
                                .orElseGet(() -> ProblemText.accepted(key, problem.writer()))));
            }
        }
        return rows;
    }

    private static List<List<Cell>> across(SheetProblem problem, Schematic schematic, OperatingPoint point) {
        QuantityWriter writer = problem.writer();
        Map<String, Label> captions = new PartLabels(problem).ofCircuit();
        List<List<Cell>> rows = new ArrayList<>();
        for (PlacedPart part : schematic.parts()) {
            if (MEASURED.contains(part.kind()) && Math.abs(point.across(part.name())) >= LEAST_VOLTS) {
                double volts = Math.abs(point.across(part.name()));
                rows.add(row(
                        "voltage across " + captions.get(part.name()).name(),
                        writer.rounded(volts, VOLT, FIGURES).text(),
                        writer.rounded(volts * (1 - UsualAcceptance.RELATIVE), VOLT, FIGURES)
                                        .text() + " to "
                                + writer.rounded(volts * (1 + UsualAcceptance.RELATIVE), VOLT, FIGURES)
                                        .text()));
            }
        }
        return rows;
    }

    private static List<Cell> row(String what, String expected, String band) {
        return List.of(new Cell(what, ""), new Cell(expected, ""), new Cell(band, ""), new Cell("", ""));
    }
}
