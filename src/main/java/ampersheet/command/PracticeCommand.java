package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

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
                    say("command.practice.variants", "variants", Integer.toString(variants)),
                    say("command.number.expected", "least", "1", "most", Integer.toString(MOST_VARIANTS)),
                    say("command.usual.next", "usual", "12"));
        }
        TemplateLibrary library = templates.library();
        ProblemSet set = ProblemSet.of(new PlanFile(plan, week, library, out).toHandOut(streams), library);
        PracticeFile.Written written = PracticeFile.write(set, variants, out, output.terms(streams, false, plan));
        streams.line(say(
                "command.practice.written",
                "skills",
                count("command.count.skills", written.skills()),
                "problems",
                count("command.count.problems", variants),
                "kilobytes",
                Long.toString((written.bytes() + 999) / 1000)));
        streams.line("");
        String page = say("command.label.open-or-hand-out");
        streams.line(LabelColumn.of(page).line(page, InputFile.shown(out)));
        return CommandTree.FINE;
    }
}
