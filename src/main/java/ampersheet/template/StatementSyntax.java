package ampersheet.template;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** What words that are filled in consist of, once they are parsed. Nothing that is not here can be said in them. */
final class StatementSyntax {
    private StatementSyntax() {}

    sealed interface Piece permits Plain, Comment, Printed, Choice {
        void accept(PieceVisitor visitor);
    }

    /**
     * A new kind of piece is a new method here, so that whoever goes through words does not compile until it is told
     * of.
     */
    interface PieceVisitor {
        void plain(Plain plain);

        void comment(Comment comment);

        void printed(Printed printed);

        void choice(Choice choice);
    }

    /** Characters that print as they stand. */
    record Plain(String text, int index) implements Piece {
        @Override
        public void accept(PieceVisitor visitor) {
            visitor.plain(this);
        }
    }

    /** @param lines it breaks: what stands beside it on a line decides whether that line is printed */
    record Comment(int lines) implements Piece {
        @Override
        public void accept(PieceVisitor visitor) {
            visitor.comment(this);
        }
    }

    /**
     * A value or a symbol.
     *
     * @param cases changes of case, such as {@code cap_first}, in the order in which they apply
     * @param index of the name, without what says that its symbol is meant
     */
    record Printed(boolean symbol, String name, List<String> cases, int index) implements Piece {
        Printed {
            cases = List.copyOf(cases);
        }

        @Override
        public void accept(PieceVisitor visitor) {
            visitor.printed(this);
        }
    }

    /**
     * The first branch whose condition holds.
     *
     * @param otherwise where none holds; empty: nothing
     * @param lines that the closing tag breaks
     */
    record Choice(List<Branch> branches, Optional<Otherwise> otherwise, int lines) implements Piece {
        Choice {
            branches = List.copyOf(branches);
        }

        @Override
        public void accept(PieceVisitor visitor) {
            visitor.choice(this);
        }
    }

    /** @param lines that its tag breaks */
    record Branch(WordCondition condition, List<Piece> pieces, int lines) {
        Branch {
            pieces = List.copyOf(pieces);
        }
    }

    /** @param lines that its tag breaks */
    record Otherwise(List<Piece> pieces, int lines) {
        Otherwise {
            pieces = List.copyOf(pieces);
        }
    }

    /** Of word givens; quantities decide nothing. */
    sealed interface WordCondition permits Compared, Both, Either, Not {
        <T> T fold(WordConditionFold<T> fold);

        /** Every comparison in it, from left to right. */
        void forEachComparison(Consumer<Compared> action);
    }

    interface WordConditionFold<T> {
        T compared(Compared compared);

        T both(Both both);

        T either(Either either);

        T not(Not not);
    }

    /** @param index of the name; @param wordIndex of the word, after its quote */
    record Compared(String name, boolean equal, String word, int index, int wordIndex) implements WordCondition {
        @Override
        public <T> T fold(WordConditionFold<T> fold) {
            return fold.compared(this);
        }

        @Override
        public void forEachComparison(Consumer<Compared> action) {
            action.accept(this);
        }
    }

    record Both(WordCondition left, WordCondition right) implements WordCondition {
        @Override
        public <T> T fold(WordConditionFold<T> fold) {
            return fold.both(this);
        }

        @Override
        public void forEachComparison(Consumer<Compared> action) {
            left.forEachComparison(action);
            right.forEachComparison(action);
        }
    }

    record Either(WordCondition left, WordCondition right) implements WordCondition {
        @Override
        public <T> T fold(WordConditionFold<T> fold) {
            return fold.either(this);
        }

        @Override
        public void forEachComparison(Consumer<Compared> action) {
            left.forEachComparison(action);
            right.forEachComparison(action);
        }
    }

    record Not(WordCondition of) implements WordCondition {
        @Override
        public <T> T fold(WordConditionFold<T> fold) {
            return fold.not(this);
        }

        @Override
        public void forEachComparison(Consumer<Compared> action) {
            of.forEachComparison(action);
        }
    }
}
