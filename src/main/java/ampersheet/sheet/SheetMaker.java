package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Draws;
import ampersheet.problem.Tally;
import ampersheet.problem.Workshop;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Makes the sheets of a set, any seat without the others. May be used by several threads. */
public final class SheetMaker {
  private final ProblemSet set;
  private final Map<String, Draws> draws = new LinkedHashMap<>();

  /** @throws DiagnosticException if a template cannot be built from the bins of the set */
  public SheetMaker(ProblemSet set) {
    this.set = set;
    List<Diagnostic> faults = new ArrayList<>();
    for (ProblemTemplate template : set.templates()) {
      try {
        draws.put(template.name(), set.parts().isEmpty() ? new Draws(new Workshop(template), set.plan().seed())
            : Draws.buildable(new Workshop(set.parts().get().limit(template)), set.plan().seed(), set.parts().get()));
      } catch (DiagnosticException notBuildable) {
        faults.addAll(notBuildable.diagnostics());
      }
    }
    if (!faults.isEmpty()) {
      throw new DiagnosticException(faults);
    }
  }

  public ProblemSet set() {
    return set;
  }

  /**
   * Finds out whether every template has enough variants for all seats up to the last, so that a class is not begun that
   * cannot be finished.
   *
   * @throws DiagnosticException if not, for all such templates at once
   */
  public void prepare(int lastSeat) {
    List<Diagnostic> faults = new ArrayList<>();
    draws.forEach((template, of) -> {
      try {
        int needed = Math.toIntExact(set.needed(template, lastSeat));
        if (needed > 0) { // a pool has more templates than a small class has seats
          of.draw(needed - 1);
        }
      } catch (DiagnosticException tooFew) {
        faults.addAll(tooFew.diagnostics());
      }
    });
    if (!faults.isEmpty()) {
      throw new DiagnosticException(faults);
    }
  }

  /** @throws DiagnosticException if a template has not enough variants for this seat */
  public Sheet sheet(int seat) {
    List<SheetProblem> problems = new ArrayList<>();
    for (SeatDraw draw : set.draws(seat)) {
      problems.add(new SheetProblem(problems.size() + 1, draw.slot().support(), draw.slot().example(), set.plan(),
          draws.get(draw.template()).draw(Math.toIntExact(draw.index()))));
    }
    return new Sheet(set.id(seat), set.plan(), problems, set.parts());
  }

  /** How many draws were tried, and why some were refused, by template, for the sheets made so far. */
  public Map<String, Tally> tallies() {
    Map<String, Tally> tallies = new LinkedHashMap<>();
    draws.forEach((template, of) -> tallies.put(template, of.tally()));
    return tallies;
  }
}
