package ampersheet.marking;

import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetId;
import java.util.List;
import java.util.Optional;

/**
 * What is kept of a marked sheet: all that marks and report need, and little of it, for classes of any size.
 *
 * @param outcomes one for each place for an answer, in the order of the sheet
 */
record Standing(Roster.Seat seat, SheetId sheet, List<Outcome> outcomes) {
    Standing {
        outcomes = List.copyOf(outcomes);
    }

    /** A question of the plan, whatever its numbers. Learners who got another template of a pool did not get it. */
    record Item(int place, String template, String step) {}

    /**
     * @param problem its number on this sheet
     * @param earned in hundredths of a mark
     * @param difficulty what makes this variant harder than another, as one text
     */
    record Outcome(
            Item item,
            int problem,
            Credit credit,
            Earned earned,
            Optional<Cause> cause,
            String difficulty,
            boolean late) {
        /** One that earns what is usual. */
        Outcome(Item item, int problem, Credit credit, Optional<Cause> cause, String difficulty, boolean late) {
            this(item, problem, credit, Earned.usual(credit), cause, difficulty, late);
        }

        /** Wrong, and it can be asked why. */
        boolean isWrong() {
            return credit == Credit.WRONG || credit == Credit.HALF;
        }
    }

    /** What it earns, in hundredths of a mark. */
    int marks() {
        return outcomes.stream().mapToInt(outcome -> outcome.earned().marks()).sum();
    }

    /** The same if all had come in in time. */
    int marksInTime() {
        return outcomes.stream().mapToInt(outcome -> outcome.earned().inTime()).sum();
    }

    int mostMarks() {
        return outcomes.stream().mapToInt(outcome -> outcome.earned().most()).sum();
    }

    /** Of all its marks, in tenths of a percent, as printed. */
    int percent() {
        return MarkingPolicy.percent(marks(), mostMarks());
    }

    long count(Credit credit) {
        return outcomes.stream().filter(outcome -> outcome.credit() == credit).count();
    }

    long late() {
        return outcomes.stream().filter(Outcome::late).count();
    }
}
