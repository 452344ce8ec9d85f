package ampersheet.bench;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.language.Saying;
import ampersheet.model.CircuitModel;
import ampersheet.model.CircuitPlan;
import ampersheet.model.Unsolved;
import ampersheet.problem.Problem;
import ampersheet.template.ProblemTemplate;
import java.util.List;
import java.util.Map;

/**
 * The circuit of a problem as it is laid out on a bench: of parts that one has, within what they bear, with what a
 * meter then shows. Nothing here is an answer of the problem; all is solved from the parts laid out.
 *
 * @param problem whose circuit it is
 * @param parts as laid out, in the order drawn, without wires, grounds and node names
 * @param schematic as drawn, with what is laid out
 * @param limits current limit of each source, by name, amperes
 * @param settings what trimpots are turned to, by name
 * @param readings most telling first
 * @param hot parts that turn half of what they are rated for into heat, or too much to be touched
 */
public record BenchCircuit(
        Problem problem,
        List<FittedPart> parts,
        Schematic schematic,
        Map<String, Double> limits,
        Map<String, MeterReading> settings,
        List<MeterReading> readings,
        List<String> hot) {
    /** For less nobody lays out parts. */
    private static final int LEAST_READINGS = 2;

    public BenchCircuit {
        parts = List.copyOf(parts);
        readings = List.copyOf(readings);
        hot = List.copyOf(hot);
    }

    /**
     * @param drawer whose bins are looked at, and not emptied
     * @throws NotLaidOut if it is better not built, with the reason
     */
    public static BenchCircuit of(Problem problem, Drawer drawer) throws NotLaidOut {
        requireForTheBench(problem.template());
        CircuitModel drawn = problem.model(CircuitModel.class).orElseThrow();
        TradeLimitsKept.require(problem);
        try {
            Fitting fitting = new Fitting(drawn, drawer);
            List<FittedPart> parts = fitting.parts();
            List<String> hot = BenchLimits.hot(problem, drawn, parts);
            Readings readings = new Readings(drawn, parts, new BenchMeter(drawer.bins()));
            Map<String, Double> limits = readings.currentLimits();
            Map<String, MeterReading> settings = readings.settings();
            List<MeterReading> telling = readings.telling();
            if (telling.size() < LEAST_READINGS) {
                throw new NotLaidOut(
                        NotLaidOut.Reason.NOTHING_TO_MEASURE, Saying.of("problem.no-card.nothing-to-measure"));
            }
            return new BenchCircuit(
                    problem, parts, new Schematic(laidOut(drawn, parts)), limits, settings, telling, hot);
        } catch (Unsolved unsolved) {
            throw new NotLaidOut(
                    NotLaidOut.Reason.OUTSIDE_LIMITS,
                    Saying.of("problem.no-card.unsolved", "why", unsolved.getMessage()));
        }
    }

    /**
     * What can be said of a template whatever its numbers.
     *
     * @throws NotLaidOut if none of its circuits is laid out
     */
    public static void requireForTheBench(ProblemTemplate template) throws NotLaidOut {
        CircuitPlan plan = template.model(CircuitPlan.class)
                .orElseThrow(() ->
                        new NotLaidOut(NotLaidOut.Reason.NOT_FOR_THE_BENCH, Saying.of("problem.no-card.no-circuit")));
        boolean ownParts = false;
        int sources = 0;
        for (CircuitPlan.PlannedPart part : plan.parts()) {
            requireNotInstalled(part);
            sources += part.kind() == PartKind.SOURCE ? 1 : 0;
            ownParts |= isSeen(part.kind()) && part.kind() != PartKind.SOURCE && !FittedPart.standsIn(part.kind());
        }
        if (!ownParts) {
            throw new NotLaidOut(NotLaidOut.Reason.NOT_FOR_THE_BENCH, Saying.of("problem.no-card.only-others"));
        }
        if (sources > BenchSupply.OUTPUTS) {
            throw new NotLaidOut(
                    NotLaidOut.Reason.NOT_FOR_THE_BENCH,
                    Saying.of("problem.no-card.supplies", "supplies", Integer.toString(sources)));
        }
    }

    /** What is measured where it is fitted. */
    private static void requireNotInstalled(CircuitPlan.PlannedPart part) throws NotLaidOut {
        Saying installed;
        switch (part.kind()) {
            case CABLE -> installed = Saying.of("problem.no-card.cable", "part", part.name());
            case STRIP -> installed = Saying.of("problem.no-card.strip", "part", part.name());
            case PANEL -> installed = Saying.of("problem.no-card.panel", "part", part.name());
            default -> {
                return;
            }
        }
        throw new NotLaidOut(NotLaidOut.Reason.NOT_FOR_THE_BENCH, installed);
    }

    /** All parts of the drawing in its order, those laid out in the place of those drawn. */
    static List<PlacedPart> laidOut(CircuitModel drawn, List<FittedPart> fitted) {
        return drawn.schematic().parts().stream()
                .map(part -> fitted.stream()
                        .filter(one -> one.name().equals(part.name()))
                        .map(FittedPart::part)
                        .findFirst()
                        .orElse(part))
                .toList();
    }

    static boolean isSeen(PartKind kind) {
        return kind != PartKind.WIRE && kind != PartKind.GROUND && kind != PartKind.NODE;
    }
}
