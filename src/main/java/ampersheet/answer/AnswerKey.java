package ampersheet.answer;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.List;

/**
 * What one question expects.
 *
 * @param question for example {@code q3a}, as printed on the sheet and typed in the command
 * @param step id of the step the question asks for; for a choice, the id of the choice
 * @param expected the unrounded value in coherent SI units; for a choice, the index of the right option
 * @param unit the unit the question is asked in
 * @param figures significant figures asked for
 * @param unitPrinted whether the sheet prints the unit behind the blank, so that a bare number is complete
 * @param mistakes whose values lie apart from the key and from each other by more than both tolerances
 */
public record AnswerKey(
        String question,
        String step,
        double expected,
        Unit unit,
        int figures,
        boolean unitPrinted,
        Acceptance acceptance,
        List<KnownMistake> mistakes) {
    public AnswerKey {
        mistakes = List.copyOf(mistakes);
    }

    /** Whether a share is asked for in %, so that a fraction of 1 is the same answer. */
    public boolean isShare() {
        return unit.symbol().equals("%") && acceptance instanceof Acceptance.Within;
    }

    /** Whether what was typed is a bare number where a quantity with its unit is asked for. */
    public boolean lacksUnit(Reading.Value typed) {
        return typed.unit().isEmpty()
                && !typed.hasPrefix()
                && !unitPrinted
                && !unit.dimension().equals(Dimension.ONE);
    }

    /**
     * From this number on, a bare one that is no right answer is taken as so many percent, below as a fraction: as
     * either it is wrong by at most the same factor.
     */
    public double leastPercent() {
        return 10 * Math.abs(expected);
    }

    /**
     * The number, from 0, of a choice's right option.
     *
     * @throws IllegalStateException when this is no choice
     */
    public int rightOption() {
        if (!(acceptance instanceof Acceptance.Choice)) {
            throw new IllegalStateException(question + " is no choice");
        }
        return Acceptance.Choice.number(expected);
    }

    /** The same, asked under another name. */
    public AnswerKey named(String other) {
        return new AnswerKey(other, step, expected, unit, figures, unitPrinted, acceptance, mistakes);
    }

    /** Expects what follows from a design that was accepted; the known mistakes belong to the key's own numbers. */
    public AnswerKey following(double chosen) {
        boolean same = Math.abs(chosen - expected) <= Acceptance.SAME * Math.abs(expected);
        return same ? this : new AnswerKey(question, step, chosen, unit, figures, unitPrinted, acceptance, List.of());
    }
}
