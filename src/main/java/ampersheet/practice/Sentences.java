package ampersheet.practice;

import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** What the page says of a learner's own steps: what was found, and what comes next. */
record Sentences(Language language) {
    private static String digits(int number) {
        return Integer.toString(number);
    }

    String nowThisOne() {
        return language.say("practice.now-this-one");
    }

    String allHints() {
        return language.say("practice.all-hints");
    }

    String readSolution() {
        return language.say("practice.read-solution");
    }

    String noAside() {
        return language.say("practice.no-aside");
    }

    String readAs(String understood) {
        return language.say("practice.read-as", "value", understood);
    }

    /** It must not say whether the number is right. */
    String unitMissing() {
        return language.say("practice.unit-missing");
    }

    // After a check

    private String place(String question) {
        return Checked.isStep(question)
                ? language.say("practice.place.step", "step", step(question))
                : language.say("practice.place.answer", "question", question);
    }

    private String placeAtStart(String question) {
        return Checked.isStep(question)
                ? language.say("practice.place.step.start", "step", step(question))
                : language.say("practice.place.answer.start", "question", question);
    }

    private static String step(String question) {
        return question.substring("step ".length());
    }

    /** Of how many places what is said; then where to go on. */
    String stopped(Checked checked, Checked.Told stop) {
        int wrong = checked.count(Checked.Kind.WRONG) + checked.count(Checked.Kind.FOLLOWS);
        int form = checked.count(Checked.Kind.FORM);
        int right = checked.count(Checked.Kind.RIGHT);
        boolean several = wrong + form > (stop.blank() ? 0 : 1);
        List<String> counted = new ArrayList<>();
        if (several && wrong > 0) {
            counted.add(language.count("practice.stopped.wrong.first", wrong));
        }
        if (several && form > 0) {
            counted.add(language.count(
                    counted.isEmpty() ? "practice.stopped.form.first" : "practice.stopped.form.next", form));
        }
        if (right > 0) {
            counted.add(language.count(
                    counted.isEmpty() ? "practice.stopped.right.first" : "practice.stopped.right.next", right));
        }
        String next = several
                ? language.say("practice.stopped.begin", "place", place(stop.question()))
                : stopped(stop, placeAtStart(stop.question()));
        if (counted.isEmpty()) {
            return next;
        }
        String joined = counted.get(0);
        for (String one : counted.subList(1, counted.size())) {
            joined += language.say("list.comma") + one;
        }
        return language.say("practice.stopped.counted", "counted", joined, "next", next);
    }

    private String stopped(Checked.Told stop, String place) {
        return stop.blank()
                ? language.say("practice.stopped.open", "place", place)
                : language.say(
                        stop.kind() == Checked.Kind.WRONG ? "practice.stopped.look" : "practice.stopped.needs-form",
                        "place",
                        place);
    }

    String sameSlip(String question) {
        return language.say("practice.same-slip", "place", place(question));
    }

    String sureAndWrong() {
        return language.say("practice.sure-and-wrong");
    }

    /**
     * @param after where the learner stands with the skill now
     * @param nextTime how the next problem of the skill is shown
     */
    String finished(
            Attempt attempt,
            Standing before,
            Standing after,
            boolean severalTemplates,
            boolean otherSkills,
            String nextTime) {
        String start = language.say(
                !attempt.slips().isEmpty()
                        ? "practice.right.in-the-end"
                        : attempt.isHinted()
                                ? "practice.right.with-hints"
                                : attempt.isClean() ? "practice.right" : "practice.right.looked");
        if (after.isSettled()) {
            String day = Day.written(after.due().orElseThrow());
            return start + " "
                    + language.say(before.isSettled() ? "practice.settled.stays" : "practice.settled", "day", day);
        }
        if (attempt.isProof()) {
            String where = language.say(
                    severalTemplates
                            ? otherSkills
                                    ? "practice.proof.other-kind.other-skill"
                                    : "practice.proof.other-kind.later-day"
                            : otherSkills ? "practice.proof.other-skill" : "practice.proof.later-day");
            boolean one = after.proofs().size() < Standing.PROOFS;
            return start + " " + language.say("practice.proof") + " "
                    + language.say(one ? "practice.proof.one-more" : "practice.proof.what-settles", "where", where);
        }
        return before.isSettled()
                ? start + " " + language.say("practice.open-again") + " " + nextTime
                : start + " " + nextTime;
    }

    /**
     * What the next problem of a skill shows, against the present one.
     *
     * @param chosen whether the learner set that herself
     * @param steps of the next problem
     */
    String nextTime(Form now, Form next, boolean chosen, int steps) {
        String shown = switch (next.kind()) {
            case FULL -> language.say("practice.shown.full");
            case FADED -> language.say("practice.shown.faded", "blanks", digits(next.blanks()), "steps", digits(steps));
            case BARE, FAULTY -> language.say("practice.shown.bare");
        };
        int order = next.compareTo(now);
        return language.say(
                chosen
                        ? "practice.next-time.chosen"
                        : order == 0
                                ? "practice.next-time.as-much"
                                : order < 0 ? "practice.next-time.more" : "practice.next-time.less",
                "shown",
                shown);
    }

    String next(Schedule.Next next, Course course, int skillNow, int nextDue) {
        if (next.why() == Schedule.Why.AHEAD_OF_TIME) {
            return language.say("practice.next.ahead", "day", Day.written(nextDue));
        }
        if (next.skill() == skillNow) {
            return language.say("practice.next.same");
        }
        return language.say(
                switch (next.why()) {
                    case DUE -> "practice.next.due";
                    case BETWEEN -> "practice.next.between";
                    default -> "practice.next.open";
                },
                "skill",
                course.skills().get(next.skill()).name());
    }

    /**
     * @param left how many problems settle the skill if each is right at once and without help; empty where, as they
     *     are shown, none does
     * @param withThis whether the present one is among them
     */
    String progress(Standing standing, OptionalInt left, boolean withThis) {
        String start = language.say("practice.progress.problem", "number", digits(standing.given()));
        if (standing.isSettled()) {
            return start + " · " + language.say("practice.progress.settled");
        }
        String proofs = language.say(
                "practice.progress.proofs", "done", digits(standing.proofs().size()), "all", digits(Standing.PROOFS));
        return start + " · " + proofs + " · " + left(left, withThis);
    }

    private String left(OptionalInt left, boolean withThis) {
        if (left.isEmpty()) {
            return language.say("practice.progress.none-counts");
        }
        int more = left.getAsInt() - (withThis ? 1 : 0);
        return !withThis
                ? language.count("practice.progress.more", more)
                : more == 0
                        ? language.say("practice.progress.this")
                        : language.count("practice.progress.this-and", more);
    }

    // Hints

    String unitIsMadeOf(String asked, String made) {
        return language.say("practice.hint.unit", "unit", asked, "made", made);
    }

    String nearMistake(String explanation) {
        return language.say("practice.hint.near-mistake", "mistake", explanation);
    }

    String warmer(boolean large) {
        return language.say(large ? "practice.hint.too-hot" : "practice.hint.too-cold");
    }

    String side(boolean large) {
        return language.say(large ? "practice.hint.sign.large" : "practice.hint.sign.small");
    }

    String little(boolean large) {
        return language.say(large ? "practice.hint.little.large" : "practice.hint.little.small");
    }

    String size(boolean large, double times, boolean count) {
        String far = language.say(
                times < 1.25
                        ? "practice.hint.far.quarter"
                        : times < 1.8
                                ? "practice.hint.far.half"
                                : times < 2.2
                                        ? "practice.hint.far.two"
                                        : times < 8 ? "practice.hint.far.eight" : "practice.hint.far.more");
        return language.say(
                count
                        ? large ? "practice.hint.size.many" : "practice.hint.size.few"
                        : large ? "practice.hint.size.large" : "practice.hint.size.small",
                "far",
                far);
    }

    String swapped(String one, String other) {
        return language.say("practice.hint.swapped", "one", one, "other", other);
    }

    String larger(String question) {
        return language.say("practice.hint.nearer.larger", "question", question);
    }

    String smaller(String question) {
        return language.say("practice.hint.nearer.smaller", "question", question);
    }

    /** @param wanted empty where it is known */
    String criterion(String symbol, String wanted, double off, List<String> ways) {
        StringBuilder out = new StringBuilder();
        if (!wanted.isEmpty()) {
            out.append(language.say("practice.hint.wanted", "wanted", wanted)).append(' ');
        }
        if (off > 0) {
            int percent = (int) Math.floor(100 * off + 0.5);
            out.append(
                            percent < 1
                                    ? language.say("practice.hint.beyond.little", "symbol", symbol)
                                    : language.say(
                                            "practice.hint.beyond", "symbol", symbol, "percent", digits(percent)))
                    .append(' ');
        }
        return out.append(
                        ways.isEmpty()
                                ? language.say("practice.hint.one-at-a-time")
                                : language.say("practice.hint.nearer", "ways", language.either(ways)))
                .toString();
    }

    // Questions beside a problem

    String whichRule(int step, Course.Line line) {
        return language.say("practice.rule.which", "step", digits(step), "meaning", line.meaning());
    }

    /** What a rule does, and if it is not the one of the line, where it belongs; the line's own reason follows. */
    String rule(Course course, Course.Template template, int step, String chosen) {
        Course.Line line = template.lines().get(step - 1);
        boolean right = chosen.equals(line.principle());
        String does = course.rules().get(chosen);
        StringBuilder out =
                new StringBuilder(language.say(right ? "practice.rule.right" : "practice.rule.wrong")).append(' ');
        if (does != null) {
            out.append(language.say("practice.rule.does", "rule", chosen, "does", does))
                    .append(' ');
        }
        if (right) {
            return out.toString();
        }
        int used = 0;
        while (used < template.lines().size()
                && !template.lines().get(used).principle().equals(chosen)) {
            used++;
        }
        out.append(
                used < template.lines().size()
                        ? language.say(
                                "practice.rule.here",
                                "step",
                                digits(used + 1),
                                "meaning",
                                template.lines().get(used).meaning())
                        : language.say("practice.rule.without"));
        return out.append(' ')
                .append(language.say("practice.rule.needs", "step", digits(step)))
                .toString();
    }

    String whichWay(Twin twin, List<Course.Line> lines) {
        return language.say(
                switch (twin.change()) {
                    case DOUBLED -> "practice.twin.doubled";
                    case HALVED -> "practice.twin.halved";
                    case A_FIFTH_MORE -> "practice.twin.fifth-more";
                    case A_FIFTH_LESS -> "practice.twin.fifth-less";
                },
                "given",
                twin.given(),
                "asked",
                lines.get(twin.asked() - 1).meaning());
    }

    /** What a learner chooses. */
    String choice(Twin.Way way) {
        return language.say(
                switch (way) {
                    case RISES -> "practice.twin.rises";
                    case FALLS -> "practice.twin.falls";
                    case STAYS -> "practice.twin.stays";
                });
    }

    /** The line where the change enters, and which way each line goes from there. */
    String way(Twin twin, List<Course.Line> lines, boolean right) {
        StringBuilder out = new StringBuilder(language.say(right ? "practice.twin.right" : "practice.twin.wrong"));
        if (twin.turns().isEmpty()) {
            return out.append(' ')
                    .append(language.say(
                            "practice.twin.enters-nowhere",
                            "given",
                            twin.given(),
                            "asked",
                            lines.get(twin.asked() - 1).meaning()))
                    .toString();
        }
        for (Twin.Turn turn : twin.turns()) {
            boolean first = turn == twin.turns().get(0);
            out.append(' ')
                    .append(language.say(
                            switch (turn.way()) {
                                case RISES -> first ? "practice.turn.first.rises" : "practice.turn.next.rises";
                                case FALLS -> first ? "practice.turn.first.falls" : "practice.turn.next.falls";
                                case STAYS -> first ? "practice.turn.first.stays" : "practice.turn.next.stays";
                            },
                            "step",
                            digits(turn.step()),
                            "meaning",
                            lines.get(turn.step() - 1).meaning()));
        }
        return out.toString();
    }

    // A working with a wrong line

    String findTheLine() {
        return language.say("practice.faulty.find");
    }

    String found(int step) {
        return language.say("practice.faulty.found", "step", digits(step));
    }

    String lineFollows(int step, String meaning) {
        return language.say("practice.faulty.follows", "step", digits(step), "meaning", meaning);
    }

    String mended(String mistake) {
        return language.say("practice.faulty.mended", "mistake", mistake) + " ";
    }

    // The map and mistakes

    String state(Course course, List<Standing> standings, int skill, int day) {
        Standing standing = standings.get(skill);
        if (standing.isDue(day)) {
            return language.say("practice.state.due");
        }
        if (standing.isSettled()) {
            return language.say(
                    "practice.state.settled", "day", Day.written(standing.due().orElseThrow()));
        }
        if (standing.given() > 0) {
            return language.say(
                    "practice.state.begun", "done", digits(standing.proofs().size()), "all", digits(Standing.PROOFS));
        }
        return language.say(
                Schedule.isReady(course, standings, skill) ? "practice.state.open" : "practice.state.later");
    }

    /** What a slip that no template models is called. */
    String cause(String rung) {
        return language.say(
                switch (rung) {
                    case "WRONG_DIMENSION" -> "practice.cause.dimension";
                    case "POWER_OF_TEN" -> "practice.cause.power-of-ten";
                    case "SIGN" -> "practice.cause.sign";
                    case "RECIPROCAL" -> "practice.cause.reciprocal";
                    case "CONSISTENT_WITH_EARLIER" -> "practice.cause.follows";
                    case "RISE_OR_TEMPERATURE" -> "practice.cause.rise";
                    case "EXACT_OR_FITTED" -> "practice.cause.fitted";
                    case "OTHER_QUANTITY" -> "practice.cause.other-quantity";
                    case "WRONG_PAIR" -> "practice.cause.wrong-pair";
                    case "CARRIED_MISTAKE" -> "practice.cause.carried";
                    case "MISPLACED_GIVEN" -> "practice.cause.misplaced";
                    case "NEAR_MISS" -> "practice.cause.near";
                    default -> "practice.cause.unknown";
                });
    }
}
