package ampersheet.circuit;

import java.util.List;
import java.util.Optional;

/** Newton's method on the equations of a circuit: solve, linearise where that led, until nothing moves. */
final class Newton {
    private static final int MOST_ITERATIONS = 200;
    /** Siemens. */
    private static final double BARELY_CONDUCTING = 1e-4;

    private final int nodes;
    private final List<Branch> branches;
    private final Effort effort;
    private Linearisation linearisation;
    private double[] unknowns;
    private int iterations;
    private double change;

    Newton(int nodes, List<Branch> branches, Effort effort) {
        this.nodes = nodes;
        this.branches = branches;
        this.effort = effort;
    }

    /** Voltages of nodes 1, 2, …, then currents of branches. */
    double[] unknowns() {
        return unknowns;
    }

    Linearisation linearisation() {
        return linearisation;
    }

    /** Over all runs. */
    int iterations() {
        return iterations;
    }

    /** The last move, as a share of what counts as settled. */
    double change() {
        return change;
    }

    /**
     * @param sources factor on every source
     * @param aid siemens beside every nonlinear branch
     * @return whether it settled
     */
    boolean run(Linearisation start, double sources, double aid) {
        linearisation = start;
        for (int i = 0; i < MOST_ITERATIONS && effort.isLeft(); i++) {
            effort.spend();
            iterations++;
            Optional<double[]> solved = equations(sources, aid).solve();
            if (solved.isEmpty()) {
                change = Double.POSITIVE_INFINITY;
                return false;
            }
            unknowns = solved.get();
            if (advance()) {
                return true;
            }
        }
        return false;
    }

    private LinearEquations equations(double sources, double aid) {
        LinearEquations equations = new LinearEquations(nodes - 1 + branches.size());
        for (int i = 0; i < branches.size(); i++) {
            Branch branch = branches.get(i);
            int row = nodes - 1 + i;
            atNode(equations, branch.from(), row, 1);
            atNode(equations, branch.to(), row, -1);
            if (branch.law() instanceof Law.Voltage law) {
                voltage(equations, row, branch.from(), branch.to(), 1);
                equations.addRight(row, sources * law.volts());
            } else if (branch.law() instanceof Law.Current law) {
                equations.add(row, row, 1);
                equations.addRight(row, sources * law.amps());
            } else if (branch.law() instanceof Law.Resistance law) {
                double scale = 1 / Math.max(1, law.ohms());
                voltage(equations, row, branch.from(), branch.to(), scale);
                equations.add(row, row, -law.ohms() * scale);
                equations.addRight(row, sources * law.volts() * scale);
            } else if (branch.law() instanceof Law.Gain law) {
                equations.add(row, row, 1);
                equations.add(row, nodes - 1 + law.branch(), -law.gain());
            } else if (branch.law() instanceof Law.Regulation law) {
                voltage(equations, row, law.out(), law.ground(), 1);
                equations.addRight(row, sources * law.volts());
            } else if (branch.law() instanceof Law.Conducting law) {
                conducting(equations, row, branch, law.junction(), i, aid);
            } else if (branch.law() instanceof Law.Channel law) {
                channel(equations, row, branch, law, i, aid);
            }
        }
        return equations;
    }

    /** j = i(v0) + g (u − v0) with junction voltage u = v − series · j. */
    private void conducting(LinearEquations equations, int row, Branch branch, Junction junction, int i, double aid) {
        double v0 = linearisation.across()[i];
        double g = junction.conductance(v0) + aid;
        double scale = 1 / Math.max(1, g);
        equations.add(row, row, (1 + g * junction.series()) * scale);
        voltage(equations, row, branch.from(), branch.to(), -g * scale);
        equations.addRight(row, (junction.current(v0) + aid * v0 - g * v0) * scale);
    }

    /**
     * With gate drive u: j = G(u0) v + G'(u0) v0 (u − u0) while the channel hardly conducts, and v = R(u0) j + R'(u0)
     * j0 (u − u0) when it does: each time the factor v0 or j0 is the one that the rest of the circuit keeps in bounds.
     */
    private void channel(LinearEquations equations, int row, Branch branch, Law.Channel law, int i, double aid) {
        double u0 = linearisation.drive()[i];
        double g = law.conductance(u0) + aid;
        if (g < BARELY_CONDUCTING) {
            double slope = law.steepness(u0) * linearisation.across()[i];
            double scale = 1 / Math.max(1, Math.abs(slope));
            equations.add(row, row, scale);
            voltage(equations, row, branch.from(), branch.to(), -g * scale);
            voltage(equations, row, law.gate(), law.source(), -law.sign() * slope * scale);
            equations.addRight(row, -slope * u0 * scale);
        } else {
            double slope = -law.steepness(u0) / (g * g) * linearisation.through()[i];
            double scale = 1 / Math.max(1, Math.max(1 / g, Math.abs(slope)));
            voltage(equations, row, branch.from(), branch.to(), scale);
            equations.add(row, row, -scale / g);
            voltage(equations, row, law.gate(), law.source(), -law.sign() * slope * scale);
            equations.addRight(row, -slope * u0 * scale);
        }
    }

    private static void atNode(LinearEquations equations, int node, int current, double sign) {
        if (node > 0) {
            equations.add(node - 1, current, sign);
        }
    }

    private static void voltage(LinearEquations equations, int row, int plus, int minus, double factor) {
        if (plus > 0) {
            equations.add(row, plus - 1, factor);
        }
        if (minus > 0) {
            equations.add(row, minus - 1, -factor);
        }
    }

    /** Moves the linearisation to the solution just found; true when that is no move at all. */
    private boolean advance() {
        double scale = 1;
        for (int node = 1; node < nodes; node++) {
            scale = Math.max(scale, Math.abs(unknowns[node - 1]));
        }
        double rounding = 1e-13 * scale;
        Linearisation next = linearisation.copy();
        change = 0;
        for (int i = 0; i < branches.size(); i++) {
            Branch branch = branches.get(i);
            double v = at(branch.from()) - at(branch.to());
            double last = linearisation.across()[i];
            if (branch.law() instanceof Law.Conducting law) {
                Junction junction = law.junction();
                double wanted = v - junction.series() * unknowns[nodes - 1 + i];
                next.across()[i] = junction.limited(wanted, last);
                if (!(junction.isStraightBelow(wanted) && junction.isStraightBelow(last))) {
                    note(wanted - last, 1e-8 * junction.width() + rounding);
                }
            } else if (branch.law() instanceof Law.Channel law) {
                double drive = law.sign() * (at(law.gate()) - at(law.source()));
                double lastDrive = linearisation.drive()[i];
                next.drive()[i] = law.limited(drive, lastDrive);
                next.across()[i] = v;
                next.through()[i] = unknowns[nodes - 1 + i];
                boolean flat =
                        Math.max(drive, lastDrive) <= law.start() || Math.min(drive, lastDrive) >= law.threshold();
                if (!flat) {
                    note(drive - lastDrive, 1e-8 * law.threshold() + rounding);
                    note(v - last, 1e-8 * Math.abs(v) + rounding);
                }
            }
        }
        linearisation = next;
        return change <= 1;
    }

    private void note(double move, double allowed) {
        change = Math.max(change, Math.abs(move) / allowed);
    }

    private double at(int node) {
        return node == 0 ? 0 : unknowns[node - 1];
    }
}
