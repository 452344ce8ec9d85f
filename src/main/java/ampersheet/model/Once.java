package ampersheet.model;

import java.util.function.Supplier;

/** A value that is found when it is first asked for, and kept. For several threads. */
final class Once<T> {
    private Supplier<T> finding;
    private T found;

    Once(Supplier<T> finding) {
        this.finding = finding;
    }

    /** What finding throws, it throws again when asked again. */
    synchronized T get() {
        if (finding != null) {
            found = finding.get();
            finding = null;
        }
        return found;
    }
}
