package ampersheet.problem;

import java.util.List;

/**
 * What became of every mutant of a template.
 *
 * @param fates in the order of the steps
 */
public record MutationReport(List<Fate> fates) {
    public MutationReport {
        fates = List.copyOf(fates);
    }

    public enum End {
        /** The reader of templates refuses it: its units do not fit. */
        WRONG_UNITS,
        /** The second route disagreed wherever a learner would have seen another key. */
        CAUGHT,
        /** No asked value changed in any of the problems tried. */
        WITHOUT_EFFECT,
        /** A problem with another key was accepted. */
        SURVIVED
    }

    /**
     * @param step whose line was changed
     * @param change what was written and what stood there instead
     * @param detail of a survivor: the numbers, and the asked value that became another; else empty
     */
    public record Fate(String step, String change, End end, String detail) {}

    public List<Fate> survivors() {
        return ending(End.SURVIVED);
    }

    public List<Fate> ending(End end) {
        return fates.stream().filter(fate -> fate.end() == end).toList();
    }

    /** As plain text for a terminal. */
    public String print() {
        StringBuilder out = new StringBuilder();
        out.append("  mutations of the steps: ")
                .append(fates.size())
                .append(": ")
                .append(ending(End.WRONG_UNITS).size())
                .append(" refused for their units, ")
                .append(ending(End.CAUGHT).size())
                .append(" caught by the second route, ")
                .append(ending(End.WITHOUT_EFFECT).size())
                .append(" without effect on an answer, ")
                .append(survivors().size())
                .append(" survived\n");
        for (Fate fate : ending(End.WITHOUT_EFFECT)) {
            out.append("    no effect  ")
                    .append(fate.step())
                    .append(": ")
                    .append(fate.change())
                    .append('\n');
        }
        for (Fate fate : survivors()) {
            out.append("  SURVIVED  ")
                    .append(fate.step())
                    .append(": ")
                    .append(fate.change())
                    .append("; at ")
                    .append(fate.detail())
                    .append('\n');
        }
        return out.toString();
    }
}
