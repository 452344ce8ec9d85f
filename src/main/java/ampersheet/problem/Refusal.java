package ampersheet.problem;

import ampersheet.template.ExtraLowVoltage;

/** Why a draw does not become a problem. */
public enum Refusal {
    REQUIREMENT("a requirement of the template does not hold"),
    OUTSIDE_LIMITS("a value lies outside what the trade builds or runs"),
    ABOVE_EXTRA_LOW_VOLTAGE("a voltage is above " + ExtraLowVoltage.LIMIT),
    NOT_A_NUMBER("a step has no finite value"),
    NO_CASE("no case of a step, or not exactly one option of a choice, applies"),
    MISTAKE_TOO_CLOSE("a mistake's value lies too close to the key"),
    MISTAKES_TOO_CLOSE("two mistakes' values lie too close to each other"),
    ROUNDING_AMBIGUOUS("the printed rounding would be ambiguous"),
    NEAR_A_BOUNDARY("a preferred value, count or choice lies too close to its neighbour"),
    DESIGN_MISSED("the design that is worked does not meet its own criteria"),
    MODEL_UNSOLVED("the model has no solution with these numbers"),
    NOT_IN_THE_BINS("a part is not in the workshop's bins"),
    ABOVE_ITS_RATING("a part would take up more than it is rated for"),
    TOO_FEW_PARTS("the bins hold too few of a part for all who build at the same time"),
    POINT_OFF_ITS_CURVE("the curve of the solution cannot be drawn, or an asked point lies on none of its lines"),
    ROUTES_DISAGREE("the two routes disagree");

    private final String sentence;

    Refusal(String sentence) {
        this.sentence = sentence;
    }

    public String sentence() {
        return sentence;
    }
}
