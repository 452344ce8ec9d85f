package ampersheet.template;

import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import java.util.ArrayList;
import java.util.List;

/** The names a formula mentions, and the measures it reads, each where it stands. */
final class Mentions {
    /** @param inMeasure whether it stands among the arguments of a measure */
    record Mention(String name, int position, boolean inMeasure) {}

    private final List<Mention> names = new ArrayList<>();
    private final List<Expression.Call> measures = new ArrayList<>();
    private final Names known;

    private Mentions(Names known) {
        this.known = known;
    }

    static Mentions of(Expression expression, Names known) {
        Mentions mentions = new Mentions(known);
        mentions.walk(expression, false);
        return mentions;
    }

    static Mentions of(Condition condition, Names known) {
        Mentions mentions = new Mentions(known);
        mentions.walk(condition);
        return mentions;
    }

    /** Of quantities and words; series, node and part names left out. */
    List<Mention> names() {
        return names;
    }

    /** Calls of what is no function of the formula language. */
    List<Expression.Call> measures() {
        return measures;
    }

    private void walk(Condition condition) {
        condition.forEachComparison(comparison -> {
            walk(comparison.left(), false);
            if (!isWord(comparison.left())) {
                walk(comparison.right(), false);
            }
        });
    }

    private boolean isWord(Expression expression) {
        return expression instanceof Expression.Name name
                && known.get(name.id())
                        .map(named -> named.kind() == Names.Kind.WORD)
                        .orElse(false);
    }

    private void walk(Expression expression, boolean inMeasure) {
        if (expression instanceof Expression.Name name) {
            if (!FormulaReader.isReserved(name.id())) {
                names.add(new Mention(name.id(), name.position(), inMeasure));
            }
        } else if (expression instanceof Expression.Call call) {
            walk(call, inMeasure);
        } else {
            expression.parts().forEach(part -> walk(part, inMeasure));
        }
    }

    private void walk(Expression.Call call, boolean inMeasure) {
        boolean measure = !FormulaReader.isReserved(call.function());
        if (measure) {
            measures.add(call);
        }
        for (int i = 0; i < call.arguments().size(); i++) {
            if (!measure || !MeasureCheck.namesAThing(call, i)) {
                walk(call.arguments().get(i), inMeasure || measure);
            }
        }
    }
}
