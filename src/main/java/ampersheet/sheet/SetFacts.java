package ampersheet.sheet;

import static ampersheet.source.Told.say;

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
            warnings.add(say("plan.facts.nothing-to-work"));
        }
        if (minutes > LONG) {
            warnings.add(
                    say("plan.facts.long", "minutes", Integer.toString(minutes), "sitting", Integer.toString(LONG)));
        }
        if (pairs > 1 && mixed == 0) {
            warnings.add(say("plan.facts.one-topic"));
        } else if (pairs > 1 && mixed < pairs) {
            warnings.add(say("plan.facts.neighbours"));
        }
        if (levels.size() == 1 && problems > 2) {
            warnings.add(say(
                    "plan.facts.one-level",
                    "level",
                    Integer.toString(levels.keySet().iterator().next())));
        }
        return warnings;
    }
}
