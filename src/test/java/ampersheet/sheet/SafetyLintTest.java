package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.model.CircuitPlan;
import ampersheet.model.HeatModel;
import ampersheet.problem.Caution;
import ampersheet.problem.Problem;
import ampersheet.quantity.Dimension;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.source.Languages;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import ampersheet.thermal.HeatSolver;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What could hurt somebody is looked for on 4 sheets of every template (1000 with {@code -Pdeep}), by triggers written
 * down here a second time, and the box for it must stand on the sheet before the first question. A failure names the
 * seat of the seed to replay.
 */
class SafetyLintTest {
    private static final String SEED = "safety";
    private static final int SEATS = Boolean.getBoolean("ampersheet.deep") ? 1_000 : 4;
    /** Putting a sheet together takes longer than drawing its problem, and does the same with every caution. */
    private static final int EVERY_SO_MANY = 40;

    /** Direct current without protection against touch: IEV 826-12 (extra-low voltage), from memory. */
    private static final double HIGHEST_VOLTS = 60;
    /** Bare metal burns skin in a minute above 51 °C: ISO 13732-1, from memory. */
    private static final double HOT_KELVIN = 273.15 + 50;
    /** Half of what the usual small resistor is rated for; common practice, no source. */
    private static final double WARM_WATTS = 0.25;
    /** Half of what the largest resistor of a workshop's drawer is rated for, 10 W; common practice, no source. */
    private static final double MOST_RESISTOR_WATTS = 5;
    /** Half of what a usual trimpot is rated for; common practice, no source. */
    private static final double MOST_TRIMPOT_WATTS = 0.25;

    private static final double BRIGHT_AMPERES = 0.1;
    private static final double FELT_JOULES = 1;

    private static final Pattern COIL = words("relay|solenoid|coil");
    private static final Pattern MOTOR = words("motor|stepper");
    private static final Pattern BATTERY = words("battery|battery pack");
    private static final Set<Caution> STRIKES_BACK =
            Set.of(Caution.INDUCTIVE_LOAD, Caution.MOTOR_DRIVER, Caution.MOTOR_ON_SUPPLY);
    private static final Map<Caution, Pattern> WORDS = Map.of(
            Caution.INDUCTIVE_LOAD, COIL,
            Caution.LITHIUM_CELLS, words("lithium|li-ion|lipo"),
            Caution.SOLDERING, words("solder|soldering"));
    private static final Pattern MAINS = words("mains|230 ?V|120 ?V|115 ?V|live wire|neutral wire|wall socket|outlet");

    private static Pattern words(String alternatives) {
        return Pattern.compile("\\b(" + alternatives + ")s?\\b", Pattern.CASE_INSENSITIVE);
    }

    private static SheetMaker maker(TemplateLibrary library, String template) {
        String plan = "title: Safety\nseed: " + SEED + "\nproblems: [{template: " + template + "}]\n";
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), library));
    }

    @TestFactory
    Stream<DynamicTest> whatCanHurtHasItsBoxBeforeTheFirstQuestion() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        return ChosenTemplates.of(TemplateFiles.builtIn()).stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    SheetMaker maker = maker(library, name);
                    maker.prepare(SEATS);
                    List<String> faults = IntStream.rangeClosed(1, SEATS)
                            .parallel()
                            .mapToObj(seat -> faults(maker.sheet(seat), seat).stream()
                                    .map(fault -> "seat " + seat + ": " + fault))
                            .flatMap(each -> each)
                            .limit(5)
                            .toList();
                    assertEquals(List.of(), faults, name + ", seed " + SEED);
                }));
    }

    /** The triggers below would be worth nothing if no sheet met them. */
    @Test
    void theLintFindsABoxThatIsMissing() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        Sheet sheet = maker(library, "thermal-rise/regulator-junction").sheet(1);
        Problem problem = sheet.problems().get(0).problem();
        Set<Caution> calledFor = calledFor(problem, new ArrayList<>());
        assertTrue(calledFor.contains(Caution.HOT_PARTS));
        assertTrue(missing(calledFor, Set.of()).toString().contains("hot-parts"));
        assertEquals(List.of(), missing(calledFor, boxes(sheet)));
    }

    /** A box that speaks of what is not there teaches to pass over boxes. */
    @TestFactory
    Stream<DynamicTest> noBoxSpeaksOfWhatIsNotThere() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        return ChosenTemplates.of(TemplateFiles.builtIn()).stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Problem problem =
                            maker(library, name).sheet(1).problems().get(0).problem();
                    String told = told(problem.template());
                    Set<Caution> cautions = problem.cautions().stream()
                            .map(id -> Caution.named(id).orElseThrow())
                            .collect(Collectors.toCollection(LinkedHashSet::new));
                    boolean battery = BATTERY.matcher(told).find()
                            && problem.template().model(CircuitPlan.class).isPresent();
                    assertTrue(!battery || !cautions.contains(Caution.BENCH_SUPPLY), "a battery has no voltage to set");
                    assertTrue(battery || !cautions.contains(Caution.BATTERY), "there is no battery");
                    assertTrue(
                            COIL.matcher(told).find() || !cautions.contains(Caution.INDUCTIVE_LOAD),
                            "there is no coil");
                    assertTrue(
                            MOTOR.matcher(told).find()
                                    || !cautions.contains(Caution.MOTOR_DRIVER)
                                            && !cautions.contains(Caution.MOTOR_ON_SUPPLY),
                            "there is no motor");
                    assertTrue(cautions.stream().filter(STRIKES_BACK::contains).count() <= 1, "two boxes say the same");
                }));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "current-limiting/driven-string",
                "current-limiting/gate-clamp-indicator",
                "thermal-rise/contact-heat",
                "voltage-dividers/ground-shift",
                "voltage-dividers/thermistor-divider"
            })
    void whereNothingGetsHotNoBoxSaysSo(String template) {
        SheetMaker maker = maker(new TemplateLibrary(List.of(TemplateFiles.builtIn())), template);
        maker.prepare(20);
        for (int seat = 1; seat <= 20; seat++) {
            List<String> cautions =
                    maker.sheet(seat).problems().get(0).problem().cautions();
            assertFalse(cautions.contains(Caution.HOT_PARTS.id()), template + ", seat " + seat);
        }
    }

    private static List<String> faults(Sheet sheet, int seat) {
        Problem problem = sheet.problems().get(0).problem();
        List<String> faults = new ArrayList<>();
        Set<Caution> calledFor = calledFor(problem, faults);
        problem.values().quantities().forEach((name, quantity) -> {
            if (quantity.dimension().equals(Dimension.VOLTAGE) && Math.abs(quantity.value()) > HIGHEST_VOLTS) {
                faults.add(name + " is " + quantity.value() + " V");
            }
        });
        if (MAINS.matcher(told(problem.template())).find()) {
            faults.add("the words speak of mains");
        }
        Set<String> cautions = problem.cautions().stream()
                .map(id -> Caution.named(id).orElseThrow().heading(Languages.ENGLISH))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        faults.addAll(missing(calledFor, cautions));
        if (seat % EVERY_SO_MANY == 0 && !boxes(sheet).equals(cautions)) {
            faults.add("on the sheet stand " + boxes(sheet) + ", not " + cautions);
        }
        return faults;
    }

    private static List<String> missing(Set<Caution> calledFor, Set<String> boxes) {
        // A hot resistor has a box of its own, which says all that the other one does.
        return calledFor.stream()
                .filter(caution -> !boxes.contains(caution.heading(Languages.ENGLISH))
                        && !(STRIKES_BACK.contains(caution)
                                && STRIKES_BACK.stream()
                                        .anyMatch(box -> boxes.contains(box.heading(Languages.ENGLISH))))
                        && !(caution == Caution.HOT_PARTS
                                && boxes.contains(Caution.HOT_RESISTORS.heading(Languages.ENGLISH))))
                .map(caution -> "the box " + caution.id() + " is missing")
                .toList();
    }

    /** Headings of the caution boxes that stand before the first place where the learner works. */
    private static Set<String> boxes(Sheet sheet) {
        Set<String> boxes = new LinkedHashSet<>();
        for (Block block : Composer.sheet(sheet, "").blocks()) {
            if (block instanceof ProblemBlock problem) {
                for (Block inner : problem.blocks()) {
                    if (inner instanceof Document.Caution caution) {
                        boxes.add(caution.heading());
                    } else if (!(inner instanceof Prose || inner instanceof Document.Assumptions)) {
                        return boxes;
                    }
                }
            }
        }
        return boxes;
    }

    private static Set<Caution> calledFor(Problem problem, List<String> faults) {
        Set<Caution> called = new LinkedHashSet<>();
        String told = told(problem.template());
        WORDS.forEach((caution, pattern) -> {
            if (pattern.matcher(told).find()) {
                called.add(caution);
            }
        });
        if (MOTOR.matcher(told).find()) {
            called.add(Caution.MOTOR_ON_SUPPLY); // or another of its kind
        }
        for (StepLine line : problem.template().lines()) {
            // Without a heat path it is the temperature that a sensor reads.
            if (problem.model(HeatModel.class).map(HeatModel::network).isPresent()
                    && line.unit().offset() != 0
                    && problem.values().quantity(line.id()).value() > HOT_KELVIN) {
                called.add(Caution.HOT_PARTS);
            }
        }
        problem.model(HeatModel.class).map(HeatModel::network).ifPresent(network -> {
            if (HeatSolver.steady(network) instanceof HeatSolver.Outcome.Solved solved
                    && solved.kelvin().values().stream().anyMatch(kelvin -> kelvin > HOT_KELVIN)) {
                called.add(Caution.HOT_PARTS);
            }
        });
        problem.schematic().ifPresent(schematic -> {
            OperatingPoint point = ((Outcome.Solved) OperatingPointSolver.solve(schematic.netlist())).point();
            List<String> nodes = List.copyOf(schematic.netlist().nodes());
            double highest = nodes.stream().mapToDouble(point::voltage).max().orElse(0);
            double lowest = nodes.stream().mapToDouble(point::voltage).min().orElse(0);
            if (highest - lowest > HIGHEST_VOLTS) {
                faults.add("two nodes are " + (highest - lowest) + " V apart");
            }
            schematic.netlist().parts().forEach(connected -> part(connected, point, called, faults));
        });
        return called;
    }

    private static void part(
            Netlist.Connected connected, OperatingPoint point, Set<Caution> called, List<String> faults) {
        PlacedPart part = connected.part();
        double watts = Math.abs(point.power(part.name()));
        if (part.kind() == PartKind.RESISTOR && watts > MOST_RESISTOR_WATTS
                || part.kind() == PartKind.TRIMPOT && watts > MOST_TRIMPOT_WATTS) {
            faults.add(String.format(Locale.ROOT, "%s takes %.2f W", part.name(), watts));
        }
        boolean canBurn = Set.of(
                        PartKind.RESISTOR,
                        PartKind.TRIMPOT,
                        PartKind.LED,
                        PartKind.DIODE,
                        PartKind.ZENER,
                        PartKind.REFERENCE,
                        PartKind.NMOS,
                        PartKind.PMOS,
                        PartKind.NPN,
                        PartKind.REGULATOR)
                .contains(part.kind());
        // Several LEDs may be drawn as one; a single one drops 3.8 V at most.
        double parts =
                part.kind() == PartKind.LED ? Math.max(1, Math.ceil(Math.abs(point.across(part.name())) / 3.8)) : 1;
        if (canBurn && watts / parts > WARM_WATTS) {
            called.add(Caution.HOT_PARTS);
        }
        if (part.kind() == PartKind.LED && point.current(part.name()) > BRIGHT_AMPERES) {
            called.add(Caution.LED_EYES);
        }
        if (part.kind() == PartKind.CAPACITOR) {
            double volts = point.across(part.name());
            if (part.values().get(PartValue.FARADS) * volts * volts / 2 > FELT_JOULES) {
                called.add(Caution.CAPACITOR);
            }
        }
    }

    /** Everything an author wrote for the learner. */
    private static String told(ProblemTemplate template) {
        StringBuilder told = new StringBuilder(template.title());
        template.words()
                .statements()
                .values()
                .forEach(words -> told.append('\n').append(words));
        template.givens().forEach(given -> told.append('\n').append(given.meaning()));
        template.asks().forEach(ask -> told.append('\n').append(ask.prompt()));
        return told.toString();
    }
}
