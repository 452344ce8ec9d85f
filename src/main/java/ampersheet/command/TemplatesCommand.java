package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Variants;
import ampersheet.problem.Workshop;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.ProblemTemplate.DesignAsk;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(name = "templates", sortOptions = false, description = "command.templates.help")
final class TemplatesCommand implements Callable<Integer> {
    /** Larger spaces of givens are estimated from a sample, so that counting ends soon. */
    private static final long COUNTED = 20_000;

    private final Streams streams;

    @Option(names = "--count", descriptionKey = "command.templates.help.count")
    private boolean count;

    @Option(names = "--json", descriptionKey = "command.templates.help.as-json")
    private boolean json;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    private record Listed(ProblemTemplate template, Optional<Variants> variants) {}

    TemplatesCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        Optional<String> kept = count || templates.areOwn() ? Optional.empty() : BuiltInList.kept(json);
        if (kept.isPresent()) {
            streams.text(kept.get());
            return CommandTree.FINE;
        }
        List<Diagnostic> faults = new ArrayList<>();
        streams.text(list(templates.library(), count, json, faults));
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        return CommandTree.FINE;
    }

    /** What the command prints of the built-in templates. */
    static String list(boolean json) {
        List<Diagnostic> faults = new ArrayList<>();
        String list = list(TemplateOptions.library(List.of()), false, json, faults);
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        return list;
    }

    private static String list(TemplateLibrary library, boolean count, boolean json, List<Diagnostic> faults) {
        List<Listed> listed = new ArrayList<>();
        for (String name : library.names()) {
            try {
                ProblemTemplate template = library.template(name);
                listed.add(new Listed(
                        template,
                        count ? Optional.of(Variants.count(new Workshop(template), COUNTED)) : Optional.empty()));
            } catch (DiagnosticException broken) {
                faults.addAll(broken.diagnostics());
            }
        }
        return json
                ? Json.of(object -> object.objects("templates", listed, TemplatesCommand::write)) + "\n"
                : String.join("", listed.stream().map(TemplatesCommand::told).toList());
    }

    private static String told(Listed listed) {
        ProblemTemplate template = listed.template();
        String givens = String.join(
                "; ", template.givens().stream().map(TemplatesCommand::told).toList());
        String asked = String.join(
                "; ", template.asks().stream().map(ask -> told(template, ask)).toList());
        List<String> lines = new ArrayList<>(List.of(
                template.name(),
                say(
                        "command.templates.title",
                        "title",
                        template.title(),
                        "family",
                        template.family().replace('-', ' '),
                        "level",
                        Integer.toString(template.level())),
                say("command.templates.skill", "skill", template.skill()),
                say("command.templates.given", "givens", givens),
                say("command.templates.asked", "asked", asked)));
        listed.variants()
                .ifPresent(counted -> lines.add(say(
                        "command.templates.variants",
                        "variants",
                        Long.toString(counted.count()),
                        "basis",
                        counted.basis().words())));
        return String.join("\n    ", lines) + "\n\n";
    }

    private static String told(Given given) {
        return given.name() + ", " + given.meaning();
    }

    private static String told(ProblemTemplate template, Ask ask) {
        if (ask instanceof ChoiceAsk) {
            return say("command.templates.asked.choice", "name", ask.of());
        }
        String meaning = template.line(ask.of()).meaning();
        return ask instanceof DesignAsk
                ? say("command.templates.asked.design", "name", ask.of(), "meaning", meaning)
                : ask.of() + ", " + meaning;
    }

    private static void write(Json json, Listed listed) {
        ProblemTemplate template = listed.template();
        json.text("name", template.name())
                .text("title", template.title())
                .text("family", template.family())
                .number("level", template.level())
                .text("skill", template.skill())
                .texts("teaches", template.teaches());
        json.objects("givens", template.givens(), (at, given) -> {
            at.text("name", given.name()).text("meaning", given.meaning());
            if (given instanceof QuantityGiven quantity) {
                at.text("unit", quantity.unit().symbol())
                        .number("values", quantity.values().size());
            } else if (given instanceof WordGiven word) {
                at.texts("words", word.values());
            }
        });
        json.objects("asks", template.asks(), (at, ask) -> {
            at.text("of", ask.of());
            if (ask instanceof QuantityAsk quantity) {
                at.text("kind", quantity.acceptance().kind())
                        .text("meaning", template.line(ask.of()).meaning())
                        .text("unit", template.line(ask.of()).unit().symbol());
            } else if (ask instanceof DesignAsk) {
                at.text("kind", "designed")
                        .text("meaning", template.line(ask.of()).meaning())
                        .text("unit", template.line(ask.of()).unit().symbol());
            } else {
                at.text("kind", "choice");
            }
        });
        listed.variants()
                .ifPresent(counted -> json.number("combinations", counted.combinations())
                        .number("variants", counted.count())
                        .text("variants_basis", counted.basis().name().toLowerCase(Locale.ROOT)));
        json.text("fingerprint", template.fingerprint());
    }
}
