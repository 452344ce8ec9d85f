package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.sheet.Plan.Entry;
import ampersheet.sheet.Plan.Source;
import ampersheet.source.Faults;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.util.HexFormat;
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
        writer.line("title", quoted(plan.title()));
        writer.line("seed", quoted(plan.seed()));
        if (!plan.heading().date().isEmpty()) {
            writer.line("date", quoted(plan.heading().date()));
        }
        if (!plan.heading().due().isEmpty()) {
            writer.line("due", quoted(plan.heading().due()));
        }
        writer.line("order", plan.order() == Plan.Order.MIXED ? "mixed" : "as listed");
        said.forEach(entry -> writer.line(entry.key().text(), flow(entry.value())));
        writer.out.append("problems:\n");
        plan.entries()
                .forEach(entry -> writer.out.append("  - ").append(entry(entry)).append('\n'));
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
    }

    private static String flow(Map<?, ?> map) {
        StringJoiner text = new StringJoiner(", ", "{", "}");
        map.forEach((key, value) -> text.add(quoted(key.toString()) + ": " + value));
        return text.toString();
    }

    private static String entry(Entry entry) {
        StringJoiner text = new StringJoiner(", ", "{", "}");
        text.add(source(entry.source()));
        if (entry.count() > 1) {
            text.add("count: " + entry.count());
        }
        if (entry.example()) {
            text.add("example: yes");
        }
        support(entry.support(), text);
        if (!entry.fixed().isEmpty()) {
            StringJoiner fixed = new StringJoiner(", ", "given: {", "}");
            entry.fixed().forEach(given -> fixed.add(quoted(given.name()) + ": " + quoted(given.value())));
            text.add(fixed.toString());
        }
        return text.toString();
    }

    private static String source(Source source) {
        if (source instanceof Source.One one) {
            return "template: " + quoted(one.template());
        } else if (source instanceof Source.Pool pool) {
            StringJoiner members = new StringJoiner(", ", "pool: [", "]");
            pool.templates().forEach(one -> members.add(quoted(one.template())));
            return members.toString();
        }
        return "skill: " + quoted(((Source.Skill) source).skill());
    }

    private static void support(Support support, StringJoiner text) {
        if (support instanceof Support.Full) {
            text.add("support: full");
        } else if (support instanceof Support.Faded faded) {
            text.add("support: faded");
            if (faded.fade() instanceof Support.Fade.Forward forward) {
                text.add("fade: forward").add("blank: " + forward.blank());
            } else if (faded.fade() instanceof Support.Fade.Backward backward) {
                text.add("fade: backward").add("blank: " + backward.blank());
            } else if (faded.fade() instanceof Support.Fade.Principle principle) {
                text.add("fade: " + quoted("principle " + principle.name()));
            }
        }
    }

    /** What was read once, on one line. */
    static String flow(Yaml value) {
        if (value instanceof Yaml.Scalar scalar) {
            return scalar.isAbsent() ? "" : quoted(scalar.text());
        } else if (value instanceof Yaml.Sequence list) {
            StringJoiner text = new StringJoiner(", ", "[", "]");
            list.items().forEach(item -> text.add(flow(item)));
            return text.toString();
        }
        StringJoiner text = new StringJoiner(", ", "{", "}");
        ((Yaml.Mapping) value)
                .entries()
                .forEach(entry -> text.add(quoted(entry.key().text()) + ": " + flow(entry.value())));
        return text.toString();
    }

    /** In double quotes, in which every letter has a spelling. */
    static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints().forEach(letter -> {
            if (letter == '"' || letter == '\\') {
                quoted.append('\\').appendCodePoint(letter);
            } else if (letter < ' '
                    || letter == 0x7f
                    || letter >= 0x80 && letter < 0xa0
                    || letter == 0x2028
                    || letter == 0x2029
                    || letter == 0xfeff) {
                quoted.append("\\u").append(HexFormat.of().toHexDigits((char) letter));
            } else {
                quoted.appendCodePoint(letter);
            }
        });
        return quoted.append('"').toString();
    }
}
