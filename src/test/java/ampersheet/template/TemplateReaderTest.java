package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.formula.Condition;
import ampersheet.formula.Scope;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.model.ChainPlan;
import ampersheet.model.CircuitPlan;
import ampersheet.model.HeatPlan;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import ampersheet.template.ProblemTemplate.Members;
import ampersheet.template.ProblemTemplate.Proof;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.Way;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TemplateReaderTest {
    /** A chain with words, a circuit with a search, and enough of everything else. */
    private static final String PROBLEM = """
      title: A test
      skill: testing
      level: 2
      teaches: [a rule]
      givens:
        U: {meaning: voltage, unit: V, from: 1.7, to: 3.4, step: 0.1}
        RL: {meaning: load, unit: ohm, series: E3, from: 1 kohm, to: 47 kohm}
        T: {meaning: temperature, unit: degC, from: -10, to: 10, step: 5 K}
        corner: {meaning: corner where the data enters, choose: [top left, top right]}
        n: {meaning: number of tiles, unit: "1", choose: [1, 2]}
      constants:
        k: {meaning: a factor, unit: "1", is: 0.5, symbol: kappa}
      require: ["U * k >= 1 V", "T < 10 degC or corner == \\"top left\\""]
      steps:
        - id: I
          meaning: current in the load
          is: U / RL
          unit: mA
          principle: a rule
          because: it is so
        - id: R
          meaning: largest load for a quarter of a milliampere
          unit: kohm
          principle: a rule
          cases:
            - {when: n == 1, is: "next_down(U / (0.25 mA), E12)", because: one}
            - {is: "next_down(U / (0.25 mA), E12)", because: two}
        - id: p
          meaning: pixels
          is: 4 * n
          unit: "1"
          principle: a rule
          because: it is so
        - id: rise
          symbol: dT
          meaning: the rise
          is: T + 5 K - T
          unit: K
          principle: a rule
          because: it is so
      asks:
        - {step: I, within: 2 %, figures: 4}
        - {step: R, exactly: E12, prompt: "Which load at **${U}**?"}
        - {step: p, exactly: count}
        - {step: rise, within: 0.5 K}
      mistakes:
        - {id: inverted, of: I, instead: {I: U ^ 2 / RL / (1 V)}, when: U > 2 V, says: "Divide."}
      circuit:
        - {source: V1, from: [0, 0], to: [0, 4], volts: U}
        - {load: L1, from: [0, 4], to: [4, 4], ohms: RL, caption: lamp}
        - {wire: , from: [4, 4], to: [4, 0]}
        - {wire: , from: [4, 0], to: [0, 0]}
        - {ground: , at: [0, 0]}
      heat:
        - {ambient: air, at: T}
        - {node: lamp, capacity: 2 J/K, initial: T}
        - {resistance: RJ, from: lamp, to: air, value: 5 K/(0.001 W)}
        - {loss: heat, into: lamp, watts: power(L1) * 0 + 1 mW}
      chain:
        tile: {columns: 2, rows: 2, order: serpentine, start: corner, along: rows, input: west, output: east}
        layout: {columns: n, rows: 1}
        return: true
      proof:
        - {of: I, measure: current(L1)}
        - {of: R, varies: RL, largest: E12, where: "0.25 mA <= current(L1)"}
        - {of: p, varies: n, smallest: count, among: 1 to 9, where: "turn(0, 0) >= k", within: 1 %, because: a test}
        - {of: rise, measure: temperature(lamp) - T, within: 0.01 K, because: a test}
      cautions: [bench-supply, led-eyes]
      """;

    private static final String STATEMENT = "A supply of ${U} feeds ${RL} at ${T}; ${n} tiles begin ${corner}, ${k}.\n";

    @TempDir
    private Path folder;

    private ProblemTemplate read(String problem, String statement) throws IOException {
        Path template = Files.createDirectories(folder.resolve("family/one"));
        Files.writeString(template.resolve("problem.yaml"), problem);
        Files.writeString(template.resolve("statement.md.ftl"), statement);
        return TemplateReader.read(TemplateFiles.in(folder), "family/one");
    }

    private ProblemTemplate read() throws IOException {
        return read(PROBLEM, STATEMENT);
    }

    private static List<Double> values(ProblemTemplate template, String name) {
        return template.givens().stream()
                .filter(given -> given.name().equals(name))
                .map(given -> ((QuantityGiven) given).values())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void howTheLinesOfATileRunIsReadUnderItsNewKeysAndItsOldOnes() throws IOException {
        assertEquals("serpentine rows", run(read()));
        assertEquals(
                "back and forth down",
                run(read(
                        PROBLEM.replace("order: serpentine", "lines: back and forth")
                                .replace("along: rows", "lines_run: down"),
                        STATEMENT)));
    }

    private static String run(ProblemTemplate template) {
        return template.model(ChainPlan.class).orElseThrow().order() + " "
                + template.model(ChainPlan.class).orElseThrow().along();
    }

    @Test
    void headAndWordsAreRead() throws IOException {
        ProblemTemplate template = read();
        assertEquals("family/one", template.name());
        assertEquals("family", template.family());
        assertEquals("A test", template.title());
        assertEquals("testing", template.skill());
        assertEquals(2, template.level());
        assertEquals(List.of("a rule"), template.teaches());
        assertEquals(List.of("bench-supply", "led-eyes"), template.cautions());
        assertEquals(Map.of("en", STATEMENT.strip()), template.words().statements());
    }

    @Test
    void aRangeHasTheDecimalsThatWereWritten() throws IOException {
        List<Double> values = values(read(), "U");
        assertEquals(
                List.of(1.7, 1.8, 1.9, 2.0, 2.1, 2.2, 2.3, 2.4, 2.5, 2.6, 2.7, 2.8, 2.9, 3.0, 3.1, 3.2, 3.3, 3.4),
                values);
    }

    @Test
    void aSeriesBetweenPrefixedEndsIsInBaseUnits() throws IOException {
        assertEquals(List.of(1000.0, 2200.0, 4700.0, 10000.0, 22000.0, 47000.0), values(read(), "RL"));
    }

    @Test
    void aTemperatureRangeStepsByADifference() throws IOException {
        assertEquals(List.of(263.15, 268.15, 273.15, 278.15, 283.15), values(read(), "T"));
    }

    @Test
    void theSpaceOfGivensIsTheProductOfAllValues() throws IOException {
        assertEquals(18L * 6 * 5 * 2 * 2, read().spaceOfGivens());
    }

    @Test
    void theScopeKnowsGivensConstantsStepsAndWords() throws IOException {
        Scope scope = read().scope();
        assertEquals(Dimension.VOLTAGE, scope.quantities().get("U"));
        assertEquals(Dimension.ONE, scope.quantities().get("k"));
        assertEquals(Dimension.CURRENT, scope.quantities().get("I"));
        assertEquals(Map.of("corner", Set.of("top left", "top right")), scope.words());
        assertEquals(
                List.of("U", "RL", "T", "n", "k", "I", "R", "p", "rise"),
                List.copyOf(scope.quantities().keySet()));
    }

    @Test
    void asksSayWhatIsRight() throws IOException {
        List<ProblemTemplate.Ask> asks = read().asks();
        assertEquals(
                new QuantityAsk("I", "What is the current in the load?", new Acceptance.Within(0.02, 0), 4),
                asks.get(0));
        assertEquals(
                new QuantityAsk("R", "Which load at **${U}**?", new Acceptance.Preferred(PreferredSeries.E12), 3),
                asks.get(1));
        assertEquals(new QuantityAsk("p", "What is the pixels?", new Acceptance.Count(), 3), asks.get(2));
        assertEquals(new QuantityAsk("rise", "What is the rise?", new Acceptance.Within(0, 0.5), 3), asks.get(3));
    }

    @Test
    void symbolsComeFromTheNameOrAsWritten() throws IOException {
        ProblemTemplate template = read();
        assertEquals(Symbol.of("dT"), template.line("rise").symbol());
        assertEquals(Symbol.of("I"), template.line("I").symbol());
        assertEquals(Symbol.of("kappa"), template.constants().get(0).symbol());
    }

    @Test
    void aCaseHasItsOwnReason() throws IOException {
        ProblemTemplate template = read();
        assertEquals(List.of("one", "two"), template.line("R").reasons());
        assertEquals(2, template.working().steps().get(1).cases().size());
        assertTrue(template.working().steps().get(1).cases().get(0).when().isPresent());
    }

    @Test
    void aProofIsDirectOrASearch() throws IOException {
        List<Proof> proofs = read().proofs();
        assertInstanceOf(Way.Direct.class, proofs.get(0).way());
        assertEquals(ProofGap.WITHIN, proofs.get(0).within());
        assertEquals("I", proofs.get(0).varies());
        Way.Largest largest = assertInstanceOf(Way.Largest.class, proofs.get(1).way());
        assertEquals(Condition.Relation.AT_LEAST, largest.relation(), "the measure moves to the left");
        assertEquals(new Members.Series(PreferredSeries.E12), largest.members());
        assertEquals("RL", proofs.get(1).varies());
        Way.Smallest smallest =
                assertInstanceOf(Way.Smallest.class, proofs.get(2).way());
        assertEquals(new Members.WholeNumbers(1, 9), smallest.members());
        assertEquals(0.01, proofs.get(2).within());
        assertEquals(0.0, proofs.get(3).within());
        assertEquals(0.01, proofs.get(3).floor());
        assertEquals("a test", proofs.get(3).because());
    }

    @Test
    void modelsAreRead() throws IOException {
        ProblemTemplate template = read();
        List<CircuitPlan.PlannedPart> parts =
                template.model(CircuitPlan.class).orElseThrow().parts();
        assertEquals(PartKind.LOAD, parts.get(1).kind());
        assertEquals(Optional.of("lamp"), parts.get(1).caption());
        assertEquals(new GridPoint(4, 4), parts.get(1).ends().get("to"));
        assertEquals(Set.of(PartValue.OHMS), parts.get(1).values().keySet());
        assertEquals(
                "lamp",
                template.model(HeatPlan.class).orElseThrow().losses().get(0).into());
        ChainPlan chain = template.model(ChainPlan.class).orElseThrow();
        assertEquals("corner", chain.start());
        assertTrue(chain.returnLine());
        assertInstanceOf(ChainPlan.Layout.Rows.class, chain.layout());
    }

    @Test
    void theFingerprintFollowsEveryWordAndNothingElse() throws IOException {
        String fingerprint = read().fingerprint();
        assertEquals(64, fingerprint.length());
        assertEquals(
                fingerprint,
                read(PROBLEM.replace("\n", "\r\n"), STATEMENT.replace("\n", "\r\n"))
                        .fingerprint());
        Files.writeString(folder.resolve("family/one/notes.txt"), "not part of it");
        assertEquals(fingerprint, read().fingerprint());
        assertNotEquals(
                fingerprint, read(PROBLEM, STATEMENT.replace("feeds", "drives")).fingerprint());
        assertNotEquals(
                fingerprint,
                read(PROBLEM.replace("A test", "The test"), STATEMENT).fingerprint());
    }

    @Test
    void anotherLanguageHasItsOwnWords() throws IOException {
        Files.createDirectories(folder.resolve("family/one"));
        Files.writeString(folder.resolve("family/one/statement.de.md.ftl"), "Eine Quelle von ${U}.\n");
        ProblemTemplate template = read();
        assertEquals(Set.of("de", "en"), template.words().statements().keySet());
        assertEquals(
                "Eine Quelle von 2\u00a0V.",
                Statement.render(template, new Language("de", Map.of()), Map.of("U", "2\u00a0V")));
    }

    @Test
    void aSecondReadingIsEqualWhateverTheLocale() throws IOException {
        ProblemTemplate first = read();
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(first, read());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void warningsDoNotStopTheReading() throws IOException {
        Files.createDirectories(folder.resolve("family/one"));
        Files.writeString(folder.resolve("family/one/problem.yaml"), PROBLEM);
        Files.writeString(folder.resolve("family/one/statement.md.ftl"), "A supply.\n");
        String extra =
                PROBLEM.replace("constants:\n", "  spare: {meaning: spare, unit: V, choose: [1, 2]}\nconstants:\n");
        Files.writeString(folder.resolve("family/one/problem.yaml"), extra);
        TemplateReader.Checked checked = TemplateReader.check(TemplateFiles.in(folder), "family/one");
        assertTrue(checked.template().isPresent());
        assertEquals(
                List.of("nothing uses spare, a given"),
                checked.diagnostics().stream()
                        .map(diagnostic -> diagnostic.problem())
                        .toList());
    }

    @Test
    void whatComesBeforeASkillIsReadAndIsNoPartOfATemplatesVersion() throws IOException {
        ProblemTemplate template =
                read(PROBLEM.replace("skill: testing\n", "skill: testing\nafter: [reading, writing]\n"), STATEMENT);
        assertEquals(List.of("reading", "writing"), template.premises().after());
        assertEquals(read().fingerprint(), template.fingerprint());
        assertEquals(
                read().fingerprint(),
                read(
                                PROBLEM.replace(
                                        "skill: testing\n", "skill: testing\nafter:\n  - reading\n  - writing\n"),
                                STATEMENT)
                        .fingerprint());
    }

    @Test
    void aSkillThatComesAfterItselfIsRefused() {
        DiagnosticException refused = assertThrows(
                DiagnosticException.class,
                () -> read(PROBLEM.replace("skill: testing\n", "skill: testing\nafter: [testing]\n"), STATEMENT));
        assertTrue(refused.getMessage().contains("the skill comes after itself"), refused.getMessage());
    }
}
