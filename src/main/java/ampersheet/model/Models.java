package ampersheet.model;

import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** The models of a template with one set of values put in. Each is solved when first asked, and kept. */
public final class Models {
    private final List<Model> list;
    /** That each model takes, in the same order. */
    private final List<Set<String>> names;

    private Models(List<Model> list, List<Set<String>> names) {
        this.list = list;
        this.names = names;
    }

    /**
     * @param names that each plan takes
     * @param values of everything the plans name: givens, constants, steps
     */
    static Models of(List<ModelPlan> plans, List<Set<String>> names, Values values) {
        List<Model> list = new ArrayList<>();
        Models models = new Models(Collections.unmodifiableList(list), names);
        Values.Measured measured = models.measuring(values);
        plans.forEach(plan -> list.add(plan.with(values, measured)));
        return models;
    }

    /** Only this model. */
    public static Models of(Model model) {
        return new Models(List.of(model), List.of(model.plan().names()));
    }

    /** The models with other values for {@code changed}; what does not depend on those is not solved again. */
    public Models with(Values other, Set<String> changed) {
        List<Model> varied = new ArrayList<>();
        Models models = new Models(Collections.unmodifiableList(varied), names);
        Values.Measured measured = models.measuring(other);
        Set<ModelKind> others = EnumSet.noneOf(ModelKind.class);
        for (int i = 0; i < list.size(); i++) {
            Model model = list.get(i);
            ModelPlan plan = model.plan();
            boolean same = Collections.disjoint(names.get(i), changed) && Collections.disjoint(plan.measured(), others);
            if (!same) {
                others.add(plan.kind());
            }
            varied.add(same ? model : model.with(other, changed, measured));
        }
        return models;
    }

    /** In the order of the template. */
    public List<Model> list() {
        return list;
    }

    public <M extends Model> Optional<M> find(Class<M> kind) {
        return list.stream().filter(kind::isInstance).map(kind::cast).findFirst();
    }

    /** For those who can do without a solution. */
    public static <T> Optional<T> orNone(Supplier<T> solution) {
        try {
            return Optional.of(solution.get());
        } catch (Unsolved none) {
            return Optional.empty();
        }
    }

    /** The values with these models' measures, for a formula that asks for them; it may meet {@link Unsolved}. */
    public Values measuredBy(Values asking) {
        return asking.measuring(measuring(asking));
    }

    private Values.Measured measuring(Values asking) {
        return (name, arguments) -> measure(name, arguments, asking);
    }

    private Quantity measure(String name, List<Expression> arguments, Values asking) {
        for (Measure measure : Measures.named(name, arguments.size())) {
            Optional<Model> model = list.stream()
                    .filter(one -> one.plan().kind() == measure.kind())
                    .findFirst();
            if (model.isPresent() && fits(measure, arguments, asking)) {
                return measure.read(model.get(), arguments, asking);
            }
        }
        throw new IllegalArgumentException("no measure " + name);
    }

    /** Where two models have a measure of one name, what is waited for tells which is meant. */
    private static boolean fits(Measure measure, List<Expression> arguments, Values asking) {
        for (int i = 0; i < arguments.size(); i++) {
            Optional<Dimension> wanted = measure.arguments().get(i).dimension();
            if (wanted.isPresent()
                    && !Evaluation.evaluate(arguments.get(i), asking)
                            .dimension()
                            .equals(wanted.get())) {
                return false;
            }
        }
        return true;
    }
}
