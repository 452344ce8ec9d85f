package ampersheet.practice;

import java.util.List;
import java.util.OptionalInt;

/** What the page says of a learner's own steps: what was found, and what comes next. */
final class Sentences {
    static final String NOW_THIS_ONE = "Now this one.";
    static final String LINE_WITHOUT_VALUE =
            "This line comes to no number: something is divided by zero, or the root is of a"
                    + " negative number. Check what stands below the line.";
    static final String ALL_HINTS = "These are all the hints. What is left is the worked solution.";
    static final String READ_SOLUTION =
            "Read the worked solution, then take another one like this: it counts only when you find" + " it yourself.";

    static final String NO_ASIDE =
            "No more extra questions. Below, under “Support and progress”, you can have them again.";
    static final String NOTHING_TO_WORK = "Type a line to work out, with units, such as (12 V - 2.1 V) / 15 mA.";

    private Sentences() {}

    static String readAs(String understood) {
        return "Read as " + understood + ".";
    }

    static String lineGives(String value) {
        return "Your line gives " + value + ".";
    }

    private static final String LINE = "This line does not go through: ";
    static final String NEVER_OPENED = LINE + "a parenthesis closes that was never opened.";
    static final String NOT_CLOSED = LINE + "a parenthesis is not closed.";
    private static final String SIGNS =
            "These are read: + - * / ^, || for resistors side by side, parentheses, sqrt(…).";
    static final String MISSING_QUANTITY = LINE + "a quantity is missing beside one of the signs. " + SIGNS;
    static final String WHOLE_POWERS = LINE + "a power is a whole number of at most two digits.";
    static final String TOO_DEEP = LINE + "too many parentheses lie in each other.";
    static final String TWO_READINGS = "It can be read in two ways: write a point as the decimal marker.";

    static String lineStops(String rest) {
        return LINE + "“" + rest + "” stands without a sign before it. " + SIGNS;
    }

    static String notSideBySide(String one, String other) {
        return LINE + one + " and " + other + " cannot lie side by side. Check what belongs together.";
    }

    static String notInLine(String operand, String problem) {
        return LINE + "“" + operand + "” is not read. " + problem;
    }

    static String notGiven(String word) {
        return LINE + "there is no " + word + " among the given values. Put in its value with its unit.";
    }

    static String noRoot(String of) {
        return LINE + "the square root of " + of + " has no unit.";
    }

    static String notAlike(String what, boolean added, String to) {
        return LINE + what + " are " + (added ? "added to " : "taken from ") + to + ". Check what belongs together.";
    }

    /** Of a line with numbers that have no unit: they are no wrong answer yet. */
    static String lineNeedsUnits(String asked) {
        return "The numbers of this line have no units, so it cannot be worked out to " + asked
                + ". Write a unit behind every number, or put all of it in parentheses with " + asked + " behind.";
    }

    static String lineInStrangeUnit(String unit, String asked) {
        return "The units of this line come out as " + unit
                + (asked.isEmpty() ? ". " : ", but " + asked + " is asked for. ")
                + "Check which quantities belong above and below.";
    }

    static String sidesDiffer(String left, String right) {
        return "The two sides of this line are not equal: one gives " + left + ", the other says " + right
                + ". Work it again.";
    }

    /** It must not say whether the number is right. */
    static final String UNIT_MISSING =
            "The unit is missing: a quantity is a number with a unit. Write it behind the number; then it is judged.";

    private static final String LOOK = " is not right yet: look again, or take the next hint.";
    private static final String FORM = " needs another form.";

    // After a check

    static String name(String question) {
        return Checked.isStep(question) ? "Step " + question.substring("step ".length()) : "Answer " + question;
    }

    /** Of how many places what is said; then where to go on. */
    static String stopped(Checked checked, Checked.Told stop) {
        int wrong = checked.count(Checked.Kind.WRONG) + checked.count(Checked.Kind.FOLLOWS);
        int form = checked.count(Checked.Kind.FORM);
        boolean several = wrong + form > (stop.blank() ? 0 : 1);
        String counted = "";
        counted = with(counted, several ? wrong : 0, "not right yet");
        counted = with(counted, several ? form : 0, "in need of another form");
        counted = with(counted, checked.count(Checked.Kind.RIGHT), "right");
        String go = several
                ? "Begin with " + place(stop.question()) + "."
                : name(stop.question())
                        + (stop.blank() ? " is still open." : stop.kind() == Checked.Kind.WRONG ? LOOK : FORM);
        return counted.isEmpty() ? go : counted + ". " + go;
    }

    static String sameSlip(String question) {
        return "This is the slip of " + place(question) + " again. Correct that one first, then work this one anew.";
    }

    private static String place(String question) {
        return Checked.isStep(question) ? question : "answer " + question;
    }

    private static String with(String before, int places, String how) {
        if (places == 0) {
            return before;
        }
        String place = places == 1 ? " place is " : " places are ";
        return before.isEmpty()
                ? places + place + how
                : before + ", " + places + (places == 1 ? " is " : " are ") + how;
    }

    static final String SURE_AND_WRONG = " You were sure: compare with the example before you try again.";

    /**
     * @param after where the learner stands with the skill now
     * @param nextTime how the next problem of the skill is shown
     */
    static String finished(
            Attempt attempt,
            Standing before,
            Standing after,
            boolean severalTemplates,
            boolean otherSkills,
            String nextTime) {
        String how = !attempt.slips().isEmpty()
                ? " in the end"
                : attempt.isHinted() ? ", with hints" : attempt.isClean() ? "" : ", after a look at worked lines";
        String start = "All right" + how + ". ";
        if (after.isSettled()) {
            return start
                    + (before.isSettled()
                            ? "This skill stays settled; it comes back from "
                            : "This skill is settled; it comes back from ")
                    + Day.written(after.due().orElseThrow()) + ".";
        }
        if (attempt.isProof()) {
            return start + "That was the question alone, without help. "
                    + (after.proofs().size() < Standing.PROOFS
                            ? "One more like that settles this skill: "
                            : "What settles this skill is one ")
                    + (severalTemplates ? "on another kind of problem, and " : "")
                    + (otherSkills ? "after another skill or on a later day." : "on a later day.");
        }
        return start + (before.isSettled() ? OPEN_AGAIN : "") + nextTime;
    }

    private static final String OPEN_AGAIN =
            "This skill was due again, and is open again: two problems solved bare settle it. ";

    /**
     * What the next problem of a skill shows, against the present one.
     *
     * @param chosen whether the learner set that herself
     * @param steps of the next problem
     */
    static String nextTime(Form now, Form next, boolean chosen, int steps) {
        String shown = switch (next.kind()) {
            case FULL -> "the example beside it";
            case FADED -> next.blanks() + " of " + steps + " steps left to you, the others worked";
            case BARE, FAULTY -> "the question alone";
        };
        if (chosen) {
            return "Next time " + shown + ", as you chose it.";
        }
        int order = next.compareTo(now);
        String against = order == 0 ? "as much support" : order < 0 ? "more support" : "less support";
        return "Next time with " + against + ": " + shown + ".";
    }

    static String next(Schedule.Next next, Course course, int skillNow, int nextDue) {
        String name = course.skills().get(next.skill()).name();
        if (next.why() == Schedule.Why.AHEAD_OF_TIME) {
            return "Every skill is settled; the next is due on " + Day.written(nextDue) + ". Going on now is extra.";
        }
        return next.skill() == skillNow
                ? "Next comes another one of this skill."
                : (next.why() == Schedule.Why.DUE
                                ? "Due again: "
                                : next.why() == Schedule.Why.BETWEEN
                                        ? "In between, so that you come" + " back to this one afresh: "
                                        : "Next: ")
                        + name + ".";
    }

    private static final String[] NUMBERS = {
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"
    };

    /** Up to twelve in words. */
    static String number(int number) {
        return number < NUMBERS.length ? NUMBERS[number] : Integer.toString(number);
    }

    /**
     * @param left how many problems settle the skill if each is right at once and without help; empty where, as they
     *     are shown, none does
     * @param withThis whether the present one is among them
     */
    static String progress(Standing standing, OptionalInt left, boolean withThis) {
        String start = "problem " + standing.given() + " of this skill · ";
        if (standing.isSettled()) {
            return start + "settled";
        }
        String proofs = start + standing.proofs().size() + " of " + Standing.PROOFS + " solved bare and without help";
        if (left.isEmpty()) {
            return proofs + " · with the support that you chose, none counts: the question alone does";
        }
        int more = left.getAsInt() - (withThis ? 1 : 0);
        String which =
                !withThis ? number(more) + " more" : more == 0 ? "this one" : "this one and " + number(more) + " more";
        return proofs + " · if all goes right at once, " + which
                + (left.getAsInt() == 1 ? " settles it" : " settle it");
    }

    // Hints

    static String unitIsMadeOf(String asked, String made) {
        return "The unit first: " + asked + " comes from " + made
                + ". Look at what you multiplied and what you divided by.";
    }

    static String nearMistake(String explanation) {
        return "Your value lies near one that comes from this slip. " + explanation;
    }

    static String warmer(boolean large) {
        return large
                ? "Your temperature is too high: look at what the rise is added to, and which power heats."
                : "Your temperature is too low: look at what the rise is added to, and whether all of the power "
                        + "was counted.";
    }

    static String side(boolean large) {
        return large
                ? "Your value is too large; look at its sign, too."
                : "Your value is too small; look at its sign, too.";
    }

    static String little(boolean large) {
        return large ? "Your value is a little too large." : "Your value is a little too small.";
    }

    static String size(boolean large, double times, boolean count) {
        String side = count ? large ? "too many" : "too few" : large ? "too large" : "too small";
        String far = times < 1.25
                ? "by less than a quarter: look at rounding on the way, and at a value read off wrongly."
                : times < 1.8
                        ? "by less than half: look for something left out or counted twice."
                        : times < 2.2
                                ? "by about a factor of two: look for something halved or doubled."
                                : times < 8
                                        ? "by a factor between two and eight: look at which value went into which "
                                                + "place."
                                        : "by a factor of eight or more: look at the prefixes first, then at what "
                                                + "was multiplied and what divided.";
        return "Your value is " + side + " " + far;
    }

    static String swapped(String one, String other) {
        return "Your values for " + one + " and " + other
                + " are right the other way round. Think which part the output lies" + " across.";
    }

    /** @param wanted empty where it is known */
    static String criterion(String symbol, String wanted, double off, List<String> ways) {
        StringBuilder out = new StringBuilder(wanted.isEmpty() ? "" : "Wanted is " + wanted + ". ");
        if (off > 0) {
            int percent = (int) Math.floor(100 * off + 0.5);
            out.append("Your ")
                    .append(symbol)
                    .append(" is beyond what is wanted by ")
                    .append(percent < 1 ? "less than 1" : Integer.toString(percent))
                    .append("\u00a0%. ");
        }
        for (int i = 0; i < ways.size(); i++) {
            out.append(i == 0 ? "It comes nearer with " : " or with ").append(ways.get(i));
        }
        return out.append(ways.isEmpty() ? "Change the parts one at a time and see which way it goes." : ".")
                .toString();
    }

    // Questions beside a problem

    static String whichRule(int step, Course.Line line) {
        return "Which rule gives step " + step + ", the " + line.meaning() + "?";
    }

    /** What a rule does, and if it is not the one of the line, where it belongs; the line's own reason follows. */
    static String rule(Course course, Course.Template template, int step, String chosen) {
        Course.Line line = template.lines().get(step - 1);
        boolean right = chosen.equals(line.principle());
        String does = course.rules().get(chosen);
        StringBuilder out = new StringBuilder(right ? "Right. " : "Not that one. ");
        if (does != null) {
            out.append("The rule “").append(chosen).append("” ").append(does).append(". ");
        }
        if (right) {
            return out.toString();
        }
        int used = 0;
        while (used < template.lines().size()
                && !template.lines().get(used).principle().equals(chosen)) {
            used++;
        }
        if (used < template.lines().size()) {
            out.append("Here that gives step ").append(used + 1).append(", the ");
            out.append(template.lines().get(used).meaning()).append(". ");
        } else {
            out.append("This problem does without it. ");
        }
        return out.append("Step ").append(step).append(" needs this one:").toString();
    }

    static String whichWay(Twin twin, List<Course.Line> lines) {
        return "Suppose one value were " + twin.change().words() + " and nothing else changed: the " + twin.given()
                + ". What would become of the "
                + lines.get(twin.asked() - 1).meaning() + "?";
    }

    /** The line where the change enters, and which way each line goes from there. */
    static String way(Twin twin, List<Course.Line> lines, boolean right) {
        StringBuilder out = new StringBuilder(right ? "Right. " : "Not so. ");
        if (twin.turns().isEmpty()) {
            return out.append("The ")
                    .append(twin.given())
                    .append(" enters in no line that leads to the ")
                    .append(lines.get(twin.asked() - 1).meaning())
                    .append(": it stays as it is.")
                    .toString();
        }
        String before = "The change enters in step ";
        for (Twin.Turn turn : twin.turns()) {
            out.append(before).append(turn.step()).append(": the ");
            out.append(lines.get(turn.step() - 1).meaning());
            out.append(
                    switch (turn.way()) {
                        case RISES -> " rises.";
                        case FALLS -> " falls.";
                        case STAYS -> " stays as it is.";
                    });
            before = " From there to step ";
        }
        return out.toString();
    }

    // A working with a wrong line

    static final String FIND_THE_LINE =
            "One line of this working does not follow from what stands before it; the lines after it"
                    + " go on rightly from there. Which one is it?";

    static String found(int step) {
        return "Yes, step " + step + " is wrong. Now mend it: what should it give?";
    }

    static String lineFollows(int step, String meaning) {
        return "Step " + step + ", the " + meaning
                + ", follows from what stands before it, even if a number in it is wrong"
                + " already. Look at another one.";
    }

    static String mended(String mistake) {
        return "Found and mended. Whoever works so is told: " + mistake + " ";
    }

    // The map and mistakes

    static String state(Course course, List<Standing> standings, int skill, int day) {
        Standing standing = standings.get(skill);
        if (standing.isDue(day)) {
            return "due again";
        }
        if (standing.isSettled()) {
            return "settled, back on " + Day.written(standing.due().orElseThrow());
        }
        if (standing.given() > 0) {
            return "begun, " + standing.proofs().size() + " of " + Standing.PROOFS + " bare";
        }
        return Schedule.isReady(course, standings, skill) ? "open" : "later";
    }

    /** What a slip that no template models is called. */
    static String cause(String rung) {
        return switch (rung) {
            case "WRONG_DIMENSION" -> "A unit of another kind of quantity.";
            case "POWER_OF_TEN" -> "A power of ten too many or too few.";
            case "SIGN" -> "The wrong sign.";
            case "RECIPROCAL" -> "A division upside down.";
            case "CONSISTENT_WITH_EARLIER" -> "Worked on from a value that was wrong or rounded.";
            case "RISE_OR_TEMPERATURE" -> "A temperature taken for a rise, or a rise for a temperature.";
            case "EXACT_OR_FITTED" -> "The calculated value where the fitted one counts, or the reverse.";
            case "OTHER_QUANTITY" -> "The value of another quantity of the problem.";
            case "WRONG_PAIR" -> "Voltage and current of two different parts.";
            case "CARRIED_MISTAKE" -> "Worked on from a mistake in an earlier question.";
            case "MISPLACED_GIVEN" -> "A given left out, or another one in its place.";
            case "NEAR_MISS" -> "Rounded on the way, or something small left out.";
            default -> "A value that no known slip explains.";
        };
    }
}
