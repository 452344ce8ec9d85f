package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;

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

    String says(AnswerKey key, Language language) {
        return switch (this) {
            case BLANK -> language.say("print.exchange.blank");
            case INCOMPLETE -> language.say("print.exchange.incomplete");
            case CORRECT -> language.say("print.exchange.right");
            case CRITERION_MISSED -> language.say("print.exchange.criterion-missed");
            case TOO_COARSE -> language.say("print.exchange.too-coarse", "figures", Integer.toString(key.figures()));
            case POWER_OF_TEN -> language.say("print.exchange.power-of-ten");
            case SIGN -> language.say("print.exchange.sign");
            case RECIPROCAL -> language.say("print.exchange.reciprocal");
            case RISE_OR_TEMPERATURE -> language.say("print.exchange.rise-or-temperature");
            case OTHER_QUANTITY -> language.say("print.exchange.other-quantity");
            case EXACT_OR_FITTED -> language.say("print.exchange.exact-or-fitted");
            case WRONG_PAIR -> language.say("print.exchange.wrong-pair");
            case CARRIED_MISTAKE -> language.say("print.exchange.carried-mistake");
            case MISPLACED_GIVEN -> language.say("print.exchange.misplaced-given");
            case NEAR_MISS -> language.say("print.exchange.near-miss");
            case UNEXPLAINED -> unexplained(key.acceptance(), language);
        };
    }

    private static String unexplained(Acceptance acceptance, Language language) {
        if (acceptance instanceof Acceptance.Preferred preferred) {
            return language.say(
                    "print.exchange.unexplained.series",
                    "series",
                    preferred.series().name());
        }
        if (acceptance instanceof Acceptance.Designed designed) {
            return designed.series()
                    .map(series -> language.say("print.exchange.unexplained.design-series", "series", series.name()))
                    .orElseGet(() -> language.say("print.exchange.unexplained.design-number"));
        }
        return acceptance instanceof Acceptance.Choice
                ? language.say("print.exchange.unexplained.option")
                : language.say("print.exchange.unexplained");
    }
}
