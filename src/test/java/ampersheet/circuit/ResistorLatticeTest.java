package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Square lattices of 1 Ω between opposite corners, against the two-point resistance as a sum over the eigenvectors of
 * the lattice: F. Y. Wu, Theory of resistor networks: the two-point resistance, J. Phys. A 37 (2004) 6653, free
 * boundaries.
 */
class ResistorLatticeTest {
    private static double byTheSolver(int side) {
        List<Netlist.Connected> parts = new ArrayList<>();
        List<String> nodes = new ArrayList<>();
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                nodes.add(x + "," + y);
                if (x + 1 < side) {
                    parts.add(ohm(x, y, x + 1, y));
                }
                if (y + 1 < side) {
                    parts.add(ohm(x, y, x, y + 1));
                }
            }
        }
        GridPoint unused = new GridPoint(0, 0);
        parts.add(new Netlist.Connected(
                new PlacedPart(
                        PartKind.SOURCE, "V1", Map.of("from", unused, "to", unused), Map.of(PartValue.VOLTS, 1.0)),
                Map.of("from", "0,0", "to", (side - 1) + "," + (side - 1))));
        Outcome outcome = OperatingPointSolver.solve(new Netlist(parts, nodes, new LinkedHashMap<>(), List.of()));
        return 1 / ((Outcome.Solved) outcome).point().current("V1");
    }

    private static Netlist.Connected ohm(int x1, int y1, int x2, int y2) {
        GridPoint unused = new GridPoint(0, 0);
        String from = x1 + "," + y1;
        String to = x2 + "," + y2;
        return new Netlist.Connected(
                new PlacedPart(
                        PartKind.RESISTOR,
                        from + " " + to,
                        Map.of("from", unused, "to", unused),
                        Map.of(PartValue.OHMS, 1.0)),
                Map.of("from", from, "to", to));
    }

    private static double byWu(int side) {
        double ohms = 0;
        for (int m = 0; m < side; m++) {
            for (int n = 0; n < side; n++) {
                if (m + n == 0) {
                    continue;
                }
                double eigenvalue =
                        4 - 2 * StrictMath.cos(StrictMath.PI * m / side) - 2 * StrictMath.cos(StrictMath.PI * n / side);
                double apart = wave(m, 0, side) * wave(n, 0, side) - wave(m, side - 1, side) * wave(n, side - 1, side);
                ohms += apart * apart / eigenvalue;
            }
        }
        return ohms;
    }

    private static double wave(int m, int at, int side) {
        return m == 0
                ? StrictMath.sqrt(1.0 / side)
                : StrictMath.sqrt(2.0 / side) * StrictMath.cos(StrictMath.PI * m * (at + 0.5) / side);
    }

    /** 1 Ω, 3/2 Ω and 13/7 Ω: classics, from memory. */
    @Test
    void smallLatticesHaveTheKnownResistances() {
        assertEquals(1, byTheSolver(2), 1e-12);
        assertEquals(1.5, byTheSolver(3), 1e-12);
        assertEquals(13 / 7.0, byTheSolver(4), 1e-12);
    }

    @Test
    void latticesOfAPanelsSizeHaveTheResistanceOfTheEigenvectorSum() {
        for (int side : new int[] {8, 16, 24, 32}) {
            assertEquals(byWu(side), byTheSolver(side), 1e-10, side + " by " + side);
        }
    }
}
