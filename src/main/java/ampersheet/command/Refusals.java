package ampersheet.command;

import ampersheet.problem.Refusal;
import ampersheet.problem.Tally;
import ampersheet.source.Languages;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Tells of refused draws. */
final class Refusals {
    private Refusals() {}

    static Map<Refusal, Long> byReason(Tally tally) {
        return byReason(Map.of("", tally));
    }

    static Map<Refusal, Long> byReason(Map<String, Tally> tallies) {
        Map<Refusal, Long> counts = new EnumMap<>(Refusal.class);
        for (Tally tally : tallies.values()) {
            for (Refusal reason : Refusal.values()) {
                if (tally.refused(reason) > 0) {
                    counts.merge(reason, tally.refused(reason), Long::sum);
                }
            }
        }
        return counts;
    }

    static void write(Json json, Tally tally) {
        json.number("tried", tally.tried()).number("refused", tally.refused());
        json.objects(
                "reasons",
                List.copyOf(byReason(tally).entrySet()),
                (at, reason) -> at.text(
                                "reason",
                                reason.getKey().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                        .text("sentence", reason.getKey().sentence(Languages.ENGLISH))
                        .number("draws", reason.getValue()));
    }
}
