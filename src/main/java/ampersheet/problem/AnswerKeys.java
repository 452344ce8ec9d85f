package ampersheet.problem;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.ProblemKey;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.PlainText;
import ampersheet.formula.Values;
import ampersheet.problem.Problem.Answer;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.Criterion;
import ampersheet.template.ProblemTemplate.Design;
import ampersheet.template.ProblemTemplate.DesignAsk;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The key of a problem, for those who judge answers. */
public final class AnswerKeys {
    /** Of a limit that has no short exact decimal. */
    private static final int FIGURES = 4;

    private AnswerKeys() {}

    /**
     * @param question of the whole problem, such as {@code q3}; its parts are {@code q3a}, {@code q3b} … if it asks for
     *     more than one thing
     * @param unitPrinted whether the sheet prints the unit behind each blank
     */
    public static ProblemKey keyOf(Problem problem, String question, boolean unitPrinted) {
        List<String> questions = questions(problem.template(), question);
        List<AnswerKey> keys = new ArrayList<>();
        for (int i = 0; i < questions.size(); i++) {
            keys.add(key(
                    problem,
                    problem.template().asks().get(i),
                    problem.answers().get(i),
                    questions.get(i),
                    unitPrinted));
        }
        return new ProblemKey(
                keys,
                problem.givens(),
                problem.template().working(),
                designs(problem),
                problem.template().language());
    }

    /** The rules by which the blanks of design tasks are judged. */
    public static List<DesignKey> designs(Problem problem) {
        ProblemTemplate template = problem.template();
        List<DesignKey> designs = new ArrayList<>();
        for (Design design : template.designs()) {
            Map<String, Quantity> unchosen =
                    new LinkedHashMap<>(problem.values().quantities());
            unchosen.keySet().removeAll(design.steps());
            unchosen.keySet().removeAll(template.working().following(design.steps()));
            Values fixed = Values.of(unchosen, problem.values().words());
            Notation wanted = Notations.of(template, template.language(), fixed, QuantityWriter.POINT, FIGURES);
            designs.add(new DesignKey(
                    design.id(),
                    design.steps(),
                    design.criteria().stream()
                            .map(criterion -> new DesignKey.Criterion(
                                    criterion.id(),
                                    criterion.where(),
                                    criterion.shown(),
                                    template.line(criterion.shown()).symbol().plain(),
                                    template.line(criterion.shown()).unit(),
                                    wanted(criterion, template.line(criterion.shown()), fixed, wanted),
                                    criterion.says()))
                            .toList()));
        }
        return List.copyOf(designs);
    }

    /** A limit of the shown step is worked out where no choice moves it: {@code V ≥ 3.234 V}. */
    private static String wanted(Criterion criterion, StepLine shown, Values fixed, Notation notation) {
        if (criterion.where() instanceof Condition.Comparison comparison
                && comparison.left() instanceof Expression.Name name
                && name.id().equals(shown.id())
                && fixed.quantities().keySet().containsAll(Evaluation.names(comparison.right()))) {
            double limit = Evaluation.evaluate(comparison.right(), fixed).value();
            return shown.symbol().plain() + " " + comparison.relation().printed() + " "
                    + QuantityWriter.POINT.plain(limit, shown.unit(), FIGURES).text();
        }
        return PlainText.substituted(criterion.where(), notation);
    }

    /** The names of the questions of a problem, in the order asked. */
    public static List<String> questions(ProblemTemplate template, String question) {
        int count = template.asks().size();
        List<String> questions = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            questions.add(count == 1 ? question : question + (char) ('a' + i));
        }
        return List.copyOf(questions);
    }

    private static AnswerKey key(Problem problem, Ask ask, Answer answer, String question, boolean unitPrinted) {
        if (ask instanceof QuantityAsk quantity) {
            return new AnswerKey(
                    question,
                    ask.of(),
                    answer.value(),
                    problem.template().line(ask.of()).unit(),
                    quantity.figures(),
                    unitPrinted,
                    quantity.acceptance(),
                    answer.mistakes());
        }
        if (ask instanceof DesignAsk blank) {
            return new AnswerKey(
                    question,
                    ask.of(),
                    answer.value(),
                    problem.template().line(ask.of()).unit(),
                    FIGURES,
                    unitPrinted,
                    blank.acceptance(),
                    List.of());
        }
        List<Acceptance.Option> options = ((ChoiceAsk) ask)
                .options().stream()
                        .map(option -> new Acceptance.Option(option.text(), option.otherwise()))
                        .toList();
        return new AnswerKey(
                question,
                ask.of(),
                answer.value(),
                Unit.parse("1"),
                0,
                unitPrinted,
                new Acceptance.Choice(options),
                List.of());
    }
}
