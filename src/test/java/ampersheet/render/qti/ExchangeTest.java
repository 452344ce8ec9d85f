package ampersheet.render.qti;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.UsualSlips;
import ampersheet.answer.Verdict;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;

class ExchangeTest {
    private static final Plan PLAN = PlanReader.read(
            "plan.yaml",
            "title: Lanterns\nunits: printed\nproblems:\n  - {template: current-limiting/one-indicator}\n");
    private static final List<ExchangeItem> ITEMS = items();
    private static final ExchangePackage PACKED = packed(ITEMS);

    /** One variant of each template that can be packed, and two of one of them. */
    private static List<ExchangeItem> items() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        List<ExchangeItem> items = new ArrayList<>();
        for (String name : library.names()) {
            ProblemTemplate template = library.template(name);
            if (!template.designs().isEmpty()) {
                continue;
            }
            Draws draws = new Draws(new Workshop(template), "exchange test");
            for (int variant = 0; variant < (name.equals("current-limiting/one-indicator") ? 2 : 1); variant++) {
                SheetProblem bare = new SheetProblem(0, new Support.Bare(), false, PLAN, draws.draw(variant));
                items.add(new ExchangeItem(
                        name.replace('/', '-') + "-" + variant,
                        "en",
                        Composer.onItsOwn(bare),
                        bare.key(),
                        Composer.working(bare)));
            }
        }
        return items;
    }

    private static ExchangePackage packed(List<ExchangeItem> items) {
        return ExchangePackage.of(
                "lanterns",
                "Lanterns & <tiles>",
                "en",
                List.of(new ExchangePackage.Pool("everything", Math.min(3, items.size()), items)));
    }

    // Scored as the engine

    @Test
    void everyPackagedAnswerIsScoredAsTheEngineJudgesIt() throws Exception {
        int compared = 0;
        Map<String, Integer> rungs = new TreeMap<>();
        List<String> differences = new ArrayList<>();
        for (ExchangeItem item : ITEMS) {
            ItemInterpreter interpreter =
                    new ItemInterpreter(ItemMarkup.write(item).xml());
            for (int i = 0; i < item.key().answers().size(); i++) {
                AnswerKey key = item.key().answers().get(i);
                ProblemKey alone = new ProblemKey(
                        List.of(key), item.key().givens(), item.key().working(), List.of());
                for (String typed : probes(alone, key)) {
                    Verdict verdict =
                            Judge.judge(alone, Map.of(key.question(), typed)).get(0);
                    String expected = expected(key, verdict);
                    String response = "RESPONSE_" + ExchangeItem.letter(i);
                    Map<String, Object> scored =
                            interpreter.score(typed.isEmpty() ? Map.of() : Map.of(response, response(key, typed)));
                    String found = scored.get("FEEDBACK_" + ExchangeItem.letter(i)) + " " + scored.get("SCORE");
                    compared++;
                    rungs.merge(verdict.rung().name(), 1, Integer::sum);
                    if (!found.equals(expected)) {
                        differences.add(item.identifier() + " " + key.question() + " “" + typed + "”: engine "
                                + expected + ", package " + found);
                    }
                }
            }
        }
        assertEquals(List.of(), differences.stream().limit(20).toList(), differences.size() + " of " + compared);
        assertTrue(compared >= 5_000, compared + " answers");
        for (Rung rung : List.of(
                Rung.BLANK,
                Rung.CORRECT,
                Rung.TOO_COARSE,
                Rung.POWER_OF_TEN,
                Rung.SIGN,
                Rung.RECIPROCAL,
                Rung.KNOWN_MISTAKE,
                Rung.OTHER_QUANTITY,
                Rung.NEAR_MISS,
                Rung.UNEXPLAINED)) {
            assertTrue(rungs.getOrDefault(rung.name(), 0) >= 20, rung + " is hardly tried: " + rungs);
        }
    }

    private static String response(AnswerKey key, String typed) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return "OPTION_"
                    + (choice.options().stream()
                                    .map(Acceptance.Option::text)
                                    .toList()
                                    .indexOf(typed)
                            + 1);
        }
        return typed;
    }

    private static String expected(AnswerKey key, Verdict verdict) {
        double credit = verdict.isRight() ? 1 : verdict.rung() == Rung.TOO_COARSE ? ScoringRules.HALF_CREDIT : 0;
        if (verdict.rung() != Rung.KNOWN_MISTAKE) {
            return verdict.rung().name() + " " + credit;
        }
        String id = verdict.mistake().orElseThrow();
        if (key.acceptance() instanceof Acceptance.Choice) {
            return "OPTION_" + (Integer.parseInt(id.substring("option-".length())) + 1) + " " + credit;
        }
        List<String> ids = key.mistakes().stream().map(KnownMistake::id).toList();
        return ScoringRules.mistake(ids.indexOf(id)) + " " + credit;
    }

    /** Ends of every band, a little inside and outside of them, and what every rung is made for. */
    private static Set<String> probes(ProblemKey problem, AnswerKey key) {
        Set<String> probes = new LinkedHashSet<>(List.of(""));
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            choice.options().forEach(option -> probes.add(option.text()));
            return probes;
        }
        double k = key.unit().fromSi(key.expected());
        List<Double> centres = new ArrayList<>(List.of(
                k, -k, k * 1.37, k / 7.7, k * 1e3, k / 1e3, k * 10, k / 10, k * 1e6, k / 1e9, 0.98 * k, 1.02 * k));
        if (k != 0) {
            centres.add(1 / k);
            centres.add(1 / (k * key.unit().factor() * key.unit().factor()));
        }
        key.mistakes().forEach(mistake -> centres.add(key.unit().fromSi(mistake.value())));
        UsualSlips.of(problem, key).forEach(slip -> centres.add(key.unit().fromSi(slip.value())));
        centres.add(1.04 * k);
        if (key.isShare()) {
            List.copyOf(centres).forEach(centre -> centres.add(centre / 100));
        }
        for (double centre : centres) {
            double band =
                    key.acceptance().band(key.unit().toSi(centre)) / key.unit().factor();
            for (double part : new double[] {0, 0.5, 1}) {
                for (double nudge : new double[] {0, -1e-6, 1e-6, -1e-3, 1e-3}) {
                    add(probes, centre + band * part * (1 + nudge));
                    add(probes, centre - band * part * (1 + nudge));
                }
            }
        }
        for (int figures = 1; figures <= key.figures(); figures++) {
            add(probes, new BigDecimal(k).round(new MathContext(figures)).doubleValue());
        }
        add(probes, 0);
        return probes;
    }

    private static void add(Set<String> probes, double value) {
        if (Double.isFinite(value)) {
            BigDecimal typed = new BigDecimal(value).round(new MathContext(11));
            boolean plain = value == 0 || Math.abs(value) >= 1e-5 && Math.abs(value) < 1e12;
            probes.add(plain ? typed.toPlainString() : typed.toString());
        }
    }

    @Test
    void theWorkingIsShownOnceNothingIsLeftOpen() throws Exception {
        ExchangeItem item = ITEMS.stream()
                .filter(one -> one.identifier().startsWith("current-limiting-one-indicator"))
                .findFirst()
                .orElseThrow();
        ItemInterpreter interpreter = new ItemInterpreter(ItemMarkup.write(item).xml());
        assertEquals(null, interpreter.score(Map.of("RESPONSE_A", "1")).get("SOLUTION"));
        assertEquals(
                "SHOWN",
                interpreter
                        .score(Map.of("RESPONSE_A", "1", "RESPONSE_B", "2", "RESPONSE_C", "3"))
                        .get("SOLUTION"));
    }

    // Packaging

    @Test
    void thePackageIsTheSameEveryTimeAndFitsItsProfile() throws Exception {
        ByteArrayOutputStream one = new ByteArrayOutputStream();
        ByteArrayOutputStream other = new ByteArrayOutputStream();
        PACKED.write(one);
        java.util.TimeZone zone = java.util.TimeZone.getDefault();
        try {
            java.util.TimeZone.setDefault(java.util.TimeZone.getTimeZone("Pacific/Auckland"));
            packed(items()).write(other);
        } finally {
            java.util.TimeZone.setDefault(zone);
        }
        assertArrayEquals(one.toByteArray(), other.toByteArray());
        assertEquals(List.of(), ExchangeProfile.faults(PACKED.files()));
    }

    @Test
    void everyFigureHasItsFileAndItsDescription() {
        ExchangePackage made = PACKED;
        made.files().forEach((path, text) -> {
            if (path.startsWith("items/")) {
                java.util.regex.Matcher image = java.util.regex.Pattern.compile(
                                "<img src=\"\\.\\./([^\"]+)\" alt=\"([^\"]+)\"")
                        .matcher(text);
                while (image.find()) {
                    assertTrue(made.files().containsKey(image.group(1)), image.group(1));
                    assertTrue(image.group(2).length() > 20, image.group(2));
                    assertTrue(made.files().get("imsmanifest.xml").contains("href=\"" + image.group(1) + "\""));
                }
            }
        });
    }

    @Test
    void theRoundedComparisonAndTheRelativeToleranceAreNeverUsed() {
        PACKED.files().forEach((path, text) -> {
            assertTrue(!text.contains("equal-rounded") && !text.contains("\"relative\""), path);
        });
    }

    /**
     * With {@code -Dampersheet.qtiSchema=FILE} naming the format's own schema of items and tests
     * (imsqti_asiv3p0_v1p0.xsd), every item and the test are validated by it as well.
     */
    @Test
    void theFormatsOwnSchemaIsAskedWhereOneIsAtHand() throws Exception {
        Map<String, String> files = PACKED.files();
        String official = System.getProperty("ampersheet.qtiSchema", "");
        int validated = 0;
        if (!official.isEmpty()) {
            var schema = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                    .newSchema(Path.of(official).toFile());
            for (Map.Entry<String, String> file : files.entrySet()) {
                if (file.getKey().startsWith("items/") || file.getKey().equals("test.xml")) {
                    schema.newValidator().validate(new StreamSource(new StringReader(file.getValue()), file.getKey()));
                    validated++;
                }
            }
        }
        assertEquals(official.isEmpty() ? 0 : ITEMS.size() + 1, validated);
    }

    // Mutated and refused

    /** @param file whose first occurrence of {@code from} becomes {@code to} */
    private record Mutation(String what, String file, String from, String to) {}

    private static List<Mutation> mutations(String item) {
        return List.of(
                new Mutation(
                        "a relative tolerance", item, "tolerance-mode=\"absolute\"", "tolerance-mode=\"relative\""),
                new Mutation("no tolerance", item, " tolerance=\"", " rounding=\""),
                new Mutation("one tolerance only", item, "tolerance=\"", "tolerance=\"1\" x=\""),
                new Mutation("a negative tolerance", item, "tolerance=\"", "tolerance=\"-"),
                new Mutation(
                        "the response first",
                        item,
                        "<qti-correct identifier=\"RESPONSE_A\"/><qti-variable identifier=\"RESPONSE_A\"/>",
                        "<qti-variable identifier=\"RESPONSE_A\"/><qti-correct identifier=\"RESPONSE_A\"/>"),
                new Mutation(
                        "a rounded comparison", item, "<qti-equal tolerance-mode", "<qti-equal-rounded tolerance-mode"),
                new Mutation(
                        "nothing typed is not looked at first",
                        item,
                        "<qti-is-null><qti-variable identifier=\"RESPONSE_A\"/></qti-is-null>",
                        ""),
                new Mutation(
                        "an undeclared response",
                        item,
                        "<qti-variable identifier=\"RESPONSE_A\"",
                        "<qti-variable identifier=\"RESPONSE_Z\""),
                new Mutation(
                        "a place for no response",
                        item,
                        "response-identifier=\"RESPONSE_A\"",
                        "response-identifier=\"RESPONSE_Z\""),
                new Mutation(
                        "two places for one response",
                        item,
                        "response-identifier=\"RESPONSE_B\"",
                        "response-identifier=\"RESPONSE_A\""),
                new Mutation(
                        "two declarations of one response",
                        item,
                        "identifier=\"RESPONSE_B\" cardinality",
                        "identifier=\"RESPONSE_A\" cardinality"),
                new Mutation("a decimal comma", item, "<qti-value>", "<qti-value>4,7"),
                new Mutation(
                        "another type of response",
                        item,
                        "base-type=\"float\"><qti-correct-response>",
                        "base-type=\"string\"><qti-correct-response>"),
                new Mutation("several values", item, "cardinality=\"single\"", "cardinality=\"multiple\""),
                new Mutation("an adaptive item", item, "adaptive=\"false\"", "adaptive=\"true\""),
                new Mutation("no language", item, " xml:lang=\"en\"", ""),
                new Mutation(
                        "another namespace", item, ItemMarkup.NAMESPACE, "http://www.imsglobal.org/xsd/imsqti_v2p2"),
                new Mutation("a figure without a description", item, " alt=\"", " title=\""),
                new Mutation("a figure from elsewhere", item, "src=\"../figures/", "src=\"https://example.org/"),
                new Mutation("a script", item, "<qti-item-body>", "<qti-item-body><script>1</script>"),
                new Mutation("a handler", item, "<p>Type", "<p onclick=\"x()\">Type"),
                new Mutation("a formula element that is not of the core", item, "<mrow>", "<mrow><mfenced/>"),
                new Mutation("a fraction of three parts", item, "<mfrac>", "<mfrac><mn>1</mn>"),
                new Mutation(
                        "feedback for no outcome",
                        item,
                        "outcome-identifier=\"FEEDBACK_A\"",
                        "outcome-identifier=\"FEEDBACK_Z\""),
                new Mutation(
                        "feedback without content",
                        item,
                        "<qti-content-body><p>No answer yet.</p></qti-content-body>",
                        ""),
                new Mutation(
                        "two feedbacks for one verdict",
                        item,
                        "identifier=\"CORRECT\" show-hide",
                        "identifier=\"BLANK\" show-hide"),
                new Mutation(
                        "no version in the manifest", "imsmanifest.xml", "<schemaversion>3.0.0</schemaversion>", ""),
                new Mutation("another version in the manifest", "imsmanifest.xml", "3.0.0", "2.2"),
                new Mutation("a path out of the package", "imsmanifest.xml", "href=\"items/", "href=\"../items/"),
                new Mutation("an unknown kind of resource", "imsmanifest.xml", "imsqti_item_xmlv3p0", "webcontent"),
                new Mutation("a dependency on nothing", "imsmanifest.xml", "identifierref=\"", "identifierref=\"x"),
                new Mutation("a pool that selects nothing", "test.xml", "select=\"3\"", "select=\"0\""),
                new Mutation(
                        "an item twice in the test",
                        "test.xml",
                        "identifier=\"current-limiting-one-indicator-1\"",
                        "identifier=\"current-limiting-one-indicator-0\""));
    }

    @Test
    void mutatedPackagesAreRefusedByTheProfile() {
        Map<String, String> sound = PACKED.files();
        String item = "items/current-limiting-one-indicator-0.xml";
        List<Mutation> mutations = mutations(item);
        assertTrue(mutations.size() >= 20);
        for (Mutation mutation : mutations) {
            String before = sound.get(mutation.file());
            assertTrue(before.contains(mutation.from()), mutation.what() + ": there is nothing to change");
            int at = before.indexOf(mutation.from());
            String after = before.substring(0, at)
                    + mutation.to()
                    + before.substring(at + mutation.from().length());
            List<String> faults = ExchangeProfile.faults(Map.of(mutation.file(), after));
            assertTrue(!faults.isEmpty(), mutation.what() + " was not refused");
        }
    }
}
