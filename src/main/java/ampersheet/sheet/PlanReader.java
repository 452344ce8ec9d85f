package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.figure.SymbolStyle;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Plan.Entry;
import ampersheet.sheet.Plan.Fixed;
import ampersheet.sheet.Plan.Order;
import ampersheet.sheet.Plan.Source;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.SourceFile;
import ampersheet.source.SourceText;
import ampersheet.source.Told;
import ampersheet.source.Unread;
import ampersheet.source.WithinMemory;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/** Reads plan files; the form is told in {@code problem-templates/README.md}. */
public final class PlanReader {
    /** More would fill a booklet; a larger number is a typing slip. */
    public static final int MOST_PROBLEMS = 60;

    private static final int MOST_ATTEMPTS = 20;
    static final String ENTRY_EXAMPLE = "{template: current-limiting/one-indicator, example: yes}";
    private static final String GIVEN_EXAMPLE = "{Vs: 12 V}";
    private static final Map<String, Document.Paper> PAPERS =
            ordered("a4", Document.Paper.A4, "letter", Document.Paper.LETTER);
    private static final Map<String, SymbolStyle> SYMBOLS = ordered("iec", SymbolStyle.IEC, "ieee", SymbolStyle.IEEE);
    private static final Map<String, DecimalMarker> MARKERS =
            ordered("point", DecimalMarker.POINT, "comma", DecimalMarker.COMMA);
    private static final Map<String, Boolean> FEEDBACK = ordered("shown", true, "hidden", false);
    private static final Map<String, Boolean> UNITS = ordered("asked", false, "printed", true);
    private static final Map<String, Boolean> FAULTY_LINES = ordered("no", false, "yes", true);
    private static final Map<String, Plan.Lettered> LETTERED = lettered();
    private static final Map<String, Order> ORDERS = ordered("as listed", Order.AS_LISTED, "mixed", Order.MIXED);

    private final String file;
    private final String text;
    private final Faults faults;

    private final Optional<Beside> beside;

    PlanReader(String file, String text, Optional<Beside> beside, Faults faults) {
        this.file = file;
        this.text = text;
        this.beside = beside;
        this.faults = faults;
    }

    /** What lies in the folder of a plan. */
    @FunctionalInterface
    public interface Beside {
        /**
         * @param most bytes
         * @throws Unread if there is no such file, or a larger one
         */
        byte[] bytes(String name, int most) throws Unread;

        /** The folder in which this plan lies. No link is followed: a plan may come from somebody else. */
        static Beside in(Path folder) {
            return (name, most) -> SourceFile.bytes(folder.resolve(name), most, SourceFile.Links.REFUSED);
        }
    }

    /**
     * The plan without the files that it names; what stands over its sheets has no picture.
     *
     * @param file as its reader knows it
     * @throws DiagnosticException with all faults of the file at once
     */
    public static Plan read(String file, String text) {
        return read(file, text, Optional.empty());
    }

    /** The plan with the files that it names. */
    public static Plan read(String file, String text, Beside beside) {
        return read(file, text, Optional.of(beside));
    }

    private static Plan read(String file, String text, Optional<Beside> beside) {
        if (text.isBlank()) {
            throw new DiagnosticException(
                    Diagnostic.error(Place.inFile(file), say("plan.empty"), say("plan.keys"), say("plan.begin")));
        }
        return WithinMemory.of(file, () -> new PlanReader(file, text, beside, new Faults()).read());
    }

    private Plan read() {
        Optional<Yaml> root = YamlReader.read(new SourceText(file, text), faults);
        Optional<Plan> plan = root.flatMap(this::plan);
        if (faults.hasErrors()) {
            throw new DiagnosticException(faults.inOrder());
        }
        return plan.orElseThrow();
    }

    private Optional<Plan> plan(Yaml root) {
        if (!(root instanceof Yaml.Mapping mapping)) {
            faults.error(
                    root.place(), say("plan.not-a-plan", "kind", root.kind()), say("plan.keys"), say("plan.begin"));
            return Optional.empty();
        }
        Fields fields = new Fields(mapping, say("plan.group.plan"), faults);
        Plan plan = keys(fields, Order.AS_LISTED, this::entries, this::portion);
        fields.finish();
        return Optional.of(plan);
    }

    /** What the weeks of a course have in common. They are mixed unless it says otherwise: so their skills return. */
    Plan withoutProblems(Fields fields) {
        return keys(fields, Order.MIXED, none -> List.of(), none -> Portion.WHOLE);
    }

    private Portion portion(Fields fields) {
        return fields.group("portion")
                .map(group -> PortionReader.read(group, faults))
                .orElse(Portion.WHOLE);
    }

    /**
     * All keys of a plan.
     *
     * @param entriesOf reads them, or what stands in their place
     */
    private Plan keys(
            Fields fields, Order usual, Function<Fields, List<Entry>> entriesOf, Function<Fields, Portion> portionOf) {
        String title = fields.needText("title", say("plan.title.expected"))
                .map(Yaml.Scalar::text)
                .orElse("");
        Plan.Seeding seed = fields.text("seed")
                .<Plan.Seeding>map(named -> new Plan.Seeding.Named(named.text()))
                .orElse(new Plan.Seeding.Title(title));
        Document.Paper paper = choice(fields, "paper", PAPERS, Document.Paper.A4);
        Language language = PlannedLanguage.read(fields, faults);
        SymbolStyle symbols = choice(fields, "symbols", SYMBOLS, SymbolStyle.IEC);
        DecimalMarker decimal = choice(fields, "decimal", MARKERS, PlannedLanguage.usualMarker(language));
        boolean unitsPrinted = choice(fields, "units", UNITS, false);
        Plan.Lettered lettered = choice(fields, "check-letters", LETTERED, Plan.Lettered.ALL);
        Order order = choice(fields, "order", ORDERS, usual);
        Plan.Dealing dealing = new DealingReader(this, fields, faults).read();
        List<Integer> levels = levels(fields);
        List<Entry> entries = entriesOf.apply(fields);
        MarkingPolicy marking = fields.group("marking")
                .map(group -> MarkingPolicyReader.read(group, faults))
                .orElse(MarkingPolicy.USUAL);
        Plan.Delivery delivery = fields.group("exchange").map(this::delivery).orElse(Plan.Delivery.USUAL);
        boolean faultyLines = choice(fields, "faulty-lines", FAULTY_LINES, false);
        Plan.Heading heading = new HeadingReader(fields, beside, faults).read();
        Optional<Plan.PartsList> parts = FileBeside.partsList(fields, faults);
        return new Plan(
                file,
                text,
                RosterReader.printable(title),
                seed,
                paper,
                language,
                symbols,
                decimal,
                unitsPrinted,
                lettered,
                order,
                dealing,
                levels,
                entries,
                marking,
                delivery,
                faultyLines,
                heading,
                portionOf.apply(fields),
                parts);
    }

    private Plan.Delivery delivery(Yaml.Mapping group) {
        Fields fields = new Fields(group, "exchange", faults);
        int attempts = fields.text("attempts").map(this::attempts).orElse(Plan.Delivery.USUAL.attempts());
        boolean feedback = choice(fields, "feedback", FEEDBACK, Plan.Delivery.USUAL.feedback());
        fields.finish();
        return new Plan.Delivery(attempts, feedback);
    }

    private int attempts(Yaml.Scalar written) {
        if (written.text().equals("unlimited")) {
            return Plan.Delivery.UNLIMITED;
        }
        if (isDigits(written.text())) {
            int attempts = Integer.parseInt(written.text());
            if (attempts >= 1 && attempts <= MOST_ATTEMPTS) {
                return attempts;
            }
        }
        faults.error(
                written.place(),
                say("plan.unfit", "written", written.text(), "key", "attempts"),
                say("plan.attempts.expected", "most", Integer.toString(MOST_ATTEMPTS)),
                say("plan.write-one"));
        return Plan.Delivery.USUAL.attempts();
    }

    private List<Integer> levels(Fields fields) {
        Set<Integer> levels = new TreeSet<>();
        fields.value("level").ifPresent(written -> {
            List<Yaml> items = written instanceof Yaml.Sequence list ? list.items() : List.of(written);
            for (Yaml item : items) {
                Optional<Integer> level = wholeNumber(item, "level", 0, 4);
                level.ifPresent(levels::add);
            }
        });
        return List.copyOf(levels);
    }

    private List<Entry> entries(Fields fields) {
        fields.need("problems", say("plan.problems.expected", "example", ENTRY_EXAMPLE));
        List<Entry> entries = new ArrayList<>();
        int problems = 0;
        for (Yaml.Mapping written : fields.groups("problems", ENTRY_EXAMPLE)) {
            Optional<Entry> entry = entry(new Fields(written, say("plan.group.entry"), faults));
            entry.ifPresent(entries::add);
            problems +=
                    entry.map(read -> read.count() * (read.example() ? 2 : 1)).orElse(1);
        }
        if (fields.list("problems").map(list -> list.items().isEmpty()).orElse(false)) {
            faults.error(
                    fields.placeOf("problems"),
                    say("plan.problems.none"),
                    say("plan.problems.none.expected", "example", ENTRY_EXAMPLE),
                    say("plan.problems.none.next"));
        }
        if (problems > MOST_PROBLEMS) {
            faults.error(
                    fields.placeOf("problems"),
                    say("plan.problems.many", "count", Integer.toString(problems)),
                    say("plan.at-most", "most", Integer.toString(MOST_PROBLEMS)),
                    say("plan.problems.many.next"));
        }
        return entries;
    }

    Optional<Entry> entry(Fields fields) {
        Optional<Source> source = source(fields);
        int count = fields.text("count")
                .flatMap(written -> wholeNumber(written, "count", 1, MOST_PROBLEMS))
                .orElse(1);
        boolean example = fields.text("example").map(this::yesOrNo).orElse(false);
        Support support = support(fields, example);
        List<Fixed> fixed = fixed(fields);
        fields.finish();
        return source.map(found -> new Entry(found, count, support, example, fixed, fields.place()));
    }

    /** Whether the templates draw such values is found out where the templates are. */
    private List<Fixed> fixed(Fields fields) {
        List<Fixed> fixed = new ArrayList<>();
        fields.group("given").ifPresent(group -> {
            for (Yaml.Entry given : group.entries()) {
                if (given.value() instanceof Yaml.Scalar value && !value.text().isBlank()) {
                    fixed.add(new Fixed(
                            given.key().text(), value.text(), given.key().place()));
                } else {
                    faults.error(
                            given.key().place(),
                            say(
                                    "plan.given.fixed-to",
                                    "given",
                                    given.key().text(),
                                    "kind",
                                    given.value().kind()),
                            say("plan.given.fixed-to.expected", "example", GIVEN_EXAMPLE),
                            say("plan.given.fixed-to.next"));
                }
            }
            if (group.entries().isEmpty()) {
                faults.error(
                        fields.placeOf("given"),
                        say("plan.given.none"),
                        say("plan.given.none.expected", "example", GIVEN_EXAMPLE),
                        say("plan.given.none.next"));
            }
        });
        return fixed;
    }

    private Optional<Source> source(Fields fields) {
        Optional<Yaml.Scalar> template = fields.text("template");
        Optional<Yaml.Sequence> pool = fields.list("pool");
        Optional<Yaml.Scalar> skill = fields.text("skill");
        int named = (fields.has("template") ? 1 : 0) + (fields.has("pool") ? 1 : 0) + (fields.has("skill") ? 1 : 0);
        if (named != 1) {
            faults.error(
                    fields.place(),
                    named == 0 ? say("plan.source.none") : say("plan.source.several"),
                    say("plan.source.expected"),
                    named == 0 ? say("plan.source.none.next") : say("plan.source.several.next"));
            return Optional.empty();
        }
        if (pool.isPresent()) {
            return pool(fields, pool.get());
        }
        return template.<Source>map(name -> new Source.One(name.text(), name.place()))
                .or(() -> skill.map(name -> new Source.Skill(name.text(), name.place())));
    }

    private Optional<Source> pool(Fields fields, Yaml.Sequence written) {
        List<Source.One> members = new ArrayList<>();
        Set<String> names = new TreeSet<>();
        for (Yaml item : written.items()) {
            if (!(item instanceof Yaml.Scalar name) || name.text().isBlank()) {
                faults.error(
                        item.place(),
                        say("plan.pool.member", "kind", item.kind()),
                        say("plan.pool.member.expected"),
                        say("plan.pool.member.next"));
            } else if (!names.add(name.text())) {
                faults.error(
                        item.place(),
                        say("plan.pool.twice", "template", name.text()),
                        say("plan.pool.twice.expected"),
                        say("plan.pool.twice.next"));
            } else {
                members.add(new Source.One(name.text(), name.place()));
            }
        }
        if (members.isEmpty()) {
            faults.error(
                    fields.placeOf("pool"),
                    say("plan.pool.empty"),
                    "pool: [family/name, family/name]",
                    say("plan.pool.empty.next"));
            return Optional.empty();
        }
        return Optional.of(new Source.Pool(members));
    }

    private Support support(Fields fields, boolean example) {
        Optional<Yaml.Scalar> written = fields.text("support");
        Optional<Yaml.Scalar> fade = fields.text("fade");
        Optional<Yaml.Scalar> blank = fields.text("blank");
        String support =
                written.map(Yaml.Scalar::text).orElse(fade.isPresent() || blank.isPresent() ? "faded" : "bare");
        if (!support.equals("faded")) {
            fade.or(() -> blank)
                    .ifPresent(stray -> faults.error(
                            stray.place(), say("plan.fade.unfaded"), "support: faded", say("plan.fade.unfaded.next")));
        }
        switch (support) {
            case "full" -> {
                if (example) {
                    faults.error(
                            written.orElseThrow().place(),
                            say("plan.support.full-example"),
                            say("plan.support.full-example.expected"),
                            say("plan.support.full-example.next"));
                }
                return new Support.Full();
            }
            case "bare" -> {
                return new Support.Bare();
            }
            case "faded" -> {
                return new Support.Faded(fade(fade, blank));
            }
            default -> {
                faults.error(
                        written.orElseThrow().place(),
                        say("plan.support.unknown", "written", support),
                        say("plan.support.unknown.expected"),
                        say("plan.write-one"));
                return new Support.Bare();
            }
        }
    }

    private Support.Fade fade(Optional<Yaml.Scalar> fade, Optional<Yaml.Scalar> blank) {
        int steps =
                blank.flatMap(written -> wholeNumber(written, "blank", 1, 50)).orElse(1);
        String written = fade.map(Yaml.Scalar::text).orElse("forward");
        if (written.startsWith("principle ")) {
            blank.ifPresent(stray -> faults.error(
                    stray.place(),
                    say("plan.fade.principle-blank"),
                    say("plan.fade.principle-blank.expected"),
                    say("plan.fade.principle-blank.next")));
            return new Support.Fade.Principle(
                    written.substring("principle ".length()).strip());
        }
        if (written.equals("backward")) {
            return new Support.Fade.Backward(steps);
        }
        if (!written.equals("forward")) {
            faults.error(
                    fade.orElseThrow().place(),
                    say("plan.fade.unknown", "written", written),
                    say("plan.fade.unknown.expected"),
                    say("plan.write-one"));
        }
        return new Support.Fade.Forward(steps);
    }

    private boolean yesOrNo(Yaml.Scalar written) {
        switch (written.text()) {
            case "yes", "true" -> {
                return true;
            }
            case "no", "false" -> {
                return false;
            }
            default -> {
                faults.error(
                        written.place(),
                        say("plan.yes-or-no", "written", written.text()),
                        say("plan.yes-or-no.expected"),
                        say("plan.write-one"));
                return false;
            }
        }
    }

    Optional<Integer> wholeNumber(Yaml written, String key, int least, int most) {
        if (written instanceof Yaml.Scalar scalar && isDigits(scalar.text())) {
            int value = Integer.parseInt(scalar.text());
            if (value >= least && value <= most) {
                return Optional.of(value);
            }
        }
        faults.error(
                written.place(),
                written instanceof Yaml.Scalar scalar
                        ? say("plan.unfit", "written", scalar.text(), "key", key)
                        : say("plan.unfit.that", "key", key),
                say("plan.whole-number", "least", Integer.toString(least), "most", Integer.toString(most)),
                say("plan.write-number"));
        return Optional.empty();
    }

    private static boolean isDigits(String text) {
        return !text.isEmpty() && text.length() <= 6 && text.chars().allMatch(c -> c >= '0' && c <= '9');
    }

    <T> T choice(Fields fields, String key, Map<String, T> choices, T otherwise) {
        Optional<Yaml.Scalar> written = fields.text(key);
        if (written.isEmpty()) {
            return otherwise;
        }
        T chosen = choices.get(written.get().text());
        if (chosen == null) {
            faults.error(
                    written.get().place(),
                    say("plan.unfit", "written", written.get().text(), "key", key),
                    Told.either(List.copyOf(choices.keySet())),
                    say("plan.write-one-or-none"));
            return otherwise;
        }
        return chosen;
    }

    private static Map<String, Plan.Lettered> lettered() {
        Map<String, Plan.Lettered> choices =
                ordered("all", Plan.Lettered.ALL, "every second", Plan.Lettered.EVERY_SECOND);
        choices.put("none", Plan.Lettered.NONE);
        return choices;
    }

    static <T> Map<String, T> ordered(String first, T firstMeaning, String second, T secondMeaning) {
        Map<String, T> choices = new LinkedHashMap<>();
        choices.put(first, firstMeaning);
        choices.put(second, secondMeaning);
        return choices;
    }
}
