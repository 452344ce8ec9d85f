package ampersheet.browser;

import ampersheet.answer.KeyReader;
import ampersheet.answer.ProblemKey;
import ampersheet.language.Language;
import ampersheet.practice.Attempt;
import ampersheet.practice.Checked;
import ampersheet.practice.Course;
import ampersheet.practice.Day;
import ampersheet.practice.FaultyLine;
import ampersheet.practice.Hint;
import ampersheet.practice.LearnerRecord;
import ampersheet.practice.Mistake;
import ampersheet.practice.Practice;
import ampersheet.practice.RecordText;
import ampersheet.practice.SideQuestion;
import ampersheet.practice.Standing;
import ampersheet.practice.Texts;
import ampersheet.practice.UnfitText;
import ampersheet.quantity.DecimalMarker;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The one practice that an open page holds, so that a key pressed does not read the whole record again; and its answers
 * in texts. All rules are in {@link Practice}.
 */
final class PracticeDesk {
    private Language language;
    private DecimalMarker decimal;
    private Practice practice;
    private List<Mistake> mistakes = List.of();
    private String keyText = "";
    private ProblemKey key;

    /** Before anything else: how it speaks and writes numbers. */
    void speak(Language spoken, DecimalMarker written) {
        language = spoken;
        decimal = written;
    }

    Language language() {
        return language;
    }

    DecimalMarker decimal() {
        return decimal;
    }

    String calculated(String line) {
        return practice.calculated(line);
    }

    String says(String what) {
        return switch (what) {
            case "hints" -> practice.saidWithoutHints();
            case "aside" -> practice.saidWithoutAside();
            default -> practice.saidWithSolution();
        };
    }

    /** An empty text, or why the record was not read; then the page begins with none. */
    String start(String course, String stored, String[] tab, int day, int chance) {
        Course read = Course.read(course, language, decimal);
        LearnerRecord none = LearnerRecord.none(read.set());
        String refused = "";
        LearnerRecord record = none;
        try {
            record = stored.isEmpty() ? none : none.joined(RecordText.read(stored));
        } catch (UnfitText unread) {
            refused = unread.said(language);
        }
        practice = Practice.of(read, record, tab[0]).start(tab[1], day, chance);
        return refused;
    }

    String stored() {
        return RecordText.write(practice.record());
    }

    String join(String text) {
        try {
            practice = practice.joined(RecordText.read(text));
            return "";
        } catch (UnfitText unread) {
            return unread.said(language);
        }
    }

    String[] now() {
        Attempt attempt = practice.attempt();
        List<String> told = new ArrayList<>();
        tell(told, "id", attempt.id());
        tell(told, "skill", Integer.toString(practice.skillIndex()));
        tell(told, "variant", Integer.toString(attempt.variant()));
        tell(told, "form", practice.form().kind().word());
        tell(told, "blank", listed(practice.blankSteps()));
        tell(
                told,
                "ended",
                attempt.ending()
                        .map(ending -> attempt.isRight() ? "right" : "shown")
                        .orElse(""));
        tell(told, "checked", attempt.checked().count() > 0 ? "yes" : "");
        tell(
                told,
                "support",
                practice.record().support().form().map(form -> form.word()).orElse("auto"));
        tell(told, "progress", practice.progress());
        tell(told, "settled", Integer.toString(practice.settled()));
        tell(told, "aside", practice.record().aside().asked() ? "asked" : "off");
        tell(told, "faulty", practice.hasFaulty() ? "yes" : "");
        Optional<FaultyLine> line = practice.faultyLine();
        tell(told, "line", line.map(one -> one.said(language)).orElse(""));
        tell(told, "named", line.map(one -> Integer.toString(one.named())).orElse("0"));
        tell(told, "found", line.map(FaultyLine::isFound).orElse(false) ? "yes" : "");
        int[] sure = practice.sureness();
        tell(told, "sureness", sure[0] + " " + sure[1] + " " + sure[2] + " " + sure[3]);
        return array(told);
    }

    private static void tell(List<String> told, String name, String value) {
        told.add(name);
        told.add(value);
    }

    private static String listed(List<Integer> numbers) {
        StringBuilder out = new StringBuilder();
        for (int number : numbers) {
            out.append(out.length() == 0 ? "" : " ").append(number);
        }
        return out.toString();
    }

    private static String[] array(List<String> texts) {
        String[] all = new String[texts.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = texts.get(i);
        }
        return all;
    }

    String[] typed() {
        List<String> told = new ArrayList<>();
        practice.attempt().typed().forEach((question, typed) -> tell(told, question, typed.text()));
        return array(told);
    }

    String[] map(int day) {
        List<String> told = new ArrayList<>();
        List<Standing> standings = practice.standings();
        for (int i = 0; i < standings.size(); i++) {
            Standing standing = standings.get(i);
            told.add(practice.course().skills().get(i).name());
            told.add(practice.state(i, day));
            told.add(
                    standing.isDue(day)
                            ? "due"
                            : standing.isSettled() ? "settled" : standing.given() > 0 ? "begun" : "open");
            told.add(listed(practice.course().skills().get(i).after()));
        }
        return array(told);
    }

    void type(String question, String text) {
        practice = practice.type(question, text);
    }

    void go(String event, String argument, int day, int chance) {
        practice = switch (event) {
            case "next" -> practice.goOn(day, chance);
            case "choose" -> practice.choose(Texts.whole(argument), day, chance);
            case "another" -> practice.another(day, chance);
            case "again" -> practice.tryAgain(mistakes.get(Texts.whole(argument)), day);
            case "solution" -> practice.showSolution(day);
            case "example" -> practice.lookAtExample();
            case "support" -> practice.support(argument);
            case "faulty" -> practice.findFaulty(day);
            case "line" -> practice.nameLine(Texts.whole(argument));
            case "aside" -> practice.askAside(argument.equals("asked"));
            case "answer" -> practice.answerAside(argument);
            default -> throw new IllegalArgumentException("no event " + event);
        };
    }

    /**
     * The question beside the problem: its text, what was chosen, what is said of that, the right one, the step that
     * shows the reason or 0; then the choices. Nothing where there is none.
     */
    String[] aside() {
        Optional<SideQuestion> question = practice.sideQuestion();
        if (question.isEmpty()) {
            return new String[0];
        }
        SideQuestion asked = question.get();
        List<String> told = new ArrayList<>();
        told.add(asked.text());
        told.add(asked.chosen());
        told.add(asked.said());
        told.add(asked.chosen().isEmpty() ? "" : asked.right());
        told.add(Integer.toString(asked.step()));
        told.addAll(asked.choices());
        return array(told);
    }

    private ProblemKey key(String text) {
        if (!text.equals(keyText)) {
            key = KeyReader.read(text, language, decimal);
            keyText = text;
        }
        return key;
    }

    /**
     * The sentence, where it stopped, whether the learner was sure and wrong; then question, kind and message of each
     * place.
     */
    String[] check(String keyRead, String[] places, String sure, int day) {
        Practice before = practice;
        practice = practice.check(key(keyRead), List.of(places), sure, day);
        List<String> told = new ArrayList<>();
        told.add(practice.saidAfterCheck(before, key(keyRead), List.of(places), day));
        Checked checked = practice.look(key(keyRead), List.of(places));
        told.add(checked.stop().orElse(""));
        told.add(practice.isSureAndWrong(before) ? "yes" : "");
        places(checked, told);
        return array(told);
    }

    String[] look(String keyRead, String[] places) {
        List<String> told = new ArrayList<>();
        places(practice.look(key(keyRead), List.of(places)), told);
        return array(told);
    }

    private static void places(Checked checked, List<String> told) {
        for (Checked.Told place : checked.places()) {
            told.add(place.question());
            told.add(place.kind().word());
            told.add(place.message());
        }
    }

    /** Kind, step, text and place of the next hint, which is taken with this; nothing where there is none. */
    String[] hint(String keyRead, String[] places) {
        Optional<Hint> hint = practice.nextHint(key(keyRead), List.of(places));
        if (hint.isEmpty()) {
            return new String[0];
        }
        practice = practice.take(hint.get());
        List<String> told = new ArrayList<>();
        tell(told, hint.get());
        return array(told);
    }

    private static void tell(List<String> told, Hint hint) {
        tell(told, hint.kind().word(), Integer.toString(hint.step()));
        tell(told, hint.text(), hint.place());
    }

    /** Kind, step, text and place of each that holds still. */
    String[] hintsTaken(String keyRead, String[] places) {
        List<String> told = new ArrayList<>();
        for (Hint hint : practice.hintsTaken(key(keyRead), List.of(places))) {
            tell(told, hint);
        }
        return array(told);
    }

    /** How often, how often sure, when last, skill, variant and question of each. */
    String[] mistakes() {
        mistakes = practice.mistakes();
        List<String> told = new ArrayList<>();
        for (Mistake mistake : mistakes) {
            told.add(Integer.toString(mistake.times()));
            told.add(Integer.toString(mistake.sure()));
            told.add(Day.written(mistake.day()));
            told.add(Integer.toString(practice.indexOf(mistake)));
            told.add(Integer.toString(mistake.latest().variant()));
            told.add(mistake.question());
        }
        return array(told);
    }

    String mistake(int number, String keyRead) {
        return Practice.told(mistakes.get(number), key(keyRead));
    }
}
