package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Attempt;
import ampersheet.problem.ChosenGivens;
import ampersheet.problem.Draws;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.template.ProblemTemplate;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "work",
        sortOptions = false,
        description = "command.work.help",
        footer = {
            "",
            "command.work.footer.range",
            "  work current-limiting/one-indicator Vs=24V Vf=1.6V If=20mA",
            "command.work.footer.json-values"
        })
final class WorkCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(index = "0", paramLabel = "TEMPLATE", descriptionKey = "command.work.help.template")
    private String name;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "name=value", descriptionKey = "command.work.help.givens")
    private List<String> values = List.of();

    @Option(names = "--seed", paramLabel = "TEXT", defaultValue = "work", descriptionKey = "command.help.seed")
    private String seed;

    @Option(names = "--figure", descriptionKey = "command.work.help.figure")
    private boolean figure;

    @Option(names = "--comma", descriptionKey = "command.work.help.comma")
    private boolean comma;

    @Option(names = "--json", descriptionKey = "command.work.help.as-json")
    private boolean json;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    WorkCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        ProblemTemplate template = TemplateOptions.named(templates.library(), name);
        Attempt attempt = new Draws(new Workshop(template), seed).work(chosen(template));
        if (attempt instanceof Attempt.Refused refused) {
            throw new WrongUsage(
                    name,
                    say("command.work.refused", "why", refused.detail()),
                    say("command.work.refused.expected"),
                    say("command.work.refused.next"));
        }
        Attempt.Worked worked = (Attempt.Worked) attempt;
        WorkedText text = new WorkedText(worked, comma ? DecimalMarker.COMMA : DecimalMarker.POINT);
        streams.line(json ? Json.of(text::write) : text.print(figure));
        boolean agreed = worked.problem().answers().stream().allMatch(answer -> answer.agrees());
        return agreed ? CommandTree.FINE : CommandTree.PROBLEMS_FOUND;
    }

    private ChosenGivens chosen(ProblemTemplate template) {
        try {
            return ChosenGivens.read(template, NamedValues.of(values, "Vs=24V"));
        } catch (DiagnosticException unfit) {
            throw new WrongUsage(unfit.diagnostics());
        }
    }
}
