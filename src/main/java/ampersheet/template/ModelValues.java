package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.formula.Spelling;
import ampersheet.formula.TradeWords;
import ampersheet.model.ModelKind;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads the formulas that give one model its values, and notes which names it takes. */
final class ModelValues {
    private final ModelKind model;
    private final Names names;
    private final Formulas formulas;
    private final Taken taken;

    ModelValues(ModelKind model, Names names, Formulas formulas, Taken taken) {
        this.model = model;
        this.names = names;
        this.formulas = formulas;
        this.taken = taken;
    }

    /** @param what such as {@code volts of V1}, for the message */
    Optional<Expression> read(Yaml.Scalar text, Dimension dimension, String what) {
        return read(text, Formulas.ALL_NAMES, dimension, what).map(Formulas.Checked::expression);
    }

    /** A formula that may measure another model. */
    Optional<Formulas.Checked> read(Yaml.Scalar text, Formulas.Rule rule, Dimension dimension, String what) {
        Optional<Formulas.Checked> checked = formulas.expression(
                text, rule, Optional.of(dimension), what + " takes " + TradeWords.plural(dimension));
        checked.ifPresent(formula -> {
            formula.mentions().names().forEach(mention -> take(mention.name(), text.at(mention.position())));
            if (model == ModelKind.HEAT
                    && formula.mentions().measures().stream()
                            .flatMap(call ->
                                    MeasureCheck.meant(call, rule.measurable().orElseThrow()).stream())
                            .anyMatch(measure -> measure.kind() == ModelKind.CIRCUIT)) {
                taken.heatMeasuresCircuit();
            }
        });
        return checked;
    }

    /**
     * One of the words, or the name of a word given all of whose words are such.
     *
     * @param what such as {@code order of a tile}, for the message
     */
    Optional<String> word(Yaml.Scalar text, Collection<String> words, String what, Faults faults) {
        String written = text.text();
        if (words.contains(written)) {
            return Optional.of(written);
        }
        Optional<Names.Named> given = names.get(written).filter(named -> named.kind() == Names.Kind.WORD);
        if (given.isEmpty()) {
            faults.error(
                    text.place(),
                    "the " + what + " is never \"" + written + "\"",
                    Spelling.list(words) + ", or the name of a word given",
                    Guess.of(written, new TreeSet<>(words), "Use one of these words."));
            return Optional.empty();
        }
        names.use(written);
        take(written, text.place());
        Set<String> strange = new TreeSet<>(given.get().words());
        strange.removeAll(words);
        if (!strange.isEmpty()) {
            faults.error(
                    text.place(),
                    written + " may be \"" + strange.iterator().next() + "\", but the " + what + " is never that",
                    Spelling.list(words),
                    "Correct the words of " + written + ".");
            return Optional.empty();
        }
        return Optional.of(written);
    }

    void take(String name, Place place) {
        names.get(name).ifPresent(named -> taken.take(model, named, place));
    }
}
