package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.formula.Condition;
import ampersheet.formula.Notation;
import ampersheet.formula.Step;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The working of a problem, line by line: each with its numbers, or blank and giving nothing away. */
final class WorkedSteps {
    private WorkedSteps() {}

    /** All of it. */
    static List<StepBlock> whole(SheetProblem problem) {
        return lines(problem, List.of());
    }

    /** The line of a step; empty for what is no step. */
    static Optional<StepBlock> lineOf(SheetProblem problem, String step) {
        List<StepLine> lines = problem.template().lines();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).id().equals(step)) {
                return Optional.of(whole(problem).get(i));
            }
        }
        return Optional.empty();
    }

    /** As the sheet shows it: blank where it fades. */
    static List<StepBlock> onSheet(SheetProblem problem) {
        return lines(problem, Fading.blankSteps(problem.template(), problem.support()));
    }

    /** A blank step's value appears nowhere: where a later step uses it, its symbol stands instead of the number. */
    private static List<StepBlock> lines(SheetProblem problem, List<String> blank) {
        ProblemTemplate template = problem.template();
        Values values = problem.problem().values();
        Map<String, Quantity> known = new LinkedHashMap<>(values.quantities());
        blank.forEach(known::remove);
        Notation notation = ProblemText.of(problem, Values.of(known, values.words()));
        List<AnswerKey> places = new ArrayList<>(problem.answers());
        places.addAll(problem.blankSteps());
        List<StepBlock> steps = new ArrayList<>();
        for (int i = 0; i < template.lines().size(); i++) {
            String id = template.lines().get(i).id();
            steps.add(
                    blank.contains(id)
                            ? blank(i, problem, notation, placeOf(id, places))
                            : shown(i, problem, notation));
        }
        return steps;
    }

    private static AnswerKey placeOf(String step, List<AnswerKey> places) {
        return places.stream()
                .filter(key -> key.step().equals(step))
                .findFirst()
                .orElseThrow();
    }

    private static StepBlock blank(int index, SheetProblem problem, Notation notation, AnswerKey place) {
        StepLine line = problem.template().lines().get(index);
        String meaning = place.unitPrinted() && !place.unit().symbol().isEmpty()
                ? problem.plan()
                        .language()
                        .say(
                                "sheet.problem.blank-in-unit",
                                "what",
                                line.meaning(),
                                "unit",
                                place.unit().symbol())
                : line.meaning();
        return new StepBlock(
                index + 1,
                line.symbol(),
                meaning,
                Optional.empty(),
                Optional.empty(),
                notation,
                Optional.empty(),
                "",
                "",
                place.question(),
                HowToAnswer.unitBox(place),
                "");
    }

    private static StepBlock shown(int index, SheetProblem problem, Notation notation) {
        StepLine line = problem.template().lines().get(index);
        Step step = problem.template().working().steps().get(index);
        Values values = problem.problem().values();
        int applying = step.applying(values);
        Step.Case used = step.cases().get(applying);
        Optional<Condition> condition = step.cases().size() > 1 ? used.when() : Optional.empty();
        return new StepBlock(
                index + 1,
                line.symbol(),
                line.meaning(),
                condition,
                Optional.of(used.is()),
                notation,
                Optional.of(
                        problem.writer().working(values.quantity(line.id()).value(), line.unit(), ProblemText.FIGURES)),
                problem.template().language().name(line.principle()),
                line.reasons().get(applying),
                "",
                UnitBox.ASKED,
                "");
    }
}
