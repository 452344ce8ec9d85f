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
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Whatever one character an author mistypes, in whatever line: faults that can be mended, or a template that proves. */
class AuthorSlipsTest {
  private static final long SEED = Long.getLong("ampersheet.slips.seed", 20261129L);
  private static final int OF_EACH = Integer.getInteger("ampersheet.slips.each", Boolean.getBoolean("ampersheet.deep") ? 60 : 5);
  private static final int DRAWS = 10;
  private static final long LONGEST_NANOSECONDS = 2_000_000_000L;
  private static final String KEYBOARD = "abcdefghijklmnopqrstuvwxyzABEGIKLMNRTUVW0123456789 .,:;-_+*/^()[]{}<>=!?\"'#$%&|\n";
  /** Their every character is mistyped in the long run: a circuit with tolerances, a heat path with a curve, a chain. */
  private static final List<String> WHOLE = List.of("voltage-dividers/worst-case-output", "thermal-rise/warm-up-time",
      "chain-addressing/tile-orders");

  private static final ForkJoinPool ALONE = new ForkJoinPool(1);
  private static final AtomicLong slowest = new AtomicLong();

  @AfterAll
  static void tellTheSlowest() {
    System.out.println("slowest slip: " + slowest.get() / 1_000_000 + " ms of the processor");
  }

  private record Slip(String what, String text) {}

  @TestFactory
  Stream<DynamicTest> aSlipInAnyTemplateIsToldOrDoesNoHarm() {
    return ChosenTemplates.of(TemplateFiles.builtIn()).stream().map(name -> DynamicTest.dynamicTest(name, () -> {
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
    return WHOLE.stream().flatMap(name -> Stream.of("statement.md.ftl", "problem.yaml").map(file ->
        DynamicTest.dynamicTest(name + "/" + file, () -> {
          String text = AlteredTemplate.sound(name, file);
          Random random = new Random(SEED + name.hashCode());
          for (int at = Integer.getInteger("ampersheet.slips.from", 0); at < text.length(); at++) {
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
    String told = "character " + at + (kind == 0 ? " left out" : kind == 1 ? " is now '" + key + "'"
        : kind == 2 ? " has '" + key + "' before it" : " exchanged with the next") + ": "
        + text.substring(text.lastIndexOf('\n', at - 1) + 1, text.indexOf('\n', at) < 0 ? text.length() : text.indexOf('\n', at));
    return new Slip(told, switch (kind) {
      case 0 -> before + after;
      case 1 -> before + key + after;
      case 2 -> before + key + text.substring(at);
      default -> after.isEmpty() ? before + text.charAt(at) : before + after.charAt(0) + text.charAt(at) + after.substring(1);
    });
  }

  /**
   * Alone in a pool of one, where even what draws in parallel stays on this thread: what counts is the time that the processor
   * took, whatever else the machine does.
   */
  private static void isTold(String name, String file, Slip slip) {
    String replay = name + "/" + file + ", " + slip.what() + " (seed " + SEED + ")";
    long took = ALONE.submit(() -> {
      long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      try {
        tell(name, file, slip, replay);
      } catch (RuntimeException | StackOverflowError crash) {
        throw new AssertionError(replay, crash);
      }
      return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin;
    }).join();
    slowest.accumulateAndGet(took, Math::max);
    assertTrue(took < LONGEST_NANOSECONDS, () -> replay + " took " + took / 1_000_000 + " ms");
  }

  private static void tell(String name, String file, Slip slip, String replay) {
    TemplateReader.Checked checked = AlteredTemplate.of(name, file, slip.text()).check();
    for (Diagnostic told : checked.diagnostics()) {
      assertTrue(told.place().file().startsWith(name) && !told.problem().isBlank(), () -> replay + ": " + told.print());
    }
    assertEquals(checked.template().isEmpty(),
        checked.diagnostics().stream().anyMatch(one -> one.severity() == Severity.ERROR), replay);
    if (checked.template().isPresent()) {
      assertFalse(Proving.prove(new Workshop(checked.template().get()), "slips", DRAWS).print().isBlank());
    }
  }
}
