package ampersheet.sheet;

import ampersheet.template.Premises;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.List;
import java.util.Optional;

/** What a template says about itself that sheets and keys print: the one place where it is asked. */
final class TemplateSayings {
    private TemplateSayings() {}

    /** What the problem takes for granted, and what happens really. */
    static List<Document.Assumption> assumptions(ProblemTemplate template) {
        return template.premises().assumptions().stream()
                .map(one -> new Document.Assumption(one.that(), one.really()))
                .toList();
    }

    /** The same for a key, with what each idealisation makes of its answers. */
    static List<Document.Assumption> assumptionsWithShifts(SheetProblem problem) {
        return problem.template().premises().assumptions().stream()
                .map(one -> new Document.Assumption(
                        one.that(),
                        one.really()
                                + one.real()
                                        .map(real -> " " + ShiftText.of(problem, real))
                                        .orElse("")))
                .toList();
    }

    /** Tables that a sheet with this template prints. */
    static List<Premises.Table> tables(ProblemTemplate template) {
        return template.premises().tables();
    }

    /** What both routes to a value rest on; empty where they share nothing. */
    static Optional<String> shared(Proof proof) {
        return proof.shares();
    }
}
