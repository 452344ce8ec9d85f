package ampersheet.problem;

import ampersheet.language.Language;
import ampersheet.template.ExtraLowVoltage;

/** Why a draw does not become a problem. */
public enum Refusal {
    REQUIREMENT("problem.refusal.requirement"),
    OUTSIDE_LIMITS("problem.refusal.outside-limits"),
    ABOVE_EXTRA_LOW_VOLTAGE("problem.refusal.above-extra-low-voltage"),
    NOT_A_NUMBER("problem.refusal.not-a-number"),
    NO_CASE("problem.refusal.no-case"),
    MISTAKE_TOO_CLOSE("problem.refusal.mistake-too-close"),
    MISTAKES_TOO_CLOSE("problem.refusal.mistakes-too-close"),
    ROUNDING_AMBIGUOUS("problem.refusal.rounding-ambiguous"),
    NEAR_A_BOUNDARY("problem.refusal.near-a-boundary"),
    DESIGN_MISSED("problem.refusal.design-missed"),
    MODEL_UNSOLVED("problem.refusal.model-unsolved"),
    NOT_IN_THE_BINS("problem.refusal.not-in-the-bins"),
    ABOVE_ITS_RATING("problem.refusal.above-its-rating"),
    TOO_FEW_PARTS("problem.refusal.too-few-parts"),
    POINT_OFF_ITS_CURVE("problem.refusal.point-off-its-curve"),
    ROUTES_DISAGREE("problem.refusal.routes-disagree");

    private final String key;

    Refusal(String key) {
        this.key = key;
    }

    public String sentence(Language language) {
        return language.say(key, "limit", ExtraLowVoltage.LIMIT);
    }
}
