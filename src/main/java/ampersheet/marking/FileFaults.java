package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.language.Language;
import ampersheet.language.Saying;
import ampersheet.source.FaultList;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** What is wrong with one file that came in: a list of faults that can be told in any language. */
final class FileFaults {
    private final FaultList list;
    /** Of each fault that the list tells. */
    private final List<Saying> problems = new ArrayList<>();

    /** @param file as it is shown */
    FileFaults(String file) {
        this.list = new FaultList(file);
    }

    void add(FileFault fault) {
        list.add(fault.in(Languages.ENGLISH));
        addProblem(fault.problem());
    }

    /** The same for an error that is worked out only if it is told. */
    void addError(Supplier<FileFault> fault) {
        list.addError(() -> {
            FileFault told = fault.get();
            addProblem(told.problem());
            return told.in(Languages.ENGLISH);
        });
    }

    /** All of another list, those too that it only counted. */
    void add(FileFaults other) {
        list.add(other.list);
        other.problems.forEach(this::addProblem);
    }

    private void addProblem(Saying problem) {
        if (problems.size() < FaultList.MOST_TOLD) {
            problems.add(problem);
        }
    }

    boolean isEmpty() {
        return list.isEmpty();
    }

    boolean hasErrors() {
        return list.hasErrors();
    }

    /** For whoever runs the command: in the order in which they were found; the last one counts those not told. */
    List<Diagnostic> list() {
        return list.list();
    }

    /** The same with their problems in a language, for reports and tables. */
    List<Diagnostic> in(Language language) {
        List<Diagnostic> told = new ArrayList<>();
        for (Diagnostic fault : list.list()) {
            String problem = told.size() < problems.size()
                    ? language.say(problems.get(told.size()))
                    : language.count("report.file.more-faults", list.untold());
            told.add(new Diagnostic(fault.severity(), fault.place(), problem, fault.expected(), fault.nextAction()));
        }
        return told;
    }
}
