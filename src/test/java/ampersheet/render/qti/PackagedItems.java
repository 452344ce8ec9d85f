package ampersheet.render.qti;

import ampersheet.answer.RightDesigns;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Items for tests, made as the program makes them. */
final class PackagedItems {
    static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final Plan PLAN = PlanReader.read(
            "plan.yaml",
            "title: Lanterns\nunits: printed\nproblems:\n  - {template: current-limiting/one-indicator}\n");

    private PackagedItems() {}

    /** Bare variants of a template, from this one on. */
    static List<ExchangeItem> bare(String template, int from, int variants) {
        return of(template, new Support.Bare(), from, variants);
    }

    /** With blank steps among the working; none of a template with a single step. */
    static List<ExchangeItem> faded(String template, int from, int variants) {
        boolean single = LIBRARY.template(template).lines().size() == 1;
        return single ? List.of() : of(template, new Support.Faded(new Support.Fade.Backward(1)), from, variants);
    }

    private static List<ExchangeItem> of(String name, Support support, int from, int variants) {
        ProblemTemplate template = LIBRARY.template(name);
        Draws draws = new Draws(new Workshop(template), "exchange test");
        List<ExchangeItem> items = new ArrayList<>();
        for (int variant = from; variant < from + variants; variant++) {
            SheetProblem problem = new SheetProblem(0, support, false, PLAN, draws.draw(variant));
            String identifier = name.replace('/', '-') + (support instanceof Support.Bare ? "-" : "-faded-") + variant;
            if (!problem.places().isEmpty()) {
                items.add(item(identifier, problem, Optional.empty()));
            }
        }
        return items;
    }

    static ExchangeItem item(String identifier, SheetProblem problem, Optional<ProblemBlock> example) {
        ProblemTemplate template = problem.template();
        return new ExchangeItem(
                identifier,
                new ExchangeItem.About(Languages.ENGLISH, template.skill(), template.level(), template.teaches()),
                new ExchangeItem.Shown(
                        Composer.onItsOwn(problem), example, Composer.working(problem), DecimalMarker.POINT),
                new ExchangeItem.Asked(
                        problem.places(),
                        problem.key(),
                        Collections.nCopies(problem.places().size(), 100),
                        50,
                        problem.key().designs().stream()
                                .map(design -> RightDesigns.of(problem.key(), design, 20_000, 100)
                                        .orElseThrow())
                                .toList()));
    }
}
