package ampersheet.figure;

import ampersheet.circuit.PartKind;

/** What parts are called in words, as in the description of a figure. */
public final class PartWords {
    private PartWords() {}

    public static String of(PartKind kind) {
        return CircuitWords.word(kind);
    }
}
