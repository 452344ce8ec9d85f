package ampersheet.problem;

import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Fills every statement and every prompt of a problem, as its sheets will: what fails here would fail on a class. */
final class FilledWords {
    /** As printed; how many there are changes no word. */
    private static final int FIGURES = 4;

    private FilledWords() {}

    /** What could not be filled and why; empty if all could. */
    static Optional<String> fault(Problem problem) {
        ProblemTemplate template = problem.template();
        Map<String, String> printed = new LinkedHashMap<>(problem.givens().words());
        Notations.of(template, template.language(), problem.givens(), QuantityWriter.POINT, FIGURES)
                .values()
                .forEach((name, value) -> printed.put(name, value.text()));
        for (String language : template.words().statements().keySet()) {
            try {
                Statement.render(template, new Language(language, Map.of()), printed);
            } catch (IllegalArgumentException fault) {
                return Optional.of("the statement (" + language + "): " + fault.getMessage());
            }
        }
        for (ProblemTemplate.Ask ask : template.asks()) {
            try {
                Statement.prompt(template, ask, printed);
            } catch (IllegalArgumentException fault) {
                return Optional.of("the prompt of " + ask.of() + ": " + fault.getMessage());
            }
        }
        return Optional.empty();
    }
}
