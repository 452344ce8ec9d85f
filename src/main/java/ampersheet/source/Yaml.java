package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Place;
import java.util.List;
import java.util.Optional;

/**
 * A YAML file as a tree whose every character has a place. Scalars stay text: {@code no}, {@code 012} and {@code 5.0}
 * mean what the field they stand in says.
 */
public sealed interface Yaml {
    Place place();

    /** What it is, for messages. */
    String kind();

    /**
     * @param text the value, without quotes and escapes
     * @param origin for each character of {@code text}, and for its end, its offset in the file
     */
    record Scalar(String text, boolean plain, SourceText source, int[] origin) implements Yaml {
        @Override
        public Place place() {
            return at(0);
        }

        /** The place of a character of the value. */
        public Place at(int index) {
            return source.at(origin[Math.max(0, Math.min(index, origin.length - 1))]);
        }

        /** Nothing stands there: {@code key:} alone. */
        public boolean isAbsent() {
            return plain && text.isEmpty();
        }

        @Override
        public String kind() {
            return isAbsent() ? say("plan.yaml.kind.nothing") : say("plan.yaml.kind.text");
        }
    }

    record Sequence(List<Yaml> items, Place place) implements Yaml {
        @Override
        public String kind() {
            return say("plan.yaml.kind.list");
        }
    }

    /** @param flow whether it is written in braces */
    record Mapping(List<Entry> entries, boolean flow, Place place) implements Yaml {
        public Optional<Yaml> value(String key) {
            for (Entry entry : entries) {
                if (entry.key().text().equals(key)) {
                    return Optional.of(entry.value());
                }
            }
            return Optional.empty();
        }

        @Override
        public String kind() {
            return say("plan.yaml.kind.group");
        }
    }

    record Entry(Scalar key, Yaml value) {}
}
