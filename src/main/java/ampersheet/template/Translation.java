package ampersheet.template;

import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Puts the words of another language into a template before it is read. The file of a language mirrors that of the
 * template, with its texts only: an item of a list says by one of its other keys which it stands for ({@code id: R},
 * {@code of: P}, {@code load: M1}), or stands in the same place.
 *
 * <p>Formulas, numbers and names can so not differ from the template's: there is one template, with words of several
 * languages. Whatever a text is missing for or stands for nothing is a fault at its place.
 */
final class Translation {
    /** Keys whose values are words that somebody reads. */
    static final Set<String> TEXTS = Set.of(
            "title",
            "meaning",
            "because",
            "prompt",
            "says",
            "otherwise",
            "text",
            "that",
            "really",
            "named",
            "shares",
            "caption",
            "name",
            "label");

    /** Beside the words of a given: what each is called. */
    private static final String WORDS = "words";

    /** What a part or node is called in a figure, which may be its own name in the template. */
    private static final String CAPTION = "caption";

    /** The same unit, as the language writes it. */
    private static final String UNIT = "unit";

    /** Where its letters or its index are others: U_ein for V_in. */
    private static final String SYMBOL = "symbol";

    private static final String NEXT = "Compare it with problem.yaml: its texts, and nothing else, stand in this file.";

    private final Faults faults;

    private Translation(Faults faults) {
        this.faults = faults;
    }

    /** The template with the words put in; what does not fit is told. */
    static Yaml.Mapping into(Yaml.Mapping template, Yaml.Mapping words, Faults faults) {
        return new Translation(faults).mapping(template, words, "");
    }

    private Yaml.Mapping mapping(Yaml.Mapping original, Yaml.Mapping words, String where) {
        List<Yaml.Entry> merged = new ArrayList<>();
        Map<String, Yaml.Entry> given = new LinkedHashMap<>();
        words.entries().forEach(entry -> given.put(entry.key().text(), entry));
        for (Yaml.Entry entry : original.entries()) {
            String key = entry.key().text();
            Optional<Yaml.Entry> with = Optional.ofNullable(given.remove(key));
            if (with.isEmpty()) {
                missing(entry.value(), TEXTS.contains(key), words, where + key);
            }
            merged.add(
                    with.isEmpty()
                            ? entry
                            : new Yaml.Entry(
                                    entry.key(),
                                    isWrittenOtherwise(
                                                    key,
                                                    entry.value(),
                                                    with.get().value())
                                            ? with.get().value()
                                            : value(
                                                    entry.value(),
                                                    with.get().value(),
                                                    TEXTS.contains(key),
                                                    where + key)));
        }
        given.forEach((key, entry) -> {
            if (key.equals(WORDS) && original.value("choose").isPresent()
                    || key.equals(SYMBOL) && original.value("meaning").isPresent()
                    || key.equals(CAPTION)) {
                merged.add(entry);
            } else {
                leftOver(entry.key(), where + key);
            }
        });
        return new Yaml.Mapping(merged, original.flow(), original.place());
    }

    private Yaml value(Yaml original, Yaml words, boolean text, String where) {
        if (original instanceof Yaml.Mapping group && words instanceof Yaml.Mapping translated) {
            return mapping(group, translated, where + ": ");
        }
        if (original instanceof Yaml.Sequence list && words instanceof Yaml.Sequence translated) {
            return text ? texts(list, translated, where) : items(list, translated, where);
        }
        if (original instanceof Yaml.Scalar && words instanceof Yaml.Scalar translated && text) {
            return translated;
        }
        boolean same = original instanceof Yaml.Scalar one
                && words instanceof Yaml.Scalar other
                && one.text().equals(other.text());
        if (!same) {
            leftOver(words, where);
        }
        return original;
    }

    /** A list of texts, one for one. */
    private Yaml texts(Yaml.Sequence original, Yaml.Sequence words, String where) {
        if (original.items().size() != words.items().size()) {
            faults.error(
                    words.place(),
                    where + " has " + words.items().size() + " texts here and "
                            + original.items().size() + " in the template",
                    "as many, in the same order",
                    NEXT);
            return original;
        }
        return words;
    }

    private Yaml items(Yaml.Sequence original, Yaml.Sequence words, String where) {
        List<Yaml> merged = new ArrayList<>(original.items());
        Set<Integer> told = new LinkedHashSet<>();
        for (int i = 0; i < words.items().size(); i++) {
            Yaml item = words.items().get(i);
            int at = item instanceof Yaml.Mapping translated ? index(original, translated, i) : -1;
            if (at < 0 || !told.add(at)) {
                leftOver(item, where + ", item " + (i + 1));
                continue;
            }
            merged.set(at, mapping((Yaml.Mapping) original.items().get(at), (Yaml.Mapping) item, where + ": "));
        }
        for (int i = 0; i < merged.size(); i++) {
            if (!told.contains(i)) {
                missing(merged.get(i), false, words, where + ", item " + (i + 1));
            }
        }
        return new Yaml.Sequence(merged, original.place());
    }

    /** Which item is meant: the one that has all the plain keys of this one, else the one in its place. */
    private static int index(Yaml.Sequence original, Yaml.Mapping words, int place) {
        List<Yaml.Entry> names = words.entries().stream()
                .filter(entry -> entry.value() instanceof Yaml.Scalar
                        && !TEXTS.contains(entry.key().text())
                        && !Set.of(UNIT, SYMBOL).contains(entry.key().text()))
                .toList();
        for (int i = 0; i < original.items().size() && !names.isEmpty(); i++) {
            if (original.items().get(i) instanceof Yaml.Mapping item
                    && names.stream()
                            .allMatch(name -> isSame(item.value(name.key().text()), name.value()))) {
                return i;
            }
        }
        boolean here = names.isEmpty()
                && place < original.items().size()
                && original.items().get(place) instanceof Yaml.Mapping;
        return here ? place : -1;
    }

    private static boolean isSame(Optional<Yaml> value, Yaml name) {
        return value.isPresent()
                && value.get() instanceof Yaml.Scalar scalar
                && scalar.text().equals(((Yaml.Scalar) name).text());
    }

    private static boolean isWrittenOtherwise(String key, Yaml original, Yaml words) {
        if (!(original instanceof Yaml.Scalar first && words instanceof Yaml.Scalar second)) {
            return false;
        }
        return key.equals(SYMBOL) || key.equals(UNIT) && isSameUnit(first, second);
    }

    private static boolean isSameUnit(Yaml.Scalar first, Yaml.Scalar second) {
        try {
            Unit one = Unit.parse(first.text());
            Unit other = Unit.parse(second.text());
            return one.dimension().equals(other.dimension())
                    && one.factor() == other.factor()
                    && one.offset() == other.offset();
        } catch (UnitFault notAUnit) {
            return false;
        }
    }

    /** Tells of each text in here that has no words in the other language. */
    private void missing(Yaml original, boolean text, Yaml beside, String where) {
        if (original instanceof Yaml.Mapping group) {
            for (Yaml.Entry entry : group.entries()) {
                String key = entry.key().text();
                missing(entry.value(), TEXTS.contains(key), beside, where + ": " + key);
            }
        } else if (original instanceof Yaml.Sequence list) {
            list.items().forEach(item -> missing(item, text, beside, where));
        } else if (text && hasWords(((Yaml.Scalar) original).text())) {
            faults.error(
                    beside.place(),
                    "there are no words here for " + where + " (\"" + ((Yaml.Scalar) original).text() + "\")",
                    "every text of the template in this language",
                    "Write it.");
        }
    }

    /** A mark such as A or ? is the same in every language. */
    private static boolean hasWords(String text) {
        return text.codePoints().filter(Character::isLetter).count() > 1;
    }

    private void leftOver(Yaml words, String where) {
        faults.error(words.place(), "nothing in the template stands for " + where, "texts of the template", NEXT);
    }
}
