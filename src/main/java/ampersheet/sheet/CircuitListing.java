package ampersheet.sheet;

import ampersheet.circuit.SpiceNetlist;
import ampersheet.formula.Evaluation;
import ampersheet.language.Language;
import ampersheet.model.CircuitModel;
import ampersheet.model.CircuitPlan;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The circuit of a problem for a general circuit simulator, so that it can be tried. */
final class CircuitListing {
    /** Lines; a strip or panel of many loads has hundreds, one for each stretch of copper. */
    private static final int LONGEST = 60;

    private static final MathContext FIGURES = new MathContext(7);
    /** Closer than any tolerance, and short, because a page has hundreds of them. */
    private static final MathContext SHORT = new MathContext(5);

    private CircuitListing() {}

    /** For whoever has the key. Empty where there is no circuit, or it is too long to be read. */
    static Optional<Document.Listing> of(SheetProblem problem) {
        Language language = problem.plan().language();
        String title = language.say(
                "sheet.listing.title",
                "number",
                Integer.toString(problem.number()),
                "title",
                problem.template().title());
        return of(problem, title, Set.of(), FIGURES, language.say("sheet.listing.heading"));
    }

    /** For a learner: no value is told that a step finds. */
    static Optional<Document.Listing> open(SheetProblem problem) {
        Set<String> sought = new TreeSet<>();
        Set<String> steps = new TreeSet<>();
        problem.template().working().steps().forEach(step -> steps.add(step.id()));
        problem.template().model(CircuitPlan.class).stream()
                .flatMap(plan -> plan.parts().stream())
                .filter(part -> part.values().values().stream()
                        .anyMatch(value -> !Collections.disjoint(Evaluation.names(value), steps)))
                .forEach(part -> sought.add(part.name()));
        Language language = problem.plan().language();
        String heading = sought.isEmpty()
                ? language.say("sheet.listing.heading")
                : language.say("sheet.listing.heading-with-blanks");
        return of(problem, problem.template().title(), sought, SHORT, heading);
    }

    private static Optional<Document.Listing> of(
            SheetProblem problem, String title, Set<String> blank, MathContext figures, String heading) {
        return problem.problem()
                .model(CircuitModel.class)
                .map(circuit -> SpiceNetlist.of(
                        circuit.netlist(),
                        title,
                        blank,
                        value -> ExactNumber.write(
                                new BigDecimal(value).round(figures).doubleValue()),
                        problem.plan().language()))
                .filter(text -> text.lines().count() <= LONGEST)
                .map(text -> new Document.Listing(heading, text));
    }
}
