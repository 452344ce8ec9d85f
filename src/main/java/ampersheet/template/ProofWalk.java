package ampersheet.template;

import ampersheet.formula.Condition;
import ampersheet.formula.Condition.Relation;
import ampersheet.formula.Expression;
import ampersheet.model.SizeLimits;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import ampersheet.template.ProblemTemplate.Members;
import ampersheet.template.ProblemTemplate.Way;
import java.util.Optional;

/** Reads what a proof walks through, a series or whole numbers, until its condition holds. */
final class ProofWalk {
    private static final Members.WholeNumbers WHOLE_NUMBERS = new Members.WholeNumbers(1, 1000);

    private final Fields fields;
    private final Optional<Names.Named> step;
    private final Faults faults;

    /** @param step that is proven, as far as it is known */
    ProofWalk(Fields fields, Optional<Names.Named> step, Faults faults) {
        this.fields = fields;
        this.step = step;
        this.faults = faults;
    }

    /**
     * The first member for which the measure keeps its bound.
     *
     * @param onLeft whether the measure stands on the left of its bound
     */
    Optional<Way> read(Condition.Comparison where, boolean onLeft) {
        Relation relation = onLeft ? where.relation() : turned(where.relation());
        Expression bound = onLeft ? where.right() : where.left();
        boolean smallest = fields.has("smallest");
        return members()
                .map(members -> smallest
                        ? new Way.Smallest(members, relation, bound)
                        : new Way.Largest(members, relation, bound));
    }

    Optional<Members> members() {
        Optional<Yaml.Scalar> text = fields.text(fields.has("smallest") ? "smallest" : "largest");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        boolean count = text.get().text().equals("count");
        if (!count) {
            if (fields.has("among")) {
                faults.error(
                        fields.placeOf("among"),
                        "among: limits whole numbers, and a series is walked through",
                        "count with among:",
                        "Remove among:.");
            }
            return GivensSection.series(text.get(), faults).map(Members.Series::new);
        }
        if (step.isPresent()
                && step.get().dimension().isPresent()
                && !step.get().dimension().get().equals(Dimension.ONE)) {
            faults.error(
                    text.get().place(),
                    step.get().id() + " is not a count",
                    "a step with unit \"1\"",
                    "Walk through a series, or search with equals:.");
        }
        return fields.text("among").map(this::wholeNumbers).orElse(Optional.of(WHOLE_NUMBERS));
    }

    private Optional<Members> wholeNumbers(Yaml.Scalar text) {
        String[] ends = text.text().split(" to ", -1);
        try {
            int from = Integer.parseInt(ends[0].strip());
            int to = Integer.parseInt(ends[ends.length - 1].strip());
            boolean range = ends.length == 2 && from >= 0 && from < to && to <= 1_000_000;
            if (range && to - from >= SizeLimits.MEMBERS) {
                faults.error(
                        text.place(),
                        "the proof walks through " + (to - from + 1) + " whole numbers",
                        "at most " + SizeLimits.MEMBERS + ": for each of them the model is solved, for every draw",
                        "Narrow the range.");
                return Optional.empty();
            }
            if (range) {
                return Optional.of(new Members.WholeNumbers(from, to));
            }
        } catch (NumberFormatException notWhole) {
            // told below
        }
        faults.error(
                text.place(),
                "\"" + text.text() + "\" is not a range of whole numbers",
                "such as 1 to 200",
                "Correct the range.");
        return Optional.empty();
    }

    private static Relation turned(Relation relation) {
        return switch (relation) {
            case LESS -> Relation.MORE;
            case AT_MOST -> Relation.AT_LEAST;
            case MORE -> Relation.LESS;
            case AT_LEAST -> Relation.AT_MOST;
            default -> relation;
        };
    }
}
