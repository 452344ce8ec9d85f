package ampersheet.template;

import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * What the formulas of a second route may use, so that none leans on the first.
 *
 * @param proven steps with a proof so far; it grows while proofs are read
 */
record ProofRules(Set<String> proven, MeasureCheck.Things things) {
    /**
     * For what is measured: no steps but the one that is searched, and proven ones in arguments and in the bound.
     *
     * @param varied what the search varies, if there is one
     * @param bound whether a position belongs to the bound
     */
    Formulas.Rule measuring(Optional<Names.Named> varied, IntPredicate bound) {
        Formulas.Rule rule = (named, mention) -> {
            boolean searched = varied.isPresent() && varied.get().id().equals(named.id());
            boolean provenBefore = proven.contains(named.id());
            boolean inside = mention.inMeasure() || bound.test(mention.position());
            if (!named.isStep() || searched || provenBefore && inside) {
                return Optional.empty();
            }
            return Optional.of(
                    provenBefore
                            ? new Formulas.Refusal(
                                    "the measure computes with the step " + named.id()
                                            + ", so that the routes are not apart",
                                    "measures, givens and constants",
                                    "Measure it in the model, or compute with givens.")
                            : new Formulas.Refusal(
                                    "the second route uses the step " + named.id()
                                            + ", which has no proof before this one",
                                    inside
                                            ? "givens, constants and steps proven before"
                                            : "measures, givens and constants",
                                    "Use measures and givens"
                                            + (inside ? ", or prove " + named.id() + " first." : ".")));
        };
        return rule.measuring(things);
    }

    /** For what stands beside the measure: no measures, and of the steps only those that are proven. */
    Formulas.Rule proven(String what) {
        return new Formulas.Rule() {
            @Override
            public Optional<Formulas.Refusal> refusal(Names.Named named, Mentions.Mention mention) {
                return !named.isStep() || proven.contains(named.id())
                        ? Optional.empty()
                        : Optional.of(new Formulas.Refusal(
                                what + " uses the step " + named.id() + ", which has no proof before this one",
                                "givens, constants and steps proven before",
                                "Use givens, or prove " + named.id() + " first."));
            }

            @Override
            public Formulas.Refusal noMeasures(String measure) {
                return new Formulas.Refusal(
                        measure + " is a measure, and only the measure itself is read off the model",
                        "givens, constants and steps proven before",
                        "Bring both measures to one side, as in voltage(a, b).");
            }
        };
    }
}
