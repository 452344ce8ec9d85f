package ampersheet.marking;

import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes the answer files of an invented class into a folder, to look at what marking makes of them. */
final class DemoAnswers {
    private DemoAnswers() {}

    /** @param arguments plan, folder, number of seats */
    public static void main(String[] arguments) throws IOException {
        Path plan = Path.of(arguments[0]);
        Path folder = Path.of(arguments[1]);
        Files.createDirectories(folder);
        SheetMaker maker = new SheetMaker(ProblemSet.of(
                PlanReader.read(plan.toString(), Files.readString(plan, StandardCharsets.UTF_8)),
                new TemplateLibrary(List.of(TemplateFiles.builtIn()))));
        SimulatedClass learners = new SimulatedClass(maker, 7);
        for (int seat = 1; seat <= Integer.parseInt(arguments[2]); seat++) {
            Files.writeString(
                    folder.resolve(String.format(Locale.ROOT, "answers-%05d.csv", seat)),
                    SimulatedClass.file(learners.learner(seat, 2, 0.12, 0.05)),
                    StandardCharsets.UTF_8);
        }
    }
}
