package ampersheet.formula;

/**
 * One pass over a condition: what each kind of it comes to. A new kind is a new method here, so that whoever passes
 * over conditions does not compile until it says what to do with it.
 */
public interface ConditionFold<T> {
    T comparison(Condition.Comparison comparison);

    T both(Condition.Both both);

    T either(Condition.Either either);

    T not(Condition.Not not);
}
