package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.KeyWriter;
import ampersheet.answer.LadderProbe;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Spellings;
import ampersheet.answer.TypedForms;
import ampersheet.answer.Verdict;
import ampersheet.language.Language;
import ampersheet.problem.AnswerKeys;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;

/** The checker of the page and the checker of the command are one program: same key, same answer, same verdict. */
class CheckerParityTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int ANSWERS = Boolean.getBoolean("ampersheet.deep") ? 10_000 : 800;
    private static final int DRAWS = DEEP ? 2 : 1;
    private static final int MOST_GZIP_BYTES = 92_000;
    private static final long SEED = 20_260_104;

    private static List<Asked> drawn = List.of();

    @TempDir
    private Path folder;

    @BeforeEach
    void need() {
        Chromium.need();
    }

    private static String checker() throws IOException {
        try (InputStream in = CheckerParityTest.class.getResourceAsStream("/ampersheet/browser/checker.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void theScriptIsSmall() throws IOException {
        byte[] script = checker().getBytes(StandardCharsets.UTF_8);
        ByteArrayOutputStream zipped = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(zipped)) {
            zip.write(script);
        }
        System.out.println("checker.js: " + script.length + " bytes, " + zipped.size() + " gzipped");
        assertTrue(zipped.size() <= MOST_GZIP_BYTES, zipped.size() + " bytes");
    }

    @Test
    void theScriptCannotEndOrHideTheElementItStandsIn() throws IOException {
        assertTrue(!checker().contains("</script") && !checker().contains("<!--"), "escape it where the page is made");
    }

    /** What is typed to one problem: the probed question's answer, and earlier ones where they matter. */
    private record Asked(ProblemKey key, List<Map<String, String>> typed) {}

    /** With the call by which a page tells it how to speak. */
    private static String speaking(Language language, DecimalMarker decimal) throws IOException {
        ObjectMapper json = new ObjectMapper();
        return checker() + "\nspeak(" + json.writeValueAsString(language.code()) + ", "
                + json.writeValueAsString(language.written(List.of(""))).replace("</", "<\\/")
                + ", " + json.writeValueAsString(String.valueOf(decimal.character())) + ");";
    }

    @OnlyDeep
    @Test
    void theSameHoldsInTheOtherLanguageAndWithItsDecimalComma() throws IOException {
        Language german = Languages.of("de").orElseThrow();
        List<Asked> asked = new ArrayList<>();
        for (Asked one : questions()) {
            ProblemKey key = one.key();
            ProblemKey spoken = new ProblemKey(
                    key.answers(),
                    key.givens(),
                    key.working(),
                    key.designs(),
                    key.meanings(),
                    german,
                    DecimalMarker.COMMA);
            if (asked.size() < (DEEP ? 40 : 15)) {
                asked.add(new Asked(spoken, one.typed()));
            }
        }
        List<?> told = judgedInTheBrowser(asked, german, DecimalMarker.COMMA);
        int at = 0;
        for (Asked one : asked) {
            List<?> perAnswer = (List<?>) told.get(at++);
            for (int j = 0; j < one.typed().size(); j++) {
                List<String> expected = new ArrayList<>();
                for (Verdict verdict : Judge.judge(one.key(), one.typed().get(j))) {
                    expected.addAll(List.of(
                            verdict.question(),
                            verdict.rung().name(),
                            verdict.understood(),
                            verdict.message(),
                            verdict.mistake().orElse("")));
                }
                assertEquals(expected, perAnswer.get(j), one.typed().get(j).toString());
            }
        }
    }

    @Test
    void thousandsOfAnswersGetTheSameVerdictsAsOnTheJavaMachine() throws IOException {
        List<Asked> asked = questions();
        int answers = asked.stream().mapToInt(one -> one.typed().size()).sum();
        assertTrue(answers >= ANSWERS, "only " + answers + " answers");
        List<?> told = judgedInTheBrowser(asked, Languages.ENGLISH, DecimalMarker.POINT);
        Map<Rung, Integer> rungs = new EnumMap<>(Rung.class);
        List<String> differences = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            List<?> perAnswer = (List<?>) told.get(i);
            for (int j = 0; j < asked.get(i).typed().size(); j++) {
                Map<String, String> typed = asked.get(i).typed().get(j);
                List<String> expected = new ArrayList<>();
                for (Verdict verdict : Judge.judge(asked.get(i).key(), typed)) {
                    expected.addAll(List.of(
                            verdict.question(),
                            verdict.rung().name(),
                            verdict.understood(),
                            verdict.message(),
                            verdict.mistake().orElse("")));
                    if (typed.containsKey(verdict.question())) {
                        rungs.merge(verdict.rung(), 1, Integer::sum);
                    }
                }
                if (!expected.equals(perAnswer.get(j))) {
                    differences.add(typed + ": here " + expected + ", in the browser " + perAnswer.get(j));
                }
            }
        }
        System.out.println(
                answers + " answers judged in the browser and here, " + differences.size() + " differences; " + rungs);
        assertEquals(List.of(), differences.stream().limit(20).toList(), "seed " + SEED);
        assertEquals(Rung.values().length, rungs.size(), "every rung was reached: " + rungs);
    }

    private List<?> judgedInTheBrowser(List<Asked> asked, Language language, DecimalMarker decimal) throws IOException {
        List<Object> given = new ArrayList<>();
        for (Asked one : asked) {
            given.add(List.of(
                    KeyWriter.write(one.key()),
                    one.typed().stream().map(CheckerParityTest::byTurns).toList()));
        }
        ChromeDriver browser = Chromium.fresh();
        browser.get(Chromium.pageOf(speaking(language, decimal), folder).toUri().toString());
        return (List<?>) browser.executeScript(
                "return arguments[0].map(([key, typed]) => typed.map(one => Array.from(judgeAnswers(key, one))))",
                given);
    }

    /** As on the Java machine, where {@code TypedFormsTest} types them. */
    @OnlyDeep
    @Test
    void aRightAnswerIsRightInEveryFormThatIsTyped() throws IOException {
        TemplateFiles files = TemplateFiles.builtIn();
        List<Asked> asked = new ArrayList<>();
        Set<String> forms = new TreeSet<>();
        for (String name : files.names()) {
            ProblemKey key = AnswerKeys.keyOf(
                    new Draws(new Workshop(TemplateReader.read(files, name)), "typed forms").draw(0), "q1", true);
            List<Map<String, String>> typed = new ArrayList<>();
            int turn = 0;
            for (AnswerKey answer : key.answers()) {
                if (!(answer.acceptance() instanceof Acceptance.Choice)) {
                    for (TypedForms.Typed form : TypedForms.of(answer, answer.expected())) {
                        boolean fresh = forms.add(form.kind() + " | " + form.form());
                        if (DEEP || fresh || turn++ % 32 == 0) {
                            typed.add(TypedForms.withPartners(key, answer, form.text()));
                        }
                    }
                }
            }
            asked.add(new Asked(key, typed));
        }
        List<?> told = judgedInTheBrowser(asked, Languages.ENGLISH, DecimalMarker.POINT);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            for (int j = 0; j < asked.get(i).typed().size(); j++) {
                Map<String, String> typed = asked.get(i).typed().get(j);
                List<?> verdicts = (List<?>) ((List<?>) told.get(i)).get(j);
                for (int at = 0; at < verdicts.size(); at += 5) {
                    if (typed.containsKey(verdicts.get(at))
                            && !verdicts.get(at + 1).equals(Rung.CORRECT.name())) {
                        wrong.add(typed + ": " + verdicts.subList(at, at + 5));
                    }
                }
            }
        }
        assertEquals(List.of(), wrong.stream().limit(20).toList(), wrong.size() + " in the browser");
        assertTrue(forms.size() >= 400, forms.size() + " forms of a kind of question");
    }

    /**
     * A learner who does this and that, at random: what the page's practice answers is what it answers on the Java
     * machine.
     */
    @Test
    void aPracticeGoesTheSameWayAsOnTheJavaMachine() throws IOException {
        ProblemKey key = AnswerKeys.keyOf(
                new Draws(
                                new Workshop(TemplateReader.read(
                                        TemplateFiles.builtIn(), "voltage-dividers/loaded-divider")),
                                "practice parity")
                        .draw(0),
                "q",
                true);
        String course = """
        course 2
        SET
        rule Ohm's law\tties the voltage across one resistance to the current through it
        skill one
        after
        template 3 a/one
        line Ohm's law\tcurrent
        line series resistance\tsum\tOhm's law
        line electrical power\theat
        twin 0 3 +1 =2 -3\tsupply voltage
        faded 3
        faded 2 3
        template 3 a/two
        variants 0 1 0 1
        twins 0 -1 0 -1
        faulty 0\t2\tan-id
        faulty 2\t1\tanother-id
        skill two
        after 0
        template 3 b/one
        line Ohm's law\tcurrent
        line electrical power\theat
        line thermal resistance\trise
        twin 1 2\tdistance
        faded 3
        variants 0 0 0
        twins 0 0 0
        """;
        List<String> places = key.answers().stream().map(AnswerKey::question).toList();
        Random random = new Random(SEED);
        List<List<String>> events = new ArrayList<>();
        for (int i = 0; i < (DEEP ? 400 : 250); i++) {
            AnswerKey answer = key.answers().get(random.nextInt(places.size()));
            String right = QuantityWriter.POINT
                    .plain(answer.expected(), answer.unit(), 6)
                    .text();
            String wrong =
                    List.of("5 kg", "6 V / 3 kohm", "7.7 V", "", "2 V + 1 A").get(random.nextInt(5));
            int kind = random.nextInt(10);
            if (kind < 4) {
                events.add(List.of("type", answer.question(), random.nextInt(4) > 0 ? right : wrong));
            } else if (kind < 7) {
                events.add(List.of("check", List.of("", "sure", "unsure").get(random.nextInt(3)), ""));
            } else if (kind < 8) {
                events.add(List.of("hint", "", ""));
            } else {
                events.add(List.of(
                        "go",
                        List.of("next", "another", "choose", "solution", "example", "faulty", "line")
                                .get(random.nextInt(7)),
                        "1"));
                events.add(List.of(
                        "go",
                        "answer",
                        List.of("Ohm's law", "electrical power", "It rises", "It falls")
                                .get(random.nextInt(4))));
                events.add(List.of("aside", "", ""));
            }
        }
        List<String> here = new ArrayList<>();
        PracticeDesk desk = new PracticeDesk();
        String keyText = KeyWriter.write(key);
        String[] placesShown = places.toArray(String[]::new);
        desk.speak(Languages.ENGLISH, DecimalMarker.POINT);
        desk.start(course, "", new String[] {"tab", ""}, 20_000, 0);
        for (int i = 0; i < events.size(); i++) {
            List<String> event = events.get(i);
            int day = 20_000 + i / 50;
            switch (event.get(0)) {
                case "type" -> desk.type(event.get(1), event.get(2));
                case "check" -> here.addAll(List.of(desk.check(keyText, placesShown, event.get(1), day)));
                case "aside" -> here.addAll(List.of(desk.aside()));
                case "hint" -> here.addAll(List.of(desk.hint(keyText, placesShown)));
                default -> desk.go(event.get(1), event.get(2), day, i);
            }
        }
        here.addAll(List.of(desk.map(20_008)));
        here.addAll(List.of(desk.now()));
        here.addAll(List.of(desk.mistakes()));
        here.add(desk.stored());
        ChromeDriver browser = Chromium.fresh();
        browser.get(Chromium.pageOf(speaking(Languages.ENGLISH, DecimalMarker.POINT), folder)
                .toUri()
                .toString());
        assertEquals(here, browser.executeScript("""
          const [course, key, places, events] = arguments;
          const told = [];
          practiceStart(course, '', ['tab', ''], 20000, 0);
          events.forEach(([kind, first, second], i) => {
            const day = 20000 + Math.floor(i / 50);
            if (kind === 'type') {
              practiceType(first, second);
            } else if (kind === 'check') {
              told.push(...practiceCheck(key, places, first, day));
            } else if (kind === 'aside') {
              told.push(...practiceAside());
            } else if (kind === 'hint') {
              told.push(...practiceHint(key, places));
            } else {
              practiceGo(first, second, day, i);
            }
          });
          told.push(...practiceMap(20008), ...practiceNow(), ...practiceMistakes(), practiceStored());
          return told""", course, keyText, places, events));
        assertTrue(
                here.size() > 500
                        && desk.stored().contains("slip ")
                        && desk.stored().contains("ended "),
                desk.stored());
    }

    private static List<String> byTurns(Map<String, String> typed) {
        List<String> turns = new ArrayList<>();
        typed.forEach((question, answer) -> {
            turns.add(question);
            turns.add(answer);
        });
        return turns;
    }

    /** Every rung's answers for some draws of every template, then right answers in random spellings to fill up. */
    /** Drawn once for all tests. */
    private static List<Asked> questions() {
        if (drawn.isEmpty()) {
            drawn = drawQuestions();
        }
        return drawn;
    }

    private static List<Asked> drawQuestions() {
        TemplateFiles files = TemplateFiles.builtIn();
        Map<String, List<ProblemKey>> keys = new TreeMap<>();
        for (String name : files.names()) {
            Draws draws = new Draws(new Workshop(TemplateReader.read(files, name)), "parity");
            int turn = keys.size();
            keys.put(
                    name,
                    IntStream.range(0, DRAWS)
                            .mapToObj(k -> AnswerKeys.keyOf(draws.draw(k), "q1", (turn + k) % 2 == 0))
                            .toList());
        }
        Random random = new Random(SEED);
        Spellings spellings = new Spellings(random);
        List<Asked> asked = new ArrayList<>();
        int turn = 0;
        for (List<ProblemKey> ofTemplate : keys.values()) {
            for (ProblemKey key : ofTemplate) {
                List<Map<String, String>> typed = new ArrayList<>();
                for (LadderProbe probe : LadderProbe.of(key)) {
                    if (DEEP || turn++ % 3 == 0) {
                        typed.add(probe.typed());
                    }
                }
                for (int spelled = 0; spelled < 1 + ANSWERS / keys.size() / DRAWS / 2; spelled++) {
                    Map<String, String> answers = new LinkedHashMap<>();
                    for (AnswerKey answer : key.answers()) {
                        if (!(answer.acceptance() instanceof Acceptance.Choice)) {
                            double value =
                                    answer.expected() * (random.nextInt(3) == 0 ? 0.9 + random.nextDouble() / 5 : 1);
                            answers.put(
                                    answer.question(),
                                    spellings.of(value, answer.unit(), 2 + random.nextInt(5), answer.unitPrinted()));
                        }
                    }
                    typed.add(answers);
                }
                asked.add(new Asked(key, typed));
            }
        }
        return asked;
    }
}
