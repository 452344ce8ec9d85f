package ampersheet.template;

import ampersheet.formula.Expression;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.Optional;

/** Reads how far the two routes to a value may lie apart. */
final class ProofGap {
    /** Two ways of the same arithmetic and a solver agree far better; models of the same physics agree to this. */
    static final double WITHIN = 1e-4;
    /** Wider, the two routes do not compute the same, and the template says why. */
    static final double WIDEST_WITHOUT_REASON = 1e-3;
    /** SI; zero against what a solver leaves of zero. */
    static final double FLOOR = 1e-12;

    /**
     * @param within relative
     * @param floor absolute, SI
     * @param because why it is wide; may be empty
     */
    record Allowed(double within, double floor, String because) {}

    private final Wording wording;
    private final Numbers numbers;
    private final Faults faults;

    ProofGap(Wording wording, Faults faults) {
        this.wording = wording;
        this.numbers = new Numbers(faults);
        this.faults = faults;
    }

    /** @param dimension of the step that is proven, as far as it is known */
    Allowed read(Fields fields, Optional<Dimension> dimension) {
        Optional<Yaml.Scalar> text = fields.text("within");
        Optional<String> because = wording.text(fields, "because");
        double within = WITHIN;
        double floor = FLOOR;
        boolean wide = false;
        Optional<Expression.Constant> gap = text.flatMap(numbers::constant);
        if (gap.isPresent()) {
            Expression.Constant allowed = gap.get();
            boolean relative = allowed.unit().symbol().equals("%");
            if (allowed.number() <= 0
                    || allowed.unit().offset() != 0
                    || !relative
                            && dimension.isPresent()
                            && !allowed.unit().dimension().equals(dimension.get())
                    || !relative && Numbers.isBare(allowed)) {
                faults.error(
                        text.get().place(),
                        "\"" + text.get().text() + "\" is not a gap between the two routes",
                        "a percentage above zero, or an amount in the unit of the step (K for temperatures)",
                        "Write for example 0.1 %.");
            } else if (relative) {
                within = allowed.si();
                wide = within > WIDEST_WITHOUT_REASON;
            } else {
                within = 0;
                floor = allowed.si();
                wide = true;
            }
        }
        if (wide && because.isEmpty()) {
            faults.error(
                    text.get().place(),
                    "the gap allowed is wider than 0.1 %, and nothing says why",
                    "because: with what one route leaves out",
                    "Add because:, or narrow the gap.");
        }
        return new Allowed(within, floor, because.orElse(""));
    }
}
