package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.language.Language;
import ampersheet.source.Faults;
import ampersheet.source.Languages;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Reads every sentence of the second language, of the program and of all templates: nothing of the first is left in it,
 * it has the same numbers with the same units, the same marks at its end, and its forms for one and for more.
 */
class GermanTest {
    private static final Language GERMAN = Languages.of("de").orElseThrow();
    private static final TemplateFiles BUILT_IN = TemplateFiles.builtIn();

    /** Words that stand in nearly every English sentence, and in no German one. */
    private static final Pattern ENGLISH = Pattern.compile(
            "(?<![\\p{L}{])(the|and|of|with|which|that|this|your|you|are|from|each|where|what|there|is|not|for|by|as|than)(?![\\p{L}}])");

    /** A number and the unit behind it, however the two are set apart. */
    private static final Pattern AMOUNT = Pattern.compile(
            "(?<![\\w.,])(\\d+(?:[.,]\\d+)*)(?:[ \\u00a0-]?(mV|kV|V|mA|µA|A|kΩ|MΩ|mΩ|Ω|mW|W|°C|K|%|mm²|mm|cm|ms|µs|ns|s|kHz|MHz|Hz|kbit|bit|µF|nF|mF|F|AWG))?(?![\\p{L}])");

    private static final int LARGEST_IN_WORDS = 12;

    /** Of a mistake, in the column of a table. */
    private static final int LONGEST_NAME = 50;

    @Test
    void noSentenceOfTheProgramHasEnglishInIt() {
        List<String> left = new ArrayList<>();
        for (String key : GERMAN.keys()) {
            String said = bare(GERMAN, key);
            if (ENGLISH.matcher(said.replaceAll("`[^`]*`", "")).find()) {
                left.add(key + ": " + said);
            }
        }
        assertEquals(List.of(), left);
    }

    @Test
    void everySentenceOfTheProgramHasTheNumbersAndTheLastMarkOfItsEnglish() {
        List<String> other = new ArrayList<>();
        for (String key : GERMAN.keys()) {
            if (!Languages.ENGLISH.has(key)) {
                continue;
            }
            String english = bare(Languages.ENGLISH, key);
            String german = bare(GERMAN, key);
            boolean isRead = key.startsWith("spoken.");
            if (!isRead) {
                compare(key, english, german, other);
            }
            char last = english.charAt(english.length() - 1);
            if (!key.startsWith("number.") && ".?:!".indexOf(last) >= 0 && german.charAt(german.length() - 1) != last) {
                other.add(key + " ends otherwise: " + german);
            }
        }
        assertEquals(List.of(), other);
    }

    @Test
    void oneAndMoreHaveTheirOwnForms() {
        List<String> alike = new ArrayList<>();
        for (String key : GERMAN.keys()) {
            String others = key.replaceAll("\\.one$", ".other");
            if (!key.endsWith(".one") || !GERMAN.has(others)) {
                continue;
            }
            String one = bare(GERMAN, key);
            String many = bare(GERMAN, others);
            boolean differ = !bare(Languages.ENGLISH, key).equals(bare(Languages.ENGLISH, others));
            if (differ
                    && one.equals(many)
                    && !one.matches("(?s).*(LED|-mal|Bogen|Pixel|Streifen|Knoten|Schritt|Muster|Fehler|Zeichen).*")) {
                alike.add(key + ": " + one);
            }
        }
        assertEquals(List.of(), alike);
    }

    private static String bare(Language language, String key) {
        String[] slots = language.slots(key).stream()
                .flatMap(slot -> Stream.of(slot, "{" + slot + "}"))
                .toArray(String[]::new);
        return language.say(key, slots);
    }

    @Test
    void everySkillRuleAndTopicOfTheTemplatesHasItsName() {
        Set<String> unnamed = new TreeSet<>();
        for (String name : BUILT_IN.names()) {
            ProblemTemplate template = TemplateReader.read(BUILT_IN, name);
            List<String> named = new ArrayList<>(template.teaches());
            named.add(template.skill());
            named.add(template.family().replace('-', ' '));
            template.lines().forEach(line -> named.add(line.principle()));
            named.stream()
                    .filter(one -> !GERMAN.has("name." + Language.keyOf(one)))
                    .forEach(unnamed::add);
        }
        assertEquals(Set.of(), unnamed);
    }

    @Test
    void everyMistakeOfTheTemplatesHasAShortNameAndNoOtherHas() {
        Set<String> ids = new TreeSet<>();
        for (String name : BUILT_IN.names()) {
            ProblemTemplate template = TemplateReader.read(BUILT_IN, name);
            template.mistakes().forEach(mistake -> ids.add(mistake.id()));
            template.designs().forEach(design -> design.criteria().forEach(criterion -> ids.add(criterion.id())));
        }
        Set<String> named = new TreeSet<>();
        for (String key : GERMAN.keys()) {
            if (key.startsWith("name.mistake.")) {
                String id = key.substring("name.mistake.".length());
                named.add(id);
                assertTrue(GERMAN.mistake(id).length() <= LONGEST_NAME, GERMAN.mistake(id));
            }
        }
        assertEquals(ids, named);
    }

    @Test
    void everyTemplateIsWholeInTheSecondLanguageAndTheSameInAllButItsWords() {
        for (String name : BUILT_IN.names()) {
            ProblemTemplate english = TemplateReader.read(BUILT_IN, name);
            TemplateReader.Checked checked = TemplateReader.check(BUILT_IN, name, GERMAN);
            assertEquals(List.of(), checked.diagnostics(), name);
            ProblemTemplate german = checked.template().orElseThrow();
            assertEquals(english.working(), german.working(), name);
            assertEquals(measured(english), measured(german), name);
            assertEquals(english.requirements(), german.requirements(), name);
            assertEquals(english.level(), german.level(), name);
        }
    }

    /** What a proof does, without its words. */
    private static List<String> measured(ProblemTemplate template) {
        return template.proofs().stream()
                .map(proof -> proof.of() + " by " + proof.measure() + " " + proof.varies() + " " + proof.way()
                        + " within " + proof.within())
                .toList();
    }

    @Test
    void noTextOfATemplateHasEnglishInItOrOtherNumbers() {
        List<String> told = new ArrayList<>();
        for (String name : BUILT_IN.names()) {
            Faults faults = new Faults();
            Yaml.Mapping english = mapping(name, TemplateFiles.PROBLEM, faults);
            Yaml.Mapping german =
                    Translation.into(english, mapping(name, TemplateFiles.problem(GERMAN), faults), faults);
            pairs(english, german, "", (text, with) -> look(name + " " + text.key(), text.english(), with, told));
            String statement = BUILT_IN.text(name, "statement.md.ftl").orElseThrow();
            look(
                    name + " statement",
                    statement,
                    BUILT_IN.text(name, "statement.de.md.ftl").orElseThrow(),
                    told);
            assertEquals(
                    slots(statement),
                    slots(BUILT_IN.text(name, "statement.de.md.ftl").orElseThrow()),
                    name);
        }
        assertEquals(List.of(), told);
        assertTrue(BUILT_IN.names().size() > 100);
    }

    private static Set<String> slots(String statement) {
        Set<String> slots = new TreeSet<>();
        Matcher slot = Pattern.compile("\\$\\{[^}]*}").matcher(statement);
        while (slot.find()) {
            slots.add(slot.group());
        }
        return slots;
    }

    private static void look(String where, String english, String german, List<String> told) {
        String words = german.replaceAll("„[^“]*“|<[^>]*>|\\$\\{[^}]*}", "");
        Matcher left = ENGLISH.matcher(words);
        if (left.find()) {
            told.add(where + " has “" + left.group() + "”: " + german);
        }
        compare(where, english.replaceAll("<[^>]*>", ""), german.replaceAll("<[^>]*>", ""), told);
    }

    private static void compare(String where, String english, String german, List<String> told) {
        Set<String> amounts = amounts(english);
        if (!amounts.equals(amounts(german))) {
            told.add(where + ": " + amounts + " became " + amounts(german) + ": " + german);
        }
    }

    /** The numbers that no language writes in words, and the units; decimal marks are made alike. */
    private static Set<String> amounts(String text) {
        Set<String> amounts = new TreeSet<>();
        Matcher amount = AMOUNT.matcher(text);
        while (amount.find()) {
            String number = amount.group(1).replace(',', '.');
            String unit = amount.group(2);
            if (unit != null) {
                amounts.add(unit);
            }
            if (unit != null || number.indexOf('.') >= 0 || Integer.parseInt(number) > LARGEST_IN_WORDS) {
                amounts.add(number);
            }
        }
        return amounts;
    }

    private record Text(String key, String english) {}

    private static void pairs(Yaml english, Yaml german, String key, BiConsumer<Text, String> look) {
        if (english instanceof Yaml.Mapping group) {
            for (Yaml.Entry entry : group.entries()) {
                String name = entry.key().text();
                ((Yaml.Mapping) german).value(name).ifPresent(other -> pairs(entry.value(), other, name, look));
            }
        } else if (english instanceof Yaml.Sequence list) {
            for (int i = 0; i < list.items().size(); i++) {
                pairs(list.items().get(i), ((Yaml.Sequence) german).items().get(i), key, look);
            }
        } else if (Translation.TEXTS.contains(key)) {
            look.accept(new Text(key, ((Yaml.Scalar) english).text()), ((Yaml.Scalar) german).text());
        }
    }

    private static Yaml.Mapping mapping(String name, String file, Faults faults) {
        SourceText text = new SourceText(file, BUILT_IN.text(name, file).orElseThrow());
        return (Yaml.Mapping) YamlReader.read(text, faults).orElseThrow();
    }
}
