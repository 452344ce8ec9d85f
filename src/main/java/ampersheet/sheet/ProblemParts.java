package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.figure.Figure;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A problem in the parts of which a page that checks step by step is put together.
 *
 * @param setting what is told: statement, cautions, givens, figures
 * @param places places for answers among the steps that its support shows, or with their questions where it shows none
 * @param worked every step with its result
 * @param signs what signs in them mean that not every first course has
 * @param curve of the worked solution
 * @param circuit as a netlist that tells nothing a step finds
 * @param assumptions what the problem takes for granted, and what happens really
 */
public record ProblemParts(
        List<Block> setting,
        List<Block> places,
        List<StepBlock> worked,
        Optional<Block> signs,
        Optional<FigureBlock> curve,
        Optional<Listing> circuit,
        Optional<Assumptions> assumptions) {
    public ProblemParts {
        setting = List.copyOf(setting);
        places = List.copyOf(places);
        worked = List.copyOf(worked);
    }

    public static ProblemParts of(SheetProblem problem) {
        SheetProblem full = new SheetProblem(
                problem.number(), new Support.Full(), problem.example(), problem.plan(), problem.problem());
        List<StepBlock> worked = WorkedSteps.onSheet(full);
        return new ProblemParts(
                setting(problem),
                places(problem),
                worked,
                FormulaSign.explained(
                        worked,
                        EnumSet.noneOf(FormulaSign.class),
                        problem.plan().language()),
                SolutionCurve.of(problem, Figure.PAGE_WIDTH).map(FigureBlock::new),
                CircuitListing.open(problem),
                Composer.assumptions(problem.template()));
    }

    private static List<Block> setting(SheetProblem problem) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(Statement.render(problem.template(), problem.plan().language(), problem.printedGivens())));
        if (!problem.example()) {
            Composer.assumptions(problem.template()).map(Assumptions::inShort).ifPresent(blocks::add);
        }
        blocks.addAll(Composer.cautions(problem, new TreeSet<>()));
        blocks.add(Composer.givens(problem));
        ModelFigures.of(problem).forEach(figure -> blocks.add(new FigureBlock(figure)));
        return blocks;
    }

    private static List<Block> places(SheetProblem problem) {
        List<Block> blocks = new ArrayList<>();
        if (problem.support() instanceof Support.Faded) {
            blocks.add(new Steps(problem.plan().language().say("sheet.problem.fill-in"), WorkedSteps.onSheet(problem)));
            problem.places().stream()
                    .filter(key -> key.acceptance() instanceof Acceptance.Choice)
                    .forEach(key -> blocks.add(Composer.question(problem, key)));
        } else if (problem.support() instanceof Support.Bare) {
            problem.answers().forEach(key -> blocks.add(Composer.question(problem, key)));
        }
        return blocks;
    }
}
