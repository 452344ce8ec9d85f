package ampersheet.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.language.Language;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Holds keys, slots and languages together: what the program says, each language can say. */
class LanguagesTest {
    private static final String FACES =
            "common|list|number|reading|verdict|practice|page|sheet|print|problem|figure|spoken|report|desk|command|plan|folder";
    /** A key, and no name of a file. */
    private static final Pattern KEY = Pattern.compile("(?:" + FACES
            + ")(?:\\.[a-z0-9]+(?:-[a-z0-9]+)*)+(?<!\\.(?:js|css|html|md|csv|pdf|txt|yaml|zip|xml|json|svg))");

    private static final Pattern QUOTED = Pattern.compile("[\"']((?:" + FACES + ")\\.[a-z0-9.-]+)[\"']");

    /** Keys that stand in the program as they are, and those that some call gives as the beginning of two forms. */
    private static final Set<String> NAMED = new TreeSet<>();
    /** Of each key that a call names: what it fills, once for every call. */
    private static final Map<String, List<Set<String>>> FILLED = new HashMap<>();

    @BeforeAll
    static void read() throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (Stream<Path> all = Files.walk(Path.of("src/main/java"));
                StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            List<Path> sources = all.filter(file -> file.toString().endsWith(".java"))
                    .sorted()
                    .toList();
            JavacTask task = (JavacTask) compiler.getTask(
                    null, files, null, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(sources));
            task.parse().forEach(unit -> new Calls().scan(unit, null));
        }
        try (Stream<Path> all = Files.walk(Path.of("src/main/resources/ampersheet/page"))) {
            for (Path file :
                    all.filter(file -> file.toString().endsWith(".js")).sorted().toList()) {
                Matcher quoted = QUOTED.matcher(Files.readString(file));
                while (quoted.find()) {
                    if (KEY.matcher(quoted.group(1)).matches()) {
                        NAMED.add(quoted.group(1));
                    }
                }
            }
        }
    }

    private static final class Calls extends TreeScanner<Void, Void> {
        private final Map<MethodInvocationTree, Set<String>> within = new IdentityHashMap<>();

        @Override
        public Void visitLiteral(LiteralTree literal, Void nothing) {
            if (literal.getValue() instanceof String text && KEY.matcher(text).matches()) {
                NAMED.add(text);
            }
            return super.visitLiteral(literal, nothing);
        }

        @Override
        public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
            String name = call.getMethodSelect() instanceof MemberSelectTree member
                    ? member.getIdentifier().toString()
                    : call.getMethodSelect().toString();
            List<? extends ExpressionTree> given = call.getArguments();
            if (name.equals("with")) {
                with(call);
            }
            int first = name.equals("say") || name.equals("of") ? 1 : name.equals("count") ? 2 : 0;
            if (first > 0 && !given.isEmpty() && key(given.get(0)) != null) {
                Set<String> filled = new HashSet<>(within.getOrDefault(call, Set.of()));
                boolean literal = true;
                for (int i = first; i < given.size(); i += 2) {
                    String slot = given.get(i) instanceof LiteralTree word && word.getValue() instanceof String text
                            ? text
                            : null;
                    literal &= slot != null;
                    filled.add(slot);
                }
                String key = key(given.get(0));
                for (String form : name.equals("count") ? List.of(key + ".one", key + ".other") : List.of(key)) {
                    if (name.equals("count")) {
                        filled.addAll(Set.of("count", "number"));
                    }
                    if (literal) {
                        FILLED.computeIfAbsent(form, none -> new ArrayList<>()).add(filled);
                    }
                }
            }
            return super.visitMethodInvocation(call, nothing);
        }

        /** What is said within a sentence fills a slot of the call that names its key. */
        private void with(MethodInvocationTree call) {
            if (call.getMethodSelect() instanceof MemberSelectTree member
                    && member.getExpression() instanceof MethodInvocationTree said
                    && !call.getArguments().isEmpty()
                    && call.getArguments().get(0) instanceof LiteralTree slot) {
                Set<String> slots = new HashSet<>(within.getOrDefault(call, Set.of()));
                slots.add(String.valueOf(slot.getValue()));
                within.put(said, slots);
            }
        }

        private static String key(ExpressionTree argument) {
            return argument instanceof LiteralTree literal
                            && literal.getValue() instanceof String text
                            && KEY.matcher(text).matches()
                    ? text
                    : null;
        }
    }

    @Test
    void whatTheProgramSaysStandsInTheFilesAndNothingElseDoes() {
        assertFalse(NAMED.isEmpty());
        Set<String> written = new TreeSet<>(Languages.ENGLISH.keys());
        written.addAll(Told.language().keys());
        List<String> missing = new ArrayList<>();
        for (String key : NAMED) {
            boolean begins = written.stream().anyMatch(longer -> longer.startsWith(key + "."));
            if (!written.contains(key) && !begins) {
                missing.add(key);
            }
        }
        assertEquals(List.of(), missing, "the program names sentences that no file has");
        List<String> left = new ArrayList<>();
        for (String key : written) {
            boolean named = NAMED.contains(key)
                    || key.startsWith("number.")
                    || key.startsWith("name.")
                    || key.startsWith("rule.")
                    || key.endsWith(".one") && NAMED.contains(key.substring(0, key.length() - ".one".length()))
                    || key.endsWith(".other") && NAMED.contains(key.substring(0, key.length() - ".other".length()));
            if (!named) {
                left.add(key);
            }
        }
        assertEquals(List.of(), left, "sentences that the program never says");
    }

    @Test
    void everyCallFillsTheSlotsOfItsSentenceInEveryLanguage() {
        List<String> unfilled = new ArrayList<>();
        for (Language language : all()) {
            FILLED.forEach((key, calls) -> {
                for (Set<String> filled : calls) {
                    if (language.has(key) && !filled.containsAll(language.slots(key))) {
                        unfilled.add(language.code() + ": " + key + " needs " + language.slots(key) + ", a call fills "
                                + filled);
                    }
                }
            });
        }
        assertEquals(List.of(), unfilled);
    }

    @Test
    void everyLanguageHasTheSentencesOfEnglishAndNoOthers() {
        for (String code : Languages.codes()) {
            Language language = Languages.of(code).orElseThrow();
            assertEquals(withoutNames(Languages.ENGLISH), withoutNames(language), code);
            for (String key : withoutNames(language)) {
                Set<String> slots = Set.copyOf(language.slots(key));
                Set<String> english = new HashSet<>(Languages.ENGLISH.slots(key));
                if (key.endsWith(".one") || key.endsWith(".other")) {
                    english.addAll(Set.of("count", "number"));
                }
                assertTrue(english.containsAll(slots), code + ": " + key + " has " + slots + ", English " + english);
            }
        }
    }

    /** Names are those of the templates, where a language has no others. */
    private static Set<String> withoutNames(Language language) {
        Set<String> keys = new TreeSet<>(language.keys());
        keys.removeIf(key -> key.startsWith("name."));
        return keys;
    }

    @Test
    void noSentenceHasBlanksInARowOrAtItsEnds() {
        for (Language language : all()) {
            for (String key : language.keys()) {
                String said = language.say(key, filler(language, key));
                boolean joins = key.startsWith("list.");
                assertFalse(said.contains("  ") || !joins && !said.equals(said.strip()), language.code() + ": " + key);
            }
        }
    }

    /** Those that sheets are in, and what an instructor is told in. */
    private static List<Language> all() {
        List<Language> all = new ArrayList<>();
        Languages.codes().forEach(code -> all.add(Languages.of(code).orElseThrow()));
        all.add(Told.language());
        return all;
    }

    private static String[] filler(Language language, String key) {
        return language.slots(key).stream()
                .flatMap(slot -> Stream.of(slot, "x"))
                .toArray(String[]::new);
    }

    @Test
    void anUnknownLanguageIsNotThere() {
        assertTrue(Languages.of("tlh").isEmpty());
    }
}
