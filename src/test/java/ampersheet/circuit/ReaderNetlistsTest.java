package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.problem.PrintedNumbers;
import ampersheet.problem.Problem;
import ampersheet.quantity.Unit;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * A judge of statement, model and key at once: three readers who saw nothing but the printed problem wrote each of
 * these netlists, with what they had to assume; the simulator's answers must be those of the key. Lines that we added
 * to their files: the template, the numbers in SI units, and for each answer its step or choice.
 */
class ReaderNetlistsTest {
    private static final Path FOLDER = Path.of("src/test/resources/reader-netlists");
    /** Relative; what the readers' ideal diodes and switches leave open. */
    private static final double GAP = 1e-4;

    private static final int LEAST_FILES = 60;
    private static final int LEAST_ANSWERS = 200;

    private static List<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(FOLDER)) {
            return all.filter(path -> path.toString().endsWith(".cir")).sorted().toList();
        }
    }

    @TestFactory
    Stream<DynamicTest> theKeyIsWhatACircuitWrittenFromThePageAloneShows() throws IOException {
        CircuitSimulator.need();
        TemplateFiles templates = TemplateFiles.builtIn();
        List<String> chosen = ChosenTemplates.of(templates);
        return files().stream()
                .map(ReaderNetlist::read)
                .filter(netlist -> chosen.contains(netlist.template))
                .map(netlist -> DynamicTest.dynamicTest(
                        netlist.template, () -> judge(netlist, TemplateReader.read(templates, netlist.template))));
    }

    @Test
    void readersPutMostTemplatesWithACircuitOrAHeatPath() throws IOException {
        List<ReaderNetlist> netlists = files().stream().map(ReaderNetlist::read).toList();
        assertTrue(netlists.size() >= LEAST_FILES, netlists.size() + " netlists");
        int answers =
                netlists.stream().mapToInt(netlist -> netlist.answers.size()).sum();
        assertTrue(answers >= LEAST_ANSWERS, answers + " answers");
    }

    private static void judge(ReaderNetlist netlist, ProblemTemplate template)
            throws IOException, InterruptedException {
        Map<String, Double> simulated = CircuitSimulator.batch(netlist.text, netlist.answers.keySet());
        Problem problem = PrintedNumbers.worked(template, netlist.numbers);
        List<String> faults = new ArrayList<>();
        netlist.answers.forEach((name, told) -> {
            double found = simulated.get(name);
            int place = name.charAt(name.length() - 1) - 'a';
            Problem.Answer key = problem.answers().get(place);
            assertEquals(told.of, key.of(), name);
            boolean choice = template.asks().get(place) instanceof ChoiceAsk;
            assertEquals(choice, told.option > 0, name);
            if (choice
                    ? found != told.printed || key.value() != told.option - 1
                    : Math.abs(told.unit.toSi(found) - key.value()) > netlist.gap * Math.abs(key.value())) {
                faults.add(name + ", " + told.of + ": the circuit shows " + found + " " + told.unit.symbol()
                        + ", the key is " + key.value() + (choice ? " (option from 0)" : ""));
            }
        });
        assertEquals(List.of(), faults, netlist.assumed);
    }

    /** @param option from 1, for which {@code printed} stands; 0 for a quantity */
    private record Told(String of, Unit unit, int option, double printed) {
        static Told parse(String told) {
            String[] parts = told.split(", ");
            if (parts.length == 1) {
                return new Told(parts[0], Unit.ONE, 0, 0);
            } else if (parts[1].startsWith("in ")) {
                return new Told(parts[0], Unit.parse(parts[1].substring("in ".length())), 0, 0);
            }
            String[] option = parts[1].split(" stands for option ");
            return new Told(parts[0], Unit.ONE, Integer.parseInt(option[1]), Double.parseDouble(option[0]));
        }
    }

    private record ReaderNetlist(
            String template,
            String text,
            Map<String, String> numbers,
            Map<String, Told> answers,
            double gap,
            String assumed) {
        static ReaderNetlist read(Path file) {
            try {
                String text = Files.readString(file);
                String template = "";
                Map<String, String> numbers = new LinkedHashMap<>();
                Map<String, Told> answers = new LinkedHashMap<>();
                List<String> assumed = new ArrayList<>();
                double gap = GAP;
                for (String line : text.split("\n")) {
                    if (line.startsWith("* template: ")) {
                        template = line.substring("* template: ".length());
                    } else if (line.startsWith("* numbers: ")) {
                        for (String number :
                                line.substring("* numbers: ".length()).split(" ")) {
                            numbers.put(
                                    number.substring(0, number.indexOf('=')),
                                    number.substring(number.indexOf('=') + 1));
                        }
                    } else if (line.startsWith("* answer_") && !line.contains("not compared")) {
                        answers.put(
                                line.substring(2, line.indexOf(':')),
                                Told.parse(line.substring(line.indexOf(':') + 2)));
                    } else if (line.startsWith("* within: ")) {
                        gap = Double.parseDouble(line.substring("* within: ".length(), line.indexOf(',')));
                    } else if (line.startsWith("* assumed: ")) {
                        assumed.add(line.substring(2));
                    }
                }
                assertFalse(template.isEmpty() || answers.isEmpty(), file.toString());
                return new ReaderNetlist(template, text, numbers, answers, gap, String.join("; ", assumed));
            } catch (IOException unreadable) {
                throw new java.io.UncheckedIOException(unreadable);
            }
        }
    }
}
