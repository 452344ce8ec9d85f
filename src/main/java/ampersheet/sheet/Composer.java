package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.figure.Figure;
import ampersheet.formula.Expression;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.problem.Caution;
import ampersheet.problem.Difficulty;
import ampersheet.problem.Inventory;
import ampersheet.problem.Problem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Puts problems into documents: the learner's sheet and its key. */
public final class Composer {
    private Composer() {}

    /** What a document has said further up, and does not say again in full. */
    private record Told(Set<String> cautions, Set<FormulaSign> signs) {
        Told() {
            this(new TreeSet<>(), EnumSet.noneOf(FormulaSign.class));
        }
    }

    /** @param name printed in the heading; may be empty */
    public static Document sheet(Sheet sheet, String name) {
        return sheet(sheet, name, Figure.PAGE_WIDTH);
    }

    private static long topics(Sheet sheet) {
        return sheet.problems().stream()
                .map(problem -> problem.template().family())
                .distinct()
                .count();
    }

    /** @param widest width of a drawing in pixels, beyond which its reader's page cannot show it at full size */
    public static Document sheet(Sheet sheet, String name, double widest) {
        List<Block> blocks = new ArrayList<>(atTheHead(sheet.plan()));
        blocks.add(new Prose(HowToAnswer.on(sheet)
                + (sheet.plan().marking().isUsual()
                        ? ""
                        : " " + sheet.plan().marking().says(sheet))));
        if (sheet.plan().order() == Plan.Order.MIXED && topics(sheet) > 1) {
            blocks.add(new Prose(sheet.plan().language().say("sheet.head.mixed")));
        }
        LookUpTables.preferredValues(
                        sheet.problems().stream().map(SheetProblem::template).toList(),
                        sheet.plan().decimal())
                .ifPresent(blocks::add);
        Told told = new Told();
        Optional<SheetProblem> withWires = sheet.problems().stream()
                .filter(problem -> LookUpTables.needsWireGauges(problem.template()))
                .findFirst();
        Optional<SheetProblem> before = Optional.empty();
        for (SheetProblem problem : sheet.problems()) {
            ProblemBlock block = block(problem, onSheet(problem, told, wireGauges(problem, withWires), widest));
            blocks.add(
                    before.filter(example -> isExampleFor(example, problem)).isPresent()
                            ? block.behindExample()
                            : block);
            before = Optional.of(problem);
        }
        return document(Kind.SHEET, sheet, sheet.plan().title(), name, blocks);
    }

    /** What the instructor writes over a sheet; a sheet begins with it. */
    public static List<Block> atTheHead(Plan plan) {
        Plan.Heading heading = plan.heading();
        return Stream.<Block>concat(
                        heading.logo().stream()
                                .map(logo -> new Document.LogoBlock(
                                        logo.address(), heading.school(), logo.width(), logo.height())),
                        Stream.of(String.join(" · ", heading.facts(plan.language())), heading.instructions())
                                .filter(words -> !words.isEmpty())
                                .map(words -> new Prose(Statement.escape(words))))
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
                        ? LookUpTables.wireGauges(
                                problem.plan().decimal(), problem.plan().language())
                        : new Prose(problem.plan()
                                .language()
                                .say(
                                        "sheet.problem.table-before",
                                        "number",
                                        Integer.toString(first.get().number()))));
    }

    /** Answers, accepted bands, second routes, modelled mistakes and the worked solution of every problem. */
    public static Document key(Sheet sheet, String name) {
        return key(sheet, name, Figure.PAGE_WIDTH);
    }

    /** @param widest width of a drawing in pixels, beyond which its reader's page cannot show it at full size */
    public static Document key(Sheet sheet, String name, double widest) {
        Language language = sheet.plan().language();
        List<Block> blocks = new ArrayList<>();
        boolean solved = sheet.problems().stream().anyMatch(problem -> !(problem.support() instanceof Support.Full));
        blocks.add(new Prose(
                language.say("sheet.key.about") + (solved ? " " + language.say("sheet.key.about-fingerprints") : "")));
        Told told = new Told();
        sheet.problems().forEach(problem -> blocks.add(inKey(problem, sheet.parts(), told, widest)));
        String title = language.say("sheet.key.title", "title", sheet.plan().title());
        return document(Kind.KEY, sheet, title, name, blocks);
    }

    /** One problem by itself, worked in full, with its key: statement, givens, figures, cautions, steps, answers. */
    public static ProblemBlock alone(Problem problem, DecimalMarker marker) {
        SheetProblem alone = SheetProblem.alone(problem, marker);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(Statement.render(problem.template(), alone.plan().language(), alone.printedGivens())));
        blocks.add(givens(alone));
        ModelFigures.of(alone).forEach(figure -> blocks.add(new FigureBlock(figure)));
        blocks.addAll(cautions(alone, new TreeSet<>()));
        blocks.add(new Prose(prompts(alone)));
        blocks.addAll(worked(alone, WorkedSteps.onSheet(alone), EnumSet.allOf(FormulaSign.class), Figure.PAGE_WIDTH));
        assumptions(alone.template()).ifPresent(blocks::add);
        blocks.add(new KeyTable(KeyLines.of(alone)));
        blocks.addAll(KeyLines.sharedLaws(alone));
        blocks.addAll(KeyLines.designRules(alone));
        return block(alone, blocks);
    }

    /** One problem as a sheet shows it, with every caution in full and the tables that it needs. */
    public static ProblemBlock onItsOwn(SheetProblem problem) {
        return block(
                problem,
                onSheet(
                        problem,
                        new Told(),
                        LookUpTables.of(
                                List.of(problem.template()),
                                problem.plan().decimal(),
                                problem.plan().language()),
                        Figure.PAGE_WIDTH));
    }

    /** The whole working of a problem. */
    public static Steps working(SheetProblem problem) {
        return new Steps("", WorkedSteps.whole(problem));
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
        return workedLine(problem, key.step());
    }

    /** The line of a step; empty for what is no step. */
    public static Optional<StepBlock> workedLine(SheetProblem problem, String step) {
        return WorkedSteps.lineOf(problem, step);
    }

    private static Document document(Kind kind, Sheet sheet, String title, String name, List<Block> blocks) {
        Language language = sheet.plan().language();
        return new Document(
                kind,
                language,
                title,
                learner(name, sheet.id().seat(), language),
                sheet.id().toString(),
                sheet.plan().paper(),
                blocks);
    }

    /** Under a title. */
    static String learner(String name, int seat, Language language) {
        String number = Integer.toString(seat);
        return name.isEmpty()
                ? language.say("sheet.head.seat", "seat", number)
                : language.say("sheet.head.named-seat", "name", name, "seat", number);
    }

    /** @param tables to look values up in; they stand before the questions */
    private static List<Block> onSheet(SheetProblem problem, Told told, List<Block> tables, double widest) {
        ProblemTemplate template = problem.template();
        List<Block> blocks = new ArrayList<>();
        boolean worked = problem.support() instanceof Support.Full;
        blocks.add(new Prose(Statement.render(template, problem.plan().language(), problem.printedGivens())));
        if (!worked) {
            assumptions(template).map(Assumptions::inShort).ifPresent(blocks::add);
        }
        blocks.addAll(cautions(problem, told.cautions()));
        blocks.add(givens(problem));
        ModelFigures.of(problem, widest).forEach(figure -> blocks.add(new FigureBlock(figure)));
        blocks.addAll(tables);
        if (worked) {
            blocks.add(new Prose(prompts(problem)));
            blocks.addAll(worked(problem, WorkedSteps.onSheet(problem), told.signs(), widest));
            blocks.add(new Prose(answersInWords(problem)));
            assumptions(template).ifPresent(blocks::add);
        } else if (problem.support() instanceof Support.Faded) {
            blocks.add(new Prose(promptsWithoutNames(problem)));
            List<StepBlock> lines = WorkedSteps.onSheet(problem);
            blocks.add(new Steps(problem.plan().language().say("sheet.problem.fill-in"), lines));
            FormulaSign.explained(lines, told.signs(), problem.plan().language())
                    .ifPresent(blocks::add);
            problem.places().stream()
                    .filter(key -> key.acceptance() instanceof Acceptance.Choice)
                    .forEach(key -> blocks.add(question(problem, key)));
        } else {
            problem.answers().forEach(key -> blocks.add(question(problem, key)));
        }
        return blocks;
    }

    private static ProblemBlock inKey(SheetProblem problem, Optional<Inventory> parts, Told told, double widest) {
        List<Block> blocks = new ArrayList<>();
        if (problem.support() instanceof Support.Full) {
            blocks.add(new Prose(problem.plan().language().say("sheet.key.worked-on-sheet")));
        } else {
            blocks.add(new Prose(FingerprintText.whole(
                    Difficulty.of(problem.problem()), problem.plan().language())));
        }
        blocks.add(givens(problem));
        blocks.add(new Prose(prompts(problem)));
        blocks.add(new KeyTable(KeyLines.of(problem)));
        blocks.addAll(KeyLines.sharedLaws(problem));
        blocks.addAll(KeyLines.designRules(problem));
        parts.flatMap(inventory -> KeyLines.onTheBench(problem, inventory)).ifPresent(blocks::add);
        List<AnswerKey> blank = problem.blankSteps();
        if (!blank.isEmpty()) {
            List<String> answers = blank.stream()
                    .map(key -> "**" + key.question() + "** " + ProblemText.answer(key, problem.writer()))
                    .toList();
            blocks.add(new Prose(problem.plan()
                    .language()
                    .say(
                            "sheet.key.blank-steps",
                            "percent",
                            UsualAcceptance.percent(),
                            "kelvin",
                            UsualAcceptance.kelvin(),
                            "answers",
                            String.join("; ", answers))));
        }
        blocks.addAll(worked(problem, WorkedSteps.whole(problem), told.signs(), widest));
        List<Document.Assumption> granted = TemplateSayings.assumptionsWithShifts(problem);
        if (!granted.isEmpty()) {
            blocks.add(new Assumptions(granted));
        }
        CircuitListing.of(problem).ifPresent(blocks::add);
        return block(problem, blocks);
    }

    private static ProblemBlock block(SheetProblem problem, List<Block> blocks) {
        ProblemTemplate template = problem.template();
        Language language = problem.plan().language();
        List<String> tags = new ArrayList<>();
        if (problem.support() instanceof Support.Full) {
            tags.add(language.say("sheet.problem.worked-example"));
        }
        tags.add(language.name(template.family().replace('-', ' ')));
        tags.add(language.say("sheet.problem.level", "level", Integer.toString(template.level())));
        return new ProblemBlock(Integer.toString(problem.number()), template.title(), tags, blocks);
    }

    /** In full; none for a template that takes nothing for granted. */
    static Optional<Assumptions> assumptions(ProblemTemplate template) {
        List<Document.Assumption> all = TemplateSayings.assumptions(template);
        return all.isEmpty() ? Optional.empty() : Optional.of(new Assumptions(all));
    }

    /** The whole box where the hazard first comes up; where it comes up again, its heading and what to do. */
    static List<Document.Caution> cautions(SheetProblem problem, Set<String> cautioned) {
        List<Document.Caution> boxes = new ArrayList<>();
        for (String id : problem.problem().cautions()) {
            Caution caution =
                    Caution.named(id).orElseThrow(() -> new IllegalStateException("a caution nobody wrote: " + id));
            boxes.add(new Document.Caution(
                    caution.heading(problem.plan().language()),
                    cautioned.add(id)
                            ? caution.text(problem.plan().language())
                            : caution.action(problem.plan().language())));
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

    /** The whole working, what its signs mean where they are new, and the curve it leads to. */
    private static List<Block> worked(
            SheetProblem problem, List<StepBlock> steps, Set<FormulaSign> met, double widest) {
        List<Block> blocks = new ArrayList<>(List.of(new Steps("", steps)));
        FormulaSign.explained(steps, met, problem.plan().language()).ifPresent(blocks::add);
        SolutionCurve.of(problem, widest).ifPresent(curve -> blocks.add(new FigureBlock(curve)));
        return blocks;
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
        Language language = problem.plan().language();
        String others = problem.template().designs().isEmpty() ? "" : " " + language.say("sheet.problem.other-designs");
        return language.count("sheet.problem.answers", answers.size(), "answers", String.join("; ", answers)) + others;
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
                HowToAnswer.unitBox(key),
                key.unitPrinted() ? key.unit().symbol() : "",
                List.of(),
                "");
    }
}
