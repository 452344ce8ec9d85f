package ampersheet.circuit;

import ampersheet.integration.Course;
import ampersheet.integration.NoBalance;
import ampersheet.integration.Rates;
import ampersheet.integration.TimeIntegration;
import java.util.ArrayList;
import java.util.List;

/**
 * Circuits with capacitors over time. At time 0 all sources are on and each capacitor has its {@code initial} voltage,
 * 0 when left out. Times and voltages are good to 1e-8 of the largest voltage.
 */
public final class TransientSolver {
    private TransientSolver() {}

    /** Seconds, or why there are none. */
    public sealed interface TimeOutcome {
        record Reached(double seconds) implements TimeOutcome {}

        /** The node comes to rest at {@code finalVolts} without passing what was asked for. */
        record NeverReached(String node, double finalVolts) implements TimeOutcome {}

        record Failed(Outcome why) implements TimeOutcome {}
    }

    /** The circuit {@code seconds} after its start, capacitor currents included. */
    public static Outcome after(Netlist netlist, double seconds) {
        if (!(seconds >= 0)) {
            throw new IllegalArgumentException("time runs forwards: " + seconds + " s");
        }
        Charging charging = new Charging(netlist);
        return charging.refusal != null ? charging.refusal : charging.after(seconds);
    }

    /** When the voltage of the node passes {@code volts}, from below or above, for the first time. */
    public static TimeOutcome timeUntil(Netlist netlist, String node, double volts) {
        if (!netlist.nodes().contains(node)) {
            throw new IllegalArgumentException("no node is named " + node);
        }
        Charging charging = new Charging(netlist);
        return charging.refusal != null ? new TimeOutcome.Failed(charging.refusal) : charging.until(node, volts);
    }

    /** The state is the voltage of each capacitor. */
    private static final class Charging implements Rates {
        private static final double TOO_HIGH = 1e9;
        /** Short against any time constant on a bench; shows how quickly the start changes. */
        private static final double MOMENT = 1e-9;

        private final Netlist netlist;
        private final List<Branch> branches;
        private final List<PlacedPart> capacitors = new ArrayList<>();
        private final List<Integer> branchOf = new ArrayList<>();
        private final boolean looped;
        private final Effort effort = new Effort();
        private Outcome refusal;
        private double shortest = 1;
        private Linearisation nearby;

        Charging(Netlist drawn) {
            netlist = Copper.withInsides(drawn);
            Branches expanded = new Branches(netlist, capacitor -> new Law.Resistance(1, 0));
            branches = expanded.list();
            for (int i = 0; i < branches.size(); i++) {
                PlacedPart part = netlist.parts().get(branches.get(i).part()).part();
                if (part.kind() == PartKind.CAPACITOR) {
                    capacitors.add(part);
                    branchOf.add(i);
                }
            }
            refusal = expanded.unfit() != null ? expanded.unfit() : Ties.check(netlist, branches);
            List<Branch> held = refusal == null ? held(initial()) : branches;
            looped = refusal == null && Ties.check(netlist, held) instanceof Outcome.SourceLoop;
            if (looped && Ties.contradict(netlist.nodes().size(), held)) {
                refusal = Ties.check(netlist, held);
            }
        }

        private double[] initial() {
            return capacitors.stream()
                    .mapToDouble(part -> part.values().getOrDefault("initial", 0.0))
                    .toArray();
        }

        Outcome after(double seconds) {
            Course course;
            try {
                course = integration().after(seconds);
            } catch (NoBalance unbalanced) {
                return refusal;
            }
            return course instanceof Course.Arrived arrived ? solution(arrived.state()) : failure();
        }

        TimeOutcome until(String node, double volts) {
            Course course;
            try {
                course = integration().until(state -> solved(solution(state)).voltage(node) - volts);
                if (course instanceof Course.AtRest atRest) {
                    return new TimeOutcome.NeverReached(
                            node, solved(solution(atRest.state())).voltage(node));
                }
            } catch (NoBalance unbalanced) {
                return new TimeOutcome.Failed(refusal);
            }
            return course instanceof Course.Arrived arrived
                    ? new TimeOutcome.Reached(arrived.seconds())
                    : new TimeOutcome.Failed(failure());
        }

        private Outcome failure() {
            return refusal != null ? refusal : new Outcome.NotSettled(effort.spent(), Double.POSITIVE_INFINITY);
        }

        private TimeIntegration integration() {
            double[] start = initial();
            double[] rest = null;
            if (OperatingPointSolver.solve(netlist) instanceof Outcome.Solved direct) {
                rest = capacitors.stream()
                        .mapToDouble(part -> direct.point().across(part.name()))
                        .toArray();
            }
            double scale = 1e-3;
            for (int i = 0; i < start.length; i++) {
                scale = Math.max(scale, Math.max(Math.abs(start[i]), rest == null ? 0 : Math.abs(rest[i])));
            }
            for (Netlist.Connected connected : netlist.parts()) {
                if (connected.part().kind() == PartKind.SOURCE) {
                    scale = Math.max(scale, Math.abs(connected.part().values().get("volts")));
                }
            }
            double[] next = implicitStep(start, MOMENT);
            double quickest = 0;
            for (int i = 0; i < start.length; i++) {
                quickest = Math.max(quickest, Math.abs(next[i] - start[i]) / MOMENT);
            }
            shortest = quickest > 0 ? scale / quickest : 1;
            return new TimeIntegration(this, start, rest, scale, TOO_HIGH, shortest / 2);
        }

        /** The circuit with each capacitor at its voltage. */
        private Outcome solution(double[] state) {
            // Capacitors in a loop: to say how they share a current, each gets a resistance that drops next to nothing.
            Outcome outcome = OperatingPointSolver.settle(
                    netlist, looped ? stepping(state, 1e-9 * shortest) : held(state), nearby, effort);
            remember(outcome);
            return outcome;
        }

        private void remember(Outcome outcome) {
            if (outcome instanceof Outcome.Solved solved && solved.point() instanceof SolvedPoint point) {
                nearby = point.linearisation();
            }
        }

        private OperatingPoint solved(Outcome outcome) {
            if (outcome instanceof Outcome.Solved solved) {
                return solved.point();
            }
            refusal = outcome;
            throw new NoBalance("the circuit has no solution at a moment on the way");
        }

        @Override
        public boolean isExplicit() {
            return !looped;
        }

        @Override
        public double[] at(double[] state) {
            OperatingPoint point = solved(solution(state));
            return capacitors.stream()
                    .mapToDouble(
                            part -> point.current(part.name()) / part.values().get("farads"))
                    .toArray();
        }

        @Override
        public double[] implicitStep(double[] from, double seconds) {
            refusal = null; // of an explicit step that overshot
            Outcome outcome = OperatingPointSolver.settle(netlist, stepping(from, seconds), nearby, effort);
            remember(outcome);
            OperatingPoint point = solved(outcome);
            return capacitors.stream()
                    .mapToDouble(part -> point.across(part.name()))
                    .toArray();
        }

        private List<Branch> held(double[] state) {
            List<Branch> held = new ArrayList<>(branches);
            for (int i = 0; i < state.length; i++) {
                held.set(branchOf.get(i), branches.get(branchOf.get(i)).with(new Law.Voltage(state[i])));
            }
            return held;
        }

        /** A capacitor over a step is its voltage before, plus seconds / farads ohms. */
        private List<Branch> stepping(double[] from, double seconds) {
            List<Branch> stepping = new ArrayList<>(branches);
            for (int i = 0; i < from.length; i++) {
                double ohms = seconds / capacitors.get(i).values().get("farads");
                stepping.set(branchOf.get(i), branches.get(branchOf.get(i)).with(new Law.Resistance(ohms, from[i])));
            }
            return stepping;
        }
    }
}
