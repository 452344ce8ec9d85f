package ampersheet.reference;

import ampersheet.chain.DataPath;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.circuit.Diodes;
import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.circuit.TransientSolver;
import ampersheet.problem.Attempt;
import ampersheet.problem.ChosenGivens;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import ampersheet.thermal.HeatNetwork;
import ampersheet.thermal.HeatSolver;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a published value is about, in a form that the program can work. */
sealed interface Subject {
    /** The key of the row that tells the kind. */
    String kind();

    Measured measured();

    /**
     * A built-in template with givens chosen; what is measured are its givens and steps, and both routes must agree.
     */
    record Template(String template, Map<String, String> given) implements Subject {
        @Override
        public String kind() {
            return "template";
        }

        @Override
        public Measured measured() {
            Workshop workshop = new Workshop(TemplateReader.read(TemplateFiles.builtIn(), template));
            Attempt attempt = new Draws(workshop, "reference").work(ChosenGivens.read(workshop.template(), given));
            if (attempt instanceof Attempt.Refused refused) {
                throw new AssertionError("refused: " + refused.detail());
            }
            Attempt.Worked worked = (Attempt.Worked) attempt;
            List<Problem.Answer> answers = new ArrayList<>(worked.problem().answers());
            answers.addAll(worked.supporting());
            List<String> faults = answers.stream()
                    .filter(answer -> !answer.agrees())
                    .map(answer -> "the two routes to " + answer.of() + " do not agree: " + answer.value() + " and "
                            + answer.second())
                    .toList();
            return new Measured() {
                @Override
                public List<Double> values(String formula) {
                    return List.of(worked.problem().values().quantity(formula).value());
                }

                @Override
                public List<String> faults() {
                    return faults;
                }
            };
        }
    }

    /** Parts between named nodes; the node {@code g} is the reference. */
    record Circuit(List<NamedPart> parts) implements Subject {
        record NamedPart(PartKind kind, String name, Map<String, String> nodes, Map<PartValue, Double> values) {}

        @Override
        public String kind() {
            return "circuit";
        }

        @Override
        public Measured measured() {
            return solved(schematic());
        }

        Schematic schematic() {
            Map<String, GridPoint> points = new LinkedHashMap<>();
            List<PlacedPart> placed = new ArrayList<>();
            for (NamedPart part : parts) {
                Map<String, GridPoint> ends = new LinkedHashMap<>();
                part.nodes()
                        .forEach((terminal, node) -> ends.put(
                                terminal, points.computeIfAbsent(node, unseen -> new GridPoint(points.size(), 0))));
                placed.add(new PlacedPart(part.kind(), part.name(), ends, part.values()));
            }
            points.forEach((node, point) -> placed.add(
                    node.equals("g")
                            ? new PlacedPart(PartKind.GROUND, "the ground", Map.of("at", point), Map.of())
                            : new PlacedPart(PartKind.NODE, node, Map.of("at", point), Map.of())));
            return new Schematic(placed);
        }

        private static Measured solved(Schematic schematic) {
            Outcome outcome = OperatingPointSolver.solve(schematic.netlist());
            if (!(outcome instanceof Outcome.Solved solved)) {
                throw new AssertionError("the circuit is not solved: " + outcome);
            }
            OperatingPoint point = solved.point();
            return Measured.by((measure, arguments) -> {
                String of = Measured.name(arguments, 0);
                return switch (measure) {
                    case "voltage" -> new Quantity(point.voltage(of), Dimension.VOLTAGE);
                    case "across" -> new Quantity(point.across(of), Dimension.VOLTAGE);
                    case "current" -> new Quantity(point.current(of), Dimension.CURRENT);
                    case "power" -> new Quantity(point.power(of), Dimension.POWER);
                    default -> Measured.unknown(measure);
                };
            });
        }
    }

    /** A heat network in its steady state. */
    record Heat(HeatNetwork network) implements Subject {
        @Override
        public String kind() {
            return "heat";
        }

        @Override
        public Measured measured() {
            HeatSolver.Outcome outcome = HeatSolver.steady(network);
            if (!(outcome instanceof HeatSolver.Outcome.Solved solved)) {
                throw new AssertionError("the heat network is not solved: " + outcome);
            }
            return Measured.by((measure, arguments) -> switch (measure) {
                case "temperature" ->
                    new Quantity(solved.kelvin().get(Measured.name(arguments, 0)), Dimension.TEMPERATURE);
                case "heat" -> new Quantity(solved.watts().get(Measured.name(arguments, 0)), Dimension.POWER);
                default -> Measured.unknown(measure);
            });
        }
    }

    /** One tile, entered at its top left, along its rows. */
    record Chain(int columns, int rows, Tile.Order order) implements Subject {
        @Override
        public String kind() {
            return "chain";
        }

        @Override
        public Measured measured() {
            Tile tile = new Tile(
                    columns, rows, order, Tile.Corner.TOP_LEFT, Tile.Along.ROWS, Tile.Side.WEST, Tile.Side.EAST);
            DataPath.Outcome outcome =
                    DataPath.trace(new Panel(tile, List.of(new Panel.Place(0, 0, 0)), 0, false, 24, 1.25e-6, 0, false));
            if (!(outcome instanceof DataPath.Outcome.Traced traced)) {
                throw new AssertionError("the data path is not traced: " + outcome);
            }
            return Measured.by((measure, arguments) -> measure.equals("turn")
                    ? Quantity.number(
                            traced.turn((int) Measured.number(arguments, 0), (int) Measured.number(arguments, 1)))
                    : Measured.unknown(measure));
        }
    }

    /** A diode by its model parameters, straight across a voltage; the part is {@code D1}. */
    record Diode(double saturation, double emission, double series, double volts) implements Subject {
        /** Any point within the diode's use states it; the solved circuit is that of the part, not of this point. */
        private static final double STATED_AMPS = 0.1;

        @Override
        public String kind() {
            return "diode";
        }

        @Override
        public Measured measured() {
            return new Circuit(List.of(
                            new Circuit.NamedPart(
                                    PartKind.SOURCE,
                                    "V1",
                                    Map.of("from", "g", "to", "a"),
                                    Map.of(PartValue.VOLTS, volts)),
                            new Circuit.NamedPart(
                                    PartKind.DIODE,
                                    "D1",
                                    Map.of("from", "a", "to", "g"),
                                    Diodes.stated(saturation, emission, series, STATED_AMPS))))
                    .measured();
        }
    }

    /** A capacitor charged through a resistor from empty; the node between them is {@code out}. */
    record Transient(double volts, double ohms, double farads) implements Subject {
        @Override
        public String kind() {
            return "transient";
        }

        @Override
        public Measured measured() {
            Netlist netlist = new Circuit(List.of(
                            new Circuit.NamedPart(
                                    PartKind.SOURCE,
                                    "V1",
                                    Map.of("from", "g", "to", "a"),
                                    Map.of(PartValue.VOLTS, volts)),
                            new Circuit.NamedPart(
                                    PartKind.RESISTOR,
                                    "R1",
                                    Map.of("from", "a", "to", "out"),
                                    Map.of(PartValue.OHMS, ohms)),
                            new Circuit.NamedPart(
                                    PartKind.CAPACITOR,
                                    "C1",
                                    Map.of("from", "out", "to", "g"),
                                    Map.of(PartValue.FARADS, farads))))
                    .schematic()
                    .netlist();
            return Measured.by((measure, arguments) -> switch (measure) {
                case "voltage_after" ->
                    new Quantity(
                            voltageAfter(netlist, Measured.name(arguments, 0), Measured.number(arguments, 1)),
                            Dimension.VOLTAGE);
                case "time_until" ->
                    new Quantity(
                            timeUntil(netlist, Measured.name(arguments, 0), Measured.number(arguments, 1)),
                            Dimension.TIME);
                default -> Measured.unknown(measure);
            });
        }

        private static double voltageAfter(Netlist netlist, String node, double seconds) {
            Outcome outcome = TransientSolver.after(netlist, seconds);
            if (!(outcome instanceof Outcome.Solved solved)) {
                throw new AssertionError("the circuit is not solved over time: " + outcome);
            }
            return solved.point().voltage(node);
        }

        private static double timeUntil(Netlist netlist, String node, double volts) {
            TransientSolver.TimeOutcome outcome = TransientSolver.timeUntil(netlist, node, volts);
            if (!(outcome instanceof TransientSolver.TimeOutcome.Reached reached)) {
                throw new AssertionError("the voltage is not reached: " + outcome);
            }
            return reached.seconds();
        }
    }

    /** A preferred series. */
    record Series(PreferredSeries series) implements Subject {
        @Override
        public String kind() {
            return "series";
        }

        @Override
        public Measured measured() {
            Measured one = Measured.by((measure, arguments) -> measure.equals("member")
                    ? Quantity.number(series.mantissas().get((int) Measured.number(arguments, 0)))
                    : Measured.unknown(measure));
            return formula -> formula.equals("members") ? series.mantissas() : one.values(formula);
        }
    }

    /** A value as somebody types it. */
    record Typed(String typed, Unit unit) implements Subject {
        @Override
        public String kind() {
            return "reading";
        }

        @Override
        public Measured measured() {
            Reading reading = QuantityReader.read(typed, unit);
            if (!(reading instanceof Reading.Value value)) {
                throw new AssertionError("not read as one value: " + reading);
            }
            return formula -> List.of(
                    formula.equals("si")
                            ? value.si(unit)
                            : Measured.unknown(formula).value());
        }
    }
}
