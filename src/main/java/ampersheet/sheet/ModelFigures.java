package ampersheet.sheet;

import ampersheet.figure.AssemblyFigure;
import ampersheet.figure.ChainFigure;
import ampersheet.figure.CircuitFigure;
import ampersheet.figure.Figure;
import ampersheet.figure.HeatFigure;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.language.Language;
import ampersheet.model.AssemblyModel;
import ampersheet.model.ChainModel;
import ampersheet.model.CircuitModel;
import ampersheet.model.HeatModel;
import ampersheet.model.Model;
import ampersheet.model.PlannedMark;
import ampersheet.problem.Problem;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The drawings of a problem's models, one of each, with titles and ids that are unique on a sheet. */
final class ModelFigures {
    private ModelFigures() {}

    static List<Figure> of(SheetProblem numbered) {
        return of(numbered, Figure.PAGE_WIDTH);
    }

    static List<Figure> of(SheetProblem numbered, double widest) {
        Problem problem = numbered.problem();
        ProblemTemplate template = numbered.template();
        PartLabels labels = new PartLabels(numbered);
        Language language = numbered.plan().language();
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
                                    title(language.say("sheet.figure.circuit"), numbered),
                                    ((CircuitModel) model).schematic(),
                                    labels.ofCircuit(),
                                    numbered.plan().symbols(),
                                    inCircuit,
                                    new Figure.Setting(id + "c", widest, language));
                        case HEAT ->
                            HeatFigure.draw(
                                    title(language.say("sheet.figure.heat-path"), numbered),
                                    ((HeatModel) model).network(),
                                    labels.ofHeat(),
                                    numbered.plan().symbols(),
                                    inHeatPath,
                                    new Figure.Setting(id + "h", widest, language));
                        case CHAIN ->
                            ChainFigure.draw(
                                    title(language.say("sheet.figure.data-path"), numbered),
                                    ((ChainModel) model).panel(),
                                    model.plan().marks().stream()
                                            .map(mark -> mark(mark, problem))
                                            .toList(),
                                    new Figure.Setting(id + "d", widest, language));
                        case EDGE, BRANCHES, ROW, NET ->
                            AssemblyFigure.draw(
                                    title(language.say("sheet.figure.tiles"), numbered),
                                    ((AssemblyModel) model).drawn(),
                                    model.plan().marks().stream()
                                            .map(mark -> armMark(mark, problem))
                                            .toList(),
                                    new Figure.Setting(id + "a", widest, language));
                    });
        }
        return figures;
    }

    /** With whose figure it is, as far as it needs to be told. */
    static String title(String figure, SheetProblem problem) {
        Language language = problem.plan().language();
        if (problem.number() > 0) {
            return language.say(
                    "sheet.figure.of-problem", "figure", figure, "number", Integer.toString(problem.number()));
        }
        return problem.example() ? language.say("sheet.figure.of-example", "figure", figure) : figure;
    }

    /** What the ids in its figures begin with. */
    static String idOf(SheetProblem problem) {
        return problem.number() > 0 ? "p" + problem.number() : problem.example() ? "example" : "yours";
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
}
