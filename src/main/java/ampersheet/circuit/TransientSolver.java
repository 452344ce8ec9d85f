package ampersheet.circuit;

import ampersheet.integration.Course;
import ampersheet.integration.NoBalance;
import ampersheet.integration.Rates;
import ampersheet.integration.TimeIntegration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
        Charging whole = new Charging(netlist);
        if (whole.refusal.isPresent()) {
            return whole.refusal.get();
        }
        Optional<ParallelCapacitors> parallel = whole.parallel();
        if (parallel.isEmpty()) {
            return whole.after(seconds);
        }
        Charging together = new Charging(parallel.get().together());
        Outcome outcome = together.after(seconds);
        return outcome instanceof Outcome.Solved solved
                ? whole.sharedOut(solved.point(), parallel.get(), together.shortest)
                : outcome;
    }

    /** When the voltage of the node passes {@code volts}, from below or above, for the first time. */
    public static TimeOutcome timeUntil(Netlist netlist, String node, double volts) {
        if (!netlist.nodes().contains(node)) {
            throw new IllegalArgumentException("no node is named " + node);
        }
        Charging whole = new Charging(netlist);
        if (whole.refusal.isPresent()) {
            return new TimeOutcome.Failed(whole.refusal.get());
        }
        Charging charging = whole.parallel()
                .map(parallel -> new Charging(parallel.together()))
                .orElse(whole);
        return charging.refusal.<TimeOutcome>map(TimeOutcome.Failed::new).orElseGet(() -> charging.until(node, volts));
    }

    /** The state is the voltage of each capacitor. */
    private static final class Charging implements Rates {
        private static final double TOO_HIGH = 1e9;
        /** Short against any time constant on a bench; shows how quickly the start changes. */
        private static final double MOMENT = 1e-9;
        /** Of the largest voltage: whatever moves so far in a moment has nearly arrived, and was quicker than it. */
        private static final double MUCH = 0.1;

        private static final double SHORTEST_MOMENT = 1e-27;

        private final Netlist drawn;
        private final Netlist netlist;
        private final List<Branch> branches;
        private final List<PlacedPart> capacitors = new ArrayList<>();
        private final List<Integer> branchOf = new ArrayList<>();
        private final boolean looped;
        private final Effort effort = new Effort();
        /** Why the circuit has no solution at the moment last tried. */
        private Optional<Outcome> refusal;

        private double shortest = 1;
        /** The last solution, from which the next is sought. */
        private Optional<Linearisation> nearby = Optional.empty();

        Charging(Netlist drawn) {
            this.drawn = drawn;
            netlist = Copper.withInsides(drawn);
            Branches expanded = new Branches(netlist, capacitor -> Optional.of(new Law.Resistance(1, 0)));
            branches = expanded.list();
            for (int i = 0; i < branches.size(); i++) {
                PlacedPart part = netlist.parts().get(branches.get(i).part()).part();
                if (part.kind() == PartKind.CAPACITOR) {
                    capacitors.add(part);
                    branchOf.add(i);
                }
            }
            refusal = expanded.unfit().map(Outcome.class::cast).or(() -> Ties.check(netlist, branches));
            List<Branch> held = refusal.isEmpty() ? held(initial()) : branches;
            looped = refusal.isEmpty()
                    && Ties.check(netlist, held)
                            .filter(Outcome.SourceLoop.class::isInstance)
                            .isPresent();
            if (looped && Ties.contradict(netlist.nodes().size(), held)) {
                refusal = Ties.check(netlist, held);
            }
        }

        private double[] initial() {
            return capacitors.stream().mapToDouble(ParallelCapacitors::initial).toArray();
        }

        /** Empty where there are none: without a loop of capacitors nobody needs to look. */
        Optional<ParallelCapacitors> parallel() {
            return looped
                    ? Optional.of(ParallelCapacitors.in(drawn)).filter(ParallelCapacitors::areThere)
                    : Optional.empty();
        }

        /**
         * The moment of a circuit in which parallel capacitors are one, with the current of each of them.
         *
         * @param shortest as {@code together} found it
         */
        Outcome sharedOut(OperatingPoint together, ParallelCapacitors parallel, double shortest) {
            this.shortest = shortest;
            return solution(capacitors.stream()
                    .mapToDouble(part -> parallel.shares().get(part.name()).volts(together))
                    .toArray());
        }

        Outcome after(double seconds) {
            Course course;
            try {
                course = integration().after(seconds);
            } catch (NoBalance unbalanced) {
                return refusal.orElseThrow();
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
                return new TimeOutcome.Failed(refusal.orElseThrow());
            }
            return course instanceof Course.Arrived arrived
                    ? new TimeOutcome.Reached(arrived.seconds())
                    : new TimeOutcome.Failed(failure());
        }

        private Outcome failure() {
            return refusal.orElseGet(() -> new Outcome.NotSettled(effort.spent(), Double.POSITIVE_INFINITY));
        }

        private TimeIntegration integration() {
            double[] start = initial();
            Optional<double[]> rest = rest();
            double scale = 1e-3;
            for (double volts : start) {
                scale = Math.max(scale, Math.abs(volts));
            }
            for (double volts : rest.orElse(start)) {
                scale = Math.max(scale, Math.abs(volts));
            }
            for (Netlist.Connected connected : netlist.parts()) {
                if (connected.part().kind() == PartKind.SOURCE) {
                    scale = Math.max(scale, Math.abs(connected.part().values().get(PartValue.VOLTS)));
                }
            }
            shortest = shortest(start, scale);
            return new TimeIntegration(this, start, rest, scale, TOO_HIGH, shortest / 2);
        }

        /** About the shortest time constant: how long the quickest change of the start would take to make all of it. */
        private double shortest(double[] start, double scale) {
            double moment = MOMENT;
            double moved = moved(start, moment);
            while (moved > MUCH * scale && moment > SHORTEST_MOMENT) {
                double sooner = moment / 1000;
                try {
                    moved = moved(start, sooner);
                } catch (NoBalance tooShort) {
                    break; // next to no resistance: the capacitors are where they will be at the first moment
                }
                moment = sooner;
            }
            return moved > 0 ? scale / (moved / moment) : 1;
        }

        private double moved(double[] start, double moment) {
            double[] next = implicitStep(start, moment);
            double most = 0;
            for (int i = 0; i < start.length; i++) {
                most = Math.max(most, Math.abs(next[i] - start[i]));
            }
            return most;
        }

        /** Where the capacitors will end, if they end somewhere. */
        private Optional<double[]> rest() {
            return OperatingPointSolver.solve(netlist) instanceof Outcome.Solved direct
                    ? Optional.of(capacitors.stream()
                            .mapToDouble(part -> direct.point().across(part.name()))
                            .toArray())
                    : Optional.empty();
        }

        /** The circuit with each capacitor at its voltage. */
        private Outcome solution(double[] state) {
            // Capacitors in a loop: to say how they share a current, each gets a resistance that drops next to nothing.
            return settle(looped ? stepping(state, 1e-9 * shortest) : held(state));
        }

        private Outcome settle(List<Branch> now) {
            Outcome outcome =
                    OperatingPointSolver.settle(netlist, now, nearby.orElseGet(() -> Linearisation.start(now)), effort);
            if (outcome instanceof Outcome.Solved solved && solved.point() instanceof SolvedPoint point) {
                nearby = Optional.of(point.linearisation());
            }
            return outcome;
        }

        private double farads(int capacitor) {
            return capacitors.get(capacitor).values().get(PartValue.FARADS);
        }

        private SolvedPoint solved(Outcome outcome) {
            if (outcome instanceof Outcome.Solved solved && solved.point() instanceof SolvedPoint point) {
                return point;
            }
            refusal = Optional.of(outcome);
            throw new NoBalance("the circuit has no solution at a moment on the way");
        }

        @Override
        public boolean isExplicit() {
            return !looped;
        }

        @Override
        public double[] at(double[] state) {
            SolvedPoint point = solved(solution(state));
            double[] rates = new double[state.length];
            for (int i = 0; i < rates.length; i++) {
                rates[i] = point.currentOf(branchOf.get(i)) / farads(i);
            }
            return rates;
        }

        @Override
        public double[] implicitStep(double[] from, double seconds) {
            refusal = Optional.empty(); // of an explicit step that overshot
            SolvedPoint point = solved(settle(stepping(from, seconds)));
            double[] next = new double[from.length];
            for (int i = 0; i < next.length; i++) {
                next[i] = point.acrossOf(branchOf.get(i));
            }
            return next;
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
                double ohms = seconds / farads(i);
                stepping.set(branchOf.get(i), branches.get(branchOf.get(i)).with(new Law.Resistance(ohms, from[i])));
            }
            return stepping;
        }
    }
}
