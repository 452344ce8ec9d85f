package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.template.ProblemTemplate;
import java.util.List;

/** The sheets of a class: drawn again from plan and templates, or as an archive keeps them. */
public interface ClassSheets {
    Plan plan();

    /** What all their IDs begin with. */
    String code();

    /**
     * Reads an ID as typed from a sheet.
     *
     * @throws DiagnosticException for anything but an ID of these sheets
     */
    SheetId readId(String typed);

    /** Whether there is a sheet for this seat: not everybody takes a retake. */
    boolean has(int seat);

    /** @throws DiagnosticException if there is no such sheet */
    IssuedSheet issued(int seat);

    /** Those that may stand on a sheet, one for each name. */
    List<ProblemTemplate> templates();

    /**
     * A sheet as it was issued.
     *
     * @param sheet with the problems that this version of the program can work
     * @param places of these problems in the plan's list, as {@link ProblemSet#places} tells them
     * @param lost problems that it cannot work, so that no key to them is at hand
     * @param remarks what an instructor should know before she trusts the keys
     */
    record IssuedSheet(Sheet sheet, List<Integer> places, List<LostProblem> lost, List<Diagnostic> remarks) {
        public IssuedSheet {
            places = List.copyOf(places);
            lost = List.copyOf(lost);
            remarks = List.copyOf(remarks);
        }
    }

    /** @param why one sentence */
    record LostProblem(int number, String template, List<String> questions, String why) {
        public LostProblem {
            questions = List.copyOf(questions);
        }
    }
}
