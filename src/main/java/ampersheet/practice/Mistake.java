package ampersheet.practice;

import ampersheet.practice.Attempt.Slip;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What went wrong, as often as it did: one cause in one template.
 *
 * @param cause the id of a modelled mistake, or the name of the rung
 * @param times how often
 * @param sure how often the learner was sure
 * @param day when last
 * @param latest the problem in which it last happened, to be tried again
 * @param question where, there
 */
public record Mistake(String cause, int times, int sure, int day, Attempt latest, String question) {
    /** The latest first. */
    static List<Mistake> of(LearnerRecord record) {
        Map<String, Mistake> byCause = new TreeMap<>();
        Map<String, Moment> last = new TreeMap<>();
        for (Attempt attempt : record.attempts().values()) {
            for (Slip slip : attempt.slips()) {
                String name = attempt.template() + " " + slip.cause();
                Mistake known = byCause.get(name);
                boolean later = known == null || slip.at().isAfter(last.get(name));
                int times = known == null ? 1 : known.times + 1;
                int sure = (known == null ? 0 : known.sure) + (slip.sure() == Attempt.Sureness.SURE ? 1 : 0);
                byCause.put(
                        name,
                        later
                                ? new Mistake(slip.cause(), times, sure, slip.day(), attempt, slip.question())
                                : new Mistake(slip.cause(), times, sure, known.day, known.latest, known.question));
                if (later) {
                    last.put(name, slip.at());
                }
            }
        }
        List<String> names = new ArrayList<>();
        for (String name : byCause.keySet()) {
            int at = 0;
            while (at < names.size() && !last.get(name).isAfter(last.get(names.get(at)))) {
                at++;
            }
            names.add(at, name);
        }
        List<Mistake> mistakes = new ArrayList<>();
        for (String name : names) {
            mistakes.add(byCause.get(name));
        }
        return mistakes;
    }
}
