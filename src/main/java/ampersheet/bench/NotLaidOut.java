package ampersheet.bench;

import ampersheet.language.Language;
import ampersheet.language.Saying;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/** A circuit that is better not laid out, and why. */
public final class NotLaidOut extends Exception {
    private static final long serialVersionUID = 1;
    /** Slot of a part's name. */
    private static final String PART = "part";

    /** What kind of reason, so that those of many draws can be counted. */
    public enum Reason {
        NOT_FOR_THE_BENCH,
        NO_SUCH_PART,
        TOO_HOT,
        OUTSIDE_LIMITS,
        NOT_SUPPLIED,
        NOTHING_TO_MEASURE
    }

    private final Reason reason;
    private final transient Function<Language, Saying> why;

    NotLaidOut(Reason reason, Saying why) {
        this(reason, language -> why);
    }

    /** @param why a sentence, parts of which are said in its language as well */
    NotLaidOut(Reason reason, Function<Language, Saying> why) {
        super(null, null, false, false);
        this.reason = reason;
        this.why = why;
    }

    public Reason reason() {
        return reason;
    }

    /**
     * Why, in a clause.
     *
     * @param names how the figure calls a part, by its name
     */
    public String told(Language language, UnaryOperator<String> names) {
        Saying saying = why.apply(language);
        List<String> filled = new ArrayList<>(saying.filled());
        for (int i = 0; i < filled.size(); i += 2) {
            if (filled.get(i).equals(PART)) {
                filled.set(i + 1, names.apply(filled.get(i + 1)));
            }
        }
        return language.say(new Saying(saying.key(), filled, saying.within()));
    }
}
