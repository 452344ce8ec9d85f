package ampersheet.formula;

import ampersheet.quantity.Unit;
import java.util.List;

/** A formula as a tree. {@code position} is the 0-based index in the text of the character a fault should point at. */
public sealed interface Expression {
    int position();

    <T> T fold(Fold<T> fold);

    /** What it is made of, left to right: operands or arguments; empty for a constant and a name. */
    default List<Expression> parts() {
        if (this instanceof Negative negative) {
            return List.of(negative.of());
        } else if (this instanceof Sum sum) {
            return List.of(sum.left(), sum.right());
        } else if (this instanceof Difference difference) {
            return List.of(difference.left(), difference.right());
        } else if (this instanceof Product product) {
            return List.of(product.left(), product.right());
        } else if (this instanceof Quotient quotient) {
            return List.of(quotient.numerator(), quotient.denominator());
        } else if (this instanceof Power power) {
            return List.of(power.base(), power.exponent());
        } else if (this instanceof Call call) {
            return call.arguments();
        }
        return List.of();
    }

    /** The same formula of other parts; {@code parts} are as many as {@link #parts()}, in their order. */
    default Expression withParts(List<Expression> parts) {
        if (this instanceof Negative negative) {
            return new Negative(parts.get(0), negative.position());
        } else if (this instanceof Sum sum) {
            return new Sum(parts.get(0), parts.get(1), sum.position());
        } else if (this instanceof Difference difference) {
            return new Difference(parts.get(0), parts.get(1), difference.position());
        } else if (this instanceof Product product) {
            return new Product(parts.get(0), parts.get(1), product.position());
        } else if (this instanceof Quotient quotient) {
            return new Quotient(parts.get(0), parts.get(1), quotient.position());
        } else if (this instanceof Power power) {
            return new Power(parts.get(0), parts.get(1), power.position());
        } else if (this instanceof Call call) {
            return new Call(call.function(), parts, call.position());
        }
        return this;
    }

    /** @param asWritten the number as the author wrote it; {@code unit} has dimension one when none was written */
    record Constant(double number, Unit unit, String asWritten, int position) implements Expression {
        public double si() {
            return unit.toSi(number);
        }

        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.constant(this);
        }
    }

    record Name(String id, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.name(this);
        }
    }

    record Negative(Expression of, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.negative(this);
        }
    }

    record Sum(Expression left, Expression right, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.sum(this);
        }
    }

    record Difference(Expression left, Expression right, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.difference(this);
        }
    }

    record Product(Expression left, Expression right, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.product(this);
        }
    }

    record Quotient(Expression numerator, Expression denominator, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.quotient(this);
        }
    }

    record Power(Expression base, Expression exponent, int position) implements Expression {
        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.power(this);
        }
    }

    /** A function of the formula language, or in a proof a measure of the model such as {@code current(D1)}. */
    record Call(String function, List<Expression> arguments, int position) implements Expression {
        public Call {
            arguments = List.copyOf(arguments);
        }

        @Override
        public <T> T fold(Fold<T> fold) {
            return fold.call(this);
        }
    }
}
