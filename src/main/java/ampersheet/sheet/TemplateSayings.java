package ampersheet.sheet;

import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.List;
import java.util.Optional;

/** What a template says about itself that sheets and keys print: the one place where it is asked. */
final class TemplateSayings {
  /** The table of wire gauges, as a template names it. */
  static final String WIRE_GAUGES = "wire gauges";

  private TemplateSayings() {}

  /** What the problem takes for granted, and what happens really. */
  static List<Document.Assumption> assumptions(ProblemTemplate template) {
    return List.of(); // TO WIRE: template.assumptions() as Document.Assumption(that, really)
  }

  /** Tables that a sheet with this template prints. */
  static List<String> tables(ProblemTemplate template) {
    return List.of(); // TO WIRE: template.tables()
  }

  /** What both routes to a value rest on; empty where they share nothing. */
  static Optional<String> shared(Proof proof) {
    return Optional.empty(); // TO WIRE: proof.shares()
  }
}
