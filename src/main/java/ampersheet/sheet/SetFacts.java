package ampersheet.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What an instructor wants to know of a sheet before it is made.
 *
 * @param problems that are to be worked
 * @param examples that are worked
 * @param minutes that it takes about
 * @param levels how many of the problems are of each level
 * @param mixed pairs of neighbours about different topics, an example and its problem counted as one
 * @param pairs of neighbours
 */
public record SetFacts(int problems, int examples, int minutes, Map<Integer, Integer> levels, int mixed, int pairs) {
    /** An evening; common practice, no source. */
    private static final int LONG = 90;

    public static SetFacts of(Sheet sheet) {
        Map<Integer, Integer> levels = new TreeMap<>();
        List<String> topics = new ArrayList<>();
        int examples = 0;
        int minutes = 0;
        for (SheetProblem problem : sheet.problems()) {
            minutes += Minutes.of(problem);
            if (problem.support() instanceof Support.Full) {
                examples++;
            } else {
                levels.merge(problem.template().level(), 1, Integer::sum);
                topics.add(problem.template().family());
            }
        }
        int mixed = 0;
        for (int i = 1; i < topics.size(); i++) {
            mixed += topics.get(i).equals(topics.get(i - 1)) ? 0 : 1;
        }
        return new SetFacts(topics.size(), examples, minutes, levels, mixed, Math.max(0, topics.size() - 1));
    }

    /** What had better be looked at, each in a sentence. */
    public List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        if (problems == 0) {
            warnings.add("Nothing is left to work on: every problem is a worked example.");
        }
        if (minutes > LONG) {
            warnings.add("This takes about " + minutes + " minutes, more than one sitting of " + LONG
                    + ". Leave something for home, or show more of the working.");
        }
        if (pairs > 1 && mixed == 0) {
            warnings.add("All problems are about one topic. Mixing topics takes more thought, and keeps better.");
        } else if (pairs > 1 && mixed < pairs) {
            warnings.add(
                    "Some neighbours are about the same topic. With order: mixed the sheet mixes them where it can.");
        }
        if (levels.size() == 1 && problems > 2) {
            warnings.add("All problems are of level "
                    + levels.keySet().iterator().next() + ". One that is easier at the start lets everybody begin.");
        }
        return warnings;
    }
}
