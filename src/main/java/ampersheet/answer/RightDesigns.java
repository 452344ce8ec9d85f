package ampersheet.answer;

import ampersheet.formula.Evaluation;
import ampersheet.formula.NoValue;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Every choice of values that meets all criteria of a design, for those who can judge only by a list.
 *
 * @param choices in the order in which the blanks' values ascend, the last blank's fastest
 */
public record RightDesigns(DesignKey design, List<Choice> choices) {
    public RightDesigns {
        choices = List.copyOf(choices);
    }

    /**
     * One value for each blank.
     *
     * @param chosen in coherent SI units, by step, in the order of the design's steps
     * @param worked what all steps come to with them
     */
    public record Choice(Map<String, Double> chosen, Values worked) {
        public Choice {
            chosen = Collections.unmodifiableMap(new LinkedHashMap<>(chosen));
        }
    }

    /**
     * Tries all of them.
     *
     * @param mostTried empty if there are more
     * @param mostRight empty if more are right
     */
    public static Optional<RightDesigns> of(ProblemKey key, DesignKey design, int mostTried, int mostRight) {
        List<AnswerKey> blanks = blanks(key, design);
        List<List<Double>> members = new ArrayList<>();
        long all = 1;
        for (AnswerKey blank : blanks) {
            List<Double> allowed = ((Acceptance.Designed) blank.acceptance()).members();
            members.add(allowed);
            all *= allowed.size();
            if (all > mostTried) {
                return Optional.empty();
            }
        }
        List<Choice> right = new ArrayList<>();
        for (int i = 0; i < all; i++) {
            Map<String, Double> chosen = new LinkedHashMap<>();
            Map<String, Quantity> own = new LinkedHashMap<>();
            int rest = (int) all;
            int at = i;
            for (int b = 0; b < blanks.size(); b++) {
                rest /= members.get(b).size();
                double si = members.get(b).get(at / rest);
                at %= rest;
                chosen.put(blanks.get(b).step(), si);
                own.put(
                        blanks.get(b).step(),
                        new Quantity(si, blanks.get(b).unit().dimension()));
            }
            meeting(key, design, own).ifPresent(worked -> right.add(new Choice(chosen, worked)));
            if (right.size() > mostRight) {
                return Optional.empty();
            }
        }
        return Optional.of(new RightDesigns(design, right));
    }

    private static List<AnswerKey> blanks(ProblemKey key, DesignKey design) {
        List<AnswerKey> blanks = new ArrayList<>();
        for (String step : design.steps()) {
            for (AnswerKey answer : key.answers()) {
                if (answer.step().equals(step)) {
                    blanks.add(answer);
                }
            }
        }
        return blanks;
    }

    private static Optional<Values> meeting(ProblemKey key, DesignKey design, Map<String, Quantity> own) {
        Values worked;
        try {
            worked = key.working().work(key.givens(), own);
        } catch (NoValue noValue) {
            return Optional.empty(); // such a choice leads nowhere, which meets no criterion
        }
        for (DesignKey.Criterion criterion : design.criteria()) {
            if (!Evaluation.holds(criterion.where(), worked)) {
                return Optional.empty();
            }
        }
        return Optional.of(worked);
    }
}
