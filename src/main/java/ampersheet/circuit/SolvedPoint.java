package ampersheet.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Node voltages and branch currents, put together per part. */
final class SolvedPoint implements OperatingPoint {
    private final Netlist netlist;
    private final Linearisation linearisation;
    private final List<Branch> branches;
    private final double[] unknowns;
    /** Put together when first asked for: of most points on a way through time only one current is looked at. */
    private ByName byName;

    /** @param into amperes into each terminal, and out of each inner node, of each part */
    private record ByName(
            Map<String, Double> voltage, Map<String, Netlist.Connected> parts, Map<String, Map<String, Double>> into) {}

    /** @param unknowns voltages of nodes 1, 2, …, then currents of branches */
    SolvedPoint(Netlist netlist, List<Branch> branches, double[] unknowns, Linearisation linearisation) {
        this.netlist = netlist;
        this.branches = branches;
        this.unknowns = unknowns;
        this.linearisation = linearisation;
    }

    private ByName byName() {
        ByName known = byName;
        if (known == null) {
            known = sorted();
            byName = known; // whoever comes at the same time finds the same
        }
        return known;
    }

    private ByName sorted() {
        Map<String, Double> voltage = new LinkedHashMap<>();
        for (int node = 0; node < netlist.nodes().size(); node++) {
            voltage.put(netlist.nodes().get(node), at(node));
        }
        Map<String, Netlist.Connected> parts = new LinkedHashMap<>();
        Map<String, Map<String, Double>> into = new LinkedHashMap<>();
        for (Netlist.Connected connected : netlist.parts()) {
            parts.put(connected.part().name(), connected);
            Map<String, Double> currents = new LinkedHashMap<>();
            for (String terminal : connected.part().kind().terminals()) {
                currents.put(terminal, 0.0);
            }
            into.put(connected.part().name(), currents);
        }
        for (int i = 0; i < branches.size(); i++) {
            Branch branch = branches.get(i);
            Map<String, Double> currents =
                    into.get(netlist.parts().get(branch.part()).part().name());
            currents.merge(branch.fromTerminal(), currentOf(i), Double::sum);
            currents.merge(branch.toTerminal(), -currentOf(i), Double::sum);
        }
        return new ByName(voltage, parts, into);
    }

    private double at(int node) {
        return node == 0 ? 0.0 : unknowns[node - 1];
    }

    /** Amperes from the first terminal of the branch to the second. */
    double currentOf(int branch) {
        return unknowns[netlist.nodes().size() - 1 + branch];
    }

    /** Volts from the first terminal of the branch to the second. */
    double acrossOf(int branch) {
        return at(branches.get(branch).from()) - at(branches.get(branch).to());
    }

    Linearisation linearisation() {
        return linearisation;
    }

    @Override
    public double voltage(String node) {
        return known(byName().voltage(), node, "node");
    }

    @Override
    public double across(String part) {
        Netlist.Connected connected = known(byName().parts(), part, "part");
        List<String> ends = mainPath(connected.part().kind());
        double across = voltage(connected.node().get(ends.get(0)))
                - voltage(connected.node().get(ends.get(1)));
        return connected.part().kind() == PartKind.SOURCE ? -across : across;
    }

    @Override
    public double current(String part) {
        Netlist.Connected connected = known(byName().parts(), part, "part");
        double entering = current(part, mainPath(connected.part().kind()).get(0));
        return connected.part().kind() == PartKind.REGULATOR ? -current(part, "out") : entering;
    }

    @Override
    public double current(String part, String terminal) {
        return known(known(byName().into(), part, "part"), terminal, "terminal of " + part);
    }

    @Override
    public double power(String part) {
        double takenUp = takenUp(known(byName().parts(), part, "part"));
        return byName().parts().get(part).part().kind() == PartKind.SOURCE ? -takenUp : takenUp;
    }

    @Override
    public List<Double> loads(String part) {
        PlacedPart placed = known(byName().parts(), part, "part").part();
        if (!Copper.isIn(placed)) {
            throw new IllegalArgumentException(part + " is no strip and no panel");
        }
        int taps = Copper.of(placed).taps();
        List<Double> volts = new ArrayList<>(taps);
        for (int tap = 1; tap <= taps; tap++) {
            volts.add(voltage(Copper.node(placed, "plus", tap)) - voltage(Copper.node(placed, "minus", tap)));
        }
        return volts;
    }

    @Override
    public double currentResidual() {
        Map<String, Double> leaving = new LinkedHashMap<>();
        byName().into()
                .forEach((part, currents) -> currents.forEach((terminal, amps) -> leaving.merge(
                        byName().parts().get(part).node().getOrDefault(terminal, terminal), amps, Double::sum)));
        double largest = 0;
        for (double sum : leaving.values()) {
            largest = Math.max(largest, Math.abs(sum));
        }
        return largest;
    }

    @Override
    public double powerResidual() {
        double delivered = 0;
        for (Netlist.Connected connected : netlist.parts()) {
            delivered -= takenUp(connected);
        }
        return delivered;
    }

    private double takenUp(Netlist.Connected connected) {
        double watts = 0;
        for (Map.Entry<String, String> end : connected.node().entrySet()) {
            watts += voltage(end.getValue()) * current(connected.part().name(), end.getKey());
        }
        return watts;
    }

    private static List<String> mainPath(PartKind kind) {
        return switch (kind) {
            case NMOS, PMOS -> List.of("drain", "source");
            case NPN -> List.of("collector", "emitter");
            default -> kind.terminals().subList(0, 2);
        };
    }

    private static <T> T known(Map<String, T> map, String name, String what) {
        T found = map.get(name);
        if (found == null) {
            throw new IllegalArgumentException("no " + what + " is named " + name);
        }
        return found;
    }
}
