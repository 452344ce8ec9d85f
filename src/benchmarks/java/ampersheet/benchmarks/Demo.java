package ampersheet.benchmarks;

import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The plan that the README prints. */
public final class Demo {
    static final Path PLAN = Path.of("problem-templates", "demo", "plan.yaml");

    private Demo() {}

    public static SheetMaker maker(int seats) {
        try {
            SheetMaker maker = new SheetMaker(ProblemSet.of(
                    PlanReader.read(PLAN.toString(), Files.readString(PLAN)),
                    new TemplateLibrary(List.of(TemplateFiles.builtIn()))));
            maker.prepare(seats);
            return maker;
        } catch (IOException e) {
            throw new UncheckedIOException("run it in the project's folder: " + PLAN + " cannot be read", e);
        }
    }
}
