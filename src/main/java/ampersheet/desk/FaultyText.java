package ampersheet.desk;

import ampersheet.diagnostic.Diagnostic;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A text with its faults, each told once: below the line where it stands, or before the text where it stands in none.
 */
final class FaultyText {
    /** Of a long text, lines beside those with a fault. */
    private static final int AROUND = 2;

    private static final int LONG = 60;

    private FaultyText() {}

    /**
     * For the part {@code marked} of a page.
     *
     * @param file by which the faults name it
     */
    static Map<String, Object> of(String file, String text, List<Diagnostic> faults) {
        String[] all = text.split("\n", -1);
        List<Diagnostic> within = faults.stream()
                .filter(fault -> fault.place().file().equals(file))
                .filter(fault -> fault.place().line() > 0 && fault.place().line() <= all.length)
                .toList();
        List<Map<String, Object>> lines = new ArrayList<>();
        for (int i = 0; i < all.length && !within.isEmpty(); i++) {
            int line = i + 1;
            if (all.length > LONG
                    && within.stream().noneMatch(fault -> Math.abs(fault.place().line() - line) <= AROUND)) {
                continue;
            }
            List<Diagnostic> here = within.stream()
                    .filter(fault -> fault.place().line() == line)
                    .toList();
            lines.add(Pages.values("number", line, "text", all[i], "faults", Frame.told(here)));
        }
        List<Diagnostic> others =
                faults.stream().filter(fault -> !within.contains(fault)).toList();
        return Pages.values("count", Frame.told(faults).size(), "others", Frame.told(others), "lines", lines);
    }
}
