package ampersheet.answer;

import java.util.List;
import java.util.Optional;

/**
 * What is said of one answer.
 *
 * @param question as in the key
 * @param asTyped as the learner typed it
 * @param understood the answer read back with unit, such as {@code 4.7 kΩ}; empty if it could not be read
 * @param message one to three sentences for the learner; never a bare "wrong", never the expected value
 * @param mistake id of the modelled mistake, if that is the rung
 * @param carriedFrom earlier questions whose wrong answers this one follows from, step by step rightly; empty where it
 *     only follows from right answers that were rounded
 */
public record Verdict(
        String question,
        String asTyped,
        Rung rung,
        String understood,
        String message,
        Optional<String> mistake,
        List<String> carriedFrom) {
    public Verdict {
        carriedFrom = List.copyOf(carriedFrom);
    }

    /** One that follows from no wrong answer. */
    public Verdict(
            String question, String asTyped, Rung rung, String understood, String message, Optional<String> mistake) {
        this(question, asTyped, rung, understood, message, mistake, List.of());
    }

    public boolean isRight() {
        return rung == Rung.CORRECT;
    }
}
