package ampersheet.circuit;

import java.util.List;

/**
 * Where each nonlinear branch is linearised.
 *
 * @param across junction voltage, or voltage along a channel, by branch
 * @param through current along a channel, by branch
 * @param drive gate drive of a channel, by branch
 */
record Linearisation(double[] across, double[] through, double[] drive) {
    /** Diodes at the edge of conducting, breakdowns blocked, channels off. */
    static Linearisation start(List<Branch> branches) {
        int size = branches.size();
        Linearisation start = new Linearisation(new double[size], new double[size], new double[size]);
        for (int i = 0; i < branches.size(); i++) {
            if (branches.get(i).law() instanceof Law.Conducting conducting) {
                start.across[i] = conducting.junction().start();
            }
        }
        return start;
    }

    Linearisation copy() {
        return new Linearisation(across.clone(), through.clone(), drive.clone());
    }
}
