package ampersheet.command;

import java.util.stream.Stream;

/**
 * Lines that begin with a label each, one below the other; what they say stands in one column.
 *
 * @param width of the longest label
 */
record LabelColumn(int width) {
    static LabelColumn of(String... labels) {
        return new LabelColumn(Stream.of(labels).mapToInt(String::length).max().orElse(0));
    }

    String line(String label, String text) {
        return label + " ".repeat(Math.max(0, width - label.length())) + "  " + text;
    }
}
