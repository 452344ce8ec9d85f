package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;

/**
 * What is said for each rung of the ladder that this format can tell. Unit and dimension are printed behind the blank,
 * so their rungs do not come up; what follows from an earlier wrong answer would have to be worked again, which an item
 * with fixed numbers cannot do, and is told as unexplained. So is which limit of a design was missed.
 */
enum Feedback {
    BLANK,
    INCOMPLETE,
    CORRECT,
    CRITERION_MISSED,
    TOO_COARSE,
    POWER_OF_TEN,
    SIGN,
    RECIPROCAL,
    RISE_OR_TEMPERATURE,
    OTHER_QUANTITY,
    EXACT_OR_FITTED,
    WRONG_PAIR,
    CARRIED_MISTAKE,
    MISPLACED_GIVEN,
    NEAR_MISS,
    UNEXPLAINED;

    String says(AnswerKey key) {
        return switch (this) {
            case BLANK -> "No answer yet.";
            case INCOMPLETE ->
                "This one is judged together with the other value of the design, which is not there yet or "
                        + "may not be chosen.";
            case CORRECT -> "Right.";
            case CRITERION_MISSED ->
                "Both values may be chosen, but together they do not keep every limit. Work out with your own two "
                        + "values what the problem limits, one after the other, and see which is missed.";
            case TOO_COARSE ->
                "The method looks right, but the number is rounded too far. Give " + key.figures()
                        + " figures, and round only at the end.";
            case POWER_OF_TEN ->
                "The digits are right, but not the power of ten. Check the decimal marker, and the prefixes of "
                        + "what you put in and of what came out.";
            case SIGN ->
                "The size is right, but the sign is not. Check which value is taken from which, and which direction "
                        + "counts as positive.";
            case RECIPROCAL ->
                "This is one divided by what is asked for: the division is upside down. Check which quantity stands "
                        + "above the line; the units tell.";
            case RISE_OR_TEMPERATURE ->
                "A temperature and a rise, or their zeros, were mixed up, or a difference was counted twice or "
                        + "left out. A temperature is the one it rises from plus the rise; a difference has the "
                        + "same number in K and in °C.";
            case OTHER_QUANTITY ->
                "This is the value of another quantity of the problem. Read the question again, and go on from it "
                        + "if it is only a step on the way.";
            case EXACT_OR_FITTED ->
                "Look whether the calculated value counts here or the one that was chosen or rounded next to it: "
                        + "this is what the other of the two gives.";
            case WRONG_PAIR ->
                "This is a voltage times a current that does not belong to it. For the power of a part, take the "
                        + "voltage across it and the current through it.";
            case CARRIED_MISTAKE ->
                "This follows from a mistake in an earlier question. Look there first, then work this one again.";
            case MISPLACED_GIVEN ->
                "This is what the steps give when a given value is left out, or when another one stands in its "
                        + "place. Check where each given value belongs.";
            case NEAR_MISS ->
                "This is near, but not near enough. Either you rounded on the way: go on with unrounded values and "
                        + "round only the result. Or something small is left out or counted twice.";
            case UNEXPLAINED -> unexplained(key.acceptance());
        };
    }

    private static String unexplained(Acceptance acceptance) {
        if (acceptance instanceof Acceptance.Preferred preferred) {
            return "This is not the " + preferred.series().name()
                    + " value that the calculation leads to. Check the calculated "
                    + "value first, then which way it must be rounded.";
        }
        if (acceptance instanceof Acceptance.Designed designed) {
            return "This value may not be chosen. Take "
                    + designed.series()
                            .map(series -> "a value of the series " + series.name())
                            .orElse("a whole number")
                    + ", within what the problem allows.";
        }
        if (acceptance instanceof Acceptance.Choice) {
            return "This option does not fit these numbers. Work out the quantity it depends on and compare it "
                    + "with its limit.";
        }
        return "This value is not recognised. Check that each given value went in once, with its prefix, and work "
                + "the steps again "
                + "one by one.";
    }
}
