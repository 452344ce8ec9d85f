package ampersheet.practice;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.practice.Attempt.Ending;
import ampersheet.practice.Attempt.Slip;
import ampersheet.practice.Attempt.Sureness;
import ampersheet.practice.Attempt.Typed;
import ampersheet.practice.Attempt.Way;
import ampersheet.practice.Course.Skill;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A learner at one page: what there is to practise, what she did, and which problem is before her. Every event gives
 * another; nothing changes.
 *
 * @param writer names the tab in which this happens
 * @param current id of the attempt shown; empty before the first
 */
public record Practice(Course course, LearnerRecord record, String writer, Optional<String> current) {
    public static Practice of(Course course, LearnerRecord record, String writer) {
        return new Practice(course, record, writer, Optional.empty());
    }

    // What is shown

    /** @throws java.util.NoSuchElementException before the first problem was given */
    public Attempt attempt() {
        return record.attempts().get(current.orElseThrow());
    }

    public int skillIndex() {
        return course.indexOf(attempt().skill());
    }

    private Skill skill() {
        return course.skills().get(skillIndex());
    }

    public Standing standing() {
        return Standing.of(skill(), record);
    }

    public List<Standing> standings() {
        return Schedule.standings(course, record);
    }

    /** How the present problem is shown. */
    public Form form() {
        return attempt().form();
    }

    /** Numbers of the steps left blank in the present form; all where it is not a faded one. */
    public List<Integer> blankSteps() {
        return form().kind() == Form.Kind.FADED
                ? skill().of(attempt().variant()).blank(form())
                : List.of();
    }

    private List<Integer> workedSteps() {
        List<Integer> worked = new ArrayList<>();
        List<Integer> blank = blankSteps();
        for (int step = 1;
                form().kind() == Form.Kind.FADED
                        && step <= skill().of(attempt().variant()).steps();
                step++) {
            if (!blank.contains(step)) {
                worked.add(step);
            }
        }
        return worked;
    }

    public int settled() {
        int settled = 0;
        for (Standing standing : standings()) {
            settled += standing.isSettled() ? 1 : 0;
        }
        return settled;
    }

    public String progress() {
        return course.sentences()
                .progress(
                        standing(),
                        Schedule.untilSettled(course, record, skillIndex(), attempt()),
                        attempt().isOpen());
    }

    /** The state of a skill in words: open, later, begun, settled and until when, due again. */
    public String state(int skill, int day) {
        return course.sentences().state(course, standings(), skill, day);
    }

    /** What the learner got wrong, the latest first. */
    public List<Mistake> mistakes() {
        return Mistake.of(record);
    }

    /** The skill in which a mistake was made last. */
    public int indexOf(Mistake mistake) {
        return course.indexOf(mistake.latest().skill());
    }

    /** A sentence for a cause: that of the template where it is a modelled mistake. */
    public static String told(Mistake mistake, ProblemKey key) {
        return told(mistake.cause(), key);
    }

    static String told(String cause, ProblemKey key) {
        for (AnswerKey answer : key.answers()) {
            for (KnownMistake known : answer.mistakes()) {
                if (known.id().equals(cause)) {
                    return known.explanation();
                }
            }
        }
        for (DesignKey design : key.designs()) {
            for (DesignKey.Criterion criterion : design.criteria()) {
                if (criterion.id().equals(cause)) {
                    return criterion.says();
                }
            }
        }
        return new Sentences(key.language()).cause(cause);
    }

    /**
     * How often the learner was sure and right, sure and wrong, not sure and right, not sure and wrong: problems and
     * slips.
     */
    public int[] sureness() {
        int[] counted = new int[4];
        for (Attempt attempt : record.attempts().values()) {
            if (attempt.isRight() && attempt.slips().isEmpty()) {
                Sureness sure = attempt.ending().orElseThrow().sure();
                counted[0] += sure == Sureness.SURE ? 1 : 0;
                counted[2] += sure == Sureness.UNSURE ? 1 : 0;
            }
            for (Slip slip : attempt.slips()) {
                counted[1] += slip.sure() == Sureness.SURE ? 1 : 0;
                counted[3] += slip.sure() == Sureness.UNSURE ? 1 : 0;
            }
        }
        return counted;
    }

    // Giving out

    /**
     * Where the learner was, or the first problem.
     *
     * @param preferred id of the attempt that this tab showed before; it may be gone
     * @param chance any number: which of the variants not yet seen
     */
    public Practice start(String preferred, int day, int chance) {
        Optional<Attempt> found =
                Optional.ofNullable(record.attempts().get(preferred)).filter(this::canBeShown);
        if (found.isEmpty()) {
            for (Attempt attempt : record.inOrder()) {
                found = canBeShown(attempt) ? Optional.of(attempt) : found;
            }
        }
        return found.isPresent() ? with(record, found.get().id()) : goOn(day, chance);
    }

    private boolean canBeShown(Attempt attempt) {
        int skill = course.indexOf(attempt.skill());
        return !attempt.left()
                && skill >= 0
                && attempt.variant() < course.skills().get(skill).variants().size()
                && (!attempt.isFaulty() || course.skills().get(skill).faulty().containsKey(attempt.variant()));
    }

    /** The next problem, by the schedule. What is still open stays so. */
    public Practice goOn(int day, int chance) {
        Practice left = leaving();
        return left.give(Schedule.next(course, left.record, day, chance), day);
    }

    /** A problem of this skill: one that was left open, else a new one. */
    public Practice choose(int skill, int day, int chance) {
        Practice left = leaving();
        return left.give(Schedule.of(course, left.record, skill, chance, Schedule.Why.OPEN), day);
    }

    /** Another one like the present; whoever had not yet got that right has given it up. */
    public Practice another(int day, int chance) {
        int skill = skillIndex();
        Practice left = (attempt().isOpen() ? ended(Way.GIVEN_UP, Sureness.UNSAID, day) : this).leaving();
        return left.give(Schedule.another(course, left.record, skill, chance, Schedule.Why.OPEN), day);
    }

    /** The same problem once more, where something went wrong. */
    public Practice tryAgain(Mistake mistake, int day) {
        int skill = course.indexOf(mistake.latest().skill());
        Practice left = leaving();
        if (mistake.latest().isOpen() && canBeShown(mistake.latest())) {
            return left.with(left.record, mistake.latest().id());
        }
        Form form = course.skills()
                .get(skill)
                .of(mistake.latest().variant())
                .formFor(Standing.of(course.skills().get(skill), left.record).blanks());
        return left.give(
                new Schedule.Next(skill, Optional.empty(), mistake.latest().variant(), form, Schedule.Why.OPEN), day);
    }

    /** A working of this skill with one wrong line, of those mended least often; nothing new where none is offered. */
    public Practice findFaulty(int day) {
        if (!hasFaulty()) {
            return this;
        }
        int skill = skillIndex();
        int variant = FaultyLine.next(skill(), record).orElseThrow();
        Practice left = leaving();
        Optional<Attempt> open = Optional.empty();
        for (Attempt attempt : left.record.attempts().values()) {
            boolean same = attempt.skill().equals(skill().name()) && attempt.variant() == variant;
            open = same && attempt.isFaulty() && attempt.isOpen() ? Optional.of(attempt) : open;
        }
        return left.give(new Schedule.Next(skill, open, variant, Form.FAULTY, Schedule.Why.OPEN), day);
    }

    /** Whether the present skill is settled and has a working with a wrong line to go on with. */
    public boolean hasFaulty() {
        return standing().isSettled() && FaultyLine.next(skill(), record).isPresent();
    }

    /** The wrong line of the present problem, as far as it is found; empty where it is no such problem. */
    public Optional<FaultyLine> faultyLine() {
        return attempt().isFaulty() ? FaultyLine.of(this) : Optional.empty();
    }

    /** Says which line is wrong; once it is found, that stands. */
    public Practice nameLine(int step) {
        return attempt().isOpen() && isLineWanted() ? type(FaultyLine.NAMED, Integer.toString(step)) : this;
    }

    /** Whether the wrong line is still to be found, before there is a place to mend it. */
    private boolean isLineWanted() {
        return faultyLine().isPresent() && !faultyLine().get().isFound();
    }

    private Practice leaving() {
        boolean over = current.isPresent()
                && record.attempts().containsKey(current.get())
                && attempt().ending().isPresent();
        return over ? with(record.with(attempt().leave()), current.get()) : this;
    }

    private Practice give(Schedule.Next next, int day) {
        if (next.open().isPresent()) {
            return with(record, next.open().get().id());
        }
        Moment now = record.next(writer);
        Skill skill = course.skills().get(next.skill());
        String template = skill.of(next.variant()).name();
        Attempt given = Attempt.begun(
                writer + "." + now.count(), skill.name(), template, next.variant(), now, day, next.form());
        return with(record.with(given), given.id());
    }

    private Practice with(LearnerRecord other, String id) {
        return new Practice(course, other, writer, Optional.of(id));
    }

    private Practice with(Attempt attempt) {
        return with(record.with(attempt), attempt.id());
    }

    // What a learner does

    public Practice type(String question, String text) {
        return attempt().text(question).equals(text)
                ? this
                : with(attempt().with(question, new Typed(record.next(writer), text)));
    }

    /** @param chosen {@code full}, {@code faded}, {@code bare}, or {@code auto} */
    public Practice support(String chosen) {
        Optional<Form.Kind> kind = Optional.empty();
        for (Form.Kind one : Form.Kind.values()) {
            kind = one.word().equals(chosen) && one != Form.Kind.FAULTY ? Optional.of(one) : kind;
        }
        Practice set =
                new Practice(course, record.with(new LearnerRecord.Chosen(record.next(writer), kind)), writer, current);
        if (!set.attempt().isOpen() || set.attempt().isFaulty()) {
            return set;
        }
        Schedule.Next asked = Schedule.another(course, set.record, skillIndex(), 0, Schedule.Why.OPEN);
        Course.Template template = skill().of(attempt().variant());
        Form form = kind.isEmpty() || kind.get() != Form.Kind.FADED ? asked.form() : template.middle();
        return form.equals(set.form()) ? set : set.with(set.attempt().in(form, set.record.next(writer)));
    }

    /** The example was looked at; beside the question alone that is help. */
    public Practice lookAtExample() {
        boolean help = attempt().isOpen() && form().kind() == Form.Kind.BARE;
        return help ? with(attempt().helped(Attempt.EXAMPLE, 1)) : this;
    }

    /** How the places stand, without anything being counted. */
    public Checked look(ProblemKey key, List<String> places) {
        return Checked.of(key, places, texts());
    }

    private Map<String, String> texts() {
        Map<String, String> texts = new LinkedHashMap<>();
        attempt().typed().forEach((question, typed) -> texts.put(question, typed.text()));
        return texts;
    }

    /**
     * @param places in the order shown
     * @param sure {@code sure}, {@code unsure} or nothing
     */
    public Practice check(ProblemKey key, List<String> places, String sure, int day) {
        if (!attempt().isOpen() || isLineWanted()) {
            return this;
        }
        Sureness said = sure.equals("sure") ? Sureness.SURE : sure.equals("unsure") ? Sureness.UNSURE : Sureness.UNSAID;
        Checked checked = look(key, places);
        Moment now = record.next(writer);
        Attempt after = attempt();
        if (checked.isSolved()) {
            return with(after.checkedAt(now)
                    .ended(new Ending(now, day, checked.straight() ? Way.STRAIGHT : Way.RIGHT, said)));
        }
        Optional<Checked.Told> slip = checked.slip();
        if (slip.isPresent() && isNew(slip.get().question(), slip.get().cause().orElseThrow())) {
            after = after.with(
                    new Slip(now, slip.get().question(), slip.get().cause().get(), day, said));
        }
        return with(after.checkedAt(now));
    }

    /** The same wrong answer, checked once more, is no second slip. */
    private boolean isNew(String question, String cause) {
        Typed typed = attempt().typed().get(question);
        boolean changed = typed != null && typed.at().isAfter(attempt().checked());
        for (Slip slip : attempt().slips()) {
            if (!changed && slip.question().equals(question) && slip.cause().equals(cause)) {
                return false;
            }
        }
        return true;
    }

    /** The question beside the present problem; none if the learner wants none. */
    public Optional<SideQuestion> sideQuestion() {
        return record.aside().asked() ? SideQuestion.of(course, skill(), attempt(), record) : Optional.empty();
    }

    /** The first answer to the question beside the problem stands. */
    public Practice answerAside(String choice) {
        Optional<SideQuestion> question =
                sideQuestion().filter(one -> one.chosen().isEmpty());
        return question.isPresent() && question.get().choices().contains(choice)
                ? type(question.get().name(), choice)
                : this;
    }

    /** Whether there shall be questions beside the problems. */
    public Practice askAside(boolean asked) {
        return new Practice(course, record.with(new LearnerRecord.Aside(record.next(writer), asked)), writer, current);
    }

    public Optional<Hint> nextHint(ProblemKey key, List<String> places) {
        return attempt().ending().isPresent()
                ? Optional.empty()
                : Hint.next(key, attempt(), look(key, places), workedSteps());
    }

    public Practice take(Hint hint) {
        return with(attempt().helped(hint.about(), hint.level()));
    }

    /** Those that hold still. */
    public List<Hint> hintsTaken(ProblemKey key, List<String> places) {
        return Hint.taken(key, attempt(), look(key, places));
    }

    /** Before all was right, this ends the problem as not done. */
    public Practice showSolution(int day) {
        return attempt().isOpen() ? ended(Way.SHOWN, Sureness.UNSAID, day) : this;
    }

    private Practice ended(Way way, Sureness sure, int day) {
        return with(attempt().ended(new Ending(record.next(writer), day, way, sure)));
    }

    /** With what another tab or device knows. */
    public Practice joined(LearnerRecord other) {
        return new Practice(course, record.joined(other), writer, current);
    }

    // What is said

    /** After a check: where it stopped, or what the success is worth and what comes next. */
    public String saidAfterCheck(Practice before, ProblemKey key, List<String> places, int day) {
        Checked checked = look(key, places);
        if (isLineWanted()) {
            return course.sentences().findTheLine();
        }
        if (checked.isSolved() && attempt().isFaulty()) {
            return FaultyLine.of(this).orElseThrow().mended(key) + whatIsNext(day);
        }
        if (!checked.isSolved()) {
            Optional<Checked.Told> stop = checked.stopped();
            String said = course.sentences().stopped(checked, stop.orElseThrow());
            return isSureAndWrong(before) ? said + " " + course.sentences().sureAndWrong() : said;
        }
        Standing after = standing();
        return course.sentences()
                        .finished(
                                attempt(),
                                before.standing(),
                                after,
                                skill().hasSeveralTemplates(),
                                course.skills().size() > 1,
                                nextTime())
                + " " + whatIsNext(day);
    }

    /** How the next problem of this skill will be shown, for whoever has done with the present one. */
    private String nextTime() {
        LearnerRecord left = leaving().record;
        Schedule.Next next = Schedule.another(course, left, skillIndex(), 0, Schedule.Why.OPEN);
        return course.sentences()
                .nextTime(
                        form(),
                        next.form(),
                        left.support().form().isPresent(),
                        skill().of(next.variant()).steps());
    }

    /** Whether the last check found wrong what the learner was sure of. */
    public boolean isSureAndWrong(Practice before) {
        boolean sure =
                attempt().lastSlip().map(slip -> slip.sure() == Sureness.SURE).orElse(false);
        return sure && attempt().slips().size() > before.attempt().slips().size();
    }

    /** What {@link #goOn} will give. */
    public String whatIsNext(int day) {
        Practice left = leaving();
        int due = Integer.MAX_VALUE;
        for (Standing standing : left.standings()) {
            due = standing.due().isPresent() ? Math.min(due, standing.due().getAsInt()) : due;
        }
        return course.sentences().next(Schedule.next(course, left.record, day, 0), course, skillIndex(), due);
    }

    public String saidWithoutHints() {
        return course.sentences().allHints();
    }

    public String saidWithoutAside() {
        return course.sentences().noAside();
    }

    public String saidWithSolution() {
        return course.sentences().readSolution();
    }

    /** What a calculator says of a line: its value, or what does not fit. */
    public String calculated(String line) {
        return WorkingLine.read(line, course)
                .map(WorkingLine::said)
                .orElse(new LineSentences(course.language()).nothingToWork());
    }
}
