package ampersheet.reference;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One published value, or several of one example, and what the program makes of the same numbers.
 *
 * @param file plain name of the file it stands in
 * @param status {@code read}, {@code formula-of-standard} or {@code from-memory}
 * @param note why it is entered as it is; may be empty
 * @param expected published values in SI units, by what is measured
 * @param within relative gap allowed; wide enough for the rounding of the publication
 */
record ReferenceCheck(
        String file,
        String id,
        String what,
        String source,
        String status,
        String grade,
        String note,
        Subject subject,
        Map<String, List<Double>> expected,
        double within) {
    ReferenceCheck {
        expected = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(expected));
    }

    /** Sentences on everything that does not agree; empty when all does. */
    List<String> disagreements(Measured measured) {
        List<String> found = new ArrayList<>(measured.faults());
        expected.forEach((formula, published) -> {
            List<Double> values = measured.values(formula);
            if (values.size() != published.size()) {
                found.add(formula + ": published " + published.size() + " values, found " + values.size());
                return;
            }
            for (int i = 0; i < published.size(); i++) {
                double gap = Math.abs(values.get(i) - published.get(i));
                boolean agrees = gap <= within * Math.abs(published.get(i));
                if (!agrees) {
                    found.add(formula + (published.size() > 1 ? " [" + i + "]" : "") + ": published " + published.get(i)
                            + ", found " + values.get(i) + ", apart by " + gap / Math.abs(published.get(i))
                            + " of it; allowed " + within);
                }
            }
        });
        return found;
    }

    /** The whole story, for whoever has to find out who is right. */
    String told(List<String> disagreements) {
        return id + " (" + ReferenceFiles.FOLDER + "/" + file + "): " + what + "\n  source: " + source + "\n  status: "
                + status + ", grade " + grade + (note.isEmpty() ? "" : "\n  note: " + note) + "\n  run as: " + subject
                + "\n  " + String.join("\n  ", disagreements);
    }
}
