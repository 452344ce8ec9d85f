package ampersheet.problem;

import java.util.EnumMap;
import java.util.Map;

/** Counts what became of draws. */
public final class Tally {
  private final Map<Refusal, Long> refused = new EnumMap<>(Refusal.class);
  private long accepted;
  private long refusedInARow;

  void add(Attempt attempt) {
    if (attempt instanceof Attempt.Refused refusal) {
      refused.merge(refusal.reason(), 1L, Long::sum);
      refusedInARow++;
    } else {
      accepted++;
      refusedInARow = 0;
    }
  }

  Tally copy() {
    Tally copy = new Tally();
    copy.refused.putAll(refused);
    copy.accepted = accepted;
    copy.refusedInARow = refusedInARow;
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

  long refusedInARow() {
    return refusedInARow;
  }

  /** In one line: {@code 12 a requirement of the template does not hold; 3 the two routes disagree}. */
  public String reasons() {
    StringBuilder line = new StringBuilder();
    refused.forEach((reason, count) -> {
      line.append(line.length() == 0 ? "" : "; ").append(count).append(" × ").append(reason.sentence());
    });
    return line.length() == 0 ? "none" : line.toString();
  }
}
