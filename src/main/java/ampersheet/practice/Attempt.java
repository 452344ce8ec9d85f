package ampersheet.practice;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * One problem that was given, and all that a learner did with it. Two copies, of two tabs or two devices, are joined so
 * that nothing of either is lost: sets are united, of two texts the later one counts.
 *
 * @param id of its own: who gave it out and a number
 * @param skill by name
 * @param template {@code family/name}
 * @param variant of the skill
 * @param given when; orders it among the others
 * @param day on which it was given
 * @param form in which it is shown
 * @param shown since when in that form
 * @param typed by question
 * @param slips wrong answers, in the order in which they were checked
 * @param help by what it is about, how far it went: see {@link Helped}
 * @param checked when an answer was last checked; {@link Moment#NEVER} before
 * @param ending how it ended; empty while it is open
 * @param left whether another problem was gone on to
 */
public record Attempt(
        String id,
        String skill,
        String template,
        int variant,
        Moment given,
        int day,
        Form form,
        Moment shown,
        Map<String, Typed> typed,
        Set<Slip> slips,
        Map<String, Integer> help,
        Moment checked,
        Optional<Ending> ending,
        boolean left) {
    /**
     * The key of {@link #help} for the example, or worked lines, seen before only the question was shown or beside it.
     */
    static final String EXAMPLE = "example";

    /** @param text as the learner typed it */
    public record Typed(Moment at, String text) {
        Typed orLater(Typed other) {
            int order = at.compareTo(other.at);
            return order > 0 || order == 0 && text.compareTo(other.text) >= 0 ? this : other;
        }
    }

    /** Whether a learner said that she was sure, before the check. */
    public enum Sureness {
        UNSAID,
        SURE,
        UNSURE
    }

    /**
     * A wrong answer.
     *
     * @param question where
     * @param cause the id of a modelled mistake, or the name of the rung
     * @param day on which
     */
    public record Slip(Moment at, String question, String cause, int day, Sureness sure) implements Comparable<Slip> {
        @Override
        public int compareTo(Slip other) {
            int order = at.compareTo(other.at);
            order = order == 0 ? question.compareTo(other.question) : order;
            order = order == 0 ? cause.compareTo(other.cause) : order;
            order = order == 0 ? Integer.compare(day, other.day) : order;
            return order == 0 ? sure.compareTo(other.sure) : order;
        }
    }

    /** How a problem ended. */
    public enum Way {
        /** All that was asked is right. */
        RIGHT,
        /** Right, and the steps on the way were left out. */
        STRAIGHT,
        /** The worked solution was shown before it was right. */
        SHOWN,
        /** Another one like it was taken before it was right. */
        GIVEN_UP;

        boolean isRight() {
            return this == RIGHT || this == STRAIGHT;
        }
    }

    public record Ending(Moment at, int day, Way way, Sureness sure) {
        /** What came first is how it ended. */
        Ending orEarlier(Ending other) {
            int order = at.compareTo(other.at);
            order = order == 0 ? way.compareTo(other.way) : order;
            order = order == 0 ? Integer.compare(day, other.day) : order;
            order = order == 0 ? sure.compareTo(other.sure) : order;
            return order <= 0 ? this : other;
        }
    }

    public Attempt {
        typed = Collections.unmodifiableMap(new TreeMap<>(typed));
        slips = Collections.unmodifiableSet(new TreeSet<>(slips));
        help = Collections.unmodifiableMap(new TreeMap<>(help));
    }

    static Attempt begun(String id, String skill, String template, int variant, Moment given, int day, Form form) {
        return new Attempt(
                id,
                skill,
                template,
                variant,
                given,
                day,
                form,
                given,
                Map.of(),
                new TreeSet<>(),
                Map.of(),
                Moment.NEVER,
                Optional.empty(),
                false);
    }

    public boolean isOpen() {
        return ending.isEmpty() && !left;
    }

    public boolean isRight() {
        return ending.isPresent() && ending.get().way().isRight();
    }

    /** Whether it is a working with a wrong line, which counts neither for nor against a skill. */
    public boolean isFaulty() {
        return form.kind() == Form.Kind.FAULTY;
    }

    /** Whether something was got wrong, or given up, on the way. */
    public boolean wentWrong() {
        return !slips.isEmpty() || ending.isPresent() && !ending.get().way().isRight();
    }

    /** Whether a hint was taken, or the example looked at where it is not beside. */
    public boolean isHelped() {
        for (String about : help.keySet()) {
            if (!about.equals(EXAMPLE) || form.kind() == Form.Kind.BARE) {
                return true;
            }
        }
        return false;
    }

    /** Whether a hint was taken. */
    boolean isHinted() {
        return help.size() > (help.containsKey(EXAMPLE) ? 1 : 0);
    }

    /** Right at once and by oneself. */
    public boolean isClean() {
        return isRight() && slips.isEmpty() && !isHelped();
    }

    /** What counts towards being settled: the question alone, right at once and by oneself. */
    public boolean isProof() {
        return isClean() && form.kind() == Form.Kind.BARE;
    }

    /** The one that came last; empty for none. */
    Optional<Slip> lastSlip() {
        Optional<Slip> last = Optional.empty();
        for (Slip slip : slips) {
            last = Optional.of(slip);
        }
        return last;
    }

    /** The text that stands in a place now. */
    String text(String question) {
        return typed.containsKey(question) ? typed.get(question).text() : "";
    }

    /** Whoever saw more support before had help, should it come to the question alone. */
    Attempt in(Form other, Moment at) {
        Attempt had = form.compareTo(other) < 0 ? helped(EXAMPLE, 1) : this;
        return new Attempt(
                id, skill, template, variant, given, day, other, at, typed, slips, had.help, checked, ending, left);
    }

    Attempt with(String question, Typed text) {
        Map<String, Typed> all = new TreeMap<>(typed);
        all.put(question, text);
        return new Attempt(
                id, skill, template, variant, given, day, form, shown, all, slips, help, checked, ending, left);
    }

    Attempt with(Slip slip) {
        Set<Slip> all = new TreeSet<>(slips);
        all.add(slip);
        return new Attempt(
                id, skill, template, variant, given, day, form, shown, typed, all, help, checked, ending, left);
    }

    Attempt helped(String about, int level) {
        Map<String, Integer> all = new TreeMap<>(help);
        all.merge(about, level, Math::max);
        return new Attempt(
                id, skill, template, variant, given, day, form, shown, typed, slips, all, checked, ending, left);
    }

    Attempt checkedAt(Moment at) {
        return new Attempt(
                id,
                skill,
                template,
                variant,
                given,
                day,
                form,
                shown,
                typed,
                slips,
                help,
                checked.orLater(at),
                ending,
                left);
    }

    Attempt ended(Ending how) {
        return new Attempt(
                id,
                skill,
                template,
                variant,
                given,
                day,
                form,
                shown,
                typed,
                slips,
                help,
                checked,
                Optional.of(ending.map(how::orEarlier).orElse(how)),
                left);
    }

    /** Done with: what was typed into it is no longer needed once it has ended. */
    Attempt leave() {
        return new Attempt(
                id,
                skill,
                template,
                variant,
                given,
                day,
                form,
                shown,
                ending.isPresent() ? Map.of() : typed,
                slips,
                help,
                checked,
                ending,
                ending.isPresent());
    }

    /** What both know; the same whichever is asked. */
    Attempt joined(Attempt other) {
        boolean gone = left || other.left;
        Map<String, Typed> texts = new TreeMap<>(typed);
        other.typed.forEach((question, text) -> texts.merge(question, text, Typed::orLater));
        Set<Slip> wrong = new TreeSet<>(slips);
        wrong.addAll(other.slips);
        Map<String, Integer> hints = new TreeMap<>(help);
        other.help.forEach((about, level) -> hints.merge(about, level, Math::max));
        Optional<Ending> end = ending.isEmpty()
                ? other.ending
                : other.ending.isEmpty() ? ending : Optional.of(ending.get().orEarlier(other.ending.get()));
        int order = shown.compareTo(other.shown);
        Form latest = order == 0 ? form.orMoreSupport(other.form) : order > 0 ? form : other.form;
        return new Attempt(
                id,
                skill,
                template,
                variant,
                given,
                day,
                latest,
                shown.orLater(other.shown),
                gone ? Map.of() : texts,
                wrong,
                hints,
                checked.orLater(other.checked),
                end,
                gone);
    }
}
