package ampersheet.problem;

import ampersheet.answer.KeyWriter;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.NoValue;
import ampersheet.formula.TruthFold;
import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.ChoiceOption;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.LongStream;

/**
 * Whether exactly one option of a choice holds, whatever the numbers are.
 *
 * <p>What the conditions compare can stand to each other in finitely many orders, ties included. Every order is looked
 * at, which proves it for all real values; orders that the constants or the template's requirements rule out are left.
 * What this does not settle, because two of the compared quantities hang together, is settled by working every
 * combination of the givens.
 *
 * @param choice id
 * @param way how it was shown, or why it was not
 * @param counterexample givens or an order with which not exactly one option holds
 */
public record OptionProof(String choice, Way way, Optional<String> counterexample) {
    /** Of the things compared; there are 4683 orders of six. */
    private static final int MOST_COMPARED = 7;
    /** Combinations of givens that are worked, if orders alone do not settle it. */
    private static final long ENUMERATED_AT_MOST = 1_000_000;

    /** How the options were shown to be exhaustive and exclusive. */
    public enum Way {
        BY_ORDERS("for all real values, by every order in which what they compare can lie"),
        BY_ENUMERATION("by working every combination of the givens"),
        NOT_SHOWN("not shown");

        private final String words;

        Way(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public boolean holds() {
        return way != Way.NOT_SHOWN && counterexample.isEmpty();
    }

    static List<OptionProof> of(ProblemTemplate template) {
        List<OptionProof> proofs = new ArrayList<>();
        template.asks().forEach(ask -> {
            if (ask instanceof ChoiceAsk choice) {
                proofs.add(of(template, choice));
            }
        });
        return List.copyOf(proofs);
    }

    private static OptionProof of(ProblemTemplate template, ChoiceAsk choice) {
        Orders orders = new Orders(template, choice);
        if (orders.canBeListed() && orders.exactlyOneHolds()) {
            return new OptionProof(choice.of(), Way.BY_ORDERS, Optional.empty());
        }
        SpaceOfGivens space = new SpaceOfGivens(template);
        if (space.size() > ENUMERATED_AT_MOST) {
            return new OptionProof(
                    choice.of(),
                    Way.NOT_SHOWN,
                    Optional.of(
                            orders.canBeListed()
                                    ? "where " + orders.firstFailing()
                                    : "more than " + MOST_COMPARED + " things are compared"));
        }
        Optional<String> found = LongStream.range(0, space.size())
                .parallel()
                .mapToObj(space::values)
                .filter(givens -> isUndecided(template, choice, givens))
                .findFirst()
                .map(givens -> Notations.givensInOneLine(template, givens));
        return new OptionProof(choice.of(), Way.BY_ENUMERATION, found);
    }

    private static boolean isUndecided(ProblemTemplate template, ChoiceAsk choice, Values givens) {
        if (!template.requirements().stream().allMatch(requirement -> Evaluation.holds(requirement, givens))) {
            return false;
        }
        Working working = template.working();
        Values values;
        try {
            values = working.work(givens);
        } catch (NoValue noValue) {
            // Refused as a draw before any option is looked at.
            return false;
        }
        return choice.options().stream()
                        .filter(option -> Evaluation.holds(option.when(), values))
                        .count()
                != 1;
    }

    /** All orders, ties included, of what the options compare. */
    private static final class Orders {
        private final ChoiceAsk choice;
        private final List<String> compared = new ArrayList<>();
        private final List<Optional<Double>> known = new ArrayList<>();
        private final Map<String, List<String>> words = new LinkedHashMap<>();
        private final List<Condition> required = new ArrayList<>();
        private String failing = "";

        Orders(ProblemTemplate template, ChoiceAsk choice) {
            this.choice = choice;
            for (Given given : template.givens()) {
                if (given instanceof WordGiven word) {
                    words.put(word.name(), word.values());
                }
            }
            Set<String> terms = new LinkedHashSet<>();
            for (ChoiceOption option : choice.options()) {
                for (Condition.Comparison comparison : Boundaries.comparisons(option.when())) {
                    if (!isOfWords(comparison)) {
                        add(comparison.left(), terms);
                        add(comparison.right(), terms);
                    }
                }
            }
            Set<String> asked = new LinkedHashSet<>();
            choice.options().forEach(option -> asked.addAll(Evaluation.names(option.when())));
            words.keySet().retainAll(asked);
            for (Condition requirement : template.requirements()) {
                if (Boundaries.comparisons(requirement).stream()
                        .allMatch(comparison -> isOfWords(comparison)
                                ? words.containsKey(
                                        KeyWriter.formula(comparison.left()).substring(1))
                                : terms.contains(KeyWriter.formula(comparison.left()))
                                        && terms.contains(KeyWriter.formula(comparison.right())))) {
                    required.add(requirement);
                }
            }
        }

        private boolean isOfWords(Condition.Comparison comparison) {
            return comparison.left() instanceof Expression.Name name && words.containsKey(name.id());
        }

        private void add(Expression term, Set<String> terms) {
            if (terms.add(KeyWriter.formula(term))) {
                compared.add(KeyWriter.formula(term));
                known.add(
                        Evaluation.names(term).isEmpty()
                                ? Optional.of(Evaluation.evaluate(term, Values.of(Map.of(), Map.of()))
                                        .value())
                                : Optional.empty());
            }
        }

        boolean canBeListed() {
            return compared.size() <= MOST_COMPARED;
        }

        String firstFailing() {
            return failing;
        }

        boolean exactlyOneHolds() {
            return ofWords(new LinkedHashMap<>(), List.copyOf(words.keySet()));
        }

        private boolean ofWords(Map<String, String> said, List<String> open) {
            if (open.isEmpty()) {
                return ordered(new int[compared.size()], 0, 0, said);
            }
            for (String word : words.get(open.get(0))) {
                said.put(open.get(0), word);
                if (!ofWords(said, open.subList(1, open.size()))) {
                    return false;
                }
            }
            return true;
        }

        /**
         * @param ranks of the first {@code placed} terms; equal ranks are ties
         * @param used how many ranks there are so far
         */
        private boolean ordered(int[] ranks, int placed, int used, Map<String, String> said) {
            if (placed == ranks.length) {
                return isRuledOut(ranks, said) || decides(ranks, said);
            }
            for (int rank = 0; rank < used; rank++) {
                ranks[placed] = rank;
                if (fitsConstants(ranks, placed) && !ordered(ranks, placed + 1, used, said)) {
                    return false;
                }
            }
            for (int rank = 0; rank <= used; rank++) {
                int[] moved = ranks.clone();
                for (int i = 0; i < placed; i++) {
                    moved[i] += moved[i] >= rank ? 1 : 0;
                }
                moved[placed] = rank;
                if (fitsConstants(moved, placed) && !ordered(moved, placed + 1, used + 1, said)) {
                    return false;
                }
            }
            return true;
        }

        private boolean fitsConstants(int[] ranks, int last) {
            if (known.get(last).isEmpty()) {
                return true;
            }
            for (int i = 0; i < last; i++) {
                if (known.get(i).isPresent()
                        && Double.compare(known.get(i).get(), known.get(last).get())
                                != Integer.compare(ranks[i], ranks[last])) {
                    return false;
                }
            }
            return true;
        }

        private boolean isRuledOut(int[] ranks, Map<String, String> said) {
            return required.stream().anyMatch(requirement -> !holds(requirement, ranks, said));
        }

        private boolean decides(int[] ranks, Map<String, String> said) {
            Predicate<ChoiceOption> holding = option -> holds(option.when(), ranks, said);
            long count = choice.options().stream().filter(holding).count();
            if (count != 1) {
                failing = count + " of the options hold with the order " + told(ranks)
                        + (said.isEmpty() ? "" : " and " + said);
            }
            return count == 1;
        }

        private String told(int[] ranks) {
            StringBuilder told = new StringBuilder();
            for (int rank = 0; rank < ranks.length; rank++) {
                StringBuilder tied = new StringBuilder();
                for (int i = 0; i < ranks.length; i++) {
                    if (ranks[i] == rank) {
                        tied.append(tied.length() == 0 ? "" : " = ").append(compared.get(i));
                    }
                }
                told.append(told.length() == 0 || tied.length() == 0 ? "" : " < ")
                        .append(tied);
            }
            return told.toString();
        }

        private boolean holds(Condition condition, int[] ranks, Map<String, String> said) {
            TruthFold byRanks = comparison -> holds(comparison, ranks, said);
            return condition.fold(byRanks);
        }

        private boolean holds(Condition.Comparison comparison, int[] ranks, Map<String, String> said) {
            int order;
            if (isOfWords(comparison)) {
                String word = said.get(((Expression.Name) comparison.left()).id());
                order = word.equals(((Expression.Name) comparison.right()).id()) ? 0 : 1;
            } else {
                order = Integer.compare(
                        ranks[compared.indexOf(KeyWriter.formula(comparison.left()))],
                        ranks[compared.indexOf(KeyWriter.formula(comparison.right()))]);
            }
            return switch (comparison.relation()) {
                case LESS -> order < 0;
                case AT_MOST -> order <= 0;
                case MORE -> order > 0;
                case AT_LEAST -> order >= 0;
                case EQUAL -> order == 0;
                case UNEQUAL -> order != 0;
            };
        }
    }
}
