package ampersheet.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.thermal.HeatNetwork.Ambient;
import ampersheet.thermal.HeatNetwork.Loss;
import ampersheet.thermal.HeatNetwork.Node;
import ampersheet.thermal.HeatNetwork.PowerLaw;
import ampersheet.thermal.HeatNetwork.Resistance;
import ampersheet.thermal.HeatSolver.Outcome;
import ampersheet.thermal.HeatSolver.TimeOutcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HeatSolverTest {
    private static final double ZERO_CELSIUS = 273.15;
    private static final long SEED = 20_260_103L;

    private static double celsius(double degrees) {
        return ZERO_CELSIUS + degrees;
    }

    private static Outcome.Solved solved(Outcome outcome) {
        return assertInstanceOf(Outcome.Solved.class, outcome);
    }

    private static double seconds(TimeOutcome outcome) {
        return assertInstanceOf(TimeOutcome.Reached.class, outcome).seconds();
    }

    /** One node over one resistance from air. */
    private static HeatNetwork single(
            double ambient, double resistance, double capacity, double initial, PowerLaw law) {
        return new HeatNetwork(
                List.of(new Ambient("air", ambient)),
                List.of(new Node("case", capacity, initial)),
                List.of(new Resistance("Rth", "case", "air", resistance)),
                List.of(new Loss("P", "case", law)));
    }

    /** An electronics course handout on heat sinks: 6 W over 13 K/W from 25 °C is 103 °C. */
    @Test
    void sixWattsOverThirteenKelvinPerWattWarmBySeventyEightKelvin() {
        Outcome.Solved solved = solved(HeatSolver.steady(single(celsius(25), 13, 0, 0, t -> 6)));
        assertEquals(celsius(103), solved.kelvin().get("case"), 1e-10);
        assertEquals(6, solved.watts().get("Rth"), 1e-12);
        assertEquals(6, solved.watts().get("P"), 1e-12);
    }

    /** A power electronics lecture on heat sinks: 5 W, 3 + 1 + 16 K/W, air at 50 °C, junction at 150 °C. */
    @Test
    void resistancesInSeriesCarryOneHeatFlow() {
        HeatNetwork network = new HeatNetwork(
                List.of(new Ambient("air", celsius(50))),
                List.of(new Node("junction", 0, 0), new Node("case", 0, 0), new Node("sink", 0, 0)),
                List.of(
                        new Resistance("jc", "junction", "case", 3),
                        new Resistance("cs", "case", "sink", 1),
                        new Resistance("sa", "sink", "air", 16)),
                List.of(new Loss("P", "junction", t -> 5)));
        Outcome.Solved solved = solved(HeatSolver.steady(network));
        assertEquals(celsius(150), solved.kelvin().get("junction"), 1e-9);
        assertEquals(celsius(135), solved.kelvin().get("case"), 1e-9);
        assertEquals(5, solved.watts().get("sa"), 1e-11);
    }

    /**
     * OpenStax, College Physics 2e, section 21.6: 160 µF at 450 V into 2.50 g of 1 670 J/(kg K) over 31.2 kΩ: 3.87 K.
     */
    @Test
    void aPulseWithoutAWayOutWarmsByItsEnergyOverTheCapacity() {
        double stored = 0.5 * 160e-6 * 450 * 450;
        HeatNetwork network = new HeatNetwork(
                List.of(),
                List.of(new Node("body", 0.0025 * 1670, celsius(20))),
                List.of(),
                List.of(new Loss("P", "body", t -> stored / 10)));
        assertEquals(3.87, solved(HeatSolver.after(network, 10)).kelvin().get("body") - celsius(20), 3e-3 * 3.87);
    }

    @Test
    void aLossThatGrowsWithTemperatureSettlesHigher() {
        // P = 2 W (1 + 0.004 (T − 298 K)) over 40 K/W: T − Ta = 80 / (1 − 0.32) K, solved by hand.
        Outcome.Solved solved =
                solved(HeatSolver.steady(single(298, 40, 0, 0, t -> 2 * (1 + 0.004 * (t.kelvin("case") - 298)))));
        assertEquals(298 + 80 / 0.68, solved.kelvin().get("case"), 1e-9);
    }

    @Test
    void aLossThatDoublesEveryTenKelvinSettlesAtTheLowerOfItsTwoBalances() {
        PowerLaw leak = t -> 0.1 * StrictMath.pow(2, (t.kelvin("case") - 300) / 10);
        double found =
                solved(HeatSolver.steady(single(300, 20, 0, 0, leak))).kelvin().get("case");
        assertTrue(found < 305, "T = " + found);
        assertEquals(300 + 20 * 0.1 * StrictMath.pow(2, (found - 300) / 10), found, 1e-9);
    }

    @Test
    void aLossThatOutgrowsItsPathRunsAway() {
        assertInstanceOf(
                Outcome.Runaway.class,
                HeatSolver.steady(single(300, 60, 0, 0, t -> 0.1 * StrictMath.pow(2, (t.kelvin("case") - 300) / 10))));
        // A straight line has a balance on paper, below ambient, from which everything moves away.
        assertInstanceOf(
                Outcome.Runaway.class,
                HeatSolver.steady(single(298, 200, 0, 0, t -> 2 * (1 + 0.004 * (t.kelvin("case") - 298)))));
        assertInstanceOf(
                Outcome.Runaway.class,
                HeatSolver.after(
                        single(300, 60, 1, 300, t -> 0.1 * StrictMath.pow(2, (t.kelvin("case") - 300) / 10)), 1e6));
    }

    @Test
    void aLossThatFallsSteeplyWithTemperatureSettlesToo() {
        double found = solved(HeatSolver.steady(single(300, 50, 0, 0, t -> 5 - 0.2 * (t.kelvin("case") - 300))))
                .kelvin()
                .get("case");
        assertEquals(300 + 250 / 11.0, found, 1e-9);
    }

    @Test
    void oneCapacityWarmsByTheExponentialLaw() {
        HeatNetwork network = single(298, 12, 30, 298, t -> 5);
        for (double time : new double[] {0, 1, 100, 360, 1000, 3600, 1e7}) {
            double expected = 298 + 60 * -StrictMath.expm1(-time / 360);
            assertEquals(
                    expected,
                    solved(HeatSolver.after(network, time)).kelvin().get("case"),
                    1e-8 * Math.max(1, expected - 298),
                    "after " + time + " s");
        }
    }

    @Test
    void theTimeUntilATemperatureIsThatOfTheExponentialLaw() {
        HeatNetwork network = single(298, 12, 30, 298, t -> 5);
        for (double rise : new double[] {1e-3, 10, 30, 59.9}) {
            double expected = -360 * StrictMath.log1p(-rise / 60);
            assertEquals(expected, seconds(HeatSolver.timeUntil(network, "case", 298 + rise)), 1e-8 * expected + 1e-8);
        }
        assertEquals(0, seconds(HeatSolver.timeUntil(network, "case", 298)));
    }

    @Test
    void coolingPassesATemperatureFromAbove() {
        HeatNetwork network = single(298, 12, 30, 398, t -> 0);
        assertEquals(360 * StrictMath.log(2), seconds(HeatSolver.timeUntil(network, "case", 348)), 1e-6);
    }

    @Test
    void aTemperatureBeyondTheSteadyOneIsNeverReached() {
        TimeOutcome.Failed failed = assertInstanceOf(
                TimeOutcome.Failed.class, HeatSolver.timeUntil(single(298, 12, 30, 298, t -> 5), "case", 359));
        Outcome.NeverReached never = assertInstanceOf(Outcome.NeverReached.class, failed.why());
        assertEquals("case", never.node());
        assertEquals(358, never.steadyKelvin(), 1e-6);
    }

    @Test
    void aNodeWithoutCapacityFollowsItsNeighbourAtEveryMoment() {
        HeatNetwork network = new HeatNetwork(
                List.of(new Ambient("air", 298)),
                List.of(new Node("junction", 0, 0), new Node("sink", 100, 298)),
                List.of(new Resistance("js", "junction", "sink", 2), new Resistance("sa", "sink", "air", 5)),
                List.of(new Loss("P", "junction", t -> 10)));
        double sink = 298 + 50 * -StrictMath.expm1(-250.0 / 500);
        Outcome.Solved solved = solved(HeatSolver.after(network, 250));
        assertEquals(sink, solved.kelvin().get("sink"), 1e-7);
        assertEquals(sink + 20, solved.kelvin().get("junction"), 1e-7);
        assertEquals(10, solved.watts().get("js"), 1e-9);
        assertEquals(
                -500 * StrictMath.log(1 - 10 / 50.0), seconds(HeatSolver.timeUntil(network, "junction", 328)), 1e-6);
    }

    /** Two capacities, solved by hand from the two eigenvalues of their matrix. */
    @Test
    void twoCapacitiesWarmWithTwoTimeConstants() {
        HeatNetwork network = new HeatNetwork(
                List.of(new Ambient("air", 0.5)),
                List.of(new Node("a", 1, 1.5), new Node("b", 1, 0.5)),
                List.of(
                        new Resistance("aa", "a", "air", 1),
                        new Resistance("ab", "a", "b", 1),
                        new Resistance("ba", "b", "air", 1)),
                List.of());
        // Sum of the rises decays with 1, difference with 3.
        double t = 0.8;
        double sum = StrictMath.exp(-t);
        double difference = StrictMath.exp(-3 * t);
        Outcome.Solved solved = solved(HeatSolver.after(network, t));
        assertEquals(0.5 + (sum + difference) / 2, solved.kelvin().get("a"), 1e-9);
        assertEquals(0.5 + (sum - difference) / 2, solved.kelvin().get("b"), 1e-9);
    }

    @Test
    void timeConstantsFarApartAreIntegratedAlike() {
        HeatNetwork network = new HeatNetwork(
                List.of(new Ambient("air", 298)),
                List.of(new Node("junction", 0.01, 298), new Node("sink", 200, 298)),
                List.of(new Resistance("js", "junction", "sink", 1), new Resistance("sa", "sink", "air", 5)),
                List.of(new Loss("P", "junction", t -> 10)));
        double found = solved(HeatSolver.after(network, 1000)).kelvin().get("junction");
        // The small capacity is 1/20 000 of the large one: to first order it only follows.
        assertEquals(298 + 10 + 50 * -StrictMath.expm1(-1.0), found, 50 * 3e-4);
        assertEquals(358, solved(HeatSolver.after(network, 1e6)).kelvin().get("junction"), 1e-6);
    }

    @Test
    void nodesWithoutAWayOutAreListed() {
        HeatNetwork network = new HeatNetwork(
                List.of(new Ambient("air", 298)),
                List.of(new Node("a", 0, 0), new Node("b", 0, 0), new Node("c", 0, 0)),
                List.of(new Resistance("ra", "a", "air", 1), new Resistance("bc", "b", "c", 1)),
                List.of());
        assertEquals(new Outcome.Isolated(List.of("b", "c")), HeatSolver.steady(network));
        assertEquals(new Outcome.Isolated(List.of("b", "c")), HeatSolver.after(network, 1));
    }

    @Test
    void impossibleValuesAndUnknownNamesAreTold() {
        assertEquals(
                "Rth",
                assertInstanceOf(Outcome.Unfit.class, HeatSolver.steady(single(298, -1, 0, 0, t -> 1)))
                        .name());
        assertEquals(
                "case",
                assertInstanceOf(Outcome.Unfit.class, HeatSolver.after(single(298, 1, 10, 0, t -> 1), 1))
                        .name());
        assertThrows(IllegalArgumentException.class, () -> HeatSolver.steady(single(298, 1, 0, 0, t -> t.kelvin("x"))));
        assertThrows(
                IllegalArgumentException.class, () -> HeatSolver.timeUntil(single(298, 1, 1, 298, t -> 1), "x", 300));
    }

    @Test
    void heatIsConservedInRandomNetworks() {
        for (long seed = SEED; seed < SEED + 300; seed++) {
            Random random = new Random(seed);
            int count = 1 + random.nextInt(8);
            List<Node> nodes = new ArrayList<>();
            List<Resistance> resistances = new ArrayList<>();
            List<Loss> losses = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                nodes.add(new Node("n" + i, 0, 0));
                String to = i == 0 ? "air" : "n" + random.nextInt(i);
                resistances.add(new Resistance("R" + i, "n" + i, to, 0.1 + 5 * random.nextDouble()));
                double watts = 10 * random.nextDouble();
                String hot = "n" + i;
                losses.add(new Loss("P" + i, hot, t -> watts * (1 + 1e-4 * (t.kelvin(hot) - 300))));
            }
            resistances.add(new Resistance("RA", "n" + (count - 1), "air", 1));
            Outcome.Solved solved = solved(
                    HeatSolver.steady(new HeatNetwork(List.of(new Ambient("air", 300)), nodes, resistances, losses)));
            double lost = 0;
            double carried = 0;
            for (Loss loss : losses) {
                lost += solved.watts().get(loss.name());
            }
            for (Resistance resistance : resistances) {
                carried += resistance.to().equals("air") ? solved.watts().get(resistance.name()) : 0;
            }
            assertEquals(lost, carried, 1e-9 * lost, "seed " + seed);
        }
    }
}
