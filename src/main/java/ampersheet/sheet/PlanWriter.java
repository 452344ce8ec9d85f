package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.source.Faults;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Predicate;

/** Writes a plan down, so that {@link PlanReader} reads the same plan. */
final class PlanWriter {
    /** Keys that each part has for itself. */
    static final Set<String> OF_ONE = Set.of("title", "seed", "order", "date", "due", "problems", "portion");

    private final StringBuilder out = new StringBuilder();

    private PlanWriter() {}

    /** The keys of a plan's file that say the same of a course of its problems; an order as far as it was written. */
    static List<Yaml.Entry> saidOfCourse(Plan plan) {
        return said(plan, key -> key.equals("order") || !OF_ONE.contains(key));
    }

    /** The keys of a plan's file that say the same of any part of it. */
    static List<Yaml.Entry> said(Plan plan) {
        return said(plan, key -> !OF_ONE.contains(key));
    }

    private static List<Yaml.Entry> said(Plan plan, Predicate<String> wanted) {
        return YamlReader.read(new SourceText(plan.file(), plan.written()), new Faults())
                .filter(Yaml.Mapping.class::isInstance)
                .map(root -> ((Yaml.Mapping) root)
                        .entries().stream()
                                .filter(entry -> wanted.test(entry.key().text()))
                                .toList())
                .orElse(List.of());
    }

    /**
     * A plan that nobody wrote.
     *
     * @param said keys to be taken over as they were said elsewhere
     */
    static String write(Plan plan, List<Yaml.Entry> said) {
        PlanWriter writer = new PlanWriter();
        writer.line("title", EntryText.quoted(plan.title()));
        writer.line("seed", EntryText.quoted(plan.seed()));
        if (!plan.heading().date().isEmpty()) {
            writer.line("date", EntryText.quoted(plan.heading().date()));
        }
        if (!plan.heading().due().isEmpty()) {
            writer.line("due", EntryText.quoted(plan.heading().due()));
        }
        writer.line("order", plan.order() == Plan.Order.MIXED ? "mixed" : "as listed");
        said.forEach(entry -> writer.line(entry.key().text(), flow(entry.value())));
        writer.out.append("problems:\n");
        plan.entries()
                .forEach(entry -> writer.out
                        .append("  - ")
                        .append(EntryText.QUOTED.of(entry))
                        .append('\n'));
        writer.portion(plan.portion());
        return writer.out.toString();
    }

    private void line(String key, String value) {
        out.append(key).append(": ").append(value).append('\n');
    }

    private void portion(Portion portion) {
        if (portion.isWhole()) {
            return;
        }
        out.append("portion:                         # " + say("plan.portion.comment") + "\n");
        if (portion.isOfCourse()) {
            line("  week", portion.week() + " of " + portion.weeks());
        }
        if (portion.retake()) {
            line("  retake", "yes");
        }
        line("  seats", Integer.toString(portion.seats()));
        if (!portion.taken().isEmpty()) {
            line("  taken", flow(portion.taken()));
        }
        if (!portion.only().isEmpty()) {
            line("  only", flow(portion.only()));
        }
        if (portion.variation() > 0) {
            line("  variation", Integer.toString(portion.variation()));
        }
    }

    private static String flow(Map<?, ?> map) {
        StringJoiner text = new StringJoiner(", ", "{", "}");
        map.forEach((key, value) -> text.add(EntryText.quoted(key.toString()) + ": " + value));
        return text.toString();
    }

    /** What was read once, on one line. */
    static String flow(Yaml value) {
        if (value instanceof Yaml.Scalar scalar) {
            return scalar.isAbsent() ? "" : EntryText.quoted(scalar.text());
        } else if (value instanceof Yaml.Sequence list) {
            StringJoiner text = new StringJoiner(", ", "[", "]");
            list.items().forEach(item -> text.add(flow(item)));
            return text.toString();
        }
        StringJoiner text = new StringJoiner(", ", "{", "}");
        ((Yaml.Mapping) value)
                .entries()
                .forEach(entry -> text.add(EntryText.quoted(entry.key().text()) + ": " + flow(entry.value())));
        return text.toString();
    }
}
