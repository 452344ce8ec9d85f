package ampersheet.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What can be said of a circuit from its connections alone, before any number is known. */
final class Ties {
    private Ties() {}

    /** The outcome, where connections alone decide it. */
    static Optional<Outcome> check(Netlist netlist, List<Branch> branches) {
        List<String> floating = floating(netlist, branches);
        if (!floating.isEmpty()) {
            return Optional.of(new Outcome.Floating(floating));
        }
        List<String> loop = sourceLoop(netlist, branches);
        return loop.isEmpty() ? Optional.empty() : Optional.of(new Outcome.SourceLoop(loop));
    }

    /** Nodes whose voltage nothing settles: a current forced into a node does not, a path for any current does. */
    private static List<String> floating(Netlist netlist, List<Branch> branches) {
        Sets tied = new Sets(netlist.nodes().size());
        for (Branch branch : branches) {
            if (branch.law() instanceof Law.Regulation regulation) {
                tied.join(regulation.out(), regulation.ground());
            } else if (!(branch.law() instanceof Law.Current) && !(branch.law() instanceof Law.Gain)) {
                tied.join(branch.from(), branch.to());
            }
        }
        List<String> floating = new ArrayList<>();
        for (int node = 0; node < netlist.nodes().size(); node++) {
            if (tied.root(node) != tied.root(0)) {
                floating.add(netlist.nodes().get(node));
            }
        }
        return floating;
    }

    /** Parts around the first loop in which every voltage is forced, or an empty list. */
    private static List<String> sourceLoop(Netlist netlist, List<Branch> branches) {
        Sets forced = new Sets(netlist.nodes().size());
        for (int i = 0; i < branches.size(); i++) {
            Optional<int[]> ends = forcedEnds(branches.get(i));
            if (ends.isPresent() && !forced.join(ends.get()[0], ends.get()[1])) {
                return path(
                        netlist,
                        branches.subList(0, i),
                        ends.get(),
                        branches.get(i).part());
            }
        }
        return List.of();
    }

    /** Whether the forced voltages add up to something else than 0 around some loop. */
    static boolean contradict(int nodes, List<Branch> branches) {
        double[] potential = new double[nodes];
        Sets known = new Sets(nodes);
        for (Branch branch : branches) {
            Optional<int[]> forced = forcedEnds(branch);
            if (forced.isEmpty()) {
                continue;
            }
            int[] ends = forced.get();
            double off = potential[ends[0]] - potential[ends[1]] - forcedVolts(branch);
            if (known.root(ends[0]) == known.root(ends[1])) {
                if (Math.abs(off) > 1e-9 * (1 + Math.abs(forcedVolts(branch)))) {
                    return true;
                }
                continue;
            }
            for (int node = 0; node < nodes; node++) {
                if (known.root(node) == known.root(ends[1])) {
                    potential[node] += off;
                }
            }
            known.join(ends[0], ends[1]);
        }
        return false;
    }

    private static double forcedVolts(Branch branch) {
        if (branch.law() instanceof Law.Voltage voltage) {
            return voltage.volts();
        }
        return branch.law() instanceof Law.Regulation regulation ? regulation.volts() : 0;
    }

    private static Optional<int[]> forcedEnds(Branch branch) {
        if (branch.law() instanceof Law.Regulation regulation) {
            return Optional.of(new int[] {regulation.out(), regulation.ground()});
        }
        boolean forced = branch.law() instanceof Law.Voltage
                || branch.law() instanceof Law.Resistance resistance && resistance.ohms() == 0;
        return forced ? Optional.of(new int[] {branch.from(), branch.to()}) : Optional.empty();
    }

    /** Breadth first from one end to the other over the earlier forcing branches. */
    private static List<String> path(Netlist netlist, List<Branch> earlier, int[] ends, int closingPart) {
        int[] reachedBy = new int[netlist.nodes().size()];
        Arrays.fill(reachedBy, -1);
        Deque<Integer> open = new ArrayDeque<>(List.of(ends[0]));
        while (!open.isEmpty()) {
            int node = open.remove();
            for (int i = 0; i < earlier.size(); i++) {
                int next = otherEnd(earlier.get(i), node);
                if (next >= 0 && next != ends[0] && reachedBy[next] < 0) {
                    reachedBy[next] = i;
                    open.add(next);
                }
            }
        }
        Set<String> parts = new LinkedHashSet<>();
        parts.add(netlist.parts().get(closingPart).part().name());
        for (int node = ends[1]; node != ends[0]; ) {
            Branch branch = earlier.get(reachedBy[node]);
            parts.add(netlist.parts().get(branch.part()).part().name());
            node = otherEnd(branch, node);
        }
        return List.copyOf(parts);
    }

    private static int otherEnd(Branch branch, int node) {
        Optional<int[]> forced = forcedEnds(branch);
        if (forced.isEmpty()) {
            return -1;
        }
        int[] ends = forced.get();
        if (ends[0] != node && ends[1] != node) {
            return -1;
        }
        return ends[0] == node ? ends[1] : ends[0];
    }
}
