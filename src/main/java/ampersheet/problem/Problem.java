package ampersheet.problem;

import ampersheet.answer.KnownMistake;
import ampersheet.circuit.Schematic;
import ampersheet.formula.Values;
import ampersheet.model.CircuitModel;
import ampersheet.model.Model;
import ampersheet.template.CurveTrace;
import ampersheet.template.ProblemTemplate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A template with numbers, worked and proven.
 *
 * @param givens drawn or forced, constants included
 * @param values givens and steps
 * @param answers in the order asked
 * @param models with these values, in the order of the template
 * @param curve of the worked solution
 * @param designs in the order of the template
 * @param cautions ids, the template's own and those the numbers call for
 * @param mistakes that can be made with these numbers, by step, asked or not
 */
public record Problem(
        ProblemTemplate template,
        Values givens,
        Values values,
        List<Answer> answers,
        List<Model> models,
        Optional<CurveTrace> curve,
        List<JudgedDesign> designs,
        List<String> cautions,
        Map<String, List<KnownMistake>> mistakes) {
    public Problem {
        answers = List.copyOf(answers);
        models = List.copyOf(models);
        designs = List.copyOf(designs);
        cautions = List.copyOf(cautions);
        mistakes = Collections.unmodifiableMap(new LinkedHashMap<>(mistakes));
    }

    /** The model of that kind, if there is one. */
    public <M extends Model> Optional<M> model(Class<M> kind) {
        return models.stream().filter(kind::isInstance).map(kind::cast).findFirst();
    }

    /** What is drawn of the circuit, if there is one. */
    public Optional<Schematic> schematic() {
        return model(CircuitModel.class).map(CircuitModel::schematic);
    }

    /**
     * What the choices of a design task are worth.
     *
     * @param choices how many there are
     * @param accepted how many of them meet every criterion
     * @param solved how many lie so near a limit that the models were solved with them, too; all agreed
     */
    public record JudgedDesign(String id, int choices, int accepted, int solved) {}

    /**
     * An asked value with both routes.
     *
     * @param of step or choice id
     * @param value first route: SI, or index of the right option
     * @param second second route
     * @param gap relative where the key is not zero, else absolute
     * @param allowed the gap the template states
     */
    public record Answer(
            String of,
            double value,
            double second,
            double gap,
            double allowed,
            boolean agrees,
            List<KnownMistake> mistakes) {
        public Answer {
            mistakes = List.copyOf(mistakes);
        }
    }
}
