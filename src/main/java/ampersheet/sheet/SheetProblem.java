package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.figure.SymbolStyle;
import ampersheet.language.Language;
import ampersheet.problem.AnswerKeys;
import ampersheet.problem.Problem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A problem where it stands on a sheet: with a number, names for its questions, and as much of its working as is shown.
 *
 * @param number from 1; 0 where a page shows one problem at a time, and beside it perhaps an example
 * @param example whether it is worked in full as the twin of the problem that follows
 * @param plan for units and decimal marker
 */
public record SheetProblem(int number, Support support, boolean example, Plan plan, Problem problem) {
    /** Of the way to where two tolerances meet. */
    private static final double SHORT_OF = 0.99;

    /** On no sheet, worked in full. */
    public static SheetProblem alone(Problem problem, DecimalMarker marker) {
        Plan plan = new Plan(
                "",
                "",
                problem.template().title(),
                new Plan.Seeding.Named(""),
                Document.Paper.A4,
                problem.template().language(),
                SymbolStyle.IEC,
                marker,
                false,
                Plan.Lettered.ALL,
                Plan.Order.AS_LISTED,
                Plan.Dealing.USUAL,
                List.of(),
                List.of(),
                MarkingPolicy.USUAL,
                Plan.Delivery.USUAL,
                false,
                Plan.Heading.NONE,
                Portion.WHOLE,
                Optional.empty());
        return new SheetProblem(1, new Support.Full(), true, plan, problem);
    }

    public ProblemTemplate template() {
        return problem.template();
    }

    QuantityWriter writer() {
        return new QuantityWriter(plan.decimal());
    }

    /** What every question of the template expects, whether the sheet leaves it open or shows it. */
    public List<AnswerKey> answers() {
        List<AnswerKey> keys =
                AnswerKeys.keyOf(problem, "q" + number, plan.unitsPrinted()).answers();
        return plan.marking().tolerances().isEmpty()
                ? keys
                : keys.stream().map(this::tolerated).toList();
    }

    /** The blank steps that no question asks for, named {@code q3s2}: problem 3, step 2. */
    public List<AnswerKey> blankSteps() {
        List<AnswerKey> keys = new ArrayList<>();
        if (!(support instanceof Support.Faded)) {
            return keys;
        }
        List<StepLine> lines = template().lines();
        List<String> blank = Fading.blankSteps(template(), support);
        for (int i = 0; i < lines.size(); i++) {
            StepLine line = lines.get(i);
            if (blank.contains(line.id()) && askOf(line.id()).isEmpty()) {
                keys.add(blankStep(line, "q" + number + "s" + (i + 1)));
            }
        }
        return keys;
    }

    private AnswerKey blankStep(StepLine line, String question) {
        return tolerated(new AnswerKey(
                question,
                line.id(),
                problem.values().quantity(line.id()).value(),
                line.unit(),
                UsualAcceptance.FIGURES,
                plan.unitsPrinted(),
                line.acceptance(),
                problem.mistakes().getOrDefault(line.id(), List.of())));
    }

    /** Whether the answers to a step are judged by a share of the key, so that a plan may say another. */
    static boolean hasTolerance(ProblemTemplate template, String step) {
        Acceptance acceptance = template.asks().stream()
                .filter(ask ->
                        ask instanceof ProblemTemplate.QuantityAsk && ask.of().equals(step))
                .map(ask -> ((ProblemTemplate.QuantityAsk) ask).acceptance())
                .findFirst()
                .orElseGet(() -> template.lines().stream()
                        .filter(line -> line.id().equals(step))
                        .map(StepLine::acceptance)
                        .findFirst()
                        .orElse(new Acceptance.Count()));
        return acceptance instanceof Acceptance.Within within && within.relative() > 0;
    }

    /**
     * With the tolerance that the plan says. It never reaches as far as a known mistake: what that gives stays wrong,
     * whatever the numbers.
     */
    private AnswerKey tolerated(AnswerKey key) {
        Optional<Double> wished = plan.marking().tolerance(template().name(), key.step());
        if (wished.isEmpty() || !(key.acceptance() instanceof Acceptance.Within usual) || usual.relative() == 0) {
            return key;
        }
        double relative = wished.get();
        for (KnownMistake mistake : key.mistakes()) {
            double apart =
                    Math.abs(mistake.value() - key.expected()) / (Math.abs(mistake.value()) + Math.abs(key.expected()));
            relative = Math.min(relative, Math.max(usual.relative(), SHORT_OF * apart));
        }
        return new AnswerKey(
                key.question(),
                key.step(),
                key.expected(),
                key.unit(),
                key.figures(),
                key.unitPrinted(),
                new Acceptance.Within(relative, usual.floor()),
                key.mistakes());
    }

    /**
     * What is expected of a step or choice under the name that a sheet printed for it, whether asked or left blank
     * there.
     */
    public Optional<AnswerKey> keyOf(String step, String question) {
        Optional<AnswerKey> asked =
                answers().stream().filter(key -> key.step().equals(step)).findFirst();
        if (asked.isPresent()) {
            return Optional.of(asked.get().named(question));
        }
        return template().lines().stream()
                .filter(line -> line.id().equals(step))
                .findFirst()
                .map(line -> blankStep(line, question));
    }

    /** What a learner writes who makes a mistake. */
    public String mistaken(AnswerKey key, KnownMistake mistake) {
        return ProblemText.mistaken(key, mistake, writer());
    }

    /** Every place for an answer, in the order shown; none in a worked example. */
    public List<AnswerKey> places() {
        if (support instanceof Support.Full) {
            return List.of();
        }
        List<AnswerKey> answers = answers();
        if (support instanceof Support.Bare) {
            return answers;
        }
        List<AnswerKey> places = new ArrayList<>();
        List<AnswerKey> blank = blankSteps();
        for (String step : Fading.blankSteps(template(), support)) {
            places.add(answers.stream()
                    .filter(key -> key.step().equals(step))
                    .findFirst()
                    .orElseGet(() -> blank.stream()
                            .filter(key -> key.step().equals(step))
                            .findFirst()
                            .orElseThrow()));
        }
        answers.stream()
                .filter(key -> key.acceptance() instanceof Acceptance.Choice)
                .forEach(places::add);
        return places;
    }

    /** For the judge: all answers and blank steps, in the order in which they are worked. */
    public ProblemKey key() {
        List<AnswerKey> all = new ArrayList<>(answers());
        all.addAll(blankSteps());
        Map<String, Integer> order = new LinkedHashMap<>();
        template().lines().forEach(line -> order.put(line.id(), order.size()));
        all.sort((one, other) -> Integer.compare(
                order.getOrDefault(one.step(), order.size()), order.getOrDefault(other.step(), order.size())));
        return new ProblemKey(
                all,
                problem.givens(),
                template().working(),
                AnswerKeys.designs(problem),
                meanings(),
                plan.language(),
                plan.decimal());
    }

    /** What a sentence calls each given, constant and step. */
    private Map<String, String> meanings() {
        Map<String, String> meanings = new LinkedHashMap<>();
        template().givens().forEach(given -> meanings.put(given.name(), given.meaning()));
        template().constants().forEach(constant -> meanings.put(constant.name(), constant.meaning()));
        template().lines().forEach(line -> meanings.put(line.id(), line.meaning()));
        return meanings;
    }

    /** The sentence that asks for an answer, in Markdown. */
    public String prompt(AnswerKey key) {
        Language language = plan.language();
        Optional<Ask> ask = askOf(key.step());
        if (ask.isEmpty()) {
            return language.say(
                    "sheet.problem.find", "what", template().line(key.step()).meaning());
        }
        String prompt = Statement.prompt(template(), ask.get(), printedGivens());
        boolean unusualFigures = key.acceptance() instanceof Acceptance.Within && key.figures() != 3;
        return unusualFigures ? prompt + " " + language.count("sheet.problem.figures", key.figures()) : prompt;
    }

    /** Value with unit of each given and constant, word of each word given. */
    Map<String, String> printedGivens() {
        Map<String, String> printed =
                new LinkedHashMap<>(template().said(problem.givens().words()));
        ProblemText.of(this, problem.givens()).values().forEach((name, value) -> printed.put(name, value.text()));
        return printed;
    }

    private Optional<Ask> askOf(String step) {
        return template().asks().stream().filter(ask -> ask.of().equals(step)).findFirst();
    }
}
