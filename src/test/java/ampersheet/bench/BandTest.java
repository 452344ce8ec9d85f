package ampersheet.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.model.CircuitModel;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class BandTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    /** More tolerances have too many corners to be solved here. */
    private static final int MOST = 8;

    private static BenchCircuit circuit(String template) throws NotLaidOut {
        Draws draws = new Draws(new Workshop(LIBRARY.template(template)), "band", Draws.Stretch.FROM_THE_END);
        for (int k = 0; ; k++) {
            Problem problem = draws.draw(k);
            try {
                return BenchCircuit.of(problem, new Drawer(Optional.empty()));
            } catch (NotLaidOut another) {
                if (k == 20) {
                    throw another;
                }
            }
        }
    }

    private record Free(int part, Tolerance tolerance) {}

    private static List<Free> free(List<PlacedPart> nominal, BenchCircuit circuit) {
        List<Free> free = new ArrayList<>();
        for (FittedPart part : circuit.parts()) {
            part.tolerances().forEach(tolerance -> free.add(new Free(nominal.indexOf(part.part()), tolerance)));
        }
        return free;
    }

    /** @param share from 0, the low end, to 1, for each free value */
    private static List<PlacedPart> at(List<PlacedPart> nominal, List<Free> free, ToDoubleFunction<Integer> share) {
        List<PlacedPart> parts = new ArrayList<>(nominal);
        for (int i = 0; i < free.size(); i++) {
            Free one = free.get(i);
            double low = one.tolerance().low();
            double value = low + share.applyAsDouble(i) * (one.tolerance().high() - low);
            parts.set(
                    one.part(),
                    FittedPart.with(parts.get(one.part()), one.tolerance().value(), value));
        }
        return parts;
    }

    @Test
    void noCornerOfTheTolerancesAndNoPointInsideLiesOutsideTheBand() throws NotLaidOut {
        long seed = 20_261_129;
        Random random = new Random(seed);
        for (String template : List.of(
                "current-limiting/one-indicator",
                "current-limiting/zener-load",
                "current-limiting/transistor-switch",
                "voltage-dividers/loaded-divider",
                "voltage-dividers/bridge-sensor",
                "thermal-rise/regulator-junction")) {
            BenchCircuit circuit = circuit(template);
            CircuitModel drawn = circuit.problem().model(CircuitModel.class).orElseThrow();
            List<PlacedPart> nominal = circuit.schematic().parts();
            List<Free> free = free(nominal, circuit);
            assertTrue(free.size() <= MOST, template + " has " + free.size() + " tolerances");
            for (MeterReading reading : circuit.readings()) {
                MeteredCircuit metered = new MeteredCircuit(drawn, reading.probes(), new BenchMeter(Optional.empty()));
                for (int corner = 0; corner < 1 << free.size(); corner++) {
                    int ends = corner;
                    within(reading, metered, at(nominal, free, i -> ends >> i & 1), template + " corner " + corner);
                }
                for (int point = 0; point < 50; point++) {
                    within(
                            reading,
                            metered,
                            at(nominal, free, i -> random.nextDouble()),
                            template + " seed " + seed + " point " + point);
                }
            }
        }
    }

    private static void within(MeterReading reading, MeteredCircuit metered, List<PlacedPart> parts, String where) {
        double read = metered.measured(parts, reading.range());
        double off = reading.range().error(read);
        double room = reading.range().step() * 1e-6;
        assertTrue(
                read - off >= reading.low() - room && read + off <= reading.high() + room,
                where + ": " + read + " ± " + off + " is not in " + reading);
    }

    /** Worked by hand: 12 V ± 1 %, 5 % resistors, a meter of 10 MΩ. */
    @Test
    void theBandOfADividerIsThatOfItsPartsAndTheMeter() throws NotLaidOut {
        BenchCircuit circuit = circuit("voltage-dividers/preferred-pair");
        double volts = circuit.parts().get(0).part().values().get(PartValue.VOLTS);
        double upper = circuit.parts().get(1).part().values().get(PartValue.OHMS);
        double lower = circuit.parts().get(2).part().values().get(PartValue.OHMS);
        MeterReading out = circuit.readings().get(0);
        assertEquals(divided(volts, upper, lower), out.expected(), out.range().step() / 2 * 1.001);
        double high = divided(1.01 * volts, 0.95 * upper, 1.05 * lower);
        double low = divided(0.99 * volts, 1.05 * upper, 0.95 * lower);
        assertEquals(
                high * 1.005 + 2 * out.range().step(), out.high(), out.range().step());
        assertEquals(
                low * 0.995 - 2 * out.range().step(), out.low(), out.range().step());
    }

    private static double divided(double volts, double upper, double lower) {
        double both = lower * 10e6 / (lower + 10e6);
        return volts * both / (upper + both);
    }

    @Test
    void theCurrentLimitLiesAQuarterAboveWhatThePartsCanDrawAndIsWhatAKnobIsSetTo() {
        assertEquals(0.01, BenchSupply.limit(0), 0);
        assertEquals(0.01, BenchSupply.limit(0.0079), 0);
        assertEquals(0.02, BenchSupply.limit(0.0081), 0);
        assertEquals(0.03, BenchSupply.limit(0.024), 0);
        assertEquals(0.15, BenchSupply.limit(0.12), 0);
        assertEquals(1.3, BenchSupply.limit(1.04), 0);
    }
}
