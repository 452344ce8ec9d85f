package ampersheet.answer;

import ampersheet.formula.NoValue;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The learner's own values for the questions already judged, from which later ones are worked again: one slip should
 * cost one answer, not all that follow.
 */
final class EarlierAnswers {
    /** @param right whether it was accepted, so that only its rounding is carried forward */
    private record Given(String question, String step, Quantity value, boolean right) {}

    private final ProblemKey key;
    private final List<Given> given = new ArrayList<>();
    /** Values of accepted designs: right, though perhaps not the key's. */
    private final Map<String, Quantity> chosen = new LinkedHashMap<>();

    EarlierAnswers(ProblemKey key) {
        this.key = key;
    }

    ProblemKey problem() {
        return key;
    }

    void add(AnswerKey answer, double si, boolean right) {
        given.add(new Given(
                answer.question(), answer.step(), new Quantity(si, answer.unit().dimension()), right));
    }

    void choose(AnswerKey answer, double si) {
        chosen.put(answer.step(), new Quantity(si, answer.unit().dimension()));
    }

    /** Slips that any problem may have, seen from the designs that were accepted. */
    List<UsualSlip> usualSlips(AnswerKey answer) {
        Set<String> settled = new LinkedHashSet<>();
        for (Given one : given) {
            if (one.right()) {
                settled.add(one.step());
            }
        }
        return UsualSlips.of(key, answer, chosen, settled);
    }

    /** What to check first, as it is called in a sentence. */
    Optional<String> firstInput(AnswerKey answer) {
        return UsualSlips.firstInput(key, answer).map(key::the);
    }

    /** The key of an answer that may follow from an accepted design. */
    AnswerKey after(AnswerKey answer) {
        boolean follows = !chosen.isEmpty() && !(answer.acceptance() instanceof Acceptance.Choice);
        return follows
                ? answer.following(key.working()
                        .work(key.givens(), chosen)
                        .quantity(answer.step())
                        .value())
                : answer;
    }

    /**
     * From which earlier answers an answer follows.
     *
     * @param questions in the order asked; empty if it does not follow from them
     * @param wrongOnes those among them that were wrong; the others were only rounded
     */
    record Followed(List<String> questions, List<String> wrongOnes) {
        boolean wrong() {
            return !wrongOnes.isEmpty();
        }
    }

    Followed followedBy(AnswerKey answer, double si) {
        List<Given> wrong = new ArrayList<>();
        for (Given one : given) {
            if (!one.right()) {
                wrong.add(one);
            }
        }
        for (List<Given> tried : List.of(wrong, given)) {
            if (!tried.isEmpty() && leadTo(tried, answer, si)) {
                return needed(tried, answer, si);
            }
        }
        return new Followed(List.of(), List.of());
    }

    /** Leaves out what the answer does not depend on. */
    private Followed needed(List<Given> tried, AnswerKey answer, double si) {
        List<Given> needed = new ArrayList<>(tried);
        for (Given one : tried) {
            List<Given> without = new ArrayList<>(needed);
            without.remove(one);
            if (leadTo(without, answer, si)) {
                needed = without;
            }
        }
        List<String> questions = new ArrayList<>();
        List<String> wrong = new ArrayList<>();
        for (Given one : needed) {
            questions.add(one.question());
            if (!one.right()) {
                wrong.add(one.question());
            }
        }
        return new Followed(List.copyOf(questions), List.copyOf(wrong));
    }

    private boolean leadTo(List<Given> instead, AnswerKey answer, double si) {
        Map<String, Quantity> values = new LinkedHashMap<>(chosen);
        for (Given one : instead) {
            values.put(one.step(), one.value());
        }
        double worked;
        try {
            worked = key.working()
                    .work(key.givens(), values)
                    .quantity(answer.step())
                    .value();
        } catch (NoValue noValue) {
            return false; // nothing follows from such a value
        }
        return answer.acceptance().accepts(worked, si);
    }
}
