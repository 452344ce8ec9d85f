package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Severity;
import ampersheet.template.AlteredTemplate;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Whatever one character an author mistypes, in whatever line: faults that can be mended, or a template that proves.
 */
class AuthorSlipsTest {
    private static final long SEED = Long.getLong("ampersheet.slips.seed", 20261129L);
    /**
     * More are walked through with {@code -Dampersheet.slips.each=N}, others with {@code -Dampersheet.slips.seed=N}.
     */
    private static final int OF_EACH =
            Integer.getInteger("ampersheet.slips.each", Boolean.getBoolean("ampersheet.deep") ? 60 : 1);

    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 1 : 2;
    /** Counting all variants of each slip that does no harm would take most of the time. */
    private static final long COUNTED = 200;

    private static final long LONGEST_NANOSECONDS = 2_000_000_000L;
    private static final String KEYBOARD =
            "abcdefghijklmnopqrstuvwxyzABEGIKLMNRTUVW0123456789 .,:;-_+*/^()[]{}<>=!?\"'#$%&|\n";
    /**
     * Their every character is mistyped in the long run: a circuit with tolerances, a heat path with a curve, a chain.
     */
    private static final List<String> WHOLE = List.of(
            "voltage-dividers/divider-tolerance", "thermal-rise/warm-up-time", "chain-addressing/serpentine-tile");

    private static final ForkJoinPool ALONE = new ForkJoinPool(1);
    private static final AtomicLong slowest = new AtomicLong();

    @AfterAll
    static void tellTheSlowest() {
        System.out.println("slowest slip: " + slowest.get() / 1_000_000 + " ms of the processor");
    }

    private record Slip(String what, String text) {}

    /** Each of these ended in a trace, or took half a minute. */
    @TestFactory
    Stream<DynamicTest> slipsThatWereNotToldAreTold() {
        return Stream.of(
                        new String[] {
                            "voltage-dividers/divider-tolerance",
                            "  R1:  {meaning:",
                            "  R1:  {meanin:",
                            "the key \"meanin\""
                        },
                        new String[] {
                            "voltage-dividers/divider-tolerance",
                            "from: 4.7 kohm, to",
                            "form: 4.7 kohm, to",
                            "the key \"form\""
                        },
                        new String[] {
                            "current-limiting/indicator-tolerance",
                            "from: 1.8, to: 3.2, step",
                            "from: 1.8, to: 3.2, setp",
                            "the key \"setp\""
                        },
                        new String[] {
                            "current-limiting/one-indicator", "next_up(R, E24)", "next_up(Rn, E25)", "uses itself"
                        },
                        new String[] {"chain-addressing/alignment-error", "is: 2 * e, unit", "is: 13 * e, unit", ""})
                .map(slip -> DynamicTest.dynamicTest(slip[0] + ": " + slip[2], () -> {
                    String text = AlteredTemplate.sound(slip[0], "problem.yaml");
                    assertTrue(text.contains(slip[1]), () -> "the template no longer has " + slip[1]);
                    String slipped = text.replace(slip[1], slip[2]);
                    isTold(slip[0], "problem.yaml", new Slip(slip[2], slipped));
                    List<Diagnostic> told = AlteredTemplate.of(slip[0], "problem.yaml", slipped)
                            .check()
                            .diagnostics();
                    assertTrue(
                            slip[3].isEmpty()
                                    || told.stream()
                                            .anyMatch(one -> one.problem().contains(slip[3])),
                            () -> told.stream().map(Diagnostic::print).collect(Collectors.joining()));
                }));
    }

    @TestFactory
    Stream<DynamicTest> aSlipInAnyTemplateIsToldOrDoesNoHarm() {
        return ChosenTemplates.of(TemplateFiles.builtIn()).stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Random random = new Random(SEED + name.hashCode());
                    for (int i = 0; i < OF_EACH; i++) {
                        String file = random.nextInt(8) == 0 ? "statement.md.ftl" : "problem.yaml";
                        String text = AlteredTemplate.sound(name, file);
                        isTold(name, file, slip(text, random.nextInt(text.length()), random.nextInt(4), random));
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> everySlipInThreeTemplatesIsToldOrDoesNoHarm() {
        if (!Boolean.getBoolean("ampersheet.deep")) {
            return Stream.of();
        }
        return WHOLE.stream()
                .flatMap(name -> Stream.of("statement.md.ftl", "problem.yaml")
                        .map(file -> DynamicTest.dynamicTest(name + "/" + file, () -> {
                            String text = AlteredTemplate.sound(name, file);
                            Random random = new Random(SEED + name.hashCode());
                            for (int at = Integer.getInteger("ampersheet.slips.from", 0); at < text.length(); at++) {
                                if (at % 500 == 0) {
                                    System.out.println(
                                            name + "/" + file + ": character " + at + " of " + text.length());
                                }
                                for (int kind = 0; kind < 4; kind++) {
                                    isTold(name, file, slip(text, at, kind, random));
                                }
                            }
                        })));
    }

    /** @param kind 0 left out, 1 another, 2 one more, 3 exchanged with the next */
    private static Slip slip(String text, int at, int kind, Random random) {
        char key = KEYBOARD.charAt(random.nextInt(KEYBOARD.length()));
        String before = text.substring(0, at);
        String after = text.substring(at + 1);
        String told = "character " + at
                + (kind == 0
                        ? " left out"
                        : kind == 1
                                ? " is now '" + key + "'"
                                : kind == 2 ? " has '" + key + "' before it" : " exchanged with the next")
                + ": "
                + text.substring(
                        text.lastIndexOf('\n', at - 1) + 1,
                        text.indexOf('\n', at) < 0 ? text.length() : text.indexOf('\n', at));
        return new Slip(
                told,
                switch (kind) {
                    case 0 -> before + after;
                    case 1 -> before + key + after;
                    case 2 -> before + key + text.substring(at);
                    default ->
                        after.isEmpty()
                                ? before + text.charAt(at)
                                : before + after.charAt(0) + text.charAt(at) + after.substring(1);
                });
    }

    /**
     * Alone in a pool of one, where even what draws in parallel stays on this thread: what counts is the time that the
     * processor took, whatever else the machine does, and not the first time, when code may still be compiled.
     */
    private static void isTold(String name, String file, Slip slip) {
        String replay = name + "/" + file + ", " + slip.what() + " (seed " + SEED + ")";
        Told first = ALONE.submit(() -> tell(name, file, slip, replay)).join();
        Told told = first.took() < first.longest()
                ? first
                : ALONE.submit(() -> tell(name, file, slip, replay)).join();
        slowest.accumulateAndGet(told.proven() ? 0 : told.took(), Math::max);
        assertTrue(told.took() < told.longest(), () -> replay + " took " + told.took() / 1_000_000 + " ms");
    }

    /** @param proven what does no harm is as slow as its template without the slip */
    private record Told(boolean proven, long took) {
        long longest() {
            return (proven ? 10 : 1) * LONGEST_NANOSECONDS;
        }
    }

    private static Told tell(String name, String file, Slip slip, String replay) {
        long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        boolean proven = false;
        try {
            TemplateReader.Checked checked =
                    AlteredTemplate.of(name, file, slip.text()).check();
            for (Diagnostic told : checked.diagnostics()) {
                assertTrue(
                        told.place().file().startsWith(name) && !told.problem().isBlank(),
                        () -> replay + ": " + told.print());
            }
            assertEquals(
                    checked.template().isEmpty(),
                    checked.diagnostics().stream().anyMatch(one -> one.severity() == Severity.ERROR),
                    replay);
            if (checked.template().isPresent()) {
                ProofReport report =
                        Proving.prove(new Workshop(checked.template().get()), "slips", DRAWS, COUNTED);
                assertFalse(report.print().isBlank());
                proven = report.passed();
            }
        } catch (RuntimeException | StackOverflowError crash) {
            throw new AssertionError(replay, crash);
        }
        return new Told(proven, ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin);
    }
}
