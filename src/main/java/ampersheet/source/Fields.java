package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Spelling;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The keys of one group, taken one after another; what is left over at the end was not known. */
public final class Fields {
    /** Of a list in a template: more than its author can look through. */
    private static final int MOST_ITEMS = 200;

    private final Yaml.Mapping mapping;
    private final String what;
    private final Faults faults;
    private final Set<String> known = new LinkedHashSet<>();

    /** @param what the group is, for messages: "a given" */
    public Fields(Yaml.Mapping mapping, String what, Faults faults) {
        this.mapping = mapping;
        this.what = what;
        this.faults = faults;
    }

    public Place place() {
        return mapping.place();
    }

    public boolean has(String key) {
        known.add(key);
        return mapping.value(key).isPresent();
    }

    /** Whether a key stands here that is still read, but that no message offers. */
    public boolean hasUntold(String key) {
        return mapping.value(key).isPresent();
    }

    /** The place of the key, or of the group if it has none. */
    public Place placeOf(String key) {
        return mapping.entries().stream()
                .filter(entry -> entry.key().text().equals(key))
                .map(entry -> entry.key().place())
                .findFirst()
                .orElse(place());
    }

    public Optional<Yaml> value(String key) {
        known.add(key);
        return mapping.value(key);
    }

    /** A text that is not empty. */
    public Optional<Yaml.Scalar> text(String key) {
        return value(key).flatMap(value -> scalar(value, key));
    }

    /** @param expected what should stand there, for the message if the key is missing */
    public Optional<Yaml.Scalar> needText(String key, String expected) {
        need(key, expected);
        return text(key);
    }

    public Optional<Yaml.Sequence> list(String key) {
        Optional<Yaml> value = value(key);
        if (value.isPresent() && !(value.get() instanceof Yaml.Sequence)) {
            wrongKind(value.get(), key, say("plan.yaml.list.expected"));
        }
        return value.filter(Yaml.Sequence.class::isInstance).map(Yaml.Sequence.class::cast);
    }

    public Optional<Yaml.Mapping> group(String key) {
        Optional<Yaml> value = value(key);
        if (value.isPresent() && !(value.get() instanceof Yaml.Mapping)) {
            wrongKind(value.get(), key, say("plan.yaml.keys.expected", "example", "{key: value}"));
        }
        return value.filter(Yaml.Mapping.class::isInstance).map(Yaml.Mapping.class::cast);
    }

    /** The items of a list that are groups; others are faults. */
    public List<Yaml.Mapping> groups(String key, String example) {
        List<Yaml.Mapping> groups = new ArrayList<>();
        list(key).ifPresent(list -> {
            if (list.items().size() > MOST_ITEMS) {
                faults.error(
                        list.items().get(MOST_ITEMS).place(),
                        say(
                                "plan.yaml.list.many",
                                "key",
                                key,
                                "count",
                                Integer.toString(list.items().size())),
                        say("plan.yaml.list.many.expected", "most", Integer.toString(MOST_ITEMS)),
                        say("plan.yaml.list.many.next"));
                return;
            }
            for (Yaml item : list.items()) {
                if (item instanceof Yaml.Mapping group) {
                    groups.add(group);
                } else {
                    faults.error(
                            item.place(),
                            say("plan.yaml.item", "key", key, "kind", item.kind()),
                            say("plan.yaml.keys.expected", "example", example),
                            say("plan.yaml.item.next"));
                }
            }
        });
        return groups;
    }

    public void need(String key, String expected) {
        if (!has(key)) {
            faults.error(
                    place(),
                    say("plan.yaml.missing", "key", key, "what", what),
                    expected,
                    say("plan.yaml.missing.next", "key", key));
        }
    }

    private Optional<Yaml.Scalar> scalar(Yaml value, String key) {
        if (!(value instanceof Yaml.Scalar scalar)) {
            wrongKind(value, key, say("plan.yaml.scalar.expected", "list", "[", "group", "{"));
            return Optional.empty();
        }
        if (scalar.text().isBlank()) {
            faults.error(
                    placeOf(key),
                    say("plan.yaml.no-value", "key", key),
                    say("plan.yaml.no-value.expected"),
                    say("plan.yaml.no-value.next"));
            return Optional.empty();
        }
        return Optional.of(scalar);
    }

    private void wrongKind(Yaml value, String key, String expected) {
        faults.error(
                value instanceof Yaml.Scalar scalar && scalar.isAbsent() ? placeOf(key) : value.place(),
                say("plan.yaml.kind", "key", key, "kind", value.kind()),
                expected,
                say("plan.yaml.kind.next"));
    }

    /** Tells every key that nothing asked for. */
    public void finish() {
        for (Yaml.Entry entry : mapping.entries()) {
            String key = entry.key().text();
            if (known.contains(key)) {
                continue;
            }
            boolean cutOff = mapping.flow() && entry.value() instanceof Yaml.Scalar value && value.isAbsent();
            Optional<String> near = Spelling.nearest(key, known);
            String next = cutOff && near.isEmpty()
                    ? say("plan.yaml.stray.cut-off")
                    : near.map(name -> say("plan.yaml.stray.near", "key", name)).orElse(say("plan.yaml.stray.next"));
            faults.error(
                    entry.key().place(),
                    say("plan.yaml.stray", "key", key, "what", what),
                    say("plan.one-of", "names", String.join(", ", known)),
                    next);
        }
    }
}
