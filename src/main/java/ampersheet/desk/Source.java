package ampersheet.desk;

import ampersheet.issue.CourseFolder;
import ampersheet.sheet.ProblemSet;
import java.nio.file.Path;

/** From what something is given out, the plan or a week of the course, and where it goes. */
interface Source {
    /** The file in which it stands. */
    Path file();

    /** Where lies what is made of it. */
    CourseFolder.Made made();

    /**
     * What is handed out as sheets, with its seed and the parts to which it keeps.
     *
     * @throws ampersheet.diagnostic.DiagnosticException with all that does not fit
     */
    ProblemSet sheets();

    /** The same for what nobody builds: pages to practise with, packages for other platforms. */
    ProblemSet whateverTheParts();

    /** The files from which it is made, as they are now. */
    Ingredients ingredients();
}
