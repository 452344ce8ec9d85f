package ampersheet.answer;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the rungs say: what was found, and what to do next. Never the expected value, never a bare "wrong". */
record Sentences(Language language) {
    String blank() {
        return language.say("verdict.blank");
    }

    String ambiguous(Reading.Ambiguous read, DecimalMarker decimal) {
        List<String> as = new ArrayList<>();
        for (String meaning : read.meanings(language)) {
            as.add(language.say("reading.ambiguous.as", "meaning", meaning));
        }
        return language.say(
                decimal == DecimalMarker.COMMA ? "reading.ambiguous.comma" : "reading.ambiguous",
                "meanings",
                language.either(as));
    }

    String options(List<Acceptance.Option> options) {
        String all = "";
        for (int i = 0; i < options.size(); i++) {
            String letter = String.valueOf((char) ('a' + i));
            String one = language.say(
                    "verdict.no-option.one",
                    "letter",
                    letter,
                    "option",
                    options.get(i).text());
            all = i == 0 ? one : language.say("verdict.no-option.next", "before", all, "option", one);
        }
        return language.say("verdict.no-option", "options", all);
    }

    String wrongOption() {
        return language.say("verdict.wrong-option");
    }

    String wrongDimension(Unit typed, Unit asked) {
        boolean number = asked.dimension().equals(Dimension.ONE);
        String unit = asked.symbol();
        if (typed.symbol().isEmpty()) {
            return number
                    ? unit.isEmpty()
                            ? language.say("verdict.dimension.number-for-number")
                            : language.say("verdict.dimension.number-for-number.in", "unit", unit)
                    : language.say(
                            "verdict.dimension.number-for-quantity",
                            "asked",
                            language.say(measuredWithArticle(asked)),
                            "unit",
                            unit);
        }
        String measured = language.say(measured(typed));
        if (number) {
            return unit.isEmpty()
                    ? language.say(
                            "verdict.dimension.quantity-for-number", "typed-unit", typed.symbol(), "typed", measured)
                    : language.say(
                            "verdict.dimension.quantity-for-number.in",
                            "typed-unit",
                            typed.symbol(),
                            "typed",
                            measured,
                            "unit",
                            unit);
        }
        return language.say(
                "verdict.dimension.quantity-for-quantity",
                "typed-unit",
                typed.symbol(),
                "typed",
                measured,
                "asked",
                language.say(measuredWithArticle(asked)),
                "unit",
                unit);
    }

    String unitMissing() {
        return language.say("verdict.unit-missing");
    }

    /** @param inCelsius what was typed, on the scale asked for */
    String otherScale(String typed, String inCelsius) {
        return language.say("verdict.other-scale", "typed", typed, "celsius", inCelsius);
    }

    String right(boolean figures, boolean difference, boolean kelvin) {
        StringBuilder out = new StringBuilder(language.say("verdict.right"));
        if (figures) {
            out.append(' ').append(language.say("verdict.right.figures"));
        }
        if (difference) {
            out.append(' ').append(language.say("verdict.right.difference"));
        }
        if (kelvin) {
            out.append(' ').append(language.say("verdict.right.kelvin"));
        }
        return out.toString();
    }

    String tooCoarse(int figures) {
        return language.say("verdict.too-coarse", "figures", Integer.toString(figures));
    }

    /**
     * @param power of ten by which the answer is too large, negative if too small
     * @param bareIn the unit in which a number without one was taken; empty if it had one
     */
    String powerOfTen(int power, String bareIn) {
        boolean large = power > 0;
        String found = language.say(
                switch (Math.abs(power)) {
                    case 1 -> large ? "verdict.ten.1.large" : "verdict.ten.1.small";
                    case 2 -> large ? "verdict.ten.2.large" : "verdict.ten.2.small";
                    case 3 -> large ? "verdict.ten.3.large" : "verdict.ten.3.small";
                    case 6 -> large ? "verdict.ten.6.large" : "verdict.ten.6.small";
                    default -> large ? "verdict.ten.9.large" : "verdict.ten.9.small";
                });
        String next = language.say(
                switch (Math.abs(power)) {
                    case 1 -> "verdict.ten.1.next";
                    case 2 -> "verdict.ten.2.next";
                    case 3 -> "verdict.ten.3.next";
                    default -> "verdict.ten.more.next";
                });
        return bareIn.isEmpty()
                ? found + " " + next
                : found + " " + language.say("verdict.ten.taken-in", "unit", bareIn) + " " + next;
    }

    String sign() {
        return language.say("verdict.sign");
    }

    String reciprocal() {
        return language.say("verdict.reciprocal");
    }

    String followsFromWrong(List<String> questions) {
        return language.count("verdict.follows.wrong", questions.size(), "questions", language.all(questions));
    }

    String followsFromRounded(List<String> questions) {
        return language.say("verdict.follows.rounded", "questions", language.all(questions));
    }

    String notInSeries(String understood, String series) {
        return language.say("verdict.series.none", "value", understood, "series", series);
    }

    String neighbourBelow(String series) {
        return language.say("verdict.series.below", "series", series);
    }

    String neighbourAbove(String series) {
        return language.say("verdict.series.above", "series", series);
    }

    String otherMember(String series) {
        return language.say("verdict.series.other", "series", series);
    }

    String notWhole(String understood) {
        return language.say("verdict.count.not-whole", "value", understood);
    }

    String offByOne() {
        return language.say("verdict.count.off-by-one");
    }

    String unrecognisedCount(Optional<String> first) {
        return first.isPresent()
                ? language.say("verdict.count.unrecognised.first", "what", first.get())
                : language.say("verdict.count.unrecognised");
    }

    /** @param first what goes into the step asked for, to be checked first */
    String unrecognised(Optional<String> first) {
        return first.isPresent()
                ? language.say("verdict.unrecognised.first", "what", first.get())
                : language.say("verdict.unrecognised");
    }

    String aGiven(String what) {
        return language.say("verdict.is.given", "what", what);
    }

    String onTheWay(String what) {
        return language.say("verdict.is.on-the-way", "what", what);
    }

    String anotherQuantity(String what) {
        return language.say("verdict.is.another", "what", what);
    }

    String notYetFitted() {
        return language.say("verdict.fitted.not-yet");
    }

    String exactForFitted(String fitted) {
        return language.say("verdict.fitted.exact", "what", fitted);
    }

    String fittedForExact(String fitted, String exact) {
        return language.say("verdict.fitted.for-exact", "fitted", fitted, "exact", exact);
    }

    String wrongPair(String voltage, String current) {
        return language.say("verdict.wrong-pair", "voltage", voltage, "current", current);
    }

    String temperatureForRise(String from) {
        return language.say("verdict.temperature.for-rise", "what", from);
    }

    String riseForTemperature(String from) {
        return language.say("verdict.temperature.rise", "what", from);
    }

    String addedTwice(String what) {
        return language.say("verdict.temperature.twice", "what", what);
    }

    String differenceMiscounted(String what) {
        return language.say("verdict.temperature.off-by", "what", what);
    }

    String zeroInDifference() {
        return language.say("verdict.temperature.zero-in-difference");
    }

    String zeroInCelsius() {
        return language.say("verdict.temperature.zero-in-celsius");
    }

    /** @param mistake what was probably done there, and what to do instead */
    String carried(String question, String mistake) {
        return language.say("verdict.carried", "question", question, "mistake", mistake);
    }

    String leftOut(String what) {
        return language.say("verdict.misplaced.left-out", "what", what);
    }

    String restOfShare(String what) {
        return language.say("verdict.misplaced.rest", "what", what);
    }

    String inPlaceOf(String other, String what) {
        return language.say("verdict.misplaced.in-place-of", "other", other, "what", what);
    }

    String nearMiss(int figures) {
        return language.say("verdict.near", "figures", Integer.toString(figures));
    }

    String nearCount() {
        return language.say("verdict.count.near");
    }

    String judgedTogether(List<String> missing) {
        return language.count("verdict.design.together", missing.size(), "questions", language.all(missing));
    }

    String outOfRange(String understood, String from, String to) {
        return language.say("verdict.design.range", "value", understood, "from", from, "to", to);
    }

    String cannotBeWorked() {
        return language.say("verdict.design.no-result");
    }

    String designRight(List<String> results) {
        return language.say("verdict.design.right", "results", language.all(results));
    }

    String criterionMissed(String says, String result, String wanted) {
        return language.say("verdict.design.missed", "says", says, "result", result, "wanted", wanted);
    }

    /** What a unit measures. */
    private enum Kind {
        VOLTAGE(Dimension.VOLTAGE, "verdict.kind.voltage", "verdict.kind.voltage.a"),
        CURRENT(Dimension.CURRENT, "verdict.kind.current", "verdict.kind.current.a"),
        RESISTANCE(Dimension.RESISTANCE, "verdict.kind.resistance", "verdict.kind.resistance.a"),
        POWER(Dimension.POWER, "verdict.kind.power", "verdict.kind.power.a"),
        ENERGY(Dimension.ENERGY, "verdict.kind.energy", "verdict.kind.energy.a"),
        CAPACITANCE(Dimension.CAPACITANCE, "verdict.kind.capacitance", "verdict.kind.capacitance.a"),
        INDUCTANCE(Dimension.INDUCTANCE, "verdict.kind.inductance", "verdict.kind.inductance.a"),
        FREQUENCY(Dimension.FREQUENCY, "verdict.kind.frequency", "verdict.kind.frequency.a"),
        TIME(Dimension.TIME, "verdict.kind.time", "verdict.kind.time.a"),
        TEMPERATURE(Dimension.TEMPERATURE, "verdict.kind.temperature", "verdict.kind.temperature.a"),
        LENGTH(Dimension.LENGTH, "verdict.kind.length", "verdict.kind.length.a"),
        AREA(Dimension.LENGTH.power(2), "verdict.kind.area", "verdict.kind.area.a"),
        MASS(Dimension.MASS, "verdict.kind.mass", "verdict.kind.mass.a"),
        CHARGE(Dimension.CURRENT.times(Dimension.TIME), "verdict.kind.charge", "verdict.kind.charge.a"),
        THERMAL_RESISTANCE(
                Dimension.TEMPERATURE.over(Dimension.POWER),
                "verdict.kind.thermal-resistance",
                "verdict.kind.thermal-resistance.a"),
        THERMAL_CONDUCTANCE(
                Dimension.POWER.over(Dimension.TEMPERATURE),
                "verdict.kind.thermal-conductance",
                "verdict.kind.thermal-conductance.a"),
        CONDUCTANCE(
                Dimension.CURRENT.over(Dimension.VOLTAGE), "verdict.kind.conductance", "verdict.kind.conductance.a"),
        RESISTIVITY(
                Dimension.RESISTANCE.times(Dimension.LENGTH), "verdict.kind.resistivity", "verdict.kind.resistivity.a"),
        RESISTANCE_PER_LENGTH(
                Dimension.RESISTANCE.over(Dimension.LENGTH),
                "verdict.kind.resistance-per-length",
                "verdict.kind.resistance-per-length.a"),
        CURRENT_DENSITY(
                Dimension.CURRENT.over(Dimension.LENGTH.power(2)),
                "verdict.kind.current-density",
                "verdict.kind.current-density.a"),
        VOLTAGE_PER_TEMPERATURE(
                Dimension.VOLTAGE.over(Dimension.TEMPERATURE),
                "verdict.kind.voltage-per-temperature",
                "verdict.kind.voltage-per-temperature.a"),
        NUMBER(Dimension.ONE, "verdict.kind.number", "verdict.kind.number.a");

        private final Dimension dimension;
        private final String key;
        private final String withArticle;

        Kind(Dimension dimension, String key, String withArticle) {
            this.dimension = dimension;
            this.key = key;
            this.withArticle = withArticle;
        }
    }

    private static String measured(Unit unit) {
        for (Kind kind : Kind.values()) {
            if (kind.dimension.equals(unit.dimension())) {
                return kind.key;
            }
        }
        return "verdict.kind.other";
    }

    private static String measuredWithArticle(Unit unit) {
        for (Kind kind : Kind.values()) {
            if (kind.dimension.equals(unit.dimension())) {
                return kind.withArticle;
            }
        }
        return "verdict.kind.other.a";
    }
}
