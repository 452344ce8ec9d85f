package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.language.Language;
import ampersheet.problem.BenchReading;
import ampersheet.problem.Inventory;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.Prose;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a key tells an instructor of each answer: what is accepted, the second route, and what either rests on. */
final class KeyLines {
    private KeyLines() {}

    static List<KeyLine> of(SheetProblem problem) {
        QuantityWriter writer = problem.writer();
        Language language = problem.plan().language();
        List<AnswerKey> keys = problem.answers();
        List<KeyLine> lines = new ArrayList<>();
        for (int i = 0; i < keys.size(); i++) {
            AnswerKey key = keys.get(i);
            boolean choice = key.acceptance() instanceof Acceptance.Choice;
            lines.add(new KeyLine(
                    key.question(),
                    choice
                            ? Optional.empty()
                            : Optional.of(problem.template().line(key.step()).symbol()),
                    ProblemText.answer(key, writer),
                    accepted(problem, key),
                    ProblemText.secondRoute(key, problem.problem().answers().get(i), writer, language),
                    problem.problem().answers().get(i).agrees(),
                    mistakes(key, writer)));
        }
        return lines;
    }

    private static List<MistakeLine> mistakes(AnswerKey key, QuantityWriter writer) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            List<MistakeLine> wrong = new ArrayList<>();
            for (int i = 0; i < choice.options().size(); i++) {
                if (i != key.rightOption()) {
                    wrong.add(new MistakeLine(
                            choice.options().get(i).text(),
                            choice.options().get(i).explanation()));
                }
            }
            return wrong;
        }
        return key.mistakes().stream()
                .map(mistake ->
                        new MistakeLine(ProblemText.precise(key, mistake.value(), writer), mistake.explanation()))
                .toList();
    }

    /** The laws on which both routes to an answer rest, so that a key does not claim more than was checked. */
    static List<Block> sharedLaws(SheetProblem problem) {
        Language language = problem.plan().language();
        Map<String, List<String>> answersBy = new LinkedHashMap<>();
        for (ProblemTemplate.Proof proof : problem.template().proofs()) {
            TemplateSayings.shared(proof).ifPresent(law -> {
                List<String> answers = answersBy.computeIfAbsent(law, first -> new ArrayList<>());
                problem.answers().stream()
                        .filter(key -> key.step().equals(proof.of()))
                        .forEach(key -> answers.add("**" + key.question() + "** "));
            });
        }
        List<Block> laws = new ArrayList<>();
        answersBy.forEach((law, answers) ->
                laws.add(new Prose((answers.size() == problem.answers().size() ? "" : String.join("", answers))
                        + language.say("sheet.key.shared-law", "law", Statement.escape(law)))));
        return laws;
    }

    private static String accepted(SheetProblem problem, AnswerKey key) {
        Language language = problem.plan().language();
        String accepted = ProblemText.accepted(key, problem.writer(), language);
        return problem.template().followsDesign(key.step())
                ? language.say("sheet.key.accepted.after-design", "accepted", accepted)
                : accepted;
    }

    /** What the workshop's meters read at what can be measured, if every part and the meter keep their tolerances. */
    static Optional<Block> onTheBench(SheetProblem problem, Inventory inventory) {
        Language language = problem.plan().language();
        List<String> readings = new ArrayList<>();
        for (BenchReading reading : BenchReading.of(problem.problem(), inventory)) {
            AnswerKey key = problem.answers().stream()
                    .filter(answer -> answer.step().equals(reading.of()))
                    .findFirst()
                    .orElseThrow();
            readings.add(language.say(
                    "sheet.key.bench-reading",
                    "question",
                    key.question(),
                    "value",
                    shown(problem, key, reading.nominal()),
                    "low",
                    shown(problem, key, reading.low()),
                    "high",
                    shown(problem, key, reading.high())));
        }
        return readings.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Prose(language.say("sheet.key.on-the-bench", "readings", String.join("; ", readings))));
    }

    private static String shown(SheetProblem problem, AnswerKey key, double value) {
        return Statement.escape(ProblemText.precise(key, value, problem.writer()));
    }

    static List<Block> designRules(SheetProblem problem) {
        List<Block> rules = new ArrayList<>();
        List<DesignKey> designs = problem.key().designs();
        for (int i = 0; i < designs.size(); i++) {
            DesignKey design = designs.get(i);
            List<String> questions = problem.answers().stream()
                    .filter(key -> design.steps().contains(key.step()))
                    .map(key -> "**" + key.question() + "**")
                    .toList();
            rules.add(new Prose(ProblemText.designRule(
                    design,
                    problem.problem().designs().get(i),
                    questions,
                    problem.plan().language())));
        }
        return rules;
    }
}
