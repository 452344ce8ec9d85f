package ampersheet.page;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KeyWriter;
import ampersheet.answer.ProblemKey;
import ampersheet.problem.FaultyWorking;
import ampersheet.problem.Problem;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemParts;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.StepParts;
import ampersheet.sheet.Support;
import ampersheet.template.Statement;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * One problem as the practice page needs it: what is told, the places for answers among all steps and without any (in
 * between, the page puts lines of the solution in the place of some steps), a hint for every step, the worked solution,
 * and the key. Answers asked for are called a, b, c …; other steps go by their number, as step 1.
 */
final class PracticeProblem {
    private static final int HEADING = 2;

    private final Problem problem;
    private final Plan plan;
    private final boolean example;
    private final Optional<FaultyWorking> faulty;

    PracticeProblem(Problem problem, Plan plan, boolean example) {
        this(problem, plan, example, Optional.empty());
    }

    /** @param faulty a working of it with one wrong line, to be shown as well */
    PracticeProblem(Problem problem, Plan plan, boolean example, Optional<FaultyWorking> faulty) {
        this.faulty = faulty;
        this.problem = problem;
        this.plan = plan;
        this.example = example;
    }

    private int steps() {
        return problem.template().lines().size();
    }

    private SheetProblem with(Support support) {
        return new SheetProblem(0, support, example, plan, problem);
    }

    /**
     * Every step left blank, whether it is asked for or not. A design is the learner's own choice, which the steps of
     * one way to it would only hem in: there, nothing but what is asked.
     */
    private SheetProblem stepByStep() {
        return with(isDesign() ? new Support.Bare() : new Support.Faded(new Support.Fade.Forward(steps())));
    }

    private boolean isDesign() {
        return !problem.template().designs().isEmpty();
    }

    void write(JsonGenerator json) throws IOException {
        ProblemParts parts = ProblemParts.of(stepByStep());
        json.writeStartObject();
        json.writeStringField("setting", fragment(setting(parts), example ? "example-" : "yours-"));
        json.writeStringField("solution", fragment(solution(parts), example ? "shown-" : "solution-"));
        json.writeObjectFieldStart("places");
        json.writeStringField(
                "full", fragment(isDesign() ? meant(parts.places()) : amongSteps(stepByStep(), parts), "full-"));
        json.writeStringField(
                "bare", fragment(meant(ProblemParts.of(with(new Support.Bare())).places()), "bare-"));
        json.writeEndObject();
        if (faulty.isPresent()) {
            json.writeStringField("faulty", fragment(List.of(lines(faulty.get())), "faulty-"));
        }
        hints(json, parts.worked());
        json.writeStringField("key", KeyWriter.write(key()));
        json.writeEndObject();
    }

    private List<Block> setting(ProblemParts parts) {
        List<Block> blocks = new ArrayList<>(parts.setting());
        if (!example) {
            parts.circuit().ifPresent(blocks::add);
        }
        return blocks;
    }

    private String fragment(List<Block> blocks, String idPrefix) {
        return Fragment.of(blocks, plan.language(), idPrefix, HEADING);
    }

    /**
     * What is left open, and then the steps among which the places for it stand. A choice brings its question along.
     */
    private List<Block> amongSteps(SheetProblem supported, ProblemParts parts) {
        List<String> open = supported.places().stream()
                .filter(key -> !(key.acceptance() instanceof Acceptance.Choice))
                .map(AnswerKey::question)
                .toList();
        List<Block> blocks = new ArrayList<>(List.of(prompts(key -> open.contains(key.question()))));
        blocks.addAll(renamed(parts.places()));
        parts.signs().ifPresent(blocks::add);
        return blocks;
    }

    /** Without rules and reasons: those of the right line would point at the wrong one. */
    private Steps lines(FaultyWorking working) {
        List<StepBlock> worked = ProblemParts.of(new SheetProblem(0, new Support.Full(), false, plan, working.shown()))
                .worked();
        return new Steps(
                plan.language().say("page.practice.somebody"),
                worked.stream().map(StepBlock::withoutReason).toList());
    }

    private Prose prompts(Predicate<AnswerKey> which) {
        SheetProblem full = with(new Support.Full());
        return new Prose(String.join(
                "\n",
                full.answers().stream()
                        .filter(which)
                        .map(key -> "- **" + renamed(key.question()) + "** " + full.prompt(key))
                        .toList()));
    }

    private List<Block> solution(ProblemParts parts) {
        SheetProblem full = with(new Support.Full());
        List<String> answers = full.answers().stream()
                .map(key -> "**" + renamed(key.question()) + "** " + Statement.escape(Composer.answer(full, key)))
                .toList();
        List<Block> blocks = new ArrayList<>(List.of(prompts(key -> true), new Steps("", parts.worked())));
        parts.signs().ifPresent(blocks::add);
        parts.curve().ifPresent(blocks::add);
        String all = answers.get(0);
        for (String answer : answers.subList(1, answers.size())) {
            all = plan.language().say("page.practice.solution.answer.next", "before", all, "answer", answer);
        }
        blocks.add(new Prose(plan.language().count("page.practice.solution.answer", answers.size(), "answers", all)));
        parts.assumptions().ifPresent(blocks::add);
        return blocks;
    }

    /**
     * For each step its rule in words and its line in symbols (with numbers it is in the solution); and what of the
     * figures it is about.
     */
    private void hints(JsonGenerator json, List<StepBlock> worked) throws IOException {
        Map<String, List<String>> parts = StepParts.of(problem.template());
        json.writeArrayFieldStart("hints");
        for (StepBlock step : worked) {
            json.writeStartObject();
            json.writeNumberField("step", step.number());
            String id = problem.template().lines().get(step.number() - 1).id();
            Optional<AnswerKey> asked = with(new Support.Bare()).answers().stream()
                    .filter(key -> key.step().equals(id))
                    .findFirst();
            json.writeStringField(
                    "place", asked.map(key -> renamed(key.question())).orElse("step " + step.number()));
            json.writeStringField("rule", Fragment.rule(step));
            json.writeStringField("formula", Fragment.symbols(step, plan.language()));
            json.writeArrayFieldStart("parts");
            for (String part : parts.get(id)) {
                json.writeString(part);
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** Every step and choice, under the names that stand at their places. */
    ProblemKey key() {
        ProblemKey key = stepByStep().key();
        List<AnswerKey> answers = key.answers().stream()
                .map(answer -> answer.named(renamed(answer.question())))
                .toList();
        return new ProblemKey(
                answers, key.givens(), key.working(), key.designs(), key.meanings(), key.language(), key.decimal());
    }

    /** Renamed, and with what is to be found: no step around the place says it. */
    private List<Block> meant(List<Block> blocks) {
        Map<String, String> meanings = new TreeMap<>();
        for (AnswerKey key : with(new Support.Bare()).answers()) {
            if (!(key.acceptance() instanceof Acceptance.Choice)) {
                meanings.put(
                        renamed(key.question()),
                        problem.template().line(key.step()).meaning());
            }
        }
        return renamed(blocks).stream()
                .map(block -> block instanceof Question question
                        ? question.meaning(meanings.getOrDefault(question.id(), ""))
                        : block)
                .toList();
    }

    private static List<Block> renamed(List<Block> blocks) {
        List<Block> renamed = new ArrayList<>();
        for (Block block : blocks) {
            if (block instanceof Question question) {
                renamed.add(question.named(renamed(question.id())));
            } else if (block instanceof Steps steps) {
                renamed.add(new Steps(
                        steps.heading(),
                        steps.steps().stream().map(PracticeProblem::renamed).toList()));
            } else {
                renamed.add(block);
            }
        }
        return renamed;
    }

    private static StepBlock renamed(StepBlock step) {
        return step.result().isPresent() ? step : step.named(renamed(step.blankId()));
    }

    /** {@code q0} and {@code q0a} to a, {@code q0b} to b, {@code q0s2} to step 2. */
    private static String renamed(String question) {
        String behind = question.substring("q0".length());
        return behind.isEmpty()
                ? "a"
                : behind.startsWith("s") && behind.length() > 1 ? "step " + behind.substring(1) : behind;
    }
}
