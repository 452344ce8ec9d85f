package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.language.Language;
import ampersheet.source.Languages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words of another language stand in files beside a template, and change nothing else of it. */
class TranslationTest {
    /** Another tag for the same sentences: only the words of the template count here. */
    private static final Language OTHER = Language.read(
            "tlh",
            Languages.ENGLISH.written(List.of("common", "list", "number", "problem", "sheet", "figure", "spoken")));

    private static final String PROBLEM = """
      title: A test
      skill: testing
      level: 1
      teaches: [a rule]
      givens:
        U: {meaning: voltage, unit: V, choose: [5, 9, 12]}
        R: {meaning: load, unit: ohm, choose: [100, 220]}
        corner: {meaning: a corner, choose: [top left, top right]}
      steps:
        - {id: I, meaning: current in the load, is: U / R, unit: mA, principle: a rule, because: the load takes it}
      asks:
        - {step: I, within: 2 %, prompt: "What current flows?"}
      mistakes:
        - {id: upside-down, of: I, is: U ^ 2 / R * 1 A / 1 W, says: "You divided upside down."}
      circuit:
        - {source: V1, from: [0, 0], to: [0, 4], volts: U}
        - {load: X1, from: [0, 4], to: [4, 4], ohms: R, caption: lamp}
        - {wire: , from: [4, 4], to: [4, 0]}
        - {wire: , from: [4, 0], to: [0, 0]}
        - {ground: , at: [0, 0]}
      proof:
        - {of: I, measure: current(X1)}
      """;

    private static final String WORDS = """
      title: Waaah
      givens:
        U: {meaning: pIv}
        R: {meaning: lo}
        corner: {meaning: tajvaj, words: {top left: poS Dung}}
      steps:
        - {id: I, meaning: tlhepbogh pIv, because: lo taw}
      asks:
        - {step: I, prompt: "nuq tlhepbogh?"}
      mistakes:
        - {id: upside-down, says: "bIpIvchuqta'."}
      circuit:
        - {load: X1, caption: wovmoHwI'}
      """;

    @TempDir
    Path folder;

    private TemplateReader.Checked check(String words, Language language) throws IOException {
        Path own = Files.createDirectories(folder.resolve("family/one"));
        Files.writeString(own.resolve("problem.yaml"), PROBLEM);
        Files.writeString(own.resolve("statement.md.ftl"), "A source of ${U}, ${R}, ${corner}.\n");
        Files.writeString(own.resolve("statement.tlh.md.ftl"), "${U} ${R} ${corner}.\n");
        Files.writeString(own.resolve("problem.tlh.yaml"), words);
        return TemplateReader.check(TemplateFiles.in(folder), "family/one", language);
    }

    @Test
    void everyTextIsThatOfTheLanguageAndEveryNumberTheTemplates() throws IOException {
        ProblemTemplate english = check(WORDS, Languages.ENGLISH).template().orElseThrow();
        TemplateReader.Checked checked = check(WORDS, OTHER);
        assertEquals(List.of(), checked.diagnostics());
        ProblemTemplate other = checked.template().orElseThrow();
        assertEquals("Waaah", other.title());
        assertEquals("pIv", other.givens().get(0).meaning());
        assertEquals("tlhepbogh pIv", other.line("I").meaning());
        assertEquals(List.of("lo taw"), other.line("I").reasons());
        assertEquals("nuq tlhepbogh?", other.asks().get(0).prompt());
        assertEquals(Map.of("corner", "poS Dung"), other.said(Map.of("corner", "top left")));
        assertEquals(Map.of("corner", "top right"), other.said(Map.of("corner", "top right")));
        assertEquals(english.working(), other.working());
        assertEquals(english.proofs(), other.proofs());
        assertEquals(english.skill(), other.skill());
        assertNotEquals(english.fingerprint(), other.fingerprint());
    }

    @Test
    void aSymbolOrTheSameUnitMayBeWrittenAsTheLanguageDoes() throws IOException {
        String words = WORDS.replace("{meaning: lo}", "{meaning: lo, symbol: R_lo, unit: \u03a9}")
                .replace("{id: I, meaning", "{id: I, symbol: I_taw, meaning");
        ProblemTemplate other = check(words, OTHER).template().orElseThrow();
        ProblemTemplate.QuantityGiven load =
                (ProblemTemplate.QuantityGiven) other.givens().get(1);
        assertEquals("R_lo", load.symbol().plain());
        assertEquals("I_taw", other.line("I").symbol().plain());
        assertEquals(check(WORDS, OTHER).template().orElseThrow().working(), other.working());
    }

    @Test
    void theEnglishVersionIsTheSameWhateverOtherLanguagesSay() throws IOException {
        String before = check(WORDS, Languages.ENGLISH).template().orElseThrow().fingerprint();
        assertEquals(
                before,
                check(WORDS.replace("Waaah", "Other"), Languages.ENGLISH)
                        .template()
                        .orElseThrow()
                        .fingerprint());
    }

    private String told(String words) throws IOException {
        TemplateReader.Checked checked = check(words, OTHER);
        assertTrue(checked.template().isEmpty(), words);
        return checked.diagnostics().get(0).toString();
    }

    @Test
    void aTextThatIsMissingOrLeftOverIsToldWithItsPlace() throws IOException {
        String missing = told(WORDS.replace(", because: lo taw", ""));
        assertTrue(missing.contains("because") && missing.contains("the load takes it"), missing);
        assertTrue(missing.contains("problem.tlh.yaml"), missing);
        assertTrue(told(WORDS.replace("  - {step: I, prompt: \"nuq tlhepbogh?\"}\n", "  - {step: I}\n"))
                .contains("What current flows?"));
        assertTrue(told(WORDS.replace("{id: I, meaning", "{id: J, meaning")).contains("steps"));
        assertTrue(told(WORDS + "curve: {name: x}\n").contains("curve"));
        assertTrue(told(WORDS.replace("{meaning: pIv}", "{meaning: pIv, unit: mV}"))
                .contains("unit"));
        assertTrue(told(WORDS.replace("top left: poS", "bottom: poS")).contains("bottom"));
    }

    @Test
    void aTemplateWithoutItsFilesSaysWhichAreMissing() throws IOException {
        check(WORDS, OTHER);
        Files.delete(folder.resolve("family/one/problem.tlh.yaml"));
        String told = TemplateReader.check(TemplateFiles.in(folder), "family/one", OTHER)
                .diagnostics()
                .toString();
        assertTrue(told.contains("problem.tlh.yaml"), told);
        Files.writeString(folder.resolve("family/one/problem.tlh.yaml"), WORDS);
        Files.delete(folder.resolve("family/one/statement.tlh.md.ftl"));
        told = TemplateReader.check(TemplateFiles.in(folder), "family/one", OTHER)
                .diagnostics()
                .toString();
        assertTrue(told.contains("statement.tlh.md.ftl"), told);
    }
}
