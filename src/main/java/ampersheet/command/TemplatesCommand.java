package ampersheet.command;

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

@Command(name = "templates", sortOptions = false,
    description = "Lists the problem templates: family, level, what is given and asked.")
final class TemplatesCommand implements Callable<Integer> {
  /** Larger spaces of givens are estimated from a sample, so that counting ends soon. */
  private static final long COUNTED = 20_000;

  private final Streams streams;

  @Option(names = "--count", description = "Count the distinct variants of each, too; takes some ten seconds.")
  private boolean count;

  @Option(names = "--json", description = "Write the list as JSON.")
  private boolean json;

  @Mixin
  private TemplateOptions templates;

  @Mixin
  private HelpOptions help;

  private record Listed(ProblemTemplate template, Optional<Variants> variants) {}

  TemplatesCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    TemplateLibrary library = templates.library();
    List<Listed> listed = new ArrayList<>();
    List<Diagnostic> faults = new ArrayList<>();
    for (String name : library.names()) {
      try {
        ProblemTemplate template = library.template(name);
        listed.add(new Listed(template,
            count ? Optional.of(Variants.count(new Workshop(template), COUNTED)) : Optional.empty()));
      } catch (DiagnosticException broken) {
        faults.addAll(broken.diagnostics());
      }
    }
    if (json) {
      streams.line(Json.of(json -> json.objects("templates", listed, TemplatesCommand::write)));
    } else {
      listed.forEach(this::tell);
    }
    if (!faults.isEmpty()) {
      throw new DiagnosticException(faults);
    }
    return CommandTree.FINE;
  }

  private void tell(Listed listed) {
    ProblemTemplate template = listed.template();
    streams.line(template.name());
    streams.line("    " + template.title() + " (" + template.family().replace('-', ' ') + ", level " + template.level()
        + ")");
    streams.line("    skill: " + template.skill());
    streams.line("    given: " + String.join("; ", template.givens().stream().map(TemplatesCommand::told).toList()));
    streams.line("    asked: " + String.join("; ", template.asks().stream().map(ask -> told(template, ask)).toList()));
    listed.variants().ifPresent(
        counted -> streams.line("    " + counted.count() + " distinct variants, " + counted.basis().words()));
    streams.line("");
  }

  private static String told(Given given) {
    return given.name() + ", " + given.meaning();
  }

  private static String told(ProblemTemplate template, Ask ask) {
    return ask instanceof ChoiceAsk ? ask.of() + ", a choice"
        : ask.of() + ", " + template.line(ask.of()).meaning() + (ask instanceof DesignAsk ? ", to be chosen" : "");
  }

  private static void write(Json json, Listed listed) {
    ProblemTemplate template = listed.template();
    json.text("name", template.name()).text("title", template.title()).text("family", template.family())
        .number("level", template.level()).text("skill", template.skill()).texts("teaches", template.teaches());
    json.objects("givens", template.givens(), (at, given) -> {
      at.text("name", given.name()).text("meaning", given.meaning());
      if (given instanceof QuantityGiven quantity) {
        at.text("unit", quantity.unit().symbol()).number("values", quantity.values().size());
      } else if (given instanceof WordGiven word) {
        at.texts("words", word.values());
      }
    });
    json.objects("asks", template.asks(), (at, ask) -> {
      at.text("of", ask.of());
      if (ask instanceof QuantityAsk quantity) {
        at.text("kind", quantity.acceptance().kind())
            .text("meaning", template.line(ask.of()).meaning()).text("unit", template.line(ask.of()).unit().symbol());
      } else if (ask instanceof DesignAsk) {
        at.text("kind", "designed").text("meaning", template.line(ask.of()).meaning())
            .text("unit", template.line(ask.of()).unit().symbol());
      } else {
        at.text("kind", "choice");
      }
    });
    listed.variants().ifPresent(counted -> json.number("combinations", counted.combinations())
        .number("variants", counted.count()).text("variants_basis", counted.basis().name().toLowerCase(Locale.ROOT)));
    json.text("fingerprint", template.fingerprint());
  }
}
