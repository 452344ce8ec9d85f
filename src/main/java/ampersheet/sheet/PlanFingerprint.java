package ampersheet.sheet;

import ampersheet.sheet.Plan.Entry;
import ampersheet.sheet.Plan.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** By what a plan's sheets are told from those of another. */
final class PlanFingerprint {
    private PlanFingerprint() {}

    /** Of all by which a sheet is another one. */
    static String of(Plan plan) {
        List<String> parts = new ArrayList<>(List.of(
                "plan",
                plan.title(),
                plan.seed(),
                plan.paper().name(),
                plan.language().code(),
                plan.symbols().name(),
                plan.decimal().name(),
                Boolean.toString(plan.unitsPrinted()),
                plan.order().name(),
                levels(plan)));
        parts.addAll(entries(plan));
        parts.addAll(plan.dealing().stored());
        parts.addAll(plan.portion().stored());
        return Fingerprint.of(parts);
    }

    /**
     * Only of what says which problems a seat has, with which numbers and in which order.
     *
     * @param sources from which it draws
     */
    static String ofProblems(Plan plan, Set<String> sources) {
        List<String> parts =
                new ArrayList<>(List.of("problems", plan.seed(), plan.order().name(), levels(plan)));
        parts.addAll(entries(plan));
        parts.addAll(plan.dealing().stored());
        parts.addAll(plan.portion().drawn(sources, plan.parts().isPresent()));
        return Fingerprint.of(parts);
    }

    private static String levels(Plan plan) {
        return "["
                + String.join(", ", plan.levels().stream().map(String::valueOf).toList()) + "]";
    }

    private static List<String> entries(Plan plan) {
        List<String> parts = new ArrayList<>();
        for (Entry entry : plan.entries()) {
            parts.add(named(entry.source()));
            parts.add(Integer.toString(entry.count()));
            parts.add(entry.support().stored());
            parts.add(Boolean.toString(entry.example()));
            if (!entry.fixed().isEmpty()) {
                parts.addAll(List.of("given", FixedGivens.told(entry.fixed())));
            }
        }
        return parts;
    }

    private static String named(Source source) {
        if (source instanceof Source.One one) {
            return "template " + one.template();
        } else if (source instanceof Source.Pool pool) {
            return "pool "
                    + String.join(
                            " ",
                            pool.templates().stream().map(Source.One::template).toList());
        } else if (source instanceof Source.Skill skill) {
            return "skill " + skill.skill();
        }
        throw new IllegalStateException("a source nobody told of: " + source);
    }
}
