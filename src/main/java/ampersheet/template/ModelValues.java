package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.formula.TradeWords;
import ampersheet.quantity.Dimension;
import ampersheet.template.ModelMeasures.Model;
import java.util.Optional;

/** Reads the formulas that give one model its values, and notes which names it takes. */
final class ModelValues {
  private final Model model;
  private final Names names;
  private final Formulas formulas;
  private final Taken taken;

  ModelValues(Model model, Names names, Formulas formulas, Taken taken) {
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
    Optional<Formulas.Checked> checked = formulas.expression(text, rule, Optional.of(dimension),
        what + " takes " + TradeWords.plural(dimension));
    checked.ifPresent(formula -> {
      formula.mentions().names().forEach(mention -> take(mention.name(), text.at(mention.position())));
      if (model == Model.HEAT && formula.mentions().measures().stream()
          .flatMap(call -> ModelMeasures.meant(call, rule.measurable().orElseThrow()).stream())
          .anyMatch(measure -> measure.model() == Model.CIRCUIT)) {
        taken.heatMeasuresCircuit();
      }
    });
    return checked;
  }

  void take(String name, Place place) {
    names.get(name).ifPresent(named -> taken.take(model, named, place));
  }
}
