package ampersheet.formula;

import java.util.function.Consumer;

/** Something that holds or does not: what a template requires, or when a case of a step applies. */
public sealed interface Condition {
    int position();

    <T> T fold(ConditionFold<T> fold);

    /** Every comparison in it, from left to right. */
    void forEachComparison(Consumer<Comparison> action);

    enum Relation {
        LESS("<", "<"),
        AT_MOST("<=", "≤"),
        MORE(">", ">"),
        AT_LEAST(">=", "≥"),
        EQUAL("==", "="),
        UNEQUAL("!=", "≠");

        private final String asWritten;
        private final String printed;

        Relation(String asWritten, String printed) {
            this.asWritten = asWritten;
            this.printed = printed;
        }

        public String asWritten() {
            return asWritten;
        }

        public String printed() {
            return printed;
        }
    }

    /** Either two quantities of one dimension, or (== and != only) a word given and one of its words. */
    record Comparison(Expression left, Relation relation, Expression right, int position) implements Condition {
        @Override
        public <T> T fold(ConditionFold<T> fold) {
            return fold.comparison(this);
        }

        @Override
        public void forEachComparison(Consumer<Comparison> action) {
            action.accept(this);
        }
    }

    record Both(Condition left, Condition right, int position) implements Condition {
        @Override
        public <T> T fold(ConditionFold<T> fold) {
            return fold.both(this);
        }

        @Override
        public void forEachComparison(Consumer<Comparison> action) {
            left.forEachComparison(action);
            right.forEachComparison(action);
        }
    }

    record Either(Condition left, Condition right, int position) implements Condition {
        @Override
        public <T> T fold(ConditionFold<T> fold) {
            return fold.either(this);
        }

        @Override
        public void forEachComparison(Consumer<Comparison> action) {
            left.forEachComparison(action);
            right.forEachComparison(action);
        }
    }

    record Not(Condition of, int position) implements Condition {
        @Override
        public <T> T fold(ConditionFold<T> fold) {
            return fold.not(this);
        }

        @Override
        public void forEachComparison(Consumer<Comparison> action) {
            of.forEachComparison(action);
        }
    }
}
