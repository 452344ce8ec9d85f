package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.util.List;

/** Something typed on the command line does not fit, as opposed to the contents of a file. */
final class WrongUsage extends RuntimeException {
    private static final long serialVersionUID = 1L;

    WrongUsage(List<Diagnostic> diagnostics) {
        super(new DiagnosticException(diagnostics).getMessage());
    }

    WrongUsage(String argument, String problem, String expected, String nextAction) {
        this(List.of(Diagnostic.error(Place.inFile(argument), problem, expected, nextAction)));
    }
}
