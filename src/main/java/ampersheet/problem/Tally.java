package ampersheet.problem;

import ampersheet.source.Languages;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/** Counts what became of draws. */
public final class Tally {
    /** Refused only after models were built and solved, which takes most of the time. */
    private static final Set<Refusal> BY_MODELS =
            EnumSet.of(Refusal.MODEL_UNSOLVED, Refusal.ROUTES_DISAGREE, Refusal.POINT_OFF_ITS_CURVE);

    private final Map<Refusal, Long> refused = new EnumMap<>(Refusal.class);
    private long accepted;
    private long refusedInARow;
    private long refusedByModelsInARow;

    /** Of draws that were counted elsewhere. */
    public static Tally of(long accepted, Map<Refusal, Long> refused) {
        Tally tally = new Tally();
        tally.accepted = accepted;
        tally.refused.putAll(refused);
        return tally;
    }

    void add(Attempt attempt) {
        if (attempt instanceof Attempt.Refused refusal) {
            refused.merge(refusal.reason(), 1L, Long::sum);
            refusedInARow++;
            refusedByModelsInARow += BY_MODELS.contains(refusal.reason()) ? 1 : 0;
        } else {
            accepted++;
            refusedInARow = 0;
            refusedByModelsInARow = 0;
        }
    }

    Tally copy() {
        Tally copy = new Tally();
        copy.refused.putAll(refused);
        copy.accepted = accepted;
        copy.refusedInARow = refusedInARow;
        copy.refusedByModelsInARow = refusedByModelsInARow;
        return copy;
    }

    public long accepted() {
        return accepted;
    }

    public long refused() {
        return refused.values().stream().mapToLong(Long::longValue).sum();
    }

    public long refused(Refusal reason) {
        return refused.getOrDefault(reason, 0L);
    }

    public long tried() {
        return accepted + refused();
    }

    /** From 0 to 1. */
    public double refusalRate() {
        return tried() == 0 ? 0 : (double) refused() / tried();
    }

    /** Those on which models were solved, while nothing was accepted. */
    long refusedByModelsInARow() {
        return refusedByModelsInARow;
    }

    long refusedInARow() {
        return refusedInARow;
    }

    /** In one line: {@code 12 a requirement of the template does not hold; 3 the two routes disagree}. */
    public String reasons() {
        StringBuilder line = new StringBuilder();
        refused.forEach((reason, count) -> {
            line.append(line.length() == 0 ? "" : "; ")
                    .append(count)
                    .append(" × ")
                    .append(reason.sentence(Languages.ENGLISH));
        });
        return line.length() == 0 ? "none" : line.toString();
    }
}
