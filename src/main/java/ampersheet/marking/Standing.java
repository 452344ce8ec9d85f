package ampersheet.marking;

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
     * @param difficulty what makes this variant harder than another, as one text
     */
    record Outcome(Item item, int problem, Credit credit, Optional<Cause> cause, String difficulty, boolean late) {
        /** Wrong, and it can be asked why. */
        boolean isWrong() {
            return credit == Credit.WRONG || credit == Credit.HALF;
        }
    }

    int halves() {
        return outcomes.stream().mapToInt(outcome -> outcome.credit().halves()).sum();
    }

    int mostHalves() {
        return outcomes.size() * Credit.HALVES_PER_QUESTION;
    }

    long count(Credit credit) {
        return outcomes.stream().filter(outcome -> outcome.credit() == credit).count();
    }

    long late() {
        return outcomes.stream().filter(Outcome::late).count();
    }
}
