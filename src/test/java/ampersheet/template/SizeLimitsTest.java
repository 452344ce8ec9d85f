package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What a template makes too large is told where it is written, with the reason, before anything is solved or drawn. */
class SizeLimitsTest {
    /** @param told at the line of {@code large} */
    private record Case(String template, String sound, String large, String told) {}

    private static final List<Case> CASES = List.of(
            new Case(
                    "chain-addressing/serpentine-tile",
                    "layout: {columns: 1, rows: 1}",
                    "layout: {columns: 1000000, rows: 1000000}",
                    "1000000000000 tiles"),
            new Case(
                    "chain-addressing/serpentine-tile",
                    "layout: {columns: 1, rows: 1}",
                    "layout: {columns: 33, rows: 32}",
                    "1056 tiles"),
            new Case(
                    "chain-addressing/serpentine-tile",
                    "tile: {columns: columns,",
                    "tile: {columns: 80000,",
                    "80000 columns of pixels in the tile"),
            new Case(
                    "chain-addressing/serpentine-tile",
                    "tile: {columns: columns, rows: rows,",
                    "tile: {columns: 129, rows: 128,",
                    "16512 pixels in the tile"),
            new Case(
                    "chain-addressing/serpentine-tile",
                    "tile: {columns: columns, rows: rows,",
                    "tile: {columns: 1e300, rows: 1e300,",
                    "far too many"),
            new Case("chain-addressing/frame-memory", "bits: d", "bits: 100000 * d", "bits of a pixel"),
            new Case(
                    "chain-addressing/panel-supply-grid",
                    "columns: c, rows: r, amps: I1, ohms: Rs,",
                    "columns: 44, rows: 45, amps: I1, ohms: Rs, cross: Rs,",
                    "1980 loads of P1"),
            new Case(
                    "chain-addressing/panel-supply-grid",
                    "columns: c, rows: r, amps: I1,",
                    "columns: 60, rows: r, amps: I1,",
                    "1920 loads of P1"),
            new Case("chain-addressing/supply-drop-one-end", "taps: n,", "taps: 2000 + n,", "taps of L1"),
            new Case(
                    "chain-addressing/edge-mating",
                    "edge: {sides: n,",
                    "edge: {sides: 1000000,",
                    "1000000 sides of the tile"),
            new Case("chain-addressing/edge-mating", "contacts: c,", "contacts: 100 * c,", "contacts"),
            new Case("chain-addressing/triangle-arms", "tiles: a}", "tiles: 401}", "401 tiles in the arm"),
            new Case(
                    "chain-addressing/alignment-error",
                    "row: {tiles: n,",
                    "row: {tiles: n + 5,",
                    "17 tiles in the row"),
            new Case(
                    "chain-addressing/alignment-error",
                    "among: 1 to 16,",
                    "among: 1 to 1000000,",
                    "1000000 whole numbers"),
            new Case(
                    "chain-addressing/alignment-error",
                    "from: 60, to: 150, step: 10}",
                    "from: 60, to: 1e21, step: 1}",
                    "values"));

    @TestFactory
    Stream<DynamicTest> whatIsTooLargeIsToldAtItsLineWithTheReason() {
        return CASES.stream()
                .map(one -> DynamicTest.dynamicTest(one.template() + " " + one.large(), () -> {
                    String text = AlteredTemplate.sound(one.template(), "problem.yaml");
                    assertTrue(text.contains(one.sound()), () -> "the template no longer has " + one.sound());
                    int at = text.indexOf(one.sound());
                    int line = (int) text.substring(0, at)
                                    .chars()
                                    .filter(c -> c == '\n')
                                    .count()
                            + 1;
                    Diagnostic error = firstError(
                            one.template(),
                            text.substring(0, at)
                                    + one.large()
                                    + text.substring(at + one.sound().length()));
                    assertEquals(line, error.place().line(), error.print());
                    assertTrue(
                            error.problem().contains(one.told())
                                    && error.expected().contains("at most "),
                            error.print());
                }));
    }

    private static Diagnostic firstError(String template, String text) {
        List<Diagnostic> told = assertTimeoutPreemptively(
                Duration.ofSeconds(10),
                () -> AlteredTemplate.of(template, "problem.yaml", text).check().diagnostics());
        assertTrue(!told.isEmpty(), "nothing was told");
        return told.get(0);
    }

    @Test
    void stepsThatDoubleAtEachStepDoNotSwellTheWorstCase() {
        String template = "voltage-dividers/divider-tolerance";
        String text = AlteredTemplate.sound(template, "problem.yaml");
        String doubling = IntStream.range(0, 60)
                .mapToObj(i -> "  - {id: W" + i + ", symbol: W_" + i + "i, meaning: w, is: "
                        + (i == 0 ? "R1 + R1" : "W" + (i - 1) + " * W" + (i - 1) + " / W" + (i - 1))
                        + ", unit: ohm, principle: \"P\", because: b}\n")
                .collect(Collectors.joining());
        String principle = text.replaceAll("(?s).*teaches: \\[([^,\\]]+).*", "$1");
        String large = text.replace(
                "\nasks:",
                "\n" + doubling.replace("\"P\"", principle)
                        + "  - {id: Wmax, symbol: W_max, meaning: w, "
                        + "largest: W59, unit: ohm, principle: " + principle + ", because: b}\nasks:");
        List<Diagnostic> told = assertTimeoutPreemptively(
                Duration.ofSeconds(10),
                () -> AlteredTemplate.of(template, "problem.yaml", large)
                        .check()
                        .diagnostics());
        assertTrue(
                told.stream().anyMatch(one -> one.problem().contains("has more than 500 terms")),
                () -> told.stream().map(Diagnostic::print).collect(Collectors.joining()));
    }

    @Test
    void aListThatNobodyCanLookThroughIsRefused() {
        String template = "current-limiting/one-indicator";
        String text = AlteredTemplate.sound(template, "problem.yaml");
        Diagnostic error = firstError(
                template,
                text
                        + "curve: {across: {quantity: If, from: 0, to: 1}, up: {quantity: R}, points: [{of: R}]"
                        + ", lines: [" + "{name: a, is: R}, ".repeat(201) + "]}\n");
        assertTrue(
                error.problem().contains("has 201 items") && error.expected().contains("at most 200"), error.print());
    }

    @Test
    void aPrintedTextHasALimit() {
        String template = "current-limiting/one-indicator";
        String text = AlteredTemplate.sound(template, "problem.yaml")
                .replaceFirst("title: ", "title: " + "long ".repeat(200));
        assertTrue(firstError(template, text).problem().contains("longer than 1000 characters"));
    }
}
