package ampersheet.issue;

import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.render.qti.ExchangeItem;
import ampersheet.render.qti.ExchangePackage;
import ampersheet.sheet.Composer;
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
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/**
 * A plan becomes a package of the open exchange format: for each skill a pool of variants with frozen numbers, made and
 * proven by the same engine as sheets, but with numbers of their own, so that nobody finds homework answered in it.
 */
public final class Exchange {
    private Exchange() {}

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
    public static Packed pack(Plan plan, TemplateLibrary templates, int variants, Path out, Output.Terms terms) {
        ProblemSet set = ProblemSet.of(plan, templates);
        try (Output output = Output.file(out, ".zip", terms)) {
            output.require(List.of(out));
            return pack(set, variants, out, output);
        }
    }

    private static Packed pack(ProblemSet set, int variants, Path out, Output output) {
        Plan plan = set.plan();
        List<String> leftOut = new ArrayList<>();
        Map<String, Draws> draws = new LinkedHashMap<>();
        set.sources().forEach((source, template) -> {
            if (!template.designs().isEmpty()) {
                leftOut.add(source + ": several answers are right together, which the format cannot judge");
            } else if (draws.putIfAbsent(template.name(), new Draws(new Workshop(template), plan.seed() + "/exchange"))
                    != null) {
                leftOut.add(source + ": the template is packed once, with the givens that the plan fixes first");
            }
        });
        List<ExchangePackage.Pool> pools = new ArrayList<>();
        bySkill(set).forEach((skill, entry) -> {
            List<ExchangeItem> items = new ArrayList<>();
            for (String template : entry.templates()) {
                for (int variant = 0; draws.containsKey(template) && variant < variants; variant++) {
                    items.add(item(plan, draws.get(template).draw(variant), variant));
                }
            }
            if (items.isEmpty()) {
                leftOut.add("the skill “" + skill + "”: nothing of it is left");
            } else {
                pools.add(new ExchangePackage.Pool(skill, Math.min(entry.problems(), items.size()), items));
            }
        });
        Map<String, Integer> counts = new LinkedHashMap<>();
        pools.forEach(pool -> counts.put(pool.title(), pool.items().size()));
        int items = counts.values().stream().mapToInt(Integer::intValue).sum();
        if (items > 0) {
            output.write(
                    out,
                    ExchangePackage.of(
                            "ampersheet-" + set.id(1).toString().substring(0, 5).toLowerCase(Locale.ROOT),
                            plan.title(),
                            plan.language(),
                            pools)::write);
        }
        output.finish();
        return new Packed(items, counts, leftOut);
    }

    /** @param problems how many of the skill the plan wants */
    private record Wanted(TreeSet<String> templates, int problems) {}

    /** In the order in which the plan first comes to them. */
    private static Map<String, Wanted> bySkill(ProblemSet set) {
        Map<String, ProblemTemplate> templates = new LinkedHashMap<>();
        set.templates().forEach(template -> templates.put(template.name(), template));
        Map<String, Wanted> wanted = new LinkedHashMap<>();
        for (List<String> pool : set.pools()) {
            TreeSet<String> skills = new TreeSet<>();
            pool.forEach(name -> skills.add(templates.get(name).skill()));
            String title = String.join("; ", skills);
            Wanted before = wanted.getOrDefault(title, new Wanted(new TreeSet<>(), 0));
            TreeSet<String> names = new TreeSet<>(before.templates());
            names.addAll(pool);
            wanted.put(title, new Wanted(names, before.problems() + 1));
        }
        return wanted;
    }

    private static ExchangeItem item(Plan plan, Problem problem, int variant) {
        Plan printed = new Plan(
                plan.file(),
                plan.written(),
                plan.title(),
                plan.seeding(),
                plan.paper(),
                plan.language(),
                plan.symbols(),
                plan.decimal(),
                true,
                plan.order(),
                plan.levels(),
                plan.entries(),
                plan.marking());
        SheetProblem bare = new SheetProblem(0, new Support.Bare(), false, printed, problem);
        String number = Integer.toString(variant + 1);
        String identifier = problem.template().name().replace('/', '-') + "-"
                + "0".repeat(Math.max(0, 3 - number.length())) + number;
        return new ExchangeItem(
                identifier, plan.language(), Composer.onItsOwn(bare), bare.key(), Composer.working(bare));
    }
}
