package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** What is wrong with one file: the first faults, and how many more there are. Nobody mends a thousand one by one. */
public final class FaultList {
    public static final int MOST_TOLD = 100;

    private final String file;
    private final List<Diagnostic> told = new ArrayList<>();
    private int untold;
    private boolean errors;
    private boolean untoldErrors;

    /** @param file as its reader knows it */
    public FaultList(String file) {
        this.file = file;
    }

    public void add(Diagnostic fault) {
        boolean error = fault.severity() == Severity.ERROR;
        errors |= error;
        if (told.size() < MOST_TOLD) {
            told.add(fault);
        } else {
            untold++;
            untoldErrors |= error;
        }
    }

    /** The same for an error that is worked out only if it is told. */
    public void addError(Supplier<Diagnostic> fault) {
        if (told.size() < MOST_TOLD) {
            add(fault.get());
        } else {
            untold++;
            errors = true;
            untoldErrors = true;
        }
    }

    /** All of another list, those too that it only counted. */
    public void add(FaultList other) {
        other.told.forEach(this::add);
        untold += other.untold;
        errors |= other.errors;
        untoldErrors |= other.untoldErrors;
    }

    /** How many were only counted. */
    public int untold() {
        return untold;
    }

    public boolean isEmpty() {
        return told.isEmpty();
    }

    public boolean hasErrors() {
        return errors;
    }

    /** In the order in which they were found; the last one counts those that are not told. */
    public List<Diagnostic> list() {
        List<Diagnostic> all = new ArrayList<>(told);
        if (untold > 0) {
            all.add(new Diagnostic(
                    untoldErrors ? Severity.ERROR : Severity.WARNING,
                    Place.inFile(file),
                    Languages.ENGLISH.count("report.file.more-faults", untold),
                    "",
                    say("folder.file.more-faults.next")));
        }
        return List.copyOf(all);
    }
}
