package ampersheet.problem;

import ampersheet.source.Languages;
import java.util.List;
import java.util.Locale;

/**
 * What solving many draws of a template by both routes showed.
 *
 * @param wanted problems asked for
 * @param tally accepted and refused, by reason
 * @param exhausted whether every combination of the givens was tried
 * @param disagreements the first of them; {@link Tally#refused(Refusal)} has their number
 * @param values worst gap of every proven value, asked ones first
 * @param mistakes in the order of the template
 * @param leaning steps whose second route changes when the first route is made wrong on purpose: it is no second route
 * @param unfilled statements and prompts that could not be filled, with the givens, the first of them
 * @param options of each choice
 * @param onPurpose limits of the trade that the template passes on purpose, with its reason
 * @param withoutMistakes steps that may be blank and have no modelled mistake, with the template's reason if it gives
 *     one
 * @param realities what dropped idealisations make of the answers
 * @param warnings sentences for the template's author
 */
public record ProofReport(
        String template,
        String seed,
        int wanted,
        Tally tally,
        boolean exhausted,
        List<Disagreement> disagreements,
        List<ProvenValue> values,
        List<MadeMistake> mistakes,
        List<String> leaning,
        List<String> unfilled,
        List<OptionProof> options,
        List<String> onPurpose,
        List<String> withoutMistakes,
        List<RealShift> realities,
        Variants variants,
        List<String> warnings) {
    public ProofReport {
        disagreements = List.copyOf(disagreements);
        values = List.copyOf(values);
        mistakes = List.copyOf(mistakes);
        leaning = List.copyOf(leaning);
        unfilled = List.copyOf(unfilled);
        options = List.copyOf(options);
        onPurpose = List.copyOf(onPurpose);
        withoutMistakes = List.copyOf(withoutMistakes);
        realities = List.copyOf(realities);
        warnings = List.copyOf(warnings);
    }

    /** @param givens in one line, as they can be given to {@code work}; @param detail both values */
    public record Disagreement(String givens, String detail) {}

    /**
     * @param asked whether the sheet asks for it, or a model only takes it as a value
     * @param worstGap between the routes; relative, or absolute where the value is zero
     * @param allowed at that draw
     * @param givens of that draw
     * @param because the author's reason for a wide gap; may be empty
     */
    public record ProvenValue(
            String step, boolean asked, double worstGap, double allowed, String givens, String because) {}

    /**
     * @param made accepted draws in which the mistake can be made
     * @param closest how near it came to the key or to another mistake, in multiples of what both tolerances need:
     *     above 1 no answer can pass for both; infinite if it was never made, or where values count exactly
     * @param to {@code the key}, or the id of the other mistake
     * @param givens of that draw
     */
    public record MadeMistake(String id, String of, long made, double closest, String to, String givens) {}

    /**
     * The farthest that an answer shifts when an idealisation is dropped.
     *
     * @param named what there is really
     * @param shift as a share of the answer; absolute, SI, where it is a temperature or zero; infinite where there is
     *     no answer
     * @param tolerances the same in multiples of what is accepted; infinite where the answer is another count or option
     * @param givens of that draw
     */
    public record RealShift(String named, String of, double shift, double tolerances, String givens) {}

    public boolean passed() {
        return tally.refused(Refusal.ROUTES_DISAGREE) == 0
                && leaning.isEmpty()
                && unfilled.isEmpty()
                && tally.accepted() > 0
                && options.stream().allMatch(OptionProof::holds);
    }

    /** Share of the candidates inside all limits, of those that meet the requirements and can be worked. */
    public double shareInsideLimits() {
        long candidates = tally.tried()
                - tally.refused(Refusal.REQUIREMENT)
                - tally.refused(Refusal.NOT_A_NUMBER)
                - tally.refused(Refusal.ABOVE_EXTRA_LOW_VOLTAGE);
        return candidates == 0 ? 1 : 1 - (double) tally.refused(Refusal.OUTSIDE_LIMITS) / candidates;
    }

    /** As plain text for a terminal. */
    public String print() {
        StringBuilder out = new StringBuilder();
        line(out, "%s: %s", template, passed() ? "proven" : "NOT PROVEN");
        line(
                out,
                "  %d draws%s: %d accepted, %d refused (%.1f %%)",
                tally.tried(),
                exhausted ? " (all there are)" : "",
                tally.accepted(),
                tally.refused(),
                100 * tally.refusalRate());
        for (Refusal reason : Refusal.values()) {
            if (tally.refused(reason) > 0) {
                line(
                        out,
                        "    %6d  %4.1f %%  %s",
                        tally.refused(reason),
                        100.0 * tally.refused(reason) / tally.tried(),
                        reason.sentence(Languages.ENGLISH));
            }
        }
        faults(out);
        values.forEach(value -> line(
                out,
                "  %-8s worst gap %.2g, allowed %.2g%s  at %s%s",
                value.step(),
                value.worstGap(),
                value.allowed(),
                value.asked() ? "" : " (not asked)",
                value.givens(),
                value.because().isEmpty() ? "" : "; " + value.because()));
        reach(out);
        line(
                out,
                "  distinct variants: %d of %d combinations, %s",
                variants.count(),
                variants.combinations(),
                variants.basis().words());
        warnings.forEach(warning -> line(out, "  warning: %s", warning));
        return out.toString();
    }

    /** What keeps a template from being proven. */
    private void faults(StringBuilder out) {
        disagreements.forEach(one -> line(out, "  DISAGREE  %s: %s", one.givens(), one.detail()));
        leaning.forEach(
                step -> line(out, "  LEANING   the second route to %s follows the first: it proves nothing", step));
        unfilled.forEach(one -> line(out, "  NOT FILLED  %s", one));
    }

    /** How far options, limits, idealisations and mistakes reach. */
    private void reach(StringBuilder out) {
        options.forEach(option -> line(
                out,
                "  options of %s: %s%s",
                option.choice(),
                option.holds() ? "exactly one is right, " + option.way().words() : "NOT exactly one is right",
                option.counterexample().map(at -> ": " + at).orElse("")));
        line(out, "  inside the limits of the trade: %.1f %% of the candidates", 100 * shareInsideLimits());
        realities.forEach(one -> line(
                out,
                "  with %s: %s shifts by at most %.2g, %s  at %s",
                one.named(),
                one.of(),
                one.shift(),
                Double.isInfinite(one.tolerances())
                        ? "another answer"
                        : String.format(Locale.ROOT, "%.2g × what is accepted", one.tolerances()),
                one.givens()));
        onPurpose.forEach(one -> line(out, "  beyond a limit on purpose: %s", one));
        withoutMistakes.forEach(one -> line(out, "  step without a mistake: %s", one));
        mistakes.forEach(mistake -> line(out, "  mistake %s of %s: %s", mistake.id(), mistake.of(), apart(mistake)));
    }

    private static String apart(MadeMistake mistake) {
        if (mistake.made() == 0) {
            return "never made";
        }
        return String.format(Locale.ROOT, "made %d times, ", mistake.made())
                + (Double.isInfinite(mistake.closest())
                        ? "always another value"
                        : String.format(
                                Locale.ROOT, "closest %.2f × both tolerances, to %s", mistake.closest(), mistake.to()));
    }

    private static void line(StringBuilder out, String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
