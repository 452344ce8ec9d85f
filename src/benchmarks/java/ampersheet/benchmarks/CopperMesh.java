package ampersheet.benchmarks;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.OperatingPointSolver;
import ampersheet.circuit.Outcome;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A square mesh of copper between two corners: 1,000, 3,000 and 10,000 nodes. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 3, time = 3)
public class CopperMesh {
    private static final GridPoint UNUSED = new GridPoint(0, 0);

    /** Nodes along a side. */
    @Param({"32", "55", "100"})
    private int side;

    private Netlist mesh;

    @Setup
    public void lay() {
        List<Netlist.Connected> parts = new ArrayList<>();
        List<String> nodes = new ArrayList<>();
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                nodes.add(x + "," + y);
                if (x + 1 < side) {
                    parts.add(section(x, y, x + 1, y));
                }
                if (y + 1 < side) {
                    parts.add(section(x, y, x, y + 1));
                }
            }
        }
        parts.add(part(PartKind.SOURCE, "V1", PartValue.VOLTS, "0,0", (side - 1) + "," + (side - 1)));
        mesh = new Netlist(parts, nodes, Map.of(), List.of());
    }

    private static Netlist.Connected section(int x1, int y1, int x2, int y2) {
        String from = x1 + "," + y1;
        String to = x2 + "," + y2;
        return part(PartKind.RESISTOR, from + " " + to, PartValue.OHMS, from, to);
    }

    private static Netlist.Connected part(PartKind kind, String name, PartValue value, String from, String to) {
        return new Netlist.Connected(
                new PlacedPart(kind, name, Map.of("from", UNUSED, "to", UNUSED), Map.of(value, 1.0)),
                Map.of("from", from, "to", to));
    }

    @Benchmark
    public Outcome solve() {
        return OperatingPointSolver.solve(mesh);
    }
}
