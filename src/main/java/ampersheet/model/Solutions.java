package ampersheet.model;

import ampersheet.chain.DataPath;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.TransientSolver;
import ampersheet.thermal.HeatSolver;

/** Takes a solver's result, or makes the sentence that says why there is none. */
final class Solutions {
    private Solutions() {}

    static OperatingPoint of(Netlist netlist) {
        return of(OperatingPointSolver.solve(netlist));
    }

    static OperatingPoint of(Outcome outcome) {
        if (outcome instanceof Outcome.Solved solved) {
            return solved.point();
        } else if (outcome instanceof Outcome.Floating floating) {
            throw new Unsolved("no path for current ties " + String.join(", ", floating.nodes()) + " to the ground");
        } else if (outcome instanceof Outcome.SourceLoop loop) {
            throw new Unsolved(
                    "ideal sources and wires contradict each other around " + String.join(", ", loop.parts()));
        } else if (outcome instanceof Outcome.Unfit unfit) {
            throw new Unsolved(unfit.part() + " " + unfit.fault());
        } else if (outcome instanceof Outcome.NotSettled unsettled) {
            throw new Unsolved(
                    "the circuit did not settle in " + unsettled.iterations() + " rounds of Newton's method");
        }
        throw new IllegalStateException("an outcome nobody told of: " + outcome);
    }

    static double of(TransientSolver.TimeOutcome outcome) {
        if (outcome instanceof TransientSolver.TimeOutcome.Reached reached) {
            return reached.seconds();
        } else if (outcome instanceof TransientSolver.TimeOutcome.NeverReached never) {
            throw new Unsolved(never.node() + " never reaches the voltage asked for; it comes to rest at "
                    + never.finalVolts() + " V");
        }
        of(((TransientSolver.TimeOutcome.Failed) outcome).why());
        throw new IllegalStateException("a search for a time failed without a reason");
    }

    static HeatSolver.Outcome.Solved of(HeatSolver.Outcome outcome) {
        if (outcome instanceof HeatSolver.Outcome.Solved solved) {
            return solved;
        } else if (outcome instanceof HeatSolver.Outcome.Isolated isolated) {
            throw new Unsolved("no path for heat leads from " + String.join(", ", isolated.nodes()) + " to an ambient");
        } else if (outcome instanceof HeatSolver.Outcome.Runaway) {
            throw new Unsolved(
                    "the loss grows faster with temperature than the heat path carries away: thermal runaway");
        } else if (outcome instanceof HeatSolver.Outcome.Unfit unfit) {
            throw new Unsolved(unfit.name() + " " + unfit.fault());
        } else if (outcome instanceof HeatSolver.Outcome.NeverReached never) {
            throw new Unsolved(never.node() + " never reaches the temperature asked for; it settles at "
                    + never.steadyKelvin() + " K");
        }
        throw new IllegalStateException("an outcome nobody told of: " + outcome);
    }

    static double of(HeatSolver.TimeOutcome outcome) {
        if (outcome instanceof HeatSolver.TimeOutcome.Reached reached) {
            return reached.seconds();
        }
        of(((HeatSolver.TimeOutcome.Failed) outcome).why());
        throw new IllegalStateException("a search for a time failed without a reason");
    }

    static DataPath.Outcome.Traced of(DataPath.Outcome outcome) {
        if (outcome instanceof DataPath.Outcome.Traced traced) {
            return traced;
        } else if (outcome instanceof DataPath.Outcome.Mismatched mismatched) {
            throw new Unsolved("the data leaves the tile at place " + mismatched.fromPlace()
                    + " towards the tile at place " + mismatched.toPlace() + ", which has no input on that side");
        } else if (outcome instanceof DataPath.Outcome.Misplaced misplaced) {
            throw new Unsolved("the tile at place " + misplaced.place() + " cannot lie there: " + misplaced.why());
        } else if (outcome instanceof DataPath.Outcome.Unreached unreached) {
            throw new Unsolved("the data never reaches the tiles at places " + unreached.places());
        }
        throw new IllegalStateException("an outcome nobody told of: " + outcome);
    }
}
