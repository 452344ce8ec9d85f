package ampersheet.template;

import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Scope;
import ampersheet.formula.TradeWords;
import ampersheet.model.Measures;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import java.util.Optional;

/** Reads the formulas of a template and checks them against its names; a fault points at its character in the file. */
final class Formulas {
    /** Why a name that exists may not stand in a formula. */
    record Refusal(String problem, String expected, String nextAction) {}

    /** Which names a formula may use, and which measures. */
    interface Rule {
        Optional<Refusal> refusal(Names.Named named, Mentions.Mention mention);

        /** Empty where no measure may stand. */
        default Optional<MeasureCheck.Things> measurable() {
            return Optional.empty();
        }

        /** What is told of a measure where none may stand. */
        default Refusal noMeasures(String measure) {
            return new Refusal(
                    measure + " is a measure of a model, and none is solved here",
                    "givens, constants and steps",
                    "Use it in a proof.");
        }

        /** The same names, and measures of these things. */
        default Rule measuring(MeasureCheck.Things things) {
            Rule names = this;
            return new Rule() {
                @Override
                public Optional<Refusal> refusal(Names.Named named, Mentions.Mention mention) {
                    return names.refusal(named, mention);
                }

                @Override
                public Optional<MeasureCheck.Things> measurable() {
                    return Optional.of(things);
                }
            };
        }
    }

    /** Givens, constants and steps. */
    static final Rule ALL_NAMES = (named, mention) -> Optional.empty();

    private final Names names;
    private final Faults faults;

    Formulas(Names names, Faults faults) {
        this.names = names;
        this.faults = faults;
    }

    /** A formula of any dimension. */
    Optional<Checked> expression(Yaml.Scalar text, Rule rule) {
        try {
            Expression expression = FormulaReader.expression(text.text());
            Mentions mentions = Mentions.of(expression, names);
            if (!namesAreAllowed(text, mentions, rule)) {
                return Optional.of(new Checked(expression, mentions, Optional.empty()));
            }
            Dimension dimension = Evaluation.check(expression, scope(rule));
            return Optional.of(new Checked(expression, mentions, Optional.of(dimension)));
        } catch (FormulaFault fault) {
            tell(text, fault);
            return Optional.empty();
        }
    }

    /** @param dimension empty if the formula was not checked because of another fault */
    record Checked(Expression expression, Mentions mentions, Optional<Dimension> dimension) {}

    /**
     * A formula of one dimension.
     *
     * @param needed empty: any
     * @param what is computed, for the message: "the unit of Vr is V"
     */
    Optional<Checked> expression(Yaml.Scalar text, Rule rule, Optional<Dimension> needed, String what) {
        Optional<Checked> checked = expression(text, rule);
        if (checked.isPresent()
                && needed.isPresent()
                && checked.get().dimension().isPresent()
                && !checked.get().dimension().get().equals(needed.get())) {
            faults.error(
                    text.place(),
                    "the formula gives "
                            + TradeWords.plural(checked.get().dimension().get()) + ", but " + what,
                    "a formula that gives " + TradeWords.plural(needed.get()),
                    "Correct the formula or the unit.");
        }
        return checked;
    }

    Optional<Condition> condition(Yaml.Scalar text, Rule rule) {
        try {
            Condition condition = FormulaReader.condition(text.text());
            Mentions mentions = Mentions.of(condition, names);
            if (namesAreAllowed(text, mentions, rule)) {
                Evaluation.check(condition, scope(rule));
            }
            return Optional.of(condition);
        } catch (FormulaFault fault) {
            tell(text, fault);
            return Optional.empty();
        }
    }

    private Scope scope(Rule rule) {
        return names.scope(
                named -> rule.refusal(named, new Mentions.Mention(named.id(), 0, false))
                                .isEmpty()
                        || rule.refusal(named, new Mentions.Mention(named.id(), 0, true))
                                .isEmpty(),
                rule.measurable().isPresent() ? MeasureCheck.DIMENSIONS : Scope.NO_MEASURES);
    }

    /**
     * Marks the names as used, and tells those that may not stand here.
     *
     * @return whether the dimensions can be checked
     */
    private boolean namesAreAllowed(Yaml.Scalar text, Mentions mentions, Rule rule) {
        boolean allowed = true;
        for (Mentions.Mention mention : mentions.names()) {
            Optional<Names.Named> named = names.get(mention.name());
            if (named.isEmpty()) {
                continue;
            }
            names.use(mention.name());
            Optional<Refusal> refusal = rule.refusal(named.get(), mention);
            refusal.ifPresent(
                    why -> faults.error(text.at(mention.position()), why.problem(), why.expected(), why.nextAction()));
            allowed &= refusal.isEmpty() && !named.get().isUnknown();
        }
        for (Expression.Call call : mentions.measures()) {
            if (rule.measurable().isPresent()) {
                if (allowed) {
                    MeasureCheck.check(call, rule.measurable().get(), names.scope(named -> true, Scope.NO_MEASURES));
                }
            } else if (Measures.isMeasure(call.function())) {
                Refusal why = rule.noMeasures(call.function());
                faults.error(text.at(call.position()), why.problem(), why.expected(), why.nextAction());
                allowed = false;
            }
        }
        return allowed;
    }

    private void tell(Yaml.Scalar text, FormulaFault fault) {
        faults.error(text.at(fault.position()), fault.getMessage(), fault.expected(), fault.nextAction());
    }
}
