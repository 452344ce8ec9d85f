package ampersheet.answer;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import java.util.List;
import java.util.Optional;

/** What the rungs say: what was found, and what to do next. Never the expected value, never a bare "wrong". */
final class Sentences {
    private Sentences() {}

    static String ambiguous(List<String> meanings) {
        StringBuilder out = new StringBuilder("This can be read as ");
        for (int i = 0; i < meanings.size(); i++) {
            out.append(i == 0 ? "" : i == meanings.size() - 1 ? " or as " : ", as ")
                    .append(meanings.get(i));
        }
        return out + ". Type it with a point as the decimal marker and nothing between the thousands.";
    }

    static String options(List<Acceptance.Option> options) {
        StringBuilder out = new StringBuilder("That is none of the options. Type one of: ");
        for (int i = 0; i < options.size(); i++) {
            out.append(i == 0 ? "" : "; ")
                    .append((char) ('a' + i))
                    .append(") ")
                    .append(options.get(i).text());
        }
        return out + ".";
    }

    static String wrongOption() {
        return "This option does not fit these numbers. Work out the quantity it depends on and compare it with "
                + "its limit.";
    }

    static String wrongDimension(Unit typed, Unit asked) {
        String given = typed.symbol().isEmpty()
                ? "That is a plain number"
                : typed.symbol() + " is a unit of " + name(typed.dimension(), "another kind of quantity");
        if (asked.dimension().equals(Dimension.ONE)) {
            return given + ", but a plain number" + (asked.symbol().isEmpty() ? "" : " in " + asked.symbol())
                    + " is asked for. Check which quantity the question means, and leave out any other unit.";
        }
        return given + ", but " + withName(asked) + " is asked for, in " + asked.symbol()
                + ". Check the unit first; if it is what your calculation gives, check which formula you used.";
    }

    private static String withName(Unit asked) {
        String name = name(asked.dimension(), "");
        return name.isEmpty() ? "another quantity" : article(name) + name;
    }

    private static String article(String name) {
        return "aeiou".indexOf(name.charAt(0)) >= 0 ? "an " : "a ";
    }

    static String unitMissing() {
        return "The number is right, but a quantity is a number with a unit. Write the unit behind it.";
    }

    /** @param inCelsius what was typed, on the scale asked for */
    static String otherScale(String typed, String inCelsius) {
        return "The number is right, but " + typed + " is " + inCelsius
                + ": kelvins are counted from absolute zero. Write °C.";
    }

    static String advice(boolean figures, boolean difference, boolean kelvin) {
        StringBuilder out = new StringBuilder();
        if (figures) {
            out.append(" So many figures say more than the given values can: round at the end.");
        }
        if (difference) {
            out.append(" It was read as a difference; write differences in K.");
        }
        if (kelvin) {
            out.append(" The same temperature is asked for in °C.");
        }
        return out.toString();
    }

    static String tooCoarse(int figures) {
        return "The method looks right, but the number is rounded too far. Give " + figures
                + " figures, and round only at the end.";
    }

    /** @param power of ten by which the answer is too large, negative if too small */
    static String powerOfTen(int power, String bareIn) {
        int size = Math.abs(power);
        String times = switch (size) {
            case 1 -> "ten times";
            case 2 -> "a hundred times";
            case 3 -> "a thousand times";
            case 6 -> "a million times";
            default -> "a thousand million times";
        };
        String taken = bareIn.isEmpty() ? "" : " A number without a unit was taken in " + bareIn + ".";
        String next = switch (size) {
            case 1 -> " Check where the decimal marker stands.";
            case 2 -> " Check the decimal marker, and whether a percentage or a square was converted.";
            case 3 -> " Check the prefixes of what you put in and of what came out.";
            default -> " Check the prefixes of what you put in and of what came out; M is mega, m is milli.";
        };
        return "The digits are right, but this is " + times + " too " + (power > 0 ? "large." : "small.") + taken
                + next;
    }

    static String sign() {
        return "The size is right, but the sign is not. Check which value is taken from which, and which "
                + "direction counts as"
                + " positive.";
    }

    static String reciprocal() {
        return "This is one divided by what is asked for: the division is upside down. Check which quantity "
                + "stands above the"
                + " line; the units tell.";
    }

    static String followsFromWrong(List<String> questions) {
        return "This follows from your answer to " + joined(questions) + ", so this step is right. Correct "
                + (questions.size() == 1 ? "that one" : "those") + " first, then work this one again.";
    }

    static String followsFromRounded(List<String> questions) {
        return "This follows from your answer to " + joined(questions)
                + " as you rounded it, but is too far off. Go on with the unrounded value and round only at the end.";
    }

    static String notInSeries(String understood, String series) {
        return understood + " is not a value of the " + series + " series. Pick one that is.";
    }

    static String neighbourBelow(String series) {
        return "This is an " + series
                + " value, but a step on the small side. Check which way the calculated value must be"
                + " rounded so that the limit is kept.";
    }

    static String neighbourAbove(String series) {
        return "This is an " + series
                + " value, but a step on the large side. Check which way the calculated value must be"
                + " rounded, and whether a nearer one would do.";
    }

    static String otherMember(String series) {
        return "This is an " + series
                + " value, but not the one that the calculation leads to. Check the calculated value"
                + " first, then which way to round it.";
    }

    static String notWhole(String understood) {
        return understood + " is not a whole number, but a count is. Check which way it must be rounded.";
    }

    static String offByOne() {
        return "Off by one. Check whether counting starts at 0 or at 1, whether both ends are counted and, where a part "
                + "is rounded, which way.";
    }

    static String unrecognisedCount(Optional<String> first) {
        return "I do not recognise this count. "
                + (first.isPresent()
                        ? "First check " + first.get()
                                + ", then work the steps again one by one; where parts stand in a row, count along it."
                        : "Sketch the arrangement with the numbers at its parts and count along it again.");
    }

    /** @param first what goes into the step asked for, to be checked first */
    static String unrecognised(Optional<String> first) {
        return "I do not recognise this value. "
                + first.map(one -> "First check " + one + ", then").orElse("Check")
                + " that each given value went in once, with its prefix, and work the steps again one by"
                + " one.";
    }

    static String aGiven(String what) {
        return "This is " + what + ", which is given. Work on from it: another quantity is asked for.";
    }

    static String onTheWay(String what) {
        return "This is " + what + ", which comes before what is asked here. Go on from it.";
    }

    static String anotherQuantity(String what) {
        return "This is " + what + ", another quantity of this problem. Read again what is asked here.";
    }

    static String notYetFitted() {
        return "This is the calculated value before it is rounded. Give the one that the question allows next to it.";
    }

    static String exactForFitted(String fitted) {
        return "This follows from the calculated value. Once a part is chosen or a number is rounded, " + fitted
                + " counts: go on" + " with that.";
    }

    static String fittedForExact(String fitted, String exact) {
        return "This follows from " + fitted + ". Here " + exact + " is to be used, before it is rounded.";
    }

    static String wrongPair(String voltage, String current) {
        return "This is " + voltage + " times " + current
                + ". For the power of a part, take the voltage across it and the current" + " through it.";
    }

    static String temperatureForRise(String from) {
        return "This is the temperature itself. What is asked is how far it lies above " + from + ".";
    }

    static String riseForTemperature(String from) {
        return "This is only how far the temperature lies above " + from + ". Add the two.";
    }

    static String addedTwice(String what) {
        return "In this, " + what + " is counted twice. Add it once.";
    }

    static String differenceMiscounted(String what) {
        return "This is off by exactly " + what
                + ". Check whether you left it out, counted it twice or took it the wrong way.";
    }

    static String zeroInDifference() {
        return "There is 273.15 too many or too few in this. A difference of temperatures has the same number in "
                + "K and in °C:"
                + " nothing is added.";
    }

    static String zeroInCelsius() {
        return "There is 273.15 too many or too few in this. The answer is wanted in °C: take 273.15 off a "
                + "temperature in K, and"
                + " nothing off one in °C.";
    }

    /** @param mistake what was probably done there, and what to do instead */
    static String carried(String question, String mistake) {
        return "This follows from a mistake in " + question + ". Look there first: " + mistake;
    }

    static String leftOut(String what) {
        return "This comes out without " + what + ". Check where it belongs in the steps.";
    }

    static String restOfShare(String what) {
        return "Here " + what + " and the rest up to 100 % have changed places. Check which of the two counts.";
    }

    static String inPlaceOf(String other, String what) {
        return "This comes out with " + other + " in the place of " + what + ". Check which of the two belongs there.";
    }

    static String nearMiss(int figures) {
        return "This is near, but not near enough. You rounded on the way, or something small is left out or counted "
                + "twice: go on with unrounded values and round only the result, to " + figures + " figures.";
    }

    static String nearCount() {
        return "This is near, but a count must be exact. You rounded on the way, or something is counted once too often "
                + "or too seldom: make the result whole only at the end.";
    }

    static String judgedTogether(List<String> missing) {
        return "This value may be chosen. It is judged together with " + joined(missing) + ": give "
                + (missing.size() == 1 ? "that one" : "those") + ", too.";
    }

    static String outOfRange(String understood, String from, String to) {
        return understood + " is outside the range of this choice. Pick a value from " + from + " to " + to + ".";
    }

    static String cannotBeWorked() {
        return "With these values the steps lead to no result. Check each against its range, and work the steps "
                + "with them.";
    }

    static String designRight(List<String> results) {
        return "Right. Your values give " + joined(results) + ".";
    }

    static String criterionMissed(String says, String result, String wanted) {
        return says + " Your values give " + result + ", but " + wanted + " is wanted.";
    }

    private static String joined(List<String> questions) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < questions.size(); i++) {
            out.append(i == 0 ? "" : i == questions.size() - 1 ? " and " : ", ").append(questions.get(i));
        }
        return out.toString();
    }

    private static String name(Dimension dimension, String otherwise) {
        Object[][] names = {
            {Dimension.VOLTAGE, "voltage"},
            {Dimension.CURRENT, "current"},
            {Dimension.RESISTANCE, "resistance"},
            {Dimension.POWER, "power"},
            {Dimension.ENERGY, "energy"},
            {Dimension.CAPACITANCE, "capacitance"},
            {Dimension.INDUCTANCE, "inductance"},
            {Dimension.FREQUENCY, "frequency or rate"},
            {Dimension.TIME, "time"},
            {Dimension.TEMPERATURE, "temperature"},
            {Dimension.LENGTH, "length"},
            {Dimension.LENGTH.power(2), "area"},
            {Dimension.MASS, "mass"},
            {Dimension.CURRENT.times(Dimension.TIME), "electric charge"},
            {Dimension.TEMPERATURE.over(Dimension.POWER), "thermal resistance"},
            {Dimension.POWER.over(Dimension.TEMPERATURE), "thermal conductance"},
            {Dimension.CURRENT.over(Dimension.VOLTAGE), "conductance"},
            {Dimension.RESISTANCE.times(Dimension.LENGTH), "resistivity"},
            {Dimension.RESISTANCE.over(Dimension.LENGTH), "resistance per length"},
            {Dimension.CURRENT.over(Dimension.LENGTH.power(2)), "current density"},
            {Dimension.VOLTAGE.over(Dimension.TEMPERATURE), "voltage per temperature"},
            {Dimension.ONE, "ratio or count"},
        };
        for (Object[] row : names) {
            if (row[0].equals(dimension)) {
                return (String) row[1];
            }
        }
        return otherwise;
    }
}
