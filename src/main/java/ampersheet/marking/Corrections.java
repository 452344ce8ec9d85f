package ampersheet.marking;

import ampersheet.answer.AnswerKey;
import ampersheet.formula.Values;
import ampersheet.problem.Attempt;
import ampersheet.problem.Refusal;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Quantity;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Templates that were corrected after the sheets had been issued. The learner answered the numbers on her sheet, so these
 * are worked again by the corrected template; drawing anew would give others.
 */
final class Corrections {
  /** Without them a key is not known to be right. */
  private static final Set<Refusal> UNPROVEN = Set.of(Refusal.ROUTES_DISAGREE, Refusal.MODEL_UNSOLVED,
      Refusal.NO_CASE, Refusal.NOT_A_NUMBER, Refusal.ABOVE_EXTRA_LOW_VOLTAGE);

  private final TemplateLibrary library;
  private final Map<String, Workshop> workshops = new TreeMap<>();

  Corrections(TemplateLibrary library) {
    this.library = library;
  }

  /** What a problem becomes. */
  sealed interface Corrected {
    record Same() implements Corrected {}

    record Anew(SheetProblem problem) implements Corrected {}

    /** @param why one sentence */
    record ByHand(String why) implements Corrected {}
  }

  Corrected of(SheetProblem issued) {
    String name = issued.template().name();
    if (!library.has(name)) {
      return new Corrected.ByHand("The corrected templates have no " + name + ".");
    }
    ProblemTemplate template = library.template(name);
    if (template.fingerprint().equals(issued.template().fingerprint())) {
      return new Corrected.Same();
    }
    Optional<Values> givens = givens(issued, template);
    if (givens.isEmpty()) {
      return new Corrected.ByHand("The corrected template has givens that the sheet does not show.");
    }
    Attempt attempt = workshops.computeIfAbsent(name, n -> new Workshop(template)).workChosen(givens.get());
    if (attempt instanceof Attempt.Refused refused) {
      return new Corrected.ByHand("The corrected template cannot be worked with this sheet's numbers: "
          + refused.detail() + ".");
    }
    Attempt.Worked worked = (Attempt.Worked) attempt;
    Optional<Attempt.Refused> unproven =
        worked.notes().stream().filter(note -> UNPROVEN.contains(note.reason())).findFirst();
    if (unproven.isPresent()) {
      return new Corrected.ByHand("With this sheet's numbers the corrected template has no proven key: "
          + unproven.get().detail() + ".");
    }
    SheetProblem anew = new SheetProblem(issued.number(), issued.support(), issued.example(), issued.plan(),
        worked.problem());
    return places(anew).equals(places(issued)) ? new Corrected.Anew(anew)
        : new Corrected.ByHand("The corrected template asks for other things than the sheet does.");
  }

  /** The sheet's own numbers; constants that the correction brought in are taken from it. */
  private static Optional<Values> givens(SheetProblem issued, ProblemTemplate template) {
    Values shown = issued.problem().givens();
    Map<String, Quantity> quantities = new LinkedHashMap<>();
    Map<String, String> words = new LinkedHashMap<>();
    for (ProblemTemplate.Given given : template.givens()) {
      if (given instanceof ProblemTemplate.QuantityGiven quantity) {
        Quantity value = shown.quantities().get(given.name());
        if (value == null || !value.dimension().equals(quantity.unit().dimension())) {
          return Optional.empty();
        }
        quantities.put(given.name(), value);
      } else if (shown.words().containsKey(given.name())) {
        words.put(given.name(), shown.words().get(given.name()));
      } else {
        return Optional.empty();
      }
    }
    for (ProblemTemplate.Constant constant : template.constants()) {
      quantities.put(constant.name(), shown.quantities().getOrDefault(constant.name(),
          new Quantity(constant.si(), constant.unit().dimension())));
    }
    return Optional.of(Values.of(quantities, words));
  }

  private static List<String> places(SheetProblem problem) {
    return problem.places().stream().map(Corrections::place).toList();
  }

  private static String place(AnswerKey key) {
    return key.question() + " " + key.step() + " " + key.unit().dimension();
  }
}
