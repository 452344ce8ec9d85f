package ampersheet.marking;

import ampersheet.language.Language;
import java.util.Optional;

/** A slip that can happen in any problem, as a cause of a wrong answer. */
enum Slip {
    OTHER_DIMENSION("another quantity", "report.cause.other-dimension", "report.cause.other-dimension.says"),
    UNIT_MISSING("unit missing", "report.cause.unit-missing", "report.cause.unit-missing.says"),
    OTHER_SCALE("K for °C", "report.cause.other-scale", "report.cause.other-scale.says"),
    RISE_OR_TEMPERATURE(
            "rise or temperature", "report.cause.rise-or-temperature", "report.cause.rise-or-temperature.says"),
    OTHER_VALUE("another quantity's value", "report.cause.other-value", "report.cause.other-value.says"),
    EXACT_OR_FITTED("calculated or fitted", "report.cause.exact-or-fitted", "report.cause.exact-or-fitted.says"),
    WRONG_PAIR("wrong pair", "report.cause.wrong-pair", "report.cause.wrong-pair.says"),
    CARRIED_MISTAKE("carried mistake", "report.cause.carried-mistake", "report.cause.carried-mistake.says"),
    MISPLACED("left out or misplaced", "report.cause.misplaced", "report.cause.misplaced.says"),
    NEAR_MISS("near miss", "report.cause.near-miss", "report.cause.near-miss.says"),
    TOO_COARSE("rounded too far", "report.cause.too-coarse", "report.cause.too-coarse.says"),
    POWER_OF_TEN("power of ten", "report.cause.power-of-ten", "report.cause.power-of-ten.says"),
    SIGN("sign", "report.cause.sign", "report.cause.sign.says"),
    RECIPROCAL("upside down", "report.cause.reciprocal", "report.cause.reciprocal.says"),
    ROUNDED("rounded on the way", "report.cause.rounded", "report.cause.rounded.says");

    private static final String STORED = "slip: ";

    private final String stored;
    private final String label;
    private final String says;

    /**
     * @param stored as tables keep it
     * @param label key of a few words
     * @param says key of what the learner is told
     */
    Slip(String stored, String label, String says) {
        this.stored = STORED + stored;
        this.label = label;
        this.says = says;
    }

    Cause cause(Language language) {
        return new Cause(stored, language.say(label), language.say(says), false);
    }

    /** A few words for a cause that a table keeps, whatever it is. */
    static String label(String cause, Language language) {
        return of(cause)
                .map(slip -> language.say(slip.label))
                .orElseGet(() -> language.mistake(cause).isEmpty()
                        ? (cause.startsWith(STORED) ? cause.substring(STORED.length()) : cause).replace('-', ' ')
                        : language.mistake(cause));
    }

    private static Optional<Slip> of(String stored) {
        for (Slip slip : values()) {
            if (slip.stored.equals(stored)) {
                return Optional.of(slip);
            }
        }
        return Optional.empty();
    }
}
