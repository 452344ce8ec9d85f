package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.ProblemKey;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Of a design that misses a criterion: by how much, which way to go, and whether two parts only have to change places.
 */
final class DesignHint {
    private final ProblemKey key;
    private final DesignKey design;
    private final Sentences sentences;
    private final List<AnswerKey> blanks = new ArrayList<>();
    private final List<Double> chosen = new ArrayList<>();

    private DesignHint(ProblemKey key, DesignKey design) {
        this.key = key;
        this.design = design;
        this.sentences = new Sentences(key.language());
    }

    /**
     * Empty while a part is missing, cannot be chosen, or all criteria are met.
     *
     * @param wantedIsTold whether a verdict beside says what is wanted
     */
    static Optional<String> of(ProblemKey key, DesignKey design, Attempt attempt, boolean wantedIsTold) {
        DesignHint hint = new DesignHint(key, design);
        for (AnswerKey answer : key.answers()) {
            if (design.steps().contains(answer.step())) {
                Reading reading = QuantityReader.read(attempt.text(answer.question()), answer.unit(), key.decimal());
                boolean fits = reading instanceof Reading.Value value
                        && value.unit()
                                .map(unit ->
                                        unit.dimension().equals(answer.unit().dimension()))
                                .orElse(true)
                        && ((Acceptance.Designed) answer.acceptance()).allows(value.si(answer.unit()));
                if (!fits) {
                    return Optional.empty();
                }
                hint.blanks.add(answer);
                hint.chosen.add(((Reading.Value) reading).si(answer.unit()));
            }
        }
        return hint.told(wantedIsTold);
    }

    private Optional<String> told(boolean wantedIsTold) {
        Optional<DesignKey.Criterion> missed = missed(chosen);
        if (missed.isEmpty()) {
            return Optional.empty();
        }
        for (int i = 0; i < chosen.size(); i++) {
            for (int j = i + 1; j < chosen.size(); j++) {
                List<Double> swapped = new ArrayList<>(chosen);
                swapped.set(i, chosen.get(j));
                swapped.set(j, chosen.get(i));
                if (allowed(swapped) && works(swapped) && missed(swapped).isEmpty()) {
                    return Optional.of(sentences.swapped(
                            blanks.get(i).question(), blanks.get(j).question()));
                }
            }
        }
        double off = shortfall(missed.get(), chosen);
        List<String> ways = new ArrayList<>();
        for (int i = 0; i < chosen.size(); i++) {
            way(i, missed.get(), off).ifPresent(ways::add);
        }
        return Optional.of(sentences.criterion(
                missed.get().symbol(), wantedIsTold ? "" : missed.get().wanted(), off, ways));
    }

    /** Whether more or less of one part comes nearer to the criterion. */
    private Optional<String> way(int blank, DesignKey.Criterion criterion, double off) {
        List<Double> members = ((Acceptance.Designed) blanks.get(blank).acceptance()).members();
        int at = 0;
        for (int i = 0; i < members.size(); i++) {
            at = Math.abs(members.get(i) - chosen.get(blank)) < Math.abs(members.get(at) - chosen.get(blank)) ? i : at;
        }
        for (int direction : new int[] {1, -1}) {
            int next = at + direction;
            if (next < 0 || next >= members.size()) {
                continue;
            }
            List<Double> tried = new ArrayList<>(chosen);
            tried.set(blank, members.get(next));
            if (works(tried) && shortfall(criterion, tried) < off) {
                String question = blanks.get(blank).question();
                return Optional.of(direction > 0 ? sentences.larger(question) : sentences.smaller(question));
            }
        }
        return Optional.empty();
    }

    private boolean allowed(List<Double> values) {
        for (int i = 0; i < values.size(); i++) {
            if (!((Acceptance.Designed) blanks.get(i).acceptance()).allows(values.get(i))) {
                return false;
            }
        }
        return true;
    }

    private boolean works(List<Double> values) {
        return worked(values).isPresent();
    }

    private Optional<Values> worked(List<Double> values) {
        Map<String, Quantity> own = new LinkedHashMap<>();
        for (int i = 0; i < values.size(); i++) {
            own.put(
                    blanks.get(i).step(),
                    new Quantity(values.get(i), blanks.get(i).unit().dimension()));
        }
        try {
            return Optional.of(key.working().work(key.givens(), own));
        } catch (IllegalStateException | IllegalArgumentException noValue) {
            // With such values no case of a step applies, or a series has no such member.
            return Optional.empty();
        }
    }

    private Optional<DesignKey.Criterion> missed(List<Double> values) {
        Optional<Values> worked = worked(values);
        for (DesignKey.Criterion criterion : worked.isPresent() ? design.criteria() : List.<DesignKey.Criterion>of()) {
            if (!Evaluation.holds(criterion.where(), worked.get())) {
                return Optional.of(criterion);
            }
        }
        return Optional.empty();
    }

    /** By what part of its bound a value lies beyond it; 0 where the criterion is no single comparison, or is met. */
    private double shortfall(DesignKey.Criterion criterion, List<Double> values) {
        Optional<Values> worked = worked(values);
        if (worked.isEmpty()
                || !(criterion.where() instanceof Condition.Comparison comparison)
                || Evaluation.holds(comparison, worked.get())) {
            return 0;
        }
        double left = Evaluation.evaluate(comparison.left(), worked.get()).value();
        double right = Evaluation.evaluate(comparison.right(), worked.get()).value();
        return right == 0 ? 0 : Math.abs(left - right) / Math.abs(right);
    }
}
