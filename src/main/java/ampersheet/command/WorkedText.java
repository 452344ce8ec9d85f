package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.formula.PlainText;
import ampersheet.problem.Attempt;
import ampersheet.problem.Difficulty;
import ampersheet.problem.Problem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.text.TerminalText;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.SheetProblem;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.List;
import java.util.Locale;

/** One worked problem for a terminal, or as JSON for a program. */
final class WorkedText {

    private final Attempt.Worked worked;
    private final Problem problem;
    private final ProblemTemplate template;
    private final SheetProblem keyed;
    private final ProblemBlock block;

    WorkedText(Attempt.Worked worked, DecimalMarker marker) {
        this.worked = worked;
        this.problem = worked.problem();
        this.template = problem.template();
        this.keyed = SheetProblem.alone(problem, marker);
        this.block = Composer.alone(problem, marker);
    }

    /** @param figures whether to describe them in words */
    String print(boolean figures) {
        TerminalText text = new TerminalText(template.language(), figures)
                .line(template.title() + " (" + template.name() + ")")
                .blocks(block.blocks());
        if (!worked.notes().isEmpty()) {
            text.list(
                    say("command.work.noted"),
                    worked.notes().stream()
                            .map(note -> note.reason().sentence(Languages.ENGLISH) + " (" + note.detail() + ")")
                            .toList());
        }
        return text.toString();
    }

    void write(Json json) {
        json.text("template", template.name()).text("title", template.title());
        json.objects("givens", template.givens(), this::writeGiven);
        json.objects(
                "constants",
                template.constants(),
                (at, constant) -> at.text("name", constant.name())
                        .text("meaning", constant.meaning())
                        .number("value_si", constant.si())
                        .text("unit", constant.unit().symbol())
                        .text("text", text(constant.name())));
        List<StepBlock> steps = block.blocks().stream()
                .filter(Steps.class::isInstance)
                .map(Steps.class::cast)
                .findFirst()
                .orElseThrow()
                .steps();
        json.objects("steps", steps, this::writeStep);
        json.objects("answers", problem.answers(), this::writeAnswer);
        json.texts("cautions", problem.cautions());
        json.object("fingerprint", at -> writeFingerprint(at, Difficulty.of(problem)));
        json.objects(
                "notes",
                worked.notes(),
                (at, note) -> at.text("reason", lower(note.reason().name())).text("detail", note.detail()));
    }

    private void writeGiven(Json json, Given given) {
        json.text("name", given.name()).text("meaning", given.meaning());
        if (given instanceof QuantityGiven quantity) {
            json.number("value_si", problem.givens().quantity(given.name()).value())
                    .text("unit", quantity.unit().symbol())
                    .text("text", text(given.name()));
        } else {
            json.text("word", problem.givens().words().get(given.name()));
        }
    }

    /** Values in coherent SI units; the unit is that of the printed text's quantity. */
    private void writeStep(Json json, StepBlock step) {
        String id = template.lines().get(step.number() - 1).id();
        json.text("id", id)
                .text("meaning", step.meaning())
                .number("value_si", problem.values().quantity(id).value())
                .text("unit", template.line(id).unit().symbol())
                .text("text", step.result().orElseThrow().text())
                .text("formula", PlainText.symbolic(step.formula().orElseThrow(), step.notation()))
                .text("numbers", PlainText.substituted(step.formula().orElseThrow(), step.notation()))
                .text("principle", step.principle())
                .text("because", step.reason());
    }

    private void writeAnswer(Json json, Problem.Answer answer) {
        AnswerKey key = keyed.answers().get(problem.answers().indexOf(answer));
        KeyLine line = block.blocks().stream()
                .filter(KeyTable.class::isInstance)
                .map(KeyTable.class::cast)
                .findFirst()
                .orElseThrow()
                .lines()
                .get(problem.answers().indexOf(answer));
        json.text("of", answer.of())
                .number("value_si", answer.value())
                .number("second_si", answer.second())
                .number("gap", answer.gap())
                .number("allowed", answer.allowed())
                .flag("agrees", answer.agrees())
                .text("unit", key.unit().symbol())
                .text("text", line.answer())
                .text("accepted", line.accepted())
                .text("kind", key.acceptance().kind());
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            json.texts(
                    "options",
                    choice.options().stream().map(Acceptance.Option::text).toList());
        }
        json.objects(
                "mistakes",
                answer.mistakes(),
                (at, mistake) -> at.text("id", mistake.id())
                        .number("value_si", mistake.value())
                        .text("explanation", mistake.explanation()));
    }

    private static void writeFingerprint(Json json, Difficulty of) {
        json.number("steps", of.steps())
                .number("inversions", of.inversions())
                .number("prefix_crossings", of.prefixCrossings())
                .number("digits", of.digits())
                .number("non_terminating", of.nonTerminating())
                .texts("branches", of.branches().stream().map(String::valueOf).toList())
                .text("nearest_mistake", of.nearest().id())
                .number("points", of.points());
    }

    private String text(String name) {
        return Composer.printed(keyed, name);
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
