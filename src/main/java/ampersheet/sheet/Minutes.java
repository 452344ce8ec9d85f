package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.template.ProblemTemplate;

/** About how long a problem takes; common practice, no source. Some need half as long, some twice. */
public final class Minutes {
    /** To read a problem and its figure. */
    static final int READING = 2;
    /** To work a line, with its typing into a calculator. */
    static final int WORKING = 2;
    /** To follow a line that is worked. */
    static final int FOLLOWING = 1;

    private Minutes() {}

    /** Of a problem as it stands on a sheet. */
    public static int of(SheetProblem problem) {
        int lines = problem.template().lines().size();
        if (problem.support() instanceof Support.Full) {
            return READING + FOLLOWING * lines;
        }
        int blank = problem.support() instanceof Support.Faded
                ? (int) problem.places().stream()
                        .map(AnswerKey::step)
                        .distinct()
                        .count()
                : lines;
        return READING + WORKING * blank + FOLLOWING * (lines - Math.min(lines, blank));
    }

    /** Of a template's problem that shows nothing of its working. */
    public static int bare(ProblemTemplate template) {
        return READING + WORKING * template.lines().size();
    }
}
