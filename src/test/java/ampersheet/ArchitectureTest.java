package ampersheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.ArchConfiguration;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Holds what DEVELOPERS.md says of rooms, portability and sameness of bytes. */
class ArchitectureTest {
    private static final String ROOT = "ampersheet";

    /** The lines of DEVELOPERS.md from the top; a room may use only rooms further down. */
    private static final List<Set<String>> LINES = List.of(
            Set.of("command", "browser"),
            Set.of("desk"),
            Set.of("issue"),
            Set.of("marking"),
            Set.of("page"),
            Set.of("render", "render.markdown", "render.html", "render.pdf", "render.qti", "render.text"),
            Set.of("sheet"),
            Set.of("bench"),
            Set.of("problem"),
            Set.of("template", "figure"),
            Set.of("model"),
            Set.of("circuit", "thermal", "chain"),
            Set.of("integration"),
            Set.of("source"),
            Set.of("practice"),
            Set.of("answer"),
            Set.of("formula"),
            Set.of("quantity"),
            Set.of("diagnostic"),
            Set.of("language"));

    private static final Set<String> PORTABLE =
            Set.of("practice", "answer", "formula", "quantity", "diagnostic", "language");

    /** What records, lambdas and joined strings are compiled to, besides the two packages themselves. */
    private static final Set<String> PORTABLE_PACKAGES =
            Set.of("java.lang", "java.util", "java.util.function", "java.lang.invoke", "java.lang.runtime");

    /** Fewer mean that the importer did not see the program, and that every rule below is empty. */
    private static final int LEAST_CLASSES = 900;

    /** What a run may leave to chance: a seed that is drawn once and kept, and the length of a lock file. */
    private static final Set<String> CHANCE = Set.of(ROOT + ".sheet.Secret", ROOT + ".issue.RunLock");

    private static final int MOST_LINES_OF_A_FILE = 500;
    private static final int MOST_LINES_OF_A_METHOD = 60;
    /** Of a method or constructor that is written out; a record may have more members, each of which has its name. */
    private static final int MOST_PARAMETERS = 7;

    private static final Set<String> SOLVING = Set.of("circuit", "thermal", "integration");

    private static JavaClasses classes;

    @BeforeAll
    static void read() {
        // The libraries' own classes are known by name, which is all the rules need and takes a tenth of the time.
        ArchConfiguration.get().setResolveMissingDependenciesFromClassPath(false);
        classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages(ROOT);
    }

    @Test
    void theProgramIsSeen() {
        assertTrue(classes.size() >= LEAST_CLASSES, "only " + classes.size() + " classes seen");
        for (JavaClass seen : classes) {
            assertTrue(
                    seen.getPackageName().equals(ROOT) || line(room(seen)) >= 0,
                    seen.getName() + " stands in a room that DEVELOPERS.md does not know");
        }
    }

    @Test
    void everyRoomOfThisVersionIsSeen() {
        Set<String> seen = new TreeSet<>();
        classes.forEach(seenClass -> seen.add(room(seenClass)));
        for (String room : List.of(
                "command",
                "desk",
                "issue",
                "render.markdown",
                "render.html",
                "sheet",
                "bench",
                "problem",
                "template",
                "figure",
                "model",
                "circuit",
                "thermal",
                "chain",
                "integration",
                "answer",
                "formula",
                "quantity",
                "diagnostic",
                "browser",
                "marking",
                "page",
                "render.qti",
                "render.text",
                "source",
                "practice",
                "language")) {
            assertTrue(seen.contains(room), "no class of room " + room + " among " + seen);
        }
    }

    @Test
    void roomsUseOnlyRoomsBelowTheirLine() {
        holds(
                dependencies((from, to) -> {
                    String fromRoom = room(from);
                    String toRoom = room(to);
                    boolean withinRender = fromRoom.startsWith("render.") && toRoom.equals("render");
                    return !fromRoom.equals(toRoom) && !withinRender && line(toRoom) <= line(fromRoom);
                }),
                "a room may use only rooms below its line");
    }

    @Test
    void roomsFormNoCycle() {
        SlicesRuleDefinition.slices()
                .matching(ROOT + ".(*)..")
                .should()
                .beFreeOfCycles()
                .check(classes);
    }

    @Test
    void renderersSeeOnlyADocument() {
        holds(
                dependencies((from, to) -> room(from).startsWith("render")
                        && room(to).equals("sheet")
                        && !outermost(to).getSimpleName().equals("Document")),
                "a renderer sees of the sheet room only Document");
    }

    @Test
    void everyRendererSaysWhatItDoesWithEachKindOfBlock() {
        Set<String> rooms = new TreeSet<>();
        for (JavaClass renderer : classes) {
            boolean visits = renderer.getRawInterfaces().stream()
                    .anyMatch(type -> type.getSimpleName().equals("BlockVisitor"));
            if (visits) {
                rooms.add(room(renderer));
            }
        }
        for (Set<String> line : LINES) {
            line.stream()
                    .filter(room -> room.startsWith("render."))
                    .forEach(room -> assertTrue(
                            rooms.contains(room), "no class of " + room + " visits the blocks of a document"));
        }
    }

    @Test
    void portableRoomsUseOnlyTheLanguageAndItsCollections() {
        List<String> broken = new ArrayList<>();
        for (JavaClass from : classes) {
            if (!PORTABLE.contains(room(from))) {
                continue;
            }
            for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                JavaClass to = dependency.getTargetClass().getBaseComponentType();
                if (to.isPrimitive()) {
                    continue;
                }
                boolean own = to.getPackageName().startsWith(ROOT) && PORTABLE.contains(room(to));
                if (!own && !PORTABLE_PACKAGES.contains(to.getPackageName())) {
                    broken.add(dependency.getDescription());
                }
            }
        }
        holds(broken, "portable rooms use java.lang, java.util and each other only");
    }

    @Test
    void theBrowserRoomReachesOnlyPortableRooms() {
        holds(
                dependencies((from, to) ->
                        room(from).equals("browser") && !room(to).equals("browser") && !PORTABLE.contains(room(to))),
                "what runs in a page is made of portable rooms");
    }

    @Test
    void onlyTheBrowserRoomKnowsItsCompiler() {
        List<String> broken = new ArrayList<>();
        for (JavaClass from : classes) {
            for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                if (dependency.getTargetClass().getPackageName().startsWith("org.teavm")
                        && !room(from).equals("browser")) {
                    broken.add(dependency.getDescription());
                }
            }
        }
        holds(broken, "the jar runs without the compiler for the browser");
    }

    @Test
    void portableRoomsCallNothingThatSwellsTheBrowserPage() {
        holds(
                calls((from, owner, name, access) -> PORTABLE.contains(room(from))
                        && (owner.equals("java.lang.String")
                                        && Set.of(
                                                        "format",
                                                        "formatted",
                                                        "split",
                                                        "matches",
                                                        "replaceAll",
                                                        "replaceFirst",
                                                        "lines")
                                                .contains(name)
                                || owner.equals("java.lang.Double")
                                        && Set.of("parseDouble", "valueOf").contains(name)
                                        && takesText(access)
                                || owner.equals("java.lang.Math") && name.equals("fma"))),
                "portable rooms avoid what is large or differs in the browser");
    }

    @Test
    void elementaryFunctionsAreCalledInOnePlace() {
        Set<String> inexact = Set.of(
                "exp", "expm1", "log", "log1p", "log10", "pow", "sin", "cos", "tan", "asin", "acos", "atan", "atan2",
                "sinh", "cosh", "tanh", "cbrt", "hypot");
        holds(
                calls((from, owner, name, access) -> !from.getName().equals(ROOT + ".quantity.Elementary")
                        && (owner.equals("java.lang.Math") && inexact.contains(name)
                                || owner.equals("java.lang.StrictMath"))),
                "elementary functions come from Elementary, so that every Java gives the same bits");
    }

    @Test
    void callsAreSeen() {
        List<String> seen = calls((from, owner, name, access) ->
                from.getName().equals(ROOT + ".quantity.Elementary") && owner.equals("java.lang.StrictMath"));
        assertTrue(seen.size() >= 5, "the rules above see no calls: " + seen);
    }

    @Test
    void nothingDependsOnTheOrderOfAHash() {
        List<String> broken =
                new ArrayList<>(calls((from, owner, name, access) -> owner.equals("java.util.stream.Collectors")
                        && (name.equals("toSet")
                                || name.equals("toUnmodifiableSet")
                                || name.equals("toUnmodifiableMap")
                                || name.equals("toMap") && parameters(access) < 4
                                || name.equals("groupingBy") && parameters(access) < 3)));
        for (JavaClass from : classes) {
            for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                String to = dependency.getTargetClass().getName();
                if (Set.of(
                                "java.util.HashMap",
                                "java.util.HashSet",
                                "java.util.IdentityHashMap",
                                "java.util.WeakHashMap")
                        .contains(to)) {
                    broken.add(dependency.getDescription());
                }
            }
        }
        holds(broken, "a hash has no order to rely on; use a tree or a linked map");
    }

    @Test
    void streamsExitAndClockBelongToTheCommand() {
        List<String> broken = new ArrayList<>();
        for (JavaClass from : classes) {
            if (room(from).equals("command")) {
                continue;
            }
            for (JavaFieldAccess access : from.getFieldAccessesFromSelf()) {
                if (access.getTargetOwner().getName().equals("java.lang.System")) {
                    broken.add(access.getDescription());
                }
            }
        }
        broken.addAll(calls((from, owner, name, access) -> !room(from).equals("command")
                && (owner.equals("java.lang.System") && !name.equals("arraycopy")
                        || owner.startsWith("java.time.") && name.equals("now")
                        || owner.equals("java.util.Date") && name.equals("<init>"))));
        holds(broken, "only the command room has streams, exit codes and a clock");
    }

    @Test
    void onlyMainEndsTheProgram() {
        holds(
                calls((from, owner, name, access) -> !from.getName().equals(ROOT + ".command.Main")
                        && (owner.equals("java.lang.System") && name.equals("exit")
                                || owner.equals("java.lang.Runtime") && (name.equals("exit") || name.equals("halt")))),
                "only Main ends the program");
    }

    @Test
    void nothingIsDrawnWithoutASeed() {
        holds(
                calls((from, owner, name, access) -> owner.equals("java.util.Random")
                                && name.equals("<init>")
                                && parameters(access) == 0
                        || owner.equals("java.lang.Math") && name.equals("random")
                        || owner.equals("java.util.UUID") && name.equals("randomUUID")
                        || owner.equals("java.util.concurrent.ThreadLocalRandom")
                        || owner.equals("java.util.SplittableRandom")
                                && name.equals("<init>")
                                && parameters(access) == 0
                        || owner.equals("java.util.Collections") && name.equals("shuffle") && parameters(access) == 1
                        || owner.equals("java.security.SecureRandom") && !CHANCE.contains(from.getName())),
                "whatever is drawn is drawn from a seed");
    }

    @Test
    void textDoesNotDependOnTheMachine() {
        holds(
                calls((from, owner, name, access) -> {
                    boolean noLocale = access.getTarget().getOwner() != null && !takes(access, "java.util.Locale");
                    boolean noCharset = !takes(access, "java.nio.charset.Charset")
                            && !takes(access, "java.nio.charset.CharsetDecoder")
                            && !takes(access, "java.nio.charset.CharsetEncoder");
                    return switch (owner) {
                        case "java.util.Locale" -> name.equals("getDefault") || name.equals("setDefault");
                        case "java.nio.charset.Charset" -> name.equals("defaultCharset");
                        case "java.util.TimeZone" -> name.equals("getDefault");
                        case "java.time.ZoneId" -> name.equals("systemDefault");
                        case "java.lang.String" ->
                            noLocale
                                            && Set.of("format", "toLowerCase", "toUpperCase")
                                                    .contains(name)
                                    || name.equals("formatted")
                                    || noCharset && name.equals("getBytes")
                                    || noCharset && name.equals("<init>") && takes(access, "[B");
                        case "java.io.InputStreamReader", "java.io.OutputStreamWriter" ->
                            name.equals("<init>") && noCharset && !takes(access, "java.lang.String");
                        case "java.io.PrintStream" ->
                            name.equals("<init>") && noCharset && !takesNamedCharset(access)
                                    || Set.of("printf", "format").contains(name) && noLocale;
                        case "java.io.PrintWriter" ->
                            name.equals("<init>") && noCharset && !takes(access, "java.io.Writer");
                        case "java.io.FileReader", "java.io.FileWriter" -> name.equals("<init>") && noCharset;
                        case "java.util.Formatter", "java.util.Scanner" -> name.equals("<init>");
                        case "java.lang.System" -> name.equals("lineSeparator");
                        default -> false;
                    };
                }),
                "text is the same under every locale, time zone and default encoding");
    }

    @Test
    void filesAndMethodsAreShortEnoughToBeReadAtOnce() throws IOException {
        SourceSizes sizes = SourceSizes.ofMain();
        assertTrue(
                sizes.methods().size() >= LEAST_CLASSES,
                "only " + sizes.methods().size() + " methods seen");
        List<String> broken = new ArrayList<>();
        sizes.files().stream()
                .filter(file -> file.lines() > MOST_LINES_OF_A_FILE)
                .forEach(file -> broken.add(file.name() + " has " + file.lines() + " lines"));
        for (SourceSizes.Method method : sizes.methods()) {
            if (method.lines() > MOST_LINES_OF_A_METHOD) {
                broken.add(method.name() + " has " + method.lines() + " lines");
            }
            if (method.parameters() > MOST_PARAMETERS) {
                broken.add(method.name() + " takes " + method.parameters() + " parameters");
            }
        }
        holds(
                broken,
                "a file has at most " + MOST_LINES_OF_A_FILE + " lines, a method at most " + MOST_LINES_OF_A_METHOD
                        + " and " + MOST_PARAMETERS + " parameters");
    }

    /** What has no value is an outcome that the compiler asks for, not a null that somebody forgets. */
    @Test
    void roomsThatSolveGiveAnOutcomeAndNeverNull() throws IOException {
        holds(
                SourceSizes.ofMain().nulls().stream()
                        .filter(place -> SOLVING.contains(place.substring(0, place.indexOf('/'))))
                        .toList(),
                "null is compared with, where a map of the library answers it, and never given");
    }

    private interface Pair {
        boolean test(JavaClass from, JavaClass to);
    }

    private interface Call {
        boolean test(JavaClass from, String owner, String name, JavaAccess<?> access);
    }

    private static List<String> dependencies(Pair forbidden) {
        List<String> broken = new ArrayList<>();
        for (JavaClass from : classes) {
            for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                JavaClass to = dependency.getTargetClass().getBaseComponentType();
                if (to.getPackageName().startsWith(ROOT) && forbidden.test(from, to)) {
                    broken.add(dependency.getDescription());
                }
            }
        }
        return broken;
    }

    /** Calls of methods and constructors, and references to them. */
    private static List<String> calls(Call forbidden) {
        List<String> broken = new ArrayList<>();
        for (JavaClass from : classes) {
            for (JavaAccess<?> access : from.getAccessesFromSelf()) {
                if (!(access instanceof JavaFieldAccess)
                        && forbidden.test(
                                from,
                                access.getTargetOwner().getName(),
                                access.getTarget().getName(),
                                access)) {
                    broken.add(access.getDescription());
                }
            }
        }
        return broken;
    }

    private static boolean takes(JavaAccess<?> access, String type) {
        return parameterTypes(access).contains(type);
    }

    private static boolean takesText(JavaAccess<?> access) {
        return takes(access, "java.lang.String");
    }

    private static boolean takesNamedCharset(JavaAccess<?> access) {
        List<String> types = parameterTypes(access);
        return types.size() > 1 && types.get(types.size() - 1).equals("java.lang.String");
    }

    private static int parameters(JavaAccess<?> access) {
        return parameterTypes(access).size();
    }

    private static List<String> parameterTypes(JavaAccess<?> access) {
        if (access.getTarget() instanceof com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget target) {
            return target.getRawParameterTypes().stream()
                    .map(JavaClass::getName)
                    .toList();
        }
        return List.of();
    }

    private static JavaClass outermost(JavaClass nested) {
        JavaClass at = nested;
        while (at.getEnclosingClass().isPresent()) {
            at = at.getEnclosingClass().get();
        }
        return at;
    }

    private static String room(JavaClass of) {
        String name = of.getPackageName();
        return name.equals(ROOT) ? "" : name.substring(ROOT.length() + 1);
    }

    private static int line(String room) {
        for (int i = 0; i < LINES.size(); i++) {
            if (LINES.get(i).contains(room)) {
                return i;
            }
        }
        return -1;
    }

    private static void holds(List<String> broken, String rule) {
        Map<String, Boolean> once = new TreeMap<>();
        broken.forEach(line -> once.put(line, true));
        assertEquals(Collections.emptyList(), new ArrayList<>(once.keySet()), rule);
    }
}
