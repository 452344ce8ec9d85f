package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.figure.AssemblyFigure;
import ampersheet.figure.ChainFigure;
import ampersheet.figure.CircuitFigure;
import ampersheet.figure.Figure;
import ampersheet.figure.HeatFigure;
import ampersheet.formula.Condition;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Notation;
import ampersheet.formula.Step;
import ampersheet.formula.Symbol;
import ampersheet.formula.Values;
import ampersheet.model.AssemblyModel;
import ampersheet.model.ChainModel;
import ampersheet.model.CircuitModel;
import ampersheet.model.HeatModel;
import ampersheet.model.Model;
import ampersheet.model.PlannedMark;
import ampersheet.problem.BenchReading;
import ampersheet.problem.Caution;
import ampersheet.problem.Inventory;
import ampersheet.problem.Problem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Puts problems into documents: the learner's sheet and its key. */
public final class Composer {
    private static final String MIXED =
            "The topics are mixed on purpose: finding out which method fits is part of the practice.";

    private Composer() {}

    /** @param name printed in the heading; may be empty */
    public static Document sheet(Sheet sheet, String name) {
        return sheet(sheet, name, Figure.PAGE_WIDTH);
    }

    /** @param widest width of a drawing in pixels, beyond which its reader's page cannot show it at full size */
    public static Document sheet(Sheet sheet, String name, double widest) {
        List<Block> blocks = new ArrayList<>(atTheHead(sheet.plan().heading()));
        blocks.add(new Prose(HowToAnswer.on(sheet)
                + (sheet.plan().marking().isUsual()
                        ? ""
                        : " " + sheet.plan().marking().says(sheet))));
        if (sheet.plan().order() == Plan.Order.MIXED) {
            blocks.add(new Prose(MIXED));
        }
        LookUpTables.preferredValues(
                        sheet.problems().stream().map(SheetProblem::template).toList(),
                        sheet.plan().decimal())
                .ifPresent(blocks::add);
        Set<String> cautioned = new TreeSet<>();
        Optional<SheetProblem> withWires = sheet.problems().stream()
                .filter(problem -> LookUpTables.needsWireGauges(problem.template()))
                .findFirst();
        Optional<SheetProblem> before = Optional.empty();
        for (SheetProblem problem : sheet.problems()) {
            ProblemBlock block = block(problem, onSheet(problem, cautioned, wireGauges(problem, withWires), widest));
            blocks.add(
                    before.filter(example -> isExampleFor(example, problem)).isPresent()
                            ? block.behindExample()
                            : block);
            before = Optional.of(problem);
        }
        return document(Kind.SHEET, sheet, sheet.plan().title(), name, blocks);
    }

    /** What the instructor writes over a sheet. */
    private static List<Block> atTheHead(Plan.Heading heading) {
        return Stream.of(String.join(" · ", heading.facts()), heading.instructions())
                .filter(words -> !words.isEmpty())
                .<Block>map(words -> new Prose(Statement.escape(words)))
                .toList();
    }

    private static boolean isExampleFor(SheetProblem before, SheetProblem problem) {
        return before.support() instanceof Support.Full
                && before.template().title().equals(problem.template().title());
    }

    /** The table where it is needed first; where it is needed again, a pointer to it. */
    private static List<Block> wireGauges(SheetProblem problem, Optional<SheetProblem> first) {
        if (first.isEmpty() || !LookUpTables.needsWireGauges(problem.template())) {
            return List.of();
        }
        return List.of(
                first.get().equals(problem)
                        ? LookUpTables.wireGauges(problem.plan().decimal())
                        : new Prose("The table of copper wire stands in problem "
                                + first.get().number() + "."));
    }

    /** Answers, accepted bands, second routes, modelled mistakes and the worked solution of every problem. */
    public static Document key(Sheet sheet, String name) {
        return key(sheet, name, Figure.PAGE_WIDTH);
    }

    /** @param widest width of a drawing in pixels, beyond which its reader's page cannot show it at full size */
    public static Document key(Sheet sheet, String name, double widest) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(
                "For the instructor. Every answer was found twice: by the steps shown here, and by solving the "
                        + "circuit, the heat path or the data chain itself. Where both routes rest on one law, "
                        + "the problem says which. "
                        + "*Accepted* is what the check accepts."));
        sheet.problems().forEach(problem -> blocks.add(inKey(problem, sheet.parts(), widest)));
        return document(Kind.KEY, sheet, "Key: " + sheet.plan().title(), name, blocks);
    }

    /** One problem by itself, worked in full, with its key: statement, givens, figures, cautions, steps, answers. */
    public static ProblemBlock alone(Problem problem, DecimalMarker marker) {
        SheetProblem alone = SheetProblem.alone(problem, marker);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(Statement.render(problem.template(), alone.plan().language(), alone.printedGivens())));
        blocks.add(givens(alone));
        figures(alone).forEach(figure -> blocks.add(new FigureBlock(figure)));
        blocks.addAll(cautions(alone, new TreeSet<>()));
        blocks.add(new Prose(prompts(alone)));
        blocks.addAll(worked(alone, steps(alone), Figure.PAGE_WIDTH));
        assumptions(alone.template()).ifPresent(blocks::add);
        blocks.add(new KeyTable(keyLines(alone)));
        blocks.addAll(sharedLaws(alone));
        blocks.addAll(designRules(alone));
        return block(alone, blocks);
    }

    /** One problem as a sheet shows it, with every caution in full and the tables that it needs. */
    public static ProblemBlock onItsOwn(SheetProblem problem) {
        return block(
                problem,
                onSheet(
                        problem,
                        new TreeSet<>(),
                        LookUpTables.of(
                                List.of(problem.template()), problem.plan().decimal()),
                        Figure.PAGE_WIDTH));
    }

    /** The whole working of a problem. */
    public static Steps working(SheetProblem problem) {
        return new Steps("", steps(problem, List.of()));
    }

    /** A given or constant, value with unit, or a word. */
    public static String printed(SheetProblem problem, String given) {
        return problem.printedGivens().get(given);
    }

    /** A right answer as it is written. */
    public static String answer(SheetProblem problem, AnswerKey key) {
        return ProblemText.answer(key, problem.writer());
    }

    /** The line of the working that gives an answer, with the problem's numbers; empty for a choice. */
    public static Optional<StepBlock> workedLine(SheetProblem problem, AnswerKey key) {
        List<StepLine> lines = problem.template().lines();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).id().equals(key.step())) {
                return Optional.of(steps(problem, List.of()).get(i));
            }
        }
        return Optional.empty();
    }

    private static Document document(Kind kind, Sheet sheet, String title, String name, List<Block> blocks) {
        String seat = "Seat " + sheet.id().seat();
        return new Document(
                kind,
                sheet.plan().language(),
                title,
                name.isEmpty() ? seat : name + " · " + seat,
                sheet.id().toString(),
                sheet.plan().paper(),
                blocks);
    }

    /** @param tables to look values up in; they stand before the questions */
    private static List<Block> onSheet(SheetProblem problem, Set<String> cautioned, List<Block> tables, double widest) {
        ProblemTemplate template = problem.template();
        List<Block> blocks = new ArrayList<>();
        boolean worked = problem.support() instanceof Support.Full;
        blocks.add(new Prose(Statement.render(template, problem.plan().language(), problem.printedGivens())));
        if (!worked) {
            assumptions(template).map(Assumptions::inShort).ifPresent(blocks::add);
        }
        blocks.addAll(cautions(problem, cautioned));
        blocks.add(givens(problem));
        figures(problem, widest).forEach(figure -> blocks.add(new FigureBlock(figure)));
        blocks.addAll(tables);
        if (worked) {
            blocks.add(new Prose(prompts(problem)));
            blocks.addAll(worked(problem, steps(problem), widest));
            blocks.add(new Prose(answersInWords(problem)));
            assumptions(template).ifPresent(blocks::add);
        } else if (problem.support() instanceof Support.Faded) {
            blocks.add(new Prose(promptsWithoutNames(problem)));
            blocks.add(new Steps("Fill in the blank steps", steps(problem)));
            problem.places().stream()
                    .filter(key -> key.acceptance() instanceof Acceptance.Choice)
                    .forEach(key -> blocks.add(question(problem, key)));
        } else {
            problem.answers().forEach(key -> blocks.add(question(problem, key)));
        }
        return blocks;
    }

    private static ProblemBlock inKey(SheetProblem problem, Optional<Inventory> parts, double widest) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(givens(problem));
        blocks.add(new Prose(prompts(problem)));
        blocks.add(new KeyTable(keyLines(problem)));
        blocks.addAll(sharedLaws(problem));
        blocks.addAll(designRules(problem));
        parts.flatMap(inventory -> onTheBench(problem, inventory)).ifPresent(blocks::add);
        List<AnswerKey> blank = problem.blankSteps();
        if (!blank.isEmpty()) {
            blocks.add(new Prose("Blank steps on the sheet, accepted within " + UsualAcceptance.percent()
                    + " (temperatures within " + UsualAcceptance.kelvin() + "): "
                    + String.join(
                            "; ",
                            blank.stream()
                                    .map(key ->
                                            "**" + key.question() + "** " + ProblemText.answer(key, problem.writer()))
                                    .toList())
                    + "."));
        }
        blocks.addAll(worked(problem, steps(problem, List.of()), widest));
        List<Document.Assumption> granted = TemplateSayings.assumptionsWithShifts(problem);
        if (!granted.isEmpty()) {
            blocks.add(new Assumptions(granted));
        }
        CircuitListing.of(problem).ifPresent(blocks::add);
        return block(problem, blocks);
    }

    private static ProblemBlock block(SheetProblem problem, List<Block> blocks) {
        ProblemTemplate template = problem.template();
        List<String> tags = new ArrayList<>();
        if (problem.support() instanceof Support.Full) {
            tags.add("worked example");
        }
        tags.add(template.family().replace('-', ' '));
        tags.add("level " + template.level());
        return new ProblemBlock(Integer.toString(problem.number()), template.title(), tags, blocks);
    }

    /** In full; none for a template that takes nothing for granted. */
    static Optional<Assumptions> assumptions(ProblemTemplate template) {
        List<Document.Assumption> all = TemplateSayings.assumptions(template);
        return all.isEmpty() ? Optional.empty() : Optional.of(new Assumptions(all));
    }

    /** The laws on which both routes to an answer rest, so that a key does not claim more than was checked. */
    static List<Block> sharedLaws(SheetProblem problem) {
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
        answersBy.forEach((law, answers) -> laws.add(new Prose(
                (answers.size() == problem.answers().size() ? "" : String.join("", answers)) + "Both routes rest on "
                        + Statement.escape(law) + "; what is checked is the arithmetic and the method around it.")));
        return laws;
    }

    /** The whole box where the hazard first comes up; where it comes up again, its heading and what to do. */
    static List<Document.Caution> cautions(SheetProblem problem, Set<String> cautioned) {
        List<Document.Caution> boxes = new ArrayList<>();
        for (String id : problem.problem().cautions()) {
            Caution caution =
                    Caution.named(id).orElseThrow(() -> new IllegalStateException("a caution nobody wrote: " + id));
            boxes.add(new Document.Caution(caution.heading(), cautioned.add(id) ? caution.text() : caution.action()));
        }
        return boxes;
    }

    static Givens givens(SheetProblem problem) {
        ProblemTemplate template = problem.template();
        Map<String, String> printed = problem.printedGivens();
        List<GivenLine> lines = new ArrayList<>();
        for (Given given : template.givens()) {
            Optional<Symbol> symbol =
                    given instanceof QuantityGiven quantity ? Optional.of(quantity.symbol()) : Optional.empty();
            lines.add(new GivenLine(symbol, given.meaning(), printed.get(given.name()) + tolerance(problem, given)));
        }
        template.constants()
                .forEach(constant -> lines.add(new GivenLine(
                        Optional.of(constant.symbol()), constant.meaning(), printed.get(constant.name()))));
        return new Givens(lines);
    }

    /** {@code ± 5 %} where the given has a tolerance, else nothing. */
    private static String tolerance(SheetProblem problem, Given given) {
        if (!(given instanceof QuantityGiven quantity) || quantity.tolerance().isEmpty()) {
            return "";
        }
        Expression amount = quantity.tolerance().get().amount();
        String printed = amount instanceof Expression.Constant constant
                ? problem.writer()
                        .plain(constant.si(), constant.unit(), ProblemText.FIGURES)
                        .text()
                : problem.printedGivens().get(((Expression.Name) amount).id());
        return " ± " + printed;
    }

    static List<Figure> figures(SheetProblem numbered) {
        return figures(numbered, Figure.PAGE_WIDTH);
    }

    static List<Figure> figures(SheetProblem numbered, double widest) {
        Problem problem = numbered.problem();
        ProblemTemplate template = numbered.template();
        PartLabels labels = new PartLabels(numbered);
        String of = whose(numbered);
        String id = idOf(numbered);
        boolean worked = numbered.example() || numbered.support() instanceof Support.Full;
        Map<String, List<Integer>> inCircuit = worked ? StepParts.foundInCircuit(template) : Map.of();
        Map<String, List<Integer>> inHeatPath = worked ? StepParts.foundInHeatPath(template) : Map.of();
        List<Figure> figures = new ArrayList<>();
        for (Model model : problem.models()) {
            figures.add(
                    switch (model.plan().kind()) {
                        case CIRCUIT ->
                            CircuitFigure.draw(
                                    "Circuit" + of,
                                    ((CircuitModel) model).schematic(),
                                    labels.ofCircuit(),
                                    numbered.plan().symbols(),
                                    inCircuit,
                                    id + "c",
                                    widest);
                        case HEAT ->
                            HeatFigure.draw(
                                    "Heat path" + of,
                                    ((HeatModel) model).network(),
                                    labels.ofHeat(),
                                    numbered.plan().symbols(),
                                    inHeatPath,
                                    id + "h",
                                    widest);
                        case CHAIN ->
                            ChainFigure.draw(
                                    "Data path" + of,
                                    ((ChainModel) model).panel(),
                                    model.plan().marks().stream()
                                            .map(mark -> mark(mark, problem))
                                            .toList(),
                                    id + "d",
                                    widest);
                        case EDGE, BRANCHES, ROW ->
                            AssemblyFigure.draw(
                                    "Tiles" + of,
                                    ((AssemblyModel) model).assembly(),
                                    model.plan().marks().stream()
                                            .map(mark -> armMark(mark, problem))
                                            .toList(),
                                    id + "a",
                                    widest);
                    });
        }
        return figures;
    }

    /** Whose figure it is, for its title. */
    static String whose(SheetProblem problem) {
        return problem.number() > 0 ? " of problem " + problem.number() : problem.example() ? " of the example" : "";
    }

    /** What the ids in its figures begin with. */
    static String idOf(SheetProblem problem) {
        return problem.number() > 0 ? "p" + problem.number() : problem.example() ? "example" : "yours";
    }

    /** The whole working, and the curve it leads to. */
    private static List<Block> worked(SheetProblem problem, List<StepBlock> steps, double widest) {
        List<Block> blocks = new ArrayList<>(List.of(new Steps("", steps)));
        SolutionCurve.of(problem, widest).ifPresent(curve -> blocks.add(new FigureBlock(curve)));
        return blocks;
    }

    private static AssemblyFigure.Mark armMark(PlannedMark mark, Problem problem) {
        return new AssemblyFigure.Mark(whole(mark.x(), problem), whole(mark.y(), problem), mark.label());
    }

    private static ChainFigure.Mark mark(PlannedMark mark, Problem problem) {
        return new ChainFigure.Mark(whole(mark.x(), problem), whole(mark.y(), problem), mark.label());
    }

    private static int whole(Expression place, Problem problem) {
        return (int) Evaluation.evaluate(place, problem.values()).value();
    }

    private static String prompts(SheetProblem problem) {
        return String.join(
                "\n",
                problem.answers().stream()
                        .map(key -> "- **" + key.question() + "** " + problem.prompt(key))
                        .toList());
    }

    /** What is sought; the places for answers stand at the steps. */
    private static String promptsWithoutNames(SheetProblem problem) {
        return String.join(
                "\n",
                problem.answers().stream()
                        .filter(key -> !(key.acceptance() instanceof Acceptance.Choice))
                        .map(key -> "- " + problem.prompt(key))
                        .toList());
    }

    private static String answersInWords(SheetProblem problem) {
        QuantityWriter writer = problem.writer();
        List<String> answers = problem.answers().stream()
                .map(key -> "**" + key.question() + "** " + Statement.escape(ProblemText.answer(key, writer)))
                .toList();
        String others = problem.template().designs().isEmpty()
                ? ""
                : " Other values that meet the same limits are right as well.";
        return (answers.size() == 1 ? "Answer: " : "Answers: ") + String.join("; ", answers) + "." + others;
    }

    private static String afterDesign(SheetProblem problem, AnswerKey key) {
        return problem.template().followsDesign(key.step()) ? "; after another design what follows from it" : "";
    }

    /** What the workshop's meters read at what can be measured, if every part and the meter keep their tolerances. */
    private static Optional<Block> onTheBench(SheetProblem problem, Inventory inventory) {
        List<String> readings = new ArrayList<>();
        for (BenchReading reading : BenchReading.of(problem.problem(), inventory)) {
            AnswerKey key = problem.answers().stream()
                    .filter(answer -> answer.step().equals(reading.of()))
                    .findFirst()
                    .orElseThrow();
            readings.add("**" + key.question() + "** "
                    + Statement.escape(ProblemText.precise(key, reading.nominal(), problem.writer()))
                    + ", a meter shows " + Statement.escape(ProblemText.precise(key, reading.low(), problem.writer()))
                    + " to "
                    + Statement.escape(ProblemText.precise(key, reading.high(), problem.writer())));
        }
        return readings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Prose("On the bench, with parts and meter within their " + "tolerances: "
                        + String.join("; ", readings) + "."));
    }

    private static List<Block> designRules(SheetProblem problem) {
        List<Block> rules = new ArrayList<>();
        List<DesignKey> designs = problem.key().designs();
        for (int i = 0; i < designs.size(); i++) {
            DesignKey design = designs.get(i);
            List<String> questions = problem.answers().stream()
                    .filter(key -> design.steps().contains(key.step()))
                    .map(key -> "**" + key.question() + "**")
                    .toList();
            rules.add(new Prose(
                    ProblemText.designRule(design, problem.problem().designs().get(i), questions)));
        }
        return rules;
    }

    static Question question(SheetProblem problem, AnswerKey key) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return new Question(
                    key.question(),
                    problem.prompt(key),
                    Optional.empty(),
                    "",
                    choice.options().stream().map(Acceptance.Option::text).toList());
        }
        return new Question(
                key.question(),
                problem.prompt(key),
                Optional.of(problem.template().line(key.step()).symbol()),
                unitBox(key),
                key.unitPrinted() ? key.unit().symbol() : "",
                List.of(),
                "");
    }

    private static UnitBox unitBox(AnswerKey key) {
        return key.unitPrinted() ? UnitBox.NONE : HowToAnswer.kind(key).unitBox();
    }

    static List<StepBlock> steps(SheetProblem problem) {
        return steps(problem, Fading.blankSteps(problem.template(), problem.support()));
    }

    /** A blank step's value appears nowhere: where a later step uses it, its symbol stands instead of the number. */
    private static List<StepBlock> steps(SheetProblem problem, List<String> blank) {
        ProblemTemplate template = problem.template();
        Values values = problem.problem().values();
        Map<String, Quantity> known = new LinkedHashMap<>(values.quantities());
        blank.forEach(known::remove);
        Notation notation = ProblemText.of(problem, Values.of(known, values.words()));
        List<AnswerKey> places = new ArrayList<>(problem.answers());
        places.addAll(problem.blankSteps());
        List<StepBlock> steps = new ArrayList<>();
        for (int i = 0; i < template.lines().size(); i++) {
            StepLine line = template.lines().get(i);
            Step step = template.working().steps().get(i);
            if (blank.contains(line.id())) {
                AnswerKey place = places.stream()
                        .filter(key -> key.step().equals(line.id()))
                        .findFirst()
                        .orElseThrow();
                String unit = place.unitPrinted() && !place.unit().symbol().isEmpty()
                        ? ", in " + place.unit().symbol()
                        : "";
                steps.add(new StepBlock(
                        i + 1,
                        line.symbol(),
                        line.meaning() + unit,
                        Optional.empty(),
                        Optional.empty(),
                        notation,
                        Optional.empty(),
                        "",
                        "",
                        place.question(),
                        unitBox(place),
                        ""));
            } else {
                int applying = step.applying(values);
                Step.Case used = step.cases().get(applying);
                Optional<Condition> condition = step.cases().size() > 1 ? used.when() : Optional.empty();
                steps.add(new StepBlock(
                        i + 1,
                        line.symbol(),
                        line.meaning(),
                        condition,
                        Optional.of(used.is()),
                        notation,
                        Optional.of(problem.writer()
                                .working(values.quantity(line.id()).value(), line.unit(), ProblemText.FIGURES)),
                        line.principle(),
                        line.reasons().get(applying),
                        ""));
            }
        }
        return steps;
    }

    private static List<KeyLine> keyLines(SheetProblem problem) {
        QuantityWriter writer = problem.writer();
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
                    ProblemText.accepted(key, writer) + afterDesign(problem, key),
                    ProblemText.secondRoute(key, problem.problem().answers().get(i), writer),
                    problem.problem().answers().get(i).agrees(),
                    mistakes(key, writer)));
        }
        return lines;
    }

    private static List<MistakeLine> mistakes(AnswerKey key, QuantityWriter writer) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            List<MistakeLine> wrong = new ArrayList<>();
            for (int i = 0; i < choice.options().size(); i++) {
                if (i != (int) key.expected()) {
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
}
