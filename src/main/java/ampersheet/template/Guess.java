package ampersheet.template;

import ampersheet.formula.Spelling;
import java.util.Collection;

/** What an author who mistyped a name is told to do. */
final class Guess {
    private Guess() {}

    /** The known names, or that there is none. */
    static String among(Collection<String> known, String what) {
        return known.isEmpty() ? what + "; there is none yet" : Spelling.list(known);
    }

    /** Asks whether the nearest known name was meant; where none is near, says {@code otherwise}. */
    static String of(String typed, Collection<String> known, String otherwise) {
        return Spelling.nearest(typed, known)
                .map(near -> "Did you mean " + near + "?")
                .orElse(otherwise);
    }
}
