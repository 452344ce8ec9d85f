package ampersheet.source;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Severity;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Collects what is wrong with a template, so that its author can mend everything at once. */
public final class Faults {
    private final Set<Diagnostic> found = new LinkedHashSet<>();

    public void error(Place place, String problem, String expected, String nextAction) {
        add(Diagnostic.error(place, problem, expected, nextAction));
    }

    public void warning(Place place, String problem, String expected, String nextAction) {
        add(Diagnostic.warning(place, problem, expected, nextAction));
    }

    public void add(Diagnostic diagnostic) {
        found.add(diagnostic);
    }

    public boolean hasErrors() {
        return found.stream().anyMatch(diagnostic -> diagnostic.severity() == Severity.ERROR);
    }

    public int errors() {
        return (int) found.stream()
                .filter(diagnostic -> diagnostic.severity() == Severity.ERROR)
                .count();
    }

    /** Whether nothing was told at this place yet. */
    public boolean isQuietAt(Place place) {
        return found.stream().noneMatch(diagnostic -> diagnostic.place().equals(place));
    }

    public int count() {
        return found.size();
    }

    /** In the order of the files' text. */
    public List<Diagnostic> inOrder() {
        return found.stream()
                .sorted(Comparator.comparing(
                                (Diagnostic diagnostic) -> diagnostic.place().file())
                        .thenComparing(diagnostic -> diagnostic.place().line())
                        .thenComparing(diagnostic -> diagnostic.place().column()))
                .toList();
    }
}
