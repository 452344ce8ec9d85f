package ampersheet.template;

import ampersheet.circuit.Doubt;
import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Values;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.source.Faults;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Looks whether the parts of a template make the circuit that its drawing shows, and one that can be solved. */
final class CircuitCheck {
    private static final int MOST_SAMPLES = 20;

    private final CircuitPlan plan;
    private final List<Place> places;
    private final Faults faults;

    /** @param places of the plan's parts */
    CircuitCheck(CircuitPlan plan, List<Place> places, Faults faults) {
        this.plan = plan;
        this.places = places;
        this.faults = faults;
    }

    /** What is doubtful is so with all numbers; what cannot be solved is told if none of the samples can. */
    void check(List<Values> samples) {
        if (samples.isEmpty() || plan.parts().isEmpty()) {
            return;
        }
        int before = faults.count();
        List<Doubt> doubts = schematic(samples.get(0)).netlist().doubts();
        doubts.forEach(this::tell);
        endsOnLines(doubts);
        if (faults.count() > before) {
            return;
        }
        Outcome first = null;
        Netlist netlist = null;
        for (Values sample : samples.subList(0, Math.min(samples.size(), MOST_SAMPLES))) {
            Netlist wired = schematic(sample).netlist();
            Outcome outcome = OperatingPointSolver.solve(wired);
            if (outcome instanceof Outcome.Solved) {
                return;
            }
            if (first == null) {
                first = outcome;
                netlist = wired;
            }
        }
        tell(first, netlist);
    }

    private Schematic schematic(Values values) {
        List<PlacedPart> parts = new ArrayList<>();
        for (PlannedPart part : plan.parts()) {
            Map<PartValue, Double> numbers = new TreeMap<>();
            part.values()
                    .forEach((key, formula) -> numbers.put(
                            key, Evaluation.evaluate(formula, values).value()));
            parts.add(new PlacedPart(part.kind(), part.name(), part.ends(), numbers, part.words(values.words())));
        }
        return new Schematic(parts);
    }

    private void tell(Doubt doubt) {
        Place place = places.get(doubt.part());
        String part = told(doubt.part());
        if (doubt instanceof Doubt.Overlap overlap) {
            faults.error(
                    place,
                    part + " runs along " + told(overlap.other()),
                    "lines that meet or cross, but do not overlap",
                    "Move one of the two.");
        } else if (doubt instanceof Doubt.DiagonalWire) {
            faults.error(
                    place,
                    part + " runs neither straight across nor straight up",
                    "from: and to: in one row or one column",
                    "Draw it with two wires and a corner.");
        } else if (doubt instanceof Doubt.SecondNodeName second) {
            faults.error(
                    place,
                    "the node at " + second.name() + " is named " + second.kept() + " already",
                    "one name for a node",
                    "Remove one of the two names.");
        } else if (doubt instanceof Doubt.ShortedPart shorted) {
            faults.error(
                    place,
                    part
                            + (shorted.onOnePoint()
                                    ? " begins and ends on one grid point"
                                    : " is shorted: wires join all its ends"),
                    "ends on different nodes",
                    "Correct its ends or the wires.");
        } else if (doubt instanceof Doubt.LooseEnd loose) {
            faults.error(
                    place,
                    "nothing meets " + part + " at " + shown(loose.point()),
                    "another end on that grid point",
                    "Correct the point, or lead a wire to it.");
        }
    }

    /** Told at the line that passes, once for all the ends at one point of it. */
    private void endsOnLines(List<Doubt> doubts) {
        Map<Integer, Map<String, List<String>>> byLine = new TreeMap<>();
        for (Doubt doubt : doubts) {
            if (doubt instanceof Doubt.EndOnLine end) {
                byLine.computeIfAbsent(end.line(), line -> new TreeMap<>())
                        .computeIfAbsent(shown(end.point()), point -> new ArrayList<>())
                        .add(told(end.part()));
            }
        }
        byLine.forEach((line, points) -> points.forEach((point, ends) -> faults.error(
                places.get(line),
                told(line) + " passes " + point + ", where " + String.join(" and ", ends)
                        + (ends.size() == 1 ? " ends" : " end")
                        + ": drawn it looks connected, but it is not",
                "ends that meet on a grid point",
                "Split " + told(line) + " in two at " + point + ", or let " + (ends.size() == 1 ? "it" : "them")
                        + " end elsewhere.")));
    }

    private void tell(Outcome outcome, Netlist netlist) {
        if (outcome instanceof Outcome.Floating floating) {
            int part = partOn(floating.nodes().get(0), netlist);
            faults.error(
                    places.get(part),
                    "no path for current ties " + told(part) + " to the reference node",
                    "every node connected to the ground by parts that conduct",
                    "Connect it, or check the grid points of the parts around it.");
        } else if (outcome instanceof Outcome.SourceLoop loop) {
            faults.error(
                    places.get(index(loop.parts().get(0))),
                    "ideal sources and wires contradict each other around " + String.join(", ", loop.parts()),
                    "a resistance somewhere in every loop of sources",
                    "Correct the ends, or put a resistor in the loop.");
        } else if (outcome instanceof Outcome.Unfit unfit) {
            faults.error(
                    places.get(index(unfit.part())),
                    unfit.part() + " " + unfit.fault() + "; so it is with every sample of the givens",
                    "a value the part can have",
                    "Correct its formula.");
        } else {
            faults.error(
                    places.get(0),
                    "the circuit has no operating point with any sample of the givens",
                    "a circuit that settles",
                    "Check the values and the direction of its parts.");
        }
    }

    private int partOn(String node, Netlist netlist) {
        for (int i = 0; i < plan.parts().size(); i++) {
            for (GridPoint end : plan.parts().get(i).ends().values()) {
                if (node.equals(netlist.nodeAt().get(end))) {
                    return i;
                }
            }
        }
        return 0;
    }

    private int index(String name) {
        for (int i = 0; i < plan.parts().size(); i++) {
            if (plan.parts().get(i).name().equals(name)) {
                return i;
            }
        }
        return 0;
    }

    private String told(int part) {
        PlannedPart planned = plan.parts().get(part);
        return switch (planned.kind()) {
            case WIRE -> "the wire of line " + places.get(part).line();
            case GROUND -> "the ground";
            case NODE -> "the node " + planned.name();
            default -> planned.name();
        };
    }

    private static String shown(GridPoint point) {
        return "[" + point.x() + ", " + point.y() + "]";
    }
}
