package ampersheet.sheet;

import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.List;

/** Two templates that change only with the tests, so that messages and shares can be compared exactly. */
public final class SmallLibrary {
    public static final Path FOLDER = Path.of("src/test/resources/small-library");
    public static final String INDICATOR = "current-limiting/indicator";
    public static final String DIVIDER = "voltage-dividers/plain-divider";

    private SmallLibrary() {}

    public static TemplateLibrary open() {
        return new TemplateLibrary(List.of(TemplateFiles.in(FOLDER)));
    }

    static SheetMaker maker(String plan) {
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), open()));
    }
}
