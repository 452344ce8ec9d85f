package ampersheet.render.qti;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ExchangeTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final int EVERY = 7;
    private static final String ITEM = "current-limiting-one-indicator-0";
    private static final List<ExchangeItem> ITEMS = items();
    private static final Map<QtiVersion, ExchangePackage> PACKED =
            Map.of(QtiVersion.V3_0, packed(QtiVersion.V3_0), QtiVersion.V2_1, packed(QtiVersion.V2_1));

    /**
     * Of templates here and there, in the long run of all, bare and faded in turn; of one of them two, and one after a
     * worked example.
     */
    private static List<ExchangeItem> items() {
        List<ExchangeItem> items = new ArrayList<>();
        boolean faded = false;
        List<String> names = PackagedItems.LIBRARY.names();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            boolean several = name.equals("current-limiting/one-indicator");
            if (!DEEP && !several && i % EVERY != 0) {
                continue;
            }
            items.addAll(
                    faded && !several ? PackagedItems.faded(name, 0, 1) : PackagedItems.bare(name, 0, several ? 2 : 1));
            faded = !faded;
        }
        items.add(afterExample());
        return items;
    }

    private static ExchangeItem afterExample() {
        Plan plan = PlanReader.read(
                "plan.yaml",
                "title: Lanterns\nunits: printed\nproblems:\n  - {template: voltage-dividers/loaded-divider}\n");
        Draws draws = new Draws(
                new Workshop(PackagedItems.LIBRARY.template("voltage-dividers/loaded-divider")), "after an example");
        SheetProblem example = new SheetProblem(0, new Support.Full(), true, plan, draws.draw(0));
        return PackagedItems.item(
                "after-an-example",
                new SheetProblem(0, new Support.Bare(), false, plan, draws.draw(1)),
                Optional.of(Composer.onItsOwn(example)));
    }

    private static ExchangePackage packed(QtiVersion version) {
        return ExchangePackage.of(
                new ExchangePackage.Contents(
                        "lanterns",
                        "Lanterns & <tiles>",
                        new ExchangeSession(3, true),
                        List.of(new ExchangePackage.Pool("everything", Math.min(3, ITEMS.size()), ITEMS))),
                version);
    }

    private static String text(QtiVersion version, String file) {
        return PACKED.get(version).files().get(file);
    }

    // What is shown when

    private static ItemInterpreter indicator(ExchangeSession session, QtiVersion version) throws Exception {
        ExchangeItem item =
                PackagedItems.bare("current-limiting/one-indicator", 0, 1).get(0);
        return new ItemInterpreter(
                ItemWriter.write(ItemScoring.model(item, session), version).xml());
    }

    @Test
    void withOneAttemptTheWorkingIsShownOnceNothingIsLeftOpen() throws Exception {
        ItemInterpreter once = indicator(new ExchangeSession(1, true), QtiVersion.V3_0);
        assertEquals(null, once.score(Map.of("RESPONSE_A", "1")).get("SOLUTION"));
        assertEquals(
                "SHOWN",
                once.score(Map.of("RESPONSE_A", "1", "RESPONSE_B", "2", "RESPONSE_C", "3"))
                        .get("SOLUTION"));
    }

    @Test
    void withSeveralAttemptsTheWorkingWaitsUntilAllIsRightOrTheLastIsUsed() throws Exception {
        ExchangeItem item =
                PackagedItems.bare("current-limiting/one-indicator", 0, 1).get(0);
        Map<String, String> right = new java.util.TreeMap<>();
        ItemScoring.model(item, new ExchangeSession(3, true))
                .places()
                .forEach(place -> right.put(place.response(), place.correct()));
        Map<String, String> wrong = Map.of("RESPONSE_A", "1", "RESPONSE_B", "2", "RESPONSE_C", "3");
        for (QtiVersion version : QtiVersion.values()) {
            ItemInterpreter thrice = indicator(new ExchangeSession(3, true), version);
            assertEquals(null, thrice.score(wrong, 2).get("SOLUTION"));
            assertEquals("SHOWN", thrice.score(wrong, 3).get("SOLUTION"));
            assertEquals("SHOWN", thrice.score(right, 1).get("SOLUTION"));
            ItemInterpreter forEver = indicator(new ExchangeSession(0, true), version);
            assertEquals(null, forEver.score(wrong, 50).get("SOLUTION"));
            assertEquals("SHOWN", forEver.score(right, 1).get("SOLUTION"));
        }
    }

    // Packaging

    @Test
    void thePackageIsTheSameEveryTimeAndFitsItsProfile() throws Exception {
        for (QtiVersion version : QtiVersion.values()) {
            ByteArrayOutputStream one = new ByteArrayOutputStream();
            ByteArrayOutputStream other = new ByteArrayOutputStream();
            PACKED.get(version).write(one);
            java.util.TimeZone zone = java.util.TimeZone.getDefault();
            try {
                java.util.TimeZone.setDefault(java.util.TimeZone.getTimeZone("Pacific/Auckland"));
                packed(version).write(other);
            } finally {
                java.util.TimeZone.setDefault(zone);
            }
            assertArrayEquals(one.toByteArray(), other.toByteArray());
            assertEquals(
                    List.of(),
                    ExchangeProfile.of(version).faults(PACKED.get(version).files()));
        }
    }

    @Test
    void bothVersionsSayTheSame() {
        PACKED.get(QtiVersion.V3_0).files().forEach((path, newer) -> {
            if (path.startsWith("items/")) {
                String plain = newer.replaceAll("</?qti-content-body>", "")
                        .replaceAll(" data-patternmask-message=\"[^\"]*\"", "")
                        .replace("aria-label", "label")
                        .replace("qti-visually-hidden", "visually-hidden");
                String[] renamed = named(QtiVersion.V2_1, plain).split("\n", 3);
                String[] older = text(QtiVersion.V2_1, path).split("\n", 3);
                assertEquals(renamed[2], older[2], path);
            }
        });
    }

    @Test
    void everyFigureHasItsFileAndItsDescription() {
        ExchangePackage made = PACKED.get(QtiVersion.V3_0);
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

    @ParameterizedTest
    @EnumSource
    void responsesAreComparedWithPlainNumbersOnly(QtiVersion version) {
        PACKED.get(version).files().forEach((path, text) -> {
            if (path.startsWith("items/") || path.equals("test.xml")) {
                assertTrue(!text.matches("(?s).*<(qti-)?(equal|divide|correct )[^>]*>.*"), path);
                assertTrue(!text.contains("tolerance="), path);
                assertTrue(!text.matches("(?s).*>-?[0-9.]+[eE][+-]?[0-9]+<.*"), path);
            }
        });
    }

    @Test
    void everyBoxHasANameAndEveryHeadOfATableItsScope() {
        for (QtiVersion version : QtiVersion.values()) {
            String item = text(version, "items/" + ITEM + ".xml");
            assertTrue(
                    item.contains(
                            version == QtiVersion.V3_0
                                    ? "aria-label=\"What resistance gives exactly "
                                    : "label=\"What resistance gives exactly "),
                    item);
            assertTrue(item.contains("(Ω)\""), item);
            assertTrue(item.contains("<th scope=\"col\">Component</th>"), item);
            assertTrue(item.contains("<tr><th scope=\"row\">R1 (resistor)</th>"), item);
        }
    }

    @Test
    void aStylesheetKeepsFiguresWithinANarrowPageAndLinesOfWorkingCanBreak() {
        for (QtiVersion version : QtiVersion.values()) {
            assertTrue(text(version, "styles/items.css").contains("img { max-width: 100%"));
            String item = text(version, "items/" + ITEM + ".xml");
            assertTrue(item.contains("href=\"../styles/items.css\""), item);
            assertTrue(
                    item.contains("</math> <math xmlns=\"http://www.w3.org/1998/Math/MathML\"><mrow><mo>=</mo>"), item);
            assertTrue(text(version, "imsmanifest.xml").contains("href=\"styles/items.css\""));
        }
    }

    @Test
    void theMostAndTheSchemasPlaceAreSaid() {
        String item = text(QtiVersion.V3_0, "items/" + ITEM + ".xml");
        assertTrue(
                item.contains(
                        "identifier=\"SCORE\" cardinality=\"single\" base-type=\"float\" " + "normal-maximum=\"3\""),
                item);
        assertTrue(item.contains("normal-minimum=\"0\"><qti-default-value><qti-value>3</qti-value>"), item);
        PACKED.forEach((version, made) -> made.files().forEach((path, text) -> {
            if (path.endsWith(".xml")) {
                assertTrue(text.contains("xsi:schemaLocation=\"http"), path);
            }
        }));
    }

    @Test
    void theManifestTellsSkillLevelAndRulesOfEachItem() {
        for (QtiVersion version : QtiVersion.values()) {
            String manifest = text(version, "imsmanifest.xml");
            for (String said : List.of(
                    "<lom:string language=\"en\">series resistor for an indicator</lom:string>",
                    "<lom:value>competency</lom:value>",
                    "<lom:string language=\"en\">level 1</lom:string>",
                    "<lom:value>skill level</lom:value>",
                    "<lom:string language=\"en\">Ohm&apos;s law</lom:string>".replace("&apos;", "'"))) {
                assertTrue(manifest.contains(said), said);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void aProblemOfTheFirstEveningIsVeryEasyInTheManifest(QtiVersion version) {
        List<ExchangeItem> items = PackagedItems.bare("current-limiting/first-current", 0, 1);
        String manifest = ExchangePackage.of(
                        new ExchangePackage.Contents(
                                "first",
                                "First evening",
                                new ExchangeSession(3, true),
                                List.of(new ExchangePackage.Pool("everything", 1, items))),
                        version)
                .files()
                .get("imsmanifest.xml");
        assertTrue(manifest.contains("<lom:value>very easy</lom:value>"), manifest);
        assertTrue(manifest.contains("level 0"), manifest);
    }

    @Test
    void feedbackIsShownAndAttemptsAreAsTheInstructorSays() {
        assertTrue(text(QtiVersion.V3_0, "test.xml").contains("max-attempts=\"3\" show-feedback=\"true\""));
        assertTrue(text(QtiVersion.V2_1, "test.xml").contains("maxAttempts=\"3\" showFeedback=\"true\""));
    }

    @Test
    void aWorkedExampleStandsBeforeItsTwinAndBlankStepsAmongTheWorking() {
        String twin = text(QtiVersion.V3_0, "items/after-an-example.xml");
        assertTrue(twin.indexOf("Worked example: ") < twin.indexOf("Your turn"), twin);
        assertTrue(twin.indexOf("Your turn") < twin.indexOf("qti-text-entry-interaction"), twin);
        String faded = PACKED.get(QtiVersion.V3_0).files().entrySet().stream()
                .filter(file ->
                        file.getKey().contains("-faded-") && file.getKey().endsWith(".xml"))
                .findFirst()
                .orElseThrow()
                .getValue();
        assertTrue(faded.contains("Fill in the blank steps"), faded);
        assertTrue(faded.indexOf("Fill in the blank steps") < faded.indexOf("qti-text-entry-interaction"), faded);
    }

    @Test
    void whatARightAnswerCountsIsThePlans() throws Exception {
        ExchangeItem usual = ITEMS.stream()
                .filter(item -> item.identifier().equals(ITEM))
                .findFirst()
                .orElseThrow();
        ExchangeItem.Asked asked = usual.asked();
        ExchangeItem weighed = new ExchangeItem(
                ITEM,
                usual.about(),
                usual.shown(),
                new ExchangeItem.Asked(asked.places(), asked.key(), List.of(200, 50, 100), 25, List.of()));
        ItemModel model = ItemScoring.model(weighed, new ExchangeSession(1, true));
        ItemInterpreter interpreter =
                new ItemInterpreter(ItemWriter.write(model, QtiVersion.V3_0).xml());
        assertEquals(3.5, interpreter.score(Map.of()).get("MAXSCORE"));
        Map<String, String> right = new java.util.TreeMap<>();
        model.places().forEach(place -> right.put(place.response(), place.correct()));
        assertEquals(3.5, interpreter.score(right).get("SCORE"));
        double coarse = ampersheet.quantity.SignificantFigures.round(
                asked.places().get(0).unit().fromSi(asked.places().get(0).expected()), 1);
        Map<String, Object> scored = interpreter.score(Map.of("RESPONSE_A", Double.toString(coarse)));
        if ("TOO_COARSE".equals(scored.get("FEEDBACK_A"))) {
            assertEquals(0.5, scored.get("SCORE"));
        }
    }

    /**
     * With {@code -Dampersheet.qtiSchemas=FOLDER} naming a folder with the format's own schemas, laid out as they are
     * published, every file of both versions is validated by them as well.
     */
    @Test
    void theFormatsOwnSchemasAreAskedWhereTheyAreAtHand() throws Exception {
        String official = System.getProperty("ampersheet.qtiSchemas", "");
        if (official.isEmpty()) {
            return;
        }
        SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
        Path folder = Path.of(official);
        Map<QtiVersion, List<String>> schemas = Map.of(
                QtiVersion.V3_0,
                List.of(
                        "qtiv3p0/imsqtiv3p0_imscpv1p2_v1p0.xsd",
                        "qtiv3p0/imsqti_asiv3p0_v1p0.xsd",
                        "qtiv3p0/imsqti_asiv3p0_sbacv1p0_v1p0.xsd"),
                QtiVersion.V2_1,
                List.of("imscp_v1p1.xsd", "qtiv2p1/imsqti_v2p1p1.xsd"));
        for (Map.Entry<QtiVersion, List<String>> of : schemas.entrySet()) {
            Schema manifest =
                    factory.newSchema(folder.resolve(of.getValue().get(0)).toFile());
            Schema items = factory.newSchema(of.getValue().stream()
                    .skip(1)
                    .map(name -> folder.resolve(name).toFile())
                    .filter(java.io.File::exists)
                    .findFirst()
                    .orElseThrow());
            for (Map.Entry<String, String> file :
                    PACKED.get(of.getKey()).files().entrySet()) {
                if (file.getKey().endsWith(".xml")) {
                    Schema schema = file.getKey().equals("imsmanifest.xml") ? manifest : items;
                    schema.newValidator().validate(new StreamSource(new StringReader(file.getValue()), file.getKey()));
                }
            }
        }
    }

    // Mutated and refused

    /** @param file whose first occurrence of {@code from} becomes {@code to}; both in the words of 3.0 */
    private record Mutation(String what, String file, String from, String to) {}

    /** In the words of a version, by the rule that the format itself tells. */
    private static String named(QtiVersion version, String text) {
        if (version == QtiVersion.V3_0) {
            return text;
        }
        String elements = java.util.regex.Pattern.compile("qti-([a-z-]+)")
                .matcher(text)
                .replaceAll(name -> camelCase(name.group(1)));
        return java.util.regex.Pattern.compile("(?<![a-z-])([a-z]+-[a-z-]+)(?==\")")
                .matcher(elements)
                .replaceAll(name -> camelCase(name.group(1)));
    }

    private static String camelCase(String name) {
        return java.util.regex.Pattern.compile("-([a-z])")
                .matcher(name)
                .replaceAll(letter -> letter.group(1).toUpperCase(java.util.Locale.ROOT));
    }

    private static List<Mutation> mutations(String item) {
        return List.of(
                new Mutation("another comparison", item, "<qti-gte>", "<qti-gt>"),
                new Mutation("an end missing", item, "<qti-lte>", "<qti-gte>"),
                new Mutation(
                        "the number first",
                        item,
                        "<qti-gte><qti-variable identifier=\"RESPONSE_A\"/>",
                        "<qti-gte><qti-base-value base-type=\"float\">1</qti-base-value>"),
                new Mutation("a power of ten", item, "</qti-base-value></qti-gte>", "E3</qti-base-value></qti-gte>"),
                new Mutation("a box without a name", item, " aria-label=\"", " placeholder-text=\""),
                new Mutation("a head without scope", item, "<th scope=\"col\">", "<th>"),
                new Mutation("no stylesheet", item, "<qti-stylesheet href", "<qti-styles href"),
                new Mutation("no session control", "test.xml", "qti-item-session-control", "qti-session"),
                new Mutation("feedback not told", "test.xml", " show-feedback=\"true\"", ""),
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
                new Mutation("another namespace", item, "xmlns=\"http", "xmlns=\"https"),
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
                new Mutation("feedback without content", item, "<p>No answer yet.</p>", ""),
                new Mutation(
                        "two feedbacks for one verdict",
                        item,
                        "identifier=\"CORRECT\" show-hide=\"",
                        "identifier=\"BLANK\" show-hide=\""),
                new Mutation("no version in the manifest", "imsmanifest.xml", "schemaversion>", "schemavers>"),
                new Mutation(
                        "another version in the manifest", "imsmanifest.xml", "<schemaversion>", "<schemaversion>9"),
                new Mutation("a path out of the package", "imsmanifest.xml", "href=\"items/", "href=\"../items/"),
                new Mutation("an unknown kind of resource", "imsmanifest.xml", "type=\"imsqti_item", "type=\"item"),
                new Mutation("a dependency on nothing", "imsmanifest.xml", "identifierref=\"", "identifierref=\"x"),
                new Mutation("a pool that selects nothing", "test.xml", "select=\"3\"", "select=\"0\""),
                new Mutation(
                        "an item twice in the test",
                        "test.xml",
                        "identifier=\"current-limiting-one-indicator-1\"",
                        "identifier=\"current-limiting-one-indicator-0\""));
    }

    @ParameterizedTest
    @EnumSource
    void mutatedPackagesAreRefusedByTheProfile(QtiVersion version) {
        Map<String, String> sound = PACKED.get(version).files();
        ExchangeProfile profile = ExchangeProfile.of(version);
        List<Mutation> mutations = mutations("items/" + ITEM + ".xml");
        assertTrue(mutations.size() >= 20);
        for (Mutation mutation : mutations) {
            String before = sound.get(mutation.file());
            String from = version == QtiVersion.V2_1
                    ? named(version, mutation.from().replace("aria-label", "label"))
                    : mutation.from();
            assertTrue(before.contains(from), mutation.what() + ": there is nothing to change");
            int at = before.indexOf(from);
            String after =
                    before.substring(0, at) + named(version, mutation.to()) + before.substring(at + from.length());
            List<String> faults = profile.faults(Map.of(mutation.file(), after));
            assertTrue(!faults.isEmpty(), mutation.what() + " was not refused");
        }
    }
}
