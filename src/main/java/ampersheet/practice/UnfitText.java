package ampersheet.practice;

import ampersheet.language.Language;
import ampersheet.language.Saying;

/** A saved text that a page does not read. Its message is for programmers; a learner is told what it says. */
public final class UnfitText extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private static final int ANYWHERE = 0;

    private final transient Saying saying;
    private final int line;

    UnfitText(String key, String... filled) {
        this(Saying.of(key, filled), ANYWHERE);
    }

    private UnfitText(Saying saying, int line) {
        super(saying.key() + " " + String.join(" ", saying.filled()));
        this.saying = saying;
        this.line = line;
    }

    public String said(Language language) {
        String problem = language.say(saying);
        return line == ANYWHERE
                ? problem
                : language.say("practice.record.line", "line", Integer.toString(line), "problem", problem);
    }

    /** The same, with where it stands in a record. */
    UnfitText inLine(int line) {
        return new UnfitText(saying, line);
    }
}
