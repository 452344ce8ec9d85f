package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * ngspice, a general circuit simulator that knows nothing of this project. Where it is not installed, a test that asks
 * for it is skipped; with the environment variable {@value #REQUIRED} it fails instead.
 */
public final class CircuitSimulator {
    public static final String REQUIRED = "AMPERSHEET_REQUIRE_SIMULATOR";
    private static final Path PROGRAM = Path.of("/usr/bin/ngspice");
    /** Tighter than its own defaults, so that gaps are those of the models. */
    private static final String OPTIONS =
            ".options reltol=1e-6 abstol=1e-14 vntol=1e-9 gmin=1e-15 itl1=500 itl4=200 numdgt=12\n";

    private CircuitSimulator() {}

    public static void need() {
        if (!Files.isExecutable(PROGRAM)) {
            if (System.getenv(REQUIRED) == null) {
                abort("no ngspice in /usr/bin");
            }
            fail("no ngspice in /usr/bin, and " + REQUIRED + " is set");
        }
    }

    /**
     * @param netlist a circuit, with its end
     * @param analysis such as {@code op}
     * @param wanted what to print, such as {@code v(1)} or {@code i(vm_R1)}
     * @return the last value of each that was printed
     */
    public static Map<String, Double> run(String netlist, String analysis, List<String> wanted)
            throws IOException, InterruptedException {
        List<String> commands = new ArrayList<>(List.of(analysis));
        wanted.forEach(each -> commands.add("print " + each));
        return told(netlist, commands, Set.copyOf(wanted));
    }

    /** @param measured commands that name what they measure */
    public static Map<String, Double> measure(String netlist, String analysis, List<String> measured, Set<String> names)
            throws IOException, InterruptedException {
        List<String> commands = new ArrayList<>(List.of(analysis));
        commands.addAll(measured);
        return told(netlist, commands, names);
    }

    private static Map<String, Double> told(String netlist, List<String> commands, Set<String> wanted)
            throws IOException, InterruptedException {
        List<String> control = new ArrayList<>(List.of(".control", "set numdgt=12"));
        control.addAll(commands);
        control.add("quit 0");
        control.add(".endc");
        return batch(netlist.replace(".end\n", OPTIONS + String.join("\n", control) + "\n.end\n"), wanted);
    }

    /**
     * Runs a netlist that says itself what is to be done.
     *
     * @param wanted names that it prints
     */
    public static Map<String, Double> batch(String netlist, Set<String> wanted)
            throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("simulator");
        Path file = folder.resolve("circuit.cir");
        try {
            Files.writeString(file, netlist, StandardCharsets.UTF_8);
            Process process = new ProcessBuilder(PROGRAM.toString(), "-b", file.toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("the simulator did not end:\n" + netlist);
            }
            Map<String, Double> values = new TreeMap<>();
            for (String line : said.split("\n")) {
                String[] parts = line.split("=");
                if (parts.length >= 2 && wanted.stream().anyMatch(each -> each.equalsIgnoreCase(parts[0].trim()))) {
                    values.put(
                            parts[0].trim().toLowerCase(Locale.ROOT),
                            Double.parseDouble(parts[1].trim().split(" ")[0]));
                }
            }
            if (values.size()
                    < wanted.stream()
                            .map(each -> each.toLowerCase(Locale.ROOT))
                            .distinct()
                            .count()) {
                throw new IllegalStateException("the simulator found no solution:\n" + netlist + "\n" + said);
            }
            return values;
        } finally {
            Files.deleteIfExists(file);
            Files.deleteIfExists(folder);
        }
    }
}
