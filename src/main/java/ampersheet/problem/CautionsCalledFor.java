package ampersheet.problem;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.formula.Values;
import ampersheet.model.CircuitModel;
import ampersheet.model.HeatModel;
import ampersheet.model.HeatPlan.PlannedNode;
import ampersheet.model.Models;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.thermal.HeatSolver;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The cautions of a problem: those its template names, and those its numbers call for. */
final class CautionsCalledFor {
    /** Above this, kelvin, a surface burns skin in about a minute (ISO 13732-1, 51 °C for bare metal; from memory). */
    private static final double HOT = 273.15 + 50;
    /** Watts at which a small part gets hot; common practice, no source. */
    private static final double WARM_PART = 0.25;
    /** Watts of a load, which is larger than a part; common practice, no source. */
    private static final double WARM_LOAD = 2;
    /** Watts per metre at which a thin wire gets warm in still air; common practice, no source. */
    private static final double WARM_WIRE = 1;
    /** Volts; no single LED whose light is seen drops more (limits.yaml), so a symbol with more stands for several. */
    private static final double ONE_LED = 3.8;
    /** Amperes; common practice, no source. */
    private static final double BRIGHT = 0.1;
    /** Joules; common practice, no source. */
    private static final double FELT = 1;

    private CautionsCalledFor() {}

    /**
     * @param values givens and steps
     * @param states the models as drawn, and in every other state that the problem speaks of
     */
    static List<String> in(ProblemTemplate template, Values values, List<Models> states) {
        Set<Caution> found = EnumSet.noneOf(Caution.class);
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        for (Models models : states) {
            if (isHot(template, values, models)) {
                found.add(Caution.HOT_PARTS);
            }
            models.find(CircuitModel.class)
                    .ifPresent(circuit -> Models.orNone(circuit::operatingPoint).ifPresent(point -> {
                        for (Netlist.Connected connected : circuit.netlist().parts()) {
                            kinds.add(connected.part().kind());
                            addFor(connected.part(), point, found);
                        }
                    }));
        }
        for (String id : template.cautions()) {
            // Whether a drawn LED hurts the eyes follows from its current; of panels and strips only the author knows.
            boolean settled = id.equals(Caution.LED_EYES.id()) && kinds.contains(PartKind.LED);
            if (!settled) {
                Caution.named(id).ifPresent(found::add);
            }
        }
        if (found.contains(Caution.HOT_RESISTORS)) {
            // An author who names hot parts wants no advice on ratings: the parts are derated, or are no resistors.
            found.remove(
                    template.cautions().contains(Caution.HOT_PARTS.id()) ? Caution.HOT_RESISTORS : Caution.HOT_PARTS);
        }
        return found.stream().map(Caution::id).toList();
    }

    private static boolean isHot(ProblemTemplate template, Values values, Models models) {
        Optional<HeatModel> heat = models.find(HeatModel.class);
        if (heat.isPresent()) {
            Optional<HeatSolver.Outcome.Solved> steady = Models.orNone(heat.get()::steady);
            for (PlannedNode node : heat.get().plan().nodes()) {
                if (steady.isPresent() && steady.get().kelvin().get(node.name()) > HOT) {
                    return true;
                }
            }
        }
        for (StepLine line : template.lines()) {
            // Without a heat path it is what a sensor in the circuit reads, and no part of the circuit need be as hot.
            boolean isOfAPart = line.unit().offset() != 0 && heat.isPresent();
            if (isOfAPart && values.quantity(line.id()).value() > HOT) {
                return true;
            }
        }
        return false;
    }

    private static void addFor(PlacedPart part, OperatingPoint point, Set<Caution> found) {
        switch (part.kind()) {
            case SOURCE,
                    SINK,
                    STRIP,
                    PANEL -> {} // what lies outside the circuit: what gets hot there, its author knows
            case LOAD -> {
                if (point.power(part.name()) > WARM_LOAD) {
                    found.add(Caution.HOT_PARTS);
                }
            }
            case RESISTOR -> {
                if (point.power(part.name()) > WARM_PART) {
                    found.add(Caution.HOT_RESISTORS);
                }
            }
            case CABLE -> {
                if (point.power(part.name()) > WARM_WIRE * part.values().get(PartValue.METRES)) {
                    found.add(Caution.HOT_PARTS);
                }
            }
            case CAPACITOR -> {
                double volts = point.across(part.name());
                if (part.values().getOrDefault(PartValue.FARADS, 0.0) * volts * volts / 2 > FELT) {
                    found.add(Caution.CAPACITOR);
                }
            }
            case LED -> {
                double drawnAsOne = Math.max(1, Math.ceil(point.across(part.name()) / ONE_LED));
                if (point.power(part.name()) / drawnAsOne > WARM_PART) {
                    found.add(Caution.HOT_PARTS);
                }
                if (point.current(part.name()) > BRIGHT) {
                    found.add(Caution.LED_EYES);
                }
            }
            default -> {
                if (point.power(part.name()) > WARM_PART) {
                    found.add(Caution.HOT_PARTS);
                }
            }
        }
    }
}
