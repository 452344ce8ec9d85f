package ampersheet.browser;

import ampersheet.answer.Judge;
import ampersheet.answer.KeyReader;
import ampersheet.answer.Verdict;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.teavm.jso.JSExport;

/**
 * The functions a page finds in its own script. Texts, lists of texts and whole numbers go in, texts and lists of texts
 * come out. Those of a practice page do what {@link PracticeDesk} says; a day is so many days after 1 January 1970.
 */
public final class Checker {
    private static final PracticeDesk DESK = new PracticeDesk();

    private Checker() {}

    /** The compiler wants an entry; everything starts from the page. */
    public static void main(String[] arguments) {}

    /**
     * Before anything else: the language of the page.
     *
     * @param sentences as {@link Language#written} writes them
     * @param decimal the marker of its numbers
     */
    @JSExport
    public static void speak(String code, String sentences, String decimal) {
        DESK.speak(Language.read(code, sentences), decimal.equals(",") ? DecimalMarker.COMMA : DecimalMarker.POINT);
    }

    /** A sentence of the page's own, filled with name and text by turns. */
    @JSExport
    public static String says(String key, String[] filled) {
        return DESK.language().say(key, filled);
    }

    /** As a language joins what belongs together. */
    @JSExport
    public static String practiceList(String[] items) {
        return DESK.language().all(List.of(items));
    }

    /** The form of a sentence for a number. */
    @JSExport
    public static String saysOf(String key, int count, String[] filled) {
        return DESK.language().count(key, count, filled);
    }

    /**
     * One verdict per question of the problem, in its order, each as five texts: question, rung, what was understood,
     * message, id of the mistake or nothing.
     *
     * @param key as {@link ampersheet.answer.KeyWriter} writes it
     * @param typed question and answer by turns
     */
    @JSExport
    public static String[] judgeAnswers(String key, String[] typed) {
        Map<String, String> answers = new LinkedHashMap<>();
        for (int i = 0; i + 1 < typed.length; i += 2) {
            answers.put(typed[i], typed[i + 1]);
        }
        List<Verdict> verdicts = Judge.judge(KeyReader.read(key, DESK.language(), DESK.decimal()), answers);
        String[] told = new String[verdicts.size() * 5];
        int at = 0;
        for (Verdict verdict : verdicts) {
            told[at++] = verdict.question();
            told[at++] = verdict.rung().name();
            told[at++] = verdict.understood();
            told[at++] = verdict.message();
            told[at++] = verdict.mistake().orElse("");
        }
        return told;
    }

    /**
     * How an answer is understood, without judging it: {@code value} and the quantity read back; {@code number}, a
     * number that came without a unit or a prefix, and the same in the unit of the question (but for a share, which may
     * be so many percent or a fraction of 1); {@code ambiguous} and what it could mean; {@code unreadable} and why.
     *
     * @param unit of the question
     */
    @JSExport
    public static String[] readAnswer(String typed, String unit) {
        Unit asked = Unit.parse(unit);
        Reading reading = QuantityReader.read(typed, asked, DESK.decimal());
        if (reading instanceof Reading.Unreadable unreadable) {
            return new String[] {"unreadable", unreadable.problem(DESK.language())};
        }
        if (reading instanceof Reading.Ambiguous ambiguous) {
            return new String[] {"ambiguous", DESK.language().either(ambiguous.meanings(DESK.language()))};
        }
        Reading.Value value = (Reading.Value) reading;
        if (value.unit().isPresent()) {
            return new String[] {"value", written(value, value.unit().get())};
        }
        boolean share = asked.symbol().equals("%");
        if (value.hasPrefix() && !share) {
            return new String[] {"value", written(value, asked)};
        }
        return new String[] {"number", written(value, Unit.ONE), written(value, share ? Unit.ONE : asked)};
    }

    private static String written(Reading.Value value, Unit unit) {
        return new QuantityWriter(DESK.decimal())
                .plain(value.si(unit), unit, Math.max(1, value.significantFigures()))
                .text();
    }

    /** @param tab what names the tab, and the problem that it showed before */
    @JSExport
    public static String practiceStart(String course, String stored, String[] tab, int day, int chance) {
        return DESK.start(course, stored, tab, day, chance);
    }

    @JSExport
    public static String practiceStored() {
        return DESK.stored();
    }

    @JSExport
    public static String practiceJoin(String text) {
        return DESK.join(text);
    }

    @JSExport
    public static String[] practiceNow() {
        return DESK.now();
    }

    @JSExport
    public static String[] practiceTyped() {
        return DESK.typed();
    }

    @JSExport
    public static String[] practiceMap(int day) {
        return DESK.map(day);
    }

    @JSExport
    public static void practiceType(String question, String text) {
        DESK.type(question, text);
    }

    @JSExport
    public static void practiceGo(String event, String argument, int day, int chance) {
        DESK.go(event, argument, day, chance);
    }

    @JSExport
    public static String[] practiceCheck(String key, String[] places, String sure, int day) {
        return DESK.check(key, places, sure, day);
    }

    @JSExport
    public static String[] practiceLook(String key, String[] places) {
        return DESK.look(key, places);
    }

    @JSExport
    public static String[] practiceHint(String key, String[] places) {
        return DESK.hint(key, places);
    }

    @JSExport
    public static String[] practiceHintsTaken(String key, String[] places) {
        return DESK.hintsTaken(key, places);
    }

    /** What is said where nothing more is to be had: without hints, with the solution, without extra questions. */
    @JSExport
    public static String practiceSays(String what) {
        return DESK.says(what);
    }

    @JSExport
    public static String[] practiceAside() {
        return DESK.aside();
    }

    @JSExport
    public static String[] practiceMistakes() {
        return DESK.mistakes();
    }

    @JSExport
    public static String practiceMistake(int number, String key) {
        return DESK.mistake(number, key);
    }

    /** What a line of calculation comes to. */
    @JSExport
    public static String calculate(String line) {
        return DESK.calculated(line);
    }
}
