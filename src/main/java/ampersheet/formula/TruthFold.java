package ampersheet.formula;

/** Whether a condition holds: whoever weighs comparisons in a way of his own says only that; the rest is logic. */
@FunctionalInterface
public interface TruthFold extends ConditionFold<Boolean> {
    @Override
    default Boolean both(Condition.Both both) {
        return both.left().fold(this) && both.right().fold(this);
    }

    @Override
    default Boolean either(Condition.Either either) {
        return either.left().fold(this) || either.right().fold(this);
    }

    @Override
    default Boolean not(Condition.Not not) {
        return !not.of().fold(this);
    }
}
