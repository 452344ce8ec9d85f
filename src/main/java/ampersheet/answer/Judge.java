package ampersheet.answer;

import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Judges typed answers against a key. */
public final class Judge {
    private Judge() {}

    /**
     * One verdict per question of the problem, in its order. A later answer is also compared with what follows from the
     * learner's own earlier ones. The blanks of a design come first: what follows from one that is accepted is right.
     *
     * @param typed by question; a question that is missing or empty is {@link Rung#BLANK}
     */
    public static List<Verdict> judge(ProblemKey key, Map<String, String> typed) {
        EarlierAnswers earlier = new EarlierAnswers(key);
        Map<String, Verdict> designed = new LinkedHashMap<>();
        for (DesignKey design : key.designs()) {
            designed.putAll(new DesignJudge(key, design, typed, earlier).verdicts());
        }
        List<Verdict> verdicts = new ArrayList<>();
        for (AnswerKey answer : key.answers()) {
            Verdict known = designed.get(answer.question());
            verdicts.add(known != null ? known : judge(earlier.after(answer), text(answer, typed), earlier));
        }
        return List.copyOf(verdicts);
    }

    static String text(AnswerKey answer, Map<String, String> typed) {
        String text = typed.get(answer.question());
        return text == null ? "" : text;
    }

    private static Verdict judge(AnswerKey key, String typed, EarlierAnswers earlier) {
        if (isBlank(typed)) {
            return blank(earlier.problem(), key, typed);
        }
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return ChosenOption.judge(key, choice, typed, earlier.problem().sentences());
        }
        Reading reading =
                QuantityReader.read(typed, key.unit(), earlier.problem().decimal());
        return reading instanceof Reading.Value value
                ? new Ladder(key, value, earlier).judge()
                : unread(earlier.problem(), key, reading);
    }

    static Verdict blank(ProblemKey problem, AnswerKey key, String typed) {
        return told(key, typed, Rung.BLANK, "", problem.sentences().blank());
    }

    /** For what is no value. */
    static Verdict unread(ProblemKey problem, AnswerKey key, Reading reading) {
        if (reading instanceof Reading.Ambiguous ambiguous) {
            return told(
                    key,
                    reading.asTyped(),
                    Rung.AMBIGUOUS,
                    "",
                    problem.sentences().ambiguous(ambiguous, problem.decimal()));
        }
        String unreadable = ((Reading.Unreadable) reading).problem(problem.language());
        return told(key, reading.asTyped(), Rung.UNREADABLE, "", unreadable);
    }

    static boolean isBlank(String typed) {
        for (int i = 0; i < typed.length(); i++) {
            if (typed.charAt(i) > ' ' && typed.charAt(i) != QuantityWriter.NO_BREAK_SPACE) {
                return false;
            }
        }
        return true;
    }

    static Verdict told(AnswerKey key, String typed, Rung rung, String understood, String message) {
        return new Verdict(key.question(), typed, rung, understood, message, Optional.empty());
    }
}
