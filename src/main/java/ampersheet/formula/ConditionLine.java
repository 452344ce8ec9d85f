package ampersheet.formula;

/** Puts the printed comparisons of a condition together. */
abstract class ConditionLine implements ConditionFold<String> {
    abstract String and(String left, String right);

    abstract String or(String left, String right);

    abstract String not(String condition);

    abstract String parenthesised(String condition);

    final String of(Condition condition) {
        return condition.fold(this);
    }

    @Override
    public final String both(Condition.Both both) {
        return and(insideBoth(both.left()), insideBoth(both.right()));
    }

    @Override
    public final String either(Condition.Either either) {
        return or(of(either.left()), of(either.right()));
    }

    @Override
    public final String not(Condition.Not not) {
        return not(parenthesised(of(not.of())));
    }

    private String insideBoth(Condition condition) {
        return condition instanceof Condition.Either ? parenthesised(of(condition)) : of(condition);
    }

    /** Whether a word given is compared: its sides are words, not symbols. */
    static boolean ofWords(Condition.Comparison comparison, Notation notation) {
        return comparison.left() instanceof Expression.Name name
                && notation.words().containsKey(name.id())
                && comparison.right() instanceof Expression.Name;
    }

    /** The name of the word given, or the word it is. */
    static String leftWord(Condition.Comparison comparison, Notation notation, Shown shown) {
        String id = ((Expression.Name) comparison.left()).id();
        return shown == Shown.VALUES
                ? notation.words().get(id)
                : notation.language().name(id.replace('_', ' '));
    }

    static String rightWord(Condition.Comparison comparison, Notation notation) {
        String id = ((Expression.Name) comparison.right()).id();
        return notation.words().getOrDefault(Notation.asWord(id), id);
    }
}
