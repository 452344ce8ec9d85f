package ampersheet.render.markdown;

import java.util.ArrayList;
import java.util.List;

/** Paragraphs with an empty line between them. */
final class Page {
    private final StringBuilder out = new StringBuilder();

    /** @param lines one or several lines */
    void paragraph(String lines) {
        if (!out.isEmpty()) {
            out.append('\n');
        }
        out.append(lines).append('\n');
    }

    /** The same with every line moved in: code, or what belongs to a list item. */
    void indented(int columns, String lines) {
        List<String> moved = new ArrayList<>();
        for (String line : lines.split("\n", -1)) {
            moved.add(line.isEmpty() ? "" : " ".repeat(columns) + line);
        }
        paragraph(String.join("\n", moved));
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
