package ampersheet.practice;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;

/** What is said of a line of calculation: what it gives, or what does not go through. */
record LineSentences(Language language) {
    String nothingToWork() {
        return language.say("practice.line.nothing");
    }

    String lineGives(String value) {
        return language.say("practice.line.gives", "value", value);
    }

    String lineWithoutValue() {
        return language.say("practice.line.no-value");
    }

    String neverOpened() {
        return language.say("practice.line.never-opened");
    }

    String notClosed() {
        return language.say("practice.line.not-closed");
    }

    String missingQuantity() {
        return language.say("practice.line.missing") + " " + language.say("practice.line.signs");
    }

    String wholePowers() {
        return language.say("practice.line.powers");
    }

    String tooDeep() {
        return language.say("practice.line.too-deep");
    }

    String lineStops(String rest) {
        return language.say("practice.line.stops", "rest", rest) + " " + language.say("practice.line.signs");
    }

    String twoReadings(DecimalMarker decimal) {
        return language.say(
                decimal == DecimalMarker.COMMA ? "practice.line.two-readings.comma" : "practice.line.two-readings");
    }

    String notSideBySide(String one, String other) {
        return language.say("practice.line.side-by-side", "one", one, "other", other);
    }

    String notInLine(String operand, String problem) {
        return language.say("practice.line.not-read", "typed", operand, "problem", problem);
    }

    String notGiven(String word) {
        return language.say("practice.line.not-given", "word", word);
    }

    String noRoot(String of) {
        return language.say("practice.line.root", "what", of);
    }

    String notAlike(String what, boolean added, String to) {
        return language.say(added ? "practice.line.added" : "practice.line.taken", "what", what, "to", to);
    }

    /** Of a line with numbers that have no unit: they are no wrong answer yet. */
    String lineNeedsUnits(String asked) {
        return language.say("practice.line.needs-units", "unit", asked);
    }

    String lineInStrangeUnit(String unit, String asked) {
        return asked.isEmpty()
                ? language.say("practice.line.strange-unit", "unit", unit)
                : language.say("practice.line.strange-unit.asked", "unit", unit, "asked", asked);
    }

    String sidesDiffer(String left, String right) {
        return language.say("practice.line.sides", "left", left, "right", right);
    }
}
