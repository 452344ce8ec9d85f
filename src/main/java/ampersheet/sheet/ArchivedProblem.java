package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.List;

/**
 * One problem of a sheet as it was issued: what must be known of it when the program has come to draw other numbers.
 *
 * @param number on the sheet, from 1
 * @param place in the plan's list of problems, from 0, examples included
 * @param numbers every given and constant, in the template's order
 * @param answers what the key said, worked examples included
 */
record ArchivedProblem(int number, int place, String template, List<Number> numbers, List<Answer> answers) {
    ArchivedProblem {
        numbers = List.copyOf(numbers);
        answers = List.copyOf(answers);
    }

    /** @param written as printed; of a word given the word itself, and then there is no quantity */
    record Number(String name, Quantity quantity, Unit unit, String written) {
        boolean isWord() {
            return quantity == null;
        }
    }

    /** @param value in SI, or the index of the right option */
    record Answer(String question, String step, double value, Unit unit, String written) {}

    static ArchivedProblem of(SheetProblem problem, int place) {
        ProblemTemplate template = problem.template();
        Values givens = problem.problem().givens();
        List<Number> numbers = new ArrayList<>();
        for (ProblemTemplate.Given given : template.givens()) {
            String written = Composer.printed(problem, given.name());
            numbers.add(
                    given instanceof QuantityGiven quantity
                            ? new Number(given.name(), givens.quantity(given.name()), quantity.unit(), written)
                            : new Number(
                                    given.name(), null, Unit.ONE, givens.words().get(given.name())));
        }
        for (Constant constant : template.constants()) {
            numbers.add(new Number(
                    constant.name(),
                    givens.quantity(constant.name()),
                    constant.unit(),
                    Composer.printed(problem, constant.name())));
        }
        List<Answer> answers = new ArrayList<>();
        for (AnswerKey key : problem.key().answers()) {
            Unit unit = key.acceptance() instanceof Acceptance.Choice ? Unit.ONE : key.unit();
            answers.add(new Answer(key.question(), key.step(), key.expected(), unit, Composer.answer(problem, key)));
        }
        return new ArchivedProblem(problem.number(), place, template.name(), numbers, answers);
    }

    /** Whether the numbers are those of the other, whatever the key says of them. */
    boolean hasNumbersOf(ArchivedProblem other) {
        return number == other.number
                && place == other.place
                && template.equals(other.template)
                && numbers.stream()
                        .map(ArchivedProblem::bits)
                        .toList()
                        .equals(other.numbers.stream()
                                .map(ArchivedProblem::bits)
                                .toList());
    }

    private static String bits(Number number) {
        return number.name() + " = "
                + (number.isWord()
                        ? number.written()
                        : Long.toHexString(
                                Double.doubleToLongBits(number.quantity().value())));
    }
}
