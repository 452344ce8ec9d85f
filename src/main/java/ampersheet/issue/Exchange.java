package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.answer.DesignKey;
import ampersheet.answer.RightDesigns;
import ampersheet.language.Language;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.render.qti.ExchangeItem;
import ampersheet.render.qti.ExchangePackage;
import ampersheet.render.qti.ExchangeSession;
import ampersheet.render.qti.QtiVersion;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A plan becomes a package of the open exchange format: for each skill, and each way the plan shows it, a pool of
 * variants with frozen numbers, made and proven by the same engine as sheets, but with numbers of their own, so that
 * nobody finds homework answered in it.
 */
public final class Exchange {
    /** Choices of a design that are tried one after the other, in some seconds; more would be too many to list. */
    private static final int MOST_TRIED = 20_000;

    private static final int MOST_RIGHT = 100;

    private final ProblemSet set;
    private final Plan plan;
    private final String code;
    private final int variants;
    private final Set<String> leftOut = new LinkedHashSet<>();
    private final Map<String, Draws> draws = new LinkedHashMap<>();
    private final Map<String, List<Shown>> shown = new LinkedHashMap<>();

    private Exchange(ProblemSet set, int variants) {
        this.set = set;
        this.plan = set.plan().printingUnits();
        this.code = set.longCode().toLowerCase(Locale.ROOT);
        this.variants = variants;
    }

    /**
     * What was packed.
     *
     * @param pools titles of the pools with the number of items in each
     * @param leftOut what the format cannot say, each in a sentence
     */
    public record Packed(int items, Map<String, Integer> pools, List<String> leftOut) {
        public Packed {
            pools = Collections.unmodifiableMap(new LinkedHashMap<>(pools));
            leftOut = List.copyOf(leftOut);
        }
    }

    /**
     * @param variants of each template
     * @throws ampersheet.diagnostic.DiagnosticException with all faults of plan and templates, if a template has too
     *     few variants, or if the file cannot be written
     */
    public static Packed pack(
            Plan plan, TemplateLibrary templates, int variants, QtiVersion version, Path out, Output.Terms terms) {
        ProblemSet set = ProblemSet.of(plan, templates);
        try (Output output = Output.file(out, ".zip", terms)) {
            output.require(List.of(out));
            Exchange exchange = new Exchange(set, variants);
            Optional<ExchangePackage.Contents> contents = exchange.contents(terms.progress());
            contents.ifPresent(packed -> output.write(out, ExchangePackage.of(packed, version)::write));
            output.finish();
            return exchange.packed(contents);
        }
    }

    /** What a plan's package would hold; empty if nothing of it can be packed. */
    static Optional<ExchangePackage.Contents> contents(ProblemSet set, int variants) {
        return new Exchange(set, variants).contents(Progress.UNWATCHED);
    }

    private Packed packed(Optional<ExchangePackage.Contents> contents) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        contents.ifPresent(packed -> packed.pools()
                .forEach(pool -> counts.put(pool.title(), pool.items().size())));
        return new Packed(counts.values().stream().mapToInt(Integer::intValue).sum(), counts, List.copyOf(leftOut));
    }

    private Optional<ExchangePackage.Contents> contents(Progress progress) {
        List<ExchangePackage.Pool> pools = new ArrayList<>();
        Map<Kind, Entry> wanted = bySkill();
        wanted.forEach((kind, entry) -> entry.sources()
                .forEach(source -> shown.computeIfAbsent(template(source).name(), first -> new ArrayList<>())
                        .add(new Shown(source, kind))));
        int sources = wanted.values().stream()
                .mapToInt(entry -> entry.sources().size())
                .sum();
        wanted.forEach((kind, entry) -> {
            List<ExchangeItem> items = new ArrayList<>();
            for (String source : entry.sources()) {
                items.addAll(items(new Shown(source, kind)));
                progress.made(say("folder.making.lessons"), sources);
            }
            if (items.isEmpty()) {
                leftOut.add(say("folder.exchange.skill", "skill", kind.title(plan.language())));
            } else {
                pools.add(new ExchangePackage.Pool(
                        kind.title(plan.language()), Math.min(entry.problems(), items.size()), items));
            }
        });
        Plan.Delivery delivery = plan.delivery();
        return pools.isEmpty()
                ? Optional.empty()
                : Optional.of(new ExchangePackage.Contents(
                        "ampersheet-" + code,
                        plan.title(),
                        new ExchangeSession(delivery.attempts(), delivery.feedback()),
                        pools));
    }

    /** Problems of one skill that are shown alike. */
    private record Kind(String skills, Support support, boolean example) {
        String title(Language language) {
            if (support instanceof Support.Faded) {
                return example
                        ? language.say("problem.pool.faded-example", "skills", skills)
                        : language.say("problem.pool.faded", "skills", skills);
            }
            return example
                    ? language.say("problem.pool.example", "skills", skills)
                    : language.say("problem.pool", "skills", skills);
        }
    }

    /** What a source gives of one kind. */
    private record Shown(String source, Kind kind) {
        /** How many problems one of its items shows. */
        int draws() {
            return kind.example() ? 2 : 1;
        }
    }

    /** @param problems how many of the kind the plan wants */
    private record Entry(TreeSet<String> sources, int problems) {}

    /** In the order in which the plan first comes to them. */
    private Map<Kind, Entry> bySkill() {
        Map<Kind, Entry> wanted = new LinkedHashMap<>();
        for (ProblemSet.Wanted place : set.wanted()) {
            if (place.support() instanceof Support.Full) {
                place.sources().forEach(source -> leftOut.add(say("folder.exchange.worked-in-full", "source", source)));
                continue;
            }
            TreeSet<String> skills = new TreeSet<>();
            place.sources().forEach(source -> skills.add(template(source).skill()));
            Kind kind = new Kind(String.join("; ", skills), place.support(), place.example());
            Entry before = wanted.getOrDefault(kind, new Entry(new TreeSet<>(), 0));
            TreeSet<String> sources = new TreeSet<>(before.sources());
            sources.addAll(place.sources());
            wanted.put(kind, new Entry(sources, before.problems() + 1));
        }
        return wanted;
    }

    private ProblemTemplate template(String source) {
        return set.sources().get(source);
    }

    private List<ExchangeItem> items(Shown here) {
        List<ExchangeItem> items = new ArrayList<>();
        for (int variant = 0; variant < variants; variant++) {
            int next = firstDraw(here, variant);
            Optional<ProblemBlock> example = Optional.empty();
            if (here.kind().example()) {
                example =
                        Optional.of(lettered(Composer.onItsOwn(drawn(here.source(), new Support.Full(), true, next))));
                next++;
            }
            SheetProblem problem = drawn(here.source(), here.kind().support(), false, next);
            Optional<List<RightDesigns>> designs = designs(problem);
            if (designs.isEmpty()) {
                leftOut.add(say("folder.exchange.too-many-right", "source", here.source()));
                return List.of();
            }
            items.add(item(identifier(here, variant), problem, example, designs.get()));
        }
        return items;
    }

    /**
     * Nothing else of the package shows it, and it is the same whatever number of variants is asked for: of two
     * packages of one plan, what has one name is one item.
     */
    private int firstDraw(Shown here, int variant) {
        int all = 0;
        int before = 0;
        for (Shown other : shown.get(template(here.source()).name())) {
            if (other.equals(here)) {
                before = all;
            }
            all += other.source().equals(here.source()) ? other.draws() : 0;
        }
        return variant * all + before;
    }

    private String identifier(Shown here, int variant) {
        String template = template(here.source()).name();
        List<Shown> all = shown.get(template);
        String number = Integer.toString(variant * all.size() + all.indexOf(here) + 1);
        return "amp-" + code + "-" + template.replace('/', '-') + "-" + "0".repeat(Math.max(0, 3 - number.length()))
                + number;
    }

    /** Its questions by letters alone, for it stands on no sheet: {@code a} for {@code q0a}, nothing for {@code q0}. */
    private static ProblemBlock lettered(ProblemBlock example) {
        List<Block> blocks = new ArrayList<>();
        for (Block block : example.blocks()) {
            blocks.add(
                    block instanceof Prose prose
                            ? new Prose(prose.markdown().replace("**q0** ", "").replace("**q0", "**"))
                            : block);
        }
        return example.holding(blocks);
    }

    private SheetProblem drawn(String source, Support support, boolean example, int index) {
        Draws from = draws.computeIfAbsent(
                source, first -> new Draws(new Workshop(template(source)), plan.seed() + "/exchange"));
        return new SheetProblem(0, support, example, plan, from.draw(index));
    }

    private static Optional<List<RightDesigns>> designs(SheetProblem problem) {
        List<RightDesigns> listed = new ArrayList<>();
        for (DesignKey design : problem.key().designs()) {
            Optional<RightDesigns> right = RightDesigns.of(problem.key(), design, MOST_TRIED, MOST_RIGHT);
            if (right.isEmpty()) {
                return Optional.empty();
            }
            listed.add(right.get());
        }
        return Optional.of(listed);
    }

    private ExchangeItem item(
            String identifier, SheetProblem problem, Optional<ProblemBlock> example, List<RightDesigns> designs) {
        ProblemTemplate template = problem.template();
        return new ExchangeItem(
                identifier,
                new ExchangeItem.About(plan.language(), template.skill(), template.level(), template.teaches()),
                new ExchangeItem.Shown(Composer.onItsOwn(problem), example, Composer.working(problem), plan.decimal()),
                new ExchangeItem.Asked(
                        problem.places(),
                        problem.key(),
                        problem.places().stream()
                                .map(key -> plan.marking().marks(template.name(), key.step()))
                                .toList(),
                        plan.marking().credits().tooCoarse(),
                        designs));
    }
}
