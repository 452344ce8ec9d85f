package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;

/** Laws that hold in every circuit, and a second library that solves the same equations. */
class RandomCircuitsTest {
    private static final long SEED = 20_260_101L;

    private record Link(int a, int b, double ohms) {}

    private record Feed(int node, double volts, double ohms) {}

    /** The plain nodal equations G v = i, set up here by hand, sources as Norton pairs, solved by EJML. */
    @Test
    void anotherLibrarySolvesTheSameNodalEquationsAlike() {
        for (long seed = SEED; seed < SEED + 1000; seed++) {
            Random random = new Random(seed);
            int nodes = 2 + random.nextInt(20);
            List<Link> links = new ArrayList<>();
            for (int node = 1; node <= nodes; node++) {
                links.add(new Link(node, random.nextInt(node), ohms(random)));
            }
            for (int i = random.nextInt(2 * nodes); i > 0; i--) {
                int a = random.nextInt(nodes + 1);
                int b = random.nextInt(nodes + 1);
                if (a != b) {
                    links.add(new Link(a, b, ohms(random)));
                }
            }
            List<Feed> feeds = new ArrayList<>();
            for (int i = 1 + random.nextInt(3); i > 0; i--) {
                feeds.add(new Feed(1 + random.nextInt(nodes), -24 + 48 * random.nextDouble(), ohms(random)));
            }

            Bench bench = new Bench();
            SimpleMatrix conductance = new SimpleMatrix(nodes, nodes);
            SimpleMatrix current = new SimpleMatrix(nodes, 1);
            for (int i = 0; i < links.size(); i++) {
                Link link = links.get(i);
                bench.resistor("R" + i, name(link.a()), name(link.b()), link.ohms());
                stamp(conductance, link.a(), link.b(), 1 / link.ohms());
            }
            for (int i = 0; i < feeds.size(); i++) {
                Feed feed = feeds.get(i);
                bench.source("V" + i, "0", "s" + i, feed.volts())
                        .resistor("S" + i, "s" + i, name(feed.node()), feed.ohms());
                stamp(conductance, feed.node(), 0, 1 / feed.ohms());
                add(current, feed.node() - 1, 0, feed.volts() / feed.ohms());
            }
            OperatingPoint point = bench.solved();
            SimpleMatrix expected = conductance.solve(current);
            double scale = 0;
            for (int node = 1; node <= nodes; node++) {
                scale = Math.max(scale, Math.abs(expected.get(node - 1, 0)));
            }
            for (int node = 1; node <= nodes; node++) {
                assertEquals(expected.get(node - 1, 0), point.voltage(name(node)), 1e-9 * scale, "seed " + seed);
            }
            assertTrue(Math.abs(point.powerResidual()) < 1e-9, "seed " + seed);
        }
    }

    private static double ohms(Random random) {
        return Math.round(10 * StrictMath.pow(10, 5 * random.nextDouble()));
    }

    private static String name(int node) {
        return node == 0 ? "0" : "n" + node;
    }

    private static void stamp(SimpleMatrix matrix, int a, int b, double siemens) {
        if (a > 0) {
            add(matrix, a - 1, a - 1, siemens);
        }
        if (b > 0) {
            add(matrix, b - 1, b - 1, siemens);
        }
        if (a > 0 && b > 0) {
            add(matrix, a - 1, b - 1, -siemens);
            add(matrix, b - 1, a - 1, -siemens);
        }
    }

    private static void add(SimpleMatrix matrix, int row, int column, double value) {
        matrix.set(row, column, matrix.get(row, column) + value);
    }

    /** Kirchhoff's current law, the energy balance, and each part's own law, in circuits of every kind of part. */
    @Test
    void everyNonlinearCircuitBalancesAndObeysItsParts() {
        for (long seed = SEED; seed < SEED + 1000; seed++) {
            Bench bench = nonlinear(new Random(seed));
            Netlist netlist = bench.netlist();
            Outcome outcome = OperatingPointSolver.solve(netlist);
            if (outcome instanceof Outcome.Solved done) {
                holds(netlist, done.point(), "seed " + seed);
            } else {
                fail("seed " + seed + ": " + outcome);
            }
        }
    }

    private static void holds(Netlist netlist, OperatingPoint point, String seed) {
        double largest = 1e-3;
        for (Netlist.Connected connected : netlist.parts()) {
            largest = Math.max(largest, Math.abs(point.current(connected.part().name())));
        }
        assertTrue(point.currentResidual() <= 1e-12 * largest, seed + ": current " + point.currentResidual());
        assertTrue(Math.abs(point.powerResidual()) <= 1e-10 * largest * 100, seed + ": power " + point.powerResidual());
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            double v = point.across(part.name());
            double i = point.current(part.name());
            String what = seed + ": " + part.name() + " has " + v + " V, " + i + " A, " + part.values();
            switch (part.kind()) {
                case SOURCE -> assertEquals(part.values().get(PartValue.VOLTS), v, 1e-11, what);
                case SINK -> assertEquals(part.values().get(PartValue.AMPS), i, 1e-15, what);
                case RESISTOR -> assertEquals(v, i * part.values().get(PartValue.OHMS), 1e-10, what);
                case LED, DIODE -> {
                    // The law turned round, volts from amps, written out here: V = n Vt ln(1 + I/Is) + I Rs.
                    double width = part.values().get(PartValue.EMISSION) * 8.617333262e-5 * 300.15;
                    double series = part.values().get(PartValue.SERIES);
                    double inner =
                            part.values().get(PartValue.VOLTS) - part.values().get(PartValue.AMPS) * series;
                    double saturation = part.values().get(PartValue.AMPS) / StrictMath.expm1(inner / width);
                    if (i > 1e-8) {
                        assertEquals(width * StrictMath.log1p(i / saturation) + i * series, v, 1e-7, what);
                    } else {
                        assertTrue(v < 2 * inner && i >= -saturation * 1.001 - 1e-12, what);
                    }
                }
                case ZENER -> {
                    double held =
                            part.values().get(PartValue.VOLTS) + part.values().get(PartValue.SLOPE) * (-i - 5e-3);
                    assertTrue(-v < Math.max(held, part.values().get(PartValue.VOLTS)) + 1e-3, what);
                    if (i < -1e-6) {
                        assertEquals(held, -v, 1e-3, what);
                    }
                }
                default -> assertTrue(point.power(part.name()) >= -1e-9, what);
            }
        }
    }

    /** A chain of nodes with resistors to earlier nodes, so that nothing floats, and one or more parts of each kind. */
    private static Bench nonlinear(Random random) {
        Bench bench = new Bench();
        int nodes = 3 + random.nextInt(8);
        bench.source("V1", "0", "s1", 3 + 21 * random.nextDouble()).resistor("R1", "s1", "n1", ohms(random));
        for (int node = 2; node <= nodes; node++) {
            bench.resistor("R" + node, name(node), name(random.nextInt(node)), ohms(random));
        }
        for (int i = 2 + random.nextInt(8); i > 0; i--) {
            int a = 1 + random.nextInt(nodes);
            int b = random.nextInt(nodes + 1);
            if (a == b) {
                continue;
            }
            String from = name(a);
            String to = name(b);
            switch (random.nextInt(7)) {
                case 0 ->
                    bench.part(
                            PartKind.LED,
                            "D" + i,
                            List.of(from, to),
                            "volts",
                            1.6 + 2 * random.nextDouble(),
                            "amps",
                            0.001 + 0.02 * random.nextDouble(),
                            "emission",
                            2,
                            "series",
                            10 * random.nextDouble());
                case 1 ->
                    bench.part(
                            PartKind.DIODE,
                            "D" + i,
                            List.of(from, to),
                            "volts",
                            0.5 + 0.4 * random.nextDouble(),
                            "amps",
                            0.001 + random.nextDouble(),
                            "emission",
                            1 + random.nextDouble(),
                            "series",
                            0);
                case 2 ->
                    bench.part(
                            PartKind.ZENER,
                            "D" + i,
                            List.of(to, from),
                            "volts",
                            2.4 + 10 * random.nextDouble(),
                            "slope",
                            random.nextInt(2) * 20 * random.nextDouble());
                case 3 ->
                    bench.part(
                            PartKind.NMOS,
                            "Q" + i,
                            List.of(from, name(random.nextInt(nodes + 1)), to),
                            "on",
                            0.01 + random.nextDouble(),
                            "threshold",
                            1 + 2 * random.nextDouble());
                case 4 ->
                    bench.part(
                            PartKind.PMOS,
                            "Q" + i,
                            List.of(from, name(random.nextInt(nodes + 1)), to),
                            "on",
                            0.01 + random.nextDouble(),
                            "threshold",
                            1 + 2 * random.nextDouble());
                case 5 ->
                    bench.part(
                            PartKind.TRIMPOT,
                            "P" + i,
                            List.of(from, to, name(random.nextInt(nodes + 1))),
                            "ohms",
                            ohms(random),
                            "position",
                            random.nextDouble());
                default ->
                    bench.part(
                            PartKind.REFERENCE,
                            "U" + i,
                            List.of(to, from),
                            "volts",
                            1.2 + 3 * random.nextDouble(),
                            "minimum",
                            1e-3 * random.nextDouble());
            }
        }
        return bench;
    }
}
