package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Severity;
import ampersheet.language.Language;

/**
 * Something wrong with a file that came in. Reports tell the problem alone; the rest is for whoever runs the command.
 */
record FileFault(Severity severity, Place place, Sentence problem, String expected, String nextAction) {
    static FileFault error(Place place, Sentence problem, String expected, String nextAction) {
        return new FileFault(Severity.ERROR, place, problem, expected, nextAction);
    }

    static FileFault warning(Place place, Sentence problem, String nextAction) {
        return new FileFault(Severity.WARNING, place, problem, "", nextAction);
    }

    /** Of what another room found. */
    static FileFault of(Diagnostic found) {
        return new FileFault(
                found.severity(),
                found.place(),
                Sentence.asItIs(found.problem()),
                found.expected(),
                found.nextAction());
    }

    Diagnostic in(Language language) {
        return new Diagnostic(severity, place, problem.in(language), expected, nextAction);
    }
}
