package ampersheet.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Fields of a form or an address, each with its values in their order. */
record Form(Map<String, List<String>> fields) {
    static final Form NONE = new Form(Map.of());

    Form {
        fields = new TreeMap<>(fields);
    }

    /** The first value; empty if there is none. */
    String text(String name) {
        List<String> values = fields.getOrDefault(name, List.of());
        return values.isEmpty() ? "" : values.get(0).strip();
    }

    /** As it was sent, with its line ends made plain and its blanks kept. */
    String lines(String name) {
        List<String> values = fields.getOrDefault(name, List.of());
        return values.isEmpty() ? "" : values.get(0).replace("\r\n", "\n").replace('\r', '\n');
    }

    List<String> all(String name) {
        return List.copyOf(fields.getOrDefault(name, List.of()));
    }

    boolean has(String name) {
        return !text(name).isEmpty();
    }

    /** A whole number of at most six digits. */
    OptionalInt number(String name) {
        String text = text(name);
        return text.matches("[0-9]{1,6}") ? OptionalInt.of(Integer.parseInt(text)) : OptionalInt.empty();
    }

    int number(String name, int least, int most, int otherwise) {
        int number = number(name).orElse(otherwise);
        return number < least || number > most ? otherwise : number;
    }

    /** The same with more values. */
    Form and(Map<String, List<String>> more) {
        Map<String, List<String>> all = new TreeMap<>(fields);
        more.forEach((name, values) -> {
            List<String> joined = new ArrayList<>(all.getOrDefault(name, List.of()));
            joined.addAll(values);
            all.put(name, joined);
        });
        return new Form(all);
    }
}
