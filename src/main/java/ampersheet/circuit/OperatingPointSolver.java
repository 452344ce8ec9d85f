package ampersheet.circuit;

import java.util.List;
import java.util.Optional;

/**
 * Finds the direct-current operating point by modified nodal analysis and Newton's method.
 *
 * <p>The unknowns are the voltage of every node but the reference and the current of every branch; the equations are
 * Kirchhoff's current law at every such node and the law of every branch. Capacitors carry no current.
 */
public final class OperatingPointSolver {
    /** Volts or amperes. */
    private static final double LARGEST = 1e9;

    private static final double WEAKEST_AID = 1e-15;

    private OperatingPointSolver() {}

    public static Outcome solve(Netlist drawn) {
        Netlist netlist = Copper.withInsides(drawn);
        Branches branches = new Branches(netlist, capacitor -> Optional.empty());
        return branches.unfit()
                .map(Outcome.class::cast)
                .or(() -> Ties.check(netlist, branches.list()))
                .orElseGet(() -> settle(netlist, branches.list(), Linearisation.start(branches.list()), new Effort()));
    }

    /**
     * Solves branches that {@link Ties} finds sound.
     *
     * @param start a solution of nearly the same branches where there is one
     * @param effort what may still be spent; when nothing is left, it does not settle
     */
    static Outcome settle(Netlist netlist, List<Branch> branches, Linearisation start, Effort effort) {
        Newton newton = new Newton(netlist.nodes().size(), branches, effort);
        boolean settled = newton.run(start, 1, 0);
        if (!settled) {
            settled = withFadingAid(newton, branches) || withRisingSources(newton, branches);
        }
        if (!settled) {
            return new Outcome.NotSettled(newton.iterations(), newton.change());
        }
        double[] unknowns = newton.unknowns();
        for (double unknown : unknowns) {
            if (Math.abs(unknown) > LARGEST) {
                // A current forced against a reversed junction, or a junction across a stiff source: no such circuit
                // exists.
                return new Outcome.NotSettled(newton.iterations(), Math.abs(unknown));
            }
        }
        return Validity.check(new SolvedPoint(netlist, branches, unknowns, newton.linearisation()), netlist);
    }

    /** A conductance beside every nonlinear branch is made weaker and weaker: "gmin stepping". */
    private static boolean withFadingAid(Newton newton, List<Branch> branches) {
        Linearisation start = Linearisation.start(branches);
        for (double aid = 1; aid > WEAKEST_AID; aid /= 10) {
            if (!newton.run(start, 1, aid)) {
                return false;
            }
            start = newton.linearisation();
        }
        return newton.run(start, 1, 0);
    }

    /** All sources rise from nothing, in steps as large as Newton's method follows. */
    private static boolean withRisingSources(Newton newton, List<Branch> branches) {
        Linearisation good = Linearisation.start(branches);
        double reached = 0;
        double stride = 0.1;
        while (reached < 1) {
            double next = Math.min(1, reached + stride);
            if (newton.run(good, next, 0)) {
                good = newton.linearisation();
                reached = next;
                stride *= 2;
            } else {
                stride /= 4;
                if (stride < 1e-7) {
                    return false;
                }
            }
        }
        return true;
    }
}
