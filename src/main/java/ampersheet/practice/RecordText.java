package ampersheet.practice;

import ampersheet.practice.Attempt.Ending;
import ampersheet.practice.Attempt.Slip;
import ampersheet.practice.Attempt.Sureness;
import ampersheet.practice.Attempt.Typed;
import ampersheet.practice.Attempt.Way;
import ampersheet.quantity.QuantityWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A learner's record as a text that a browser keeps, a file carries and a person can read: a line that names its
 * version, the set, what was chosen, then a paragraph for each problem. A moment is written as a number and who counted
 * it. On its way a text may lose or get empty lines and blanks at the ends of lines: a problem ends where the next
 * begins.
 *
 * <pre>
 * Ampersheet practice record, version 1
 * set AB123-60
 * support auto 0 -
 * aside off 3 k3f9
 *
 * problem k3f9.1
 * skill series resistor for an indicator
 * template current-limiting/one-indicator
 * variant 4
 * given 2026-11-29 1 k3f9
 * form 1 k3f9 faded 2
 * slip 2026-11-29 7 k3f9 KNOWN-ID unsure a
 * help 2 step 1
 * typed 8 k3f9 a = 4.7 kΩ
 * checked 9 k3f9
 * ended 2026-11-29 9 k3f9 right sure
 * left
 * </pre>
 */
public final class RecordText {
    private static final String FIRST_LINE = "Ampersheet practice record, version ";
    private static final String VERSION = "1";
    private static final String ASKED = "asked";

    private static final String PROBLEM = "problem ";
    private static final String TYPED = "typed ";

    /** Those that are not empty, and the number of each in the text. */
    private final List<String> lines = new ArrayList<>();

    private final List<Integer> numbers = new ArrayList<>();
    private int at;

    private RecordText(String text) {
        List<String> all = Texts.parts(withoutReturns(text), '\n');
        for (int i = 0; i < all.size(); i++) {
            String line = withoutBlanksAround(all.get(i));
            if (!line.isEmpty()) {
                lines.add(line);
                numbers.add(i + 1);
            }
        }
    }

    /** What was typed keeps its end. */
    private static String withoutBlanksAround(String line) {
        int from = 0;
        int to = line.length();
        while (from < to && isBlank(line.charAt(from))) {
            from++;
        }
        while (!line.startsWith(TYPED, from) && to > from && isBlank(line.charAt(to - 1))) {
            to--;
        }
        return line.substring(from, to);
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == QuantityWriter.NO_BREAK_SPACE;
    }

    public static String write(LearnerRecord record) {
        StringBuilder out = new StringBuilder(FIRST_LINE).append(VERSION).append('\n');
        out.append("set ").append(record.set()).append('\n');
        out.append("support ")
                .append(record.support().written())
                .append(' ')
                .append(moment(record.support().at()))
                .append('\n');
        if (!record.aside().equals(LearnerRecord.Aside.AT_FIRST)) {
            out.append("aside ")
                    .append(record.aside().asked() ? ASKED : "off")
                    .append(' ')
                    .append(moment(record.aside().at()))
                    .append('\n');
        }
        for (Attempt attempt : record.inOrder()) {
            out.append('\n');
            write(attempt, out);
        }
        return out.toString();
    }

    private static void write(Attempt attempt, StringBuilder out) {
        out.append(PROBLEM).append(attempt.id()).append('\n');
        out.append("skill ").append(attempt.skill()).append('\n');
        out.append("template ").append(attempt.template()).append('\n');
        out.append("variant ").append(attempt.variant()).append('\n');
        out.append("given ")
                .append(Day.written(attempt.day()))
                .append(' ')
                .append(moment(attempt.given()))
                .append('\n');
        out.append("form ")
                .append(moment(attempt.shown()))
                .append(' ')
                .append(attempt.form().written())
                .append('\n');
        for (Slip slip : attempt.slips()) {
            out.append("slip ")
                    .append(Day.written(slip.day()))
                    .append(' ')
                    .append(moment(slip.at()))
                    .append(' ')
                    .append(slip.cause())
                    .append(' ')
                    .append(word(slip.sure()))
                    .append(' ')
                    .append(slip.question())
                    .append('\n');
        }
        attempt.help()
                .forEach((about, level) -> out.append("help ")
                        .append(level)
                        .append(' ')
                        .append(about)
                        .append('\n'));
        attempt.typed()
                .forEach((question, typed) -> out.append(TYPED)
                        .append(moment(typed.at()))
                        .append(' ')
                        .append(question)
                        .append(" = ")
                        .append(Texts.escaped(typed.text()))
                        .append('\n'));
        if (!attempt.checked().equals(Moment.NEVER)) {
            out.append("checked ").append(moment(attempt.checked())).append('\n');
        }
        attempt.ending()
                .ifPresent(ending -> out.append("ended ")
                        .append(Day.written(ending.day()))
                        .append(' ')
                        .append(moment(ending.at()))
                        .append(' ')
                        .append(word(ending.way()))
                        .append(' ')
                        .append(word(ending.sure()))
                        .append('\n'));
        if (attempt.left()) {
            out.append("left\n");
        }
    }

    private static String moment(Moment moment) {
        return moment.count() + " " + moment.writer();
    }

    private static String word(Sureness sure) {
        return switch (sure) {
            case UNSAID -> "unsaid";
            case SURE -> "sure";
            case UNSURE -> "unsure";
        };
    }

    private static String word(Way way) {
        return switch (way) {
            case RIGHT -> "right";
            case STRAIGHT -> "straight";
            case SHOWN -> "shown";
            case GIVEN_UP -> "given-up";
        };
    }

    /** @throws UnfitText with a sentence for the learner: what it is not, or which line does not fit */
    public static LearnerRecord read(String text) {
        RecordText reader = new RecordText(text);
        String first = reader.lines.isEmpty() ? "" : reader.lines.get(0);
        if (!first.startsWith(FIRST_LINE)) {
            throw new UnfitText("practice.record.none", "first", FIRST_LINE + VERSION);
        }
        if (!first.substring(FIRST_LINE.length()).equals(VERSION)) {
            throw new UnfitText(
                    "practice.record.version", "version", first.substring(FIRST_LINE.length()), "known", VERSION);
        }
        reader.at = 1;
        try {
            return reader.record();
        } catch (UnfitText unfit) {
            throw unfit.inLine(reader.number());
        }
    }

    private static String withoutReturns(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) != '\r' && text.charAt(i) != '\uFEFF') {
                out.append(text.charAt(i));
            }
        }
        return out.toString();
    }

    /** The number in the text of the line read last. An int: what joins an object to a text is large in a script. */
    private int number() {
        return numbers.get(Math.min(at, numbers.size()) - 1);
    }

    private LearnerRecord record() {
        String set = behind("set ");
        Words chosen = new Words(behind("support "));
        String form = chosen.next();
        Optional<Form.Kind> support = form.equals("auto") ? Optional.empty() : Optional.of(kind(form));
        LearnerRecord.Chosen chosenSupport = new LearnerRecord.Chosen(chosen.moment(), support);
        LearnerRecord.Aside aside = isAt("aside ") ? aside(new Words(behind("aside "))) : LearnerRecord.Aside.AT_FIRST;
        Map<String, Attempt> attempts = new TreeMap<>();
        while (at < lines.size()) {
            Attempt attempt = attempt();
            attempts.merge(attempt.id(), attempt, Attempt::joined);
        }
        return new LearnerRecord(set, attempts, chosenSupport, aside);
    }

    private static LearnerRecord.Aside aside(Words words) {
        String word = words.next();
        if (!word.equals(ASKED) && !word.equals("off")) {
            throw new UnfitText("practice.unfit.aside", "word", word);
        }
        return new LearnerRecord.Aside(words.moment(), word.equals(ASKED));
    }

    private static Form.Kind kind(String word) {
        for (Form.Kind kind : Form.Kind.values()) {
            if (kind.word().equals(word) && kind != Form.Kind.FAULTY) {
                return kind;
            }
        }
        throw new UnfitText("practice.unfit.support", "word", word);
    }

    private String behind(String word) {
        String line = at < lines.size() ? lines.get(at) : "";
        at++;
        if (!line.startsWith(word)) {
            throw new UnfitText("practice.unfit.begins", "word", word);
        }
        return line.substring(word.length());
    }

    private boolean isAt(String word) {
        return at < lines.size() && lines.get(at).startsWith(word);
    }

    private Attempt attempt() {
        String id = behind(PROBLEM);
        String skill = behind("skill ");
        String template = behind("template ");
        int variant = Texts.whole(behind("variant "));
        if (variant < 0) {
            throw new UnfitText("practice.unfit.variant");
        }
        Words given = new Words(behind("given "));
        int day = Day.read(given.next());
        Moment from = given.moment();
        Words shown = new Words(behind("form "));
        Moment since = shown.moment();
        Form form = Form.read(shown.rest());
        Set<Slip> slips = new TreeSet<>();
        while (isAt("slip ")) {
            Words slip = new Words(behind("slip "));
            int on = Day.read(slip.next());
            Moment when = slip.moment();
            String cause = slip.next();
            Sureness sure = sureness(slip.next());
            slips.add(new Slip(when, slip.rest(), cause, on, sure));
        }
        Map<String, Integer> help = new TreeMap<>();
        while (isAt("help ")) {
            Words helped = new Words(behind("help "));
            int level = Texts.whole(helped.next());
            help.merge(helped.rest(), level, Math::max);
        }
        Map<String, Typed> typed = new TreeMap<>();
        while (isAt(TYPED)) {
            Words one = new Words(behind(TYPED));
            Moment when = one.moment();
            String rest = one.rest();
            int equals = rest.indexOf(" =");
            if (equals < 0) {
                throw new UnfitText("practice.unfit.typed");
            }
            // A text that was emptied may have lost the blank behind the sign on its way.
            String text = rest.substring(Math.min(equals + 3, rest.length()));
            typed.merge(rest.substring(0, equals), new Typed(when, Texts.unescaped(text)), Typed::orLater);
        }
        Moment checked = isAt("checked ") ? new Words(behind("checked ")).moment() : Moment.NEVER;
        Optional<Ending> ending = isAt("ended ") ? Optional.of(ending(new Words(behind("ended ")))) : Optional.empty();
        boolean left = isAt("left");
        if (left) {
            at++;
        }
        if (at < lines.size() && !isAt(PROBLEM)) {
            at++;
            throw new UnfitText("practice.unfit.unknown");
        }
        return new Attempt(
                id, skill, template, variant, from, day, form, since, typed, slips, help, checked, ending, left);
    }

    private static Ending ending(Words words) {
        int day = Day.read(words.next());
        Moment when = words.moment();
        Way way = way(words.next());
        return new Ending(when, day, way, sureness(words.next()));
    }

    private static Way way(String word) {
        for (Way way : Way.values()) {
            if (word(way).equals(word)) {
                return way;
            }
        }
        throw new UnfitText("practice.unfit.ending", "word", word);
    }

    private static Sureness sureness(String word) {
        for (Sureness sure : Sureness.values()) {
            if (word(sure).equals(word)) {
                return sure;
            }
        }
        throw new UnfitText("practice.unfit.sure", "word", word);
    }

    /** The words of one line, one after the other. */
    private static final class Words {
        private final String line;
        private int at;

        Words(String line) {
            this.line = line;
        }

        String next() {
            int space = line.indexOf(' ', at);
            String word = space < 0 ? line.substring(Math.min(at, line.length())) : line.substring(at, space);
            at = space < 0 ? line.length() : space + 1;
            if (word.isEmpty()) {
                throw new UnfitText("practice.unfit.word");
            }
            return word;
        }

        Moment moment() {
            int count = Texts.whole(next());
            return new Moment(count, next());
        }

        String rest() {
            String rest = line.substring(Math.min(at, line.length()));
            if (rest.isEmpty()) {
                throw new UnfitText("practice.unfit.end");
            }
            return rest;
        }
    }
}
