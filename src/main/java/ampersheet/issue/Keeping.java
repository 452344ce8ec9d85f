package ampersheet.issue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Keeps what is issued in an archive beside the keys. Its name begins as the sheet IDs do, so that another version of
 * the templates never takes the place of the archive by which printed sheets are marked; a smaller class does not,
 * either: the sheets of the others stay in it. May be used by several threads.
 */
final class Keeping {
    private final ProblemSet set;
    private final Path file;
    private final Optional<ArchivedClass> earlier;

    /** @throws DiagnosticException if there is such an archive already and it cannot be read */
    Keeping(ProblemSet set, Path file) {
        this.set = set;
        this.file = file;
        this.earlier = Files.exists(file) ? Optional.of(ArchivedClass.read(file)) : Optional.empty();
    }

    Path file() {
        return file;
    }

    /** @throws DiagnosticException if the archive holds other numbers under the sheet's ID */
    ArchivedSheet keep(Sheet sheet) {
        return keep(ArchivedSheet.of(sheet, set.places(sheet.id().seat())));
    }

    /** The same of a sheet that was made elsewhere. */
    ArchivedSheet keep(ArchivedSheet sheet) {
        IssuedArchive.requireSameNumbers(earlier, sheet);
        return sheet;
    }

    /** The number of files that changed. */
    int write(List<ArchivedSheet> sheets, Output output) {
        return output.write(file, IssuedArchive.of(set, sheets, earlier)::write) ? 1 : 0;
    }
}
