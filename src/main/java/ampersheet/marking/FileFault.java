package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Severity;
import ampersheet.language.Language;
import ampersheet.language.Saying;

/**
 * Something wrong with a file that came in. Reports tell the problem alone; the rest is for whoever runs the command.
 */
record FileFault(Severity severity, Place place, Saying problem, String expected, String nextAction) {
    static FileFault error(Place place, Saying problem, String expected, String nextAction) {
        return new FileFault(Severity.ERROR, place, problem, expected, nextAction);
    }

    static FileFault warning(Place place, Saying problem, String nextAction) {
        return new FileFault(Severity.WARNING, place, problem, "", nextAction);
    }

    /** Of what another room found. */
    static FileFault of(Diagnostic found) {
        return new FileFault(
                found.severity(), found.place(), asItIs(found.problem()), found.expected(), found.nextAction());
    }

    /** What is told in one language only, by other rooms or of what somebody typed. */
    static Saying asItIs(String text) {
        return Saying.of("report.as-it-is", "text", text);
    }

    Diagnostic in(Language language) {
        return new Diagnostic(severity, place, language.say(problem), expected, nextAction);
    }
}
