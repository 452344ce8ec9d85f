package ampersheet.command;

import ampersheet.issue.PracticeFile;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "practice",
        sortOptions = false,
        description = "command.practice.help",
        footer = {"", "command.practice.footer"})
final class PracticeCommand implements Callable<Integer> {
    private static final int MOST_VARIANTS = 200;

    private final Streams streams;

    @Parameters(paramLabel = "PLAN", descriptionKey = "command.practice.help.plan")
    private Path plan;

    @Option(
            names = "--variants",
            paramLabel = "N",
            defaultValue = "12",
            descriptionKey = "command.practice.help.variants")
    private int variants;

    @Option(names = "--out", required = true, paramLabel = "FILE.html", descriptionKey = "command.practice.help.out")
    private Path out;

    @Mixin
    private WeekOption week;

    @Mixin
    private OutputOptions output;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    PracticeCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (variants < 1 || variants > MOST_VARIANTS) {
            throw new WrongUsage(
                    "--variants",
                    variants + " problems of each skill are no practice set",
                    "a number from 1 to " + MOST_VARIANTS,
                    "Leave it out for 12.");
        }
        TemplateLibrary library = templates.library();
        ProblemSet set = ProblemSet.of(new PlanFile(plan, week, library).toHandOut(streams), library);
        PracticeFile.Written written = PracticeFile.write(set, variants, out, output.terms(streams, false, plan));
        streams.line(written.skills() + (written.skills() == 1 ? " skill" : " skills") + " of " + variants
                + (variants == 1 ? " problem" : " problems") + ", in one page of "
                + (written.bytes() + 999) / 1000 + " kB that holds its own keys");
        streams.line("");
        streams.line("Open or hand out:  " + InputFile.shown(out));
        return CommandTree.FINE;
    }
}
