package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.problem.MutationCheck;
import ampersheet.problem.MutationReport;
import ampersheet.problem.ProofReport;
import ampersheet.problem.Proving;
import ampersheet.problem.Workshop;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "prove",
        sortOptions = false,
        description = "command.prove.help",
        footer = {"", "command.prove.footer"})
final class ProveCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(arity = "0..*", paramLabel = "TEMPLATE", descriptionKey = "command.prove.help.template")
    private List<String> names = List.of();

    @Option(names = "--draws", paramLabel = "N", defaultValue = "1000", descriptionKey = "command.prove.help.draws")
    private int draws;

    @Option(names = "--seed", paramLabel = "TEXT", defaultValue = "prove", descriptionKey = "command.help.seed")
    private String seed;

    @Option(names = "--mutations", descriptionKey = "command.prove.help.mutations")
    private boolean mutations;

    @Option(names = "--json", descriptionKey = "command.prove.help.as-json")
    private boolean json;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    ProveCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (draws < 1) {
            throw new WrongUsage(
                    "--draws",
                    say("command.prove.draws", "draws", Integer.toString(draws)),
                    say("command.prove.draws.expected"),
                    say("command.usual.next", "usual", "1000"));
        }
        TemplateLibrary library = templates.library();
        List<ProblemTemplate> wanted = new ArrayList<>();
        (names.isEmpty() ? library.names() : names).forEach(name -> wanted.add(TemplateOptions.named(library, name)));
        List<ProofReport> reports = new ArrayList<>();
        Map<String, MutationReport> mutated = new LinkedHashMap<>();
        for (ProblemTemplate template : wanted) {
            Workshop workshop = new Workshop(template);
            ProofReport report = Proving.prove(workshop, seed, draws);
            reports.add(report);
            if (mutations && report.passed()) {
                mutated.put(template.name(), MutationCheck.run(workshop, seed));
            }
            if (!json) {
                streams.line(report.print()
                        + (mutated.containsKey(template.name())
                                ? mutated.get(template.name()).print()
                                : ""));
                streams.out().flush();
            }
        }
        long failed = reports.stream()
                .filter(report -> !report.passed()
                        || mutated.containsKey(report.template())
                                && !mutated.get(report.template()).survivors().isEmpty())
                .count();
        if (json) {
            streams.line(Json.of(json -> json.flag("passed", failed == 0)
                    .objects(
                            "templates",
                            reports,
                            (at, report) -> write(at, report, Optional.ofNullable(mutated.get(report.template()))))));
        } else {
            long accepted = reports.stream()
                    .mapToLong(report -> report.tally().accepted())
                    .sum();
            String problems = Long.toString(accepted);
            streams.line(
                    failed == 0
                            ? count("command.prove.agreed", reports.size(), "problems", problems)
                            : count(
                                    "command.prove.failed",
                                    reports.size(),
                                    "problems",
                                    problems,
                                    "failed",
                                    Long.toString(failed)));
        }
        return failed == 0 ? CommandTree.FINE : CommandTree.PROBLEMS_FOUND;
    }

    private static void write(Json json, ProofReport report, Optional<MutationReport> mutated) {
        json.text("template", report.template())
                .flag("passed", report.passed())
                .text("seed", report.seed())
                .number("wanted", report.wanted())
                .number("accepted", report.tally().accepted());
        Refusals.write(json, report.tally());
        json.number("refusal_rate", report.tally().refusalRate()).flag("exhausted", report.exhausted());
        json.objects(
                "disagreements",
                report.disagreements(),
                (at, one) -> at.text("givens", one.givens()).text("detail", one.detail()));
        json.objects(
                "values",
                report.values(),
                (at, value) -> at.text("step", value.step())
                        .flag("asked", value.asked())
                        .number("worst_gap", value.worstGap())
                        .number("allowed", value.allowed())
                        .text("givens", value.givens())
                        .text("because", value.because()));
        json.objects(
                "mistakes",
                report.mistakes(),
                (at, mistake) -> at.text("id", mistake.id())
                        .text("of", mistake.of())
                        .number("made", mistake.made())
                        .number("closest", mistake.closest())
                        .text("to", mistake.to())
                        .text("givens", mistake.givens()));
        json.texts("leaning", report.leaning());
        json.objects(
                "options",
                report.options(),
                (at, option) -> at.text("choice", option.choice())
                        .flag("exactly_one", option.holds())
                        .text(
                                "way",
                                option.way().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                        .text("counterexample", option.counterexample().orElse("")));
        json.number("share_inside_limits", report.shareInsideLimits())
                .texts("beyond_limits_on_purpose", report.onPurpose())
                .texts("steps_without_mistakes", report.withoutMistakes());
        json.number("combinations", report.variants().combinations())
                .number("variants", report.variants().count())
                .text("variants_basis", report.variants().basis().name().toLowerCase(Locale.ROOT));
        mutated.ifPresent(mutations -> json.objects(
                "mutations",
                mutations.fates(),
                (at, fate) -> at.text("step", fate.step())
                        .text("change", fate.change())
                        .text("end", fate.end().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                        .text("detail", fate.detail())));
        json.texts("warnings", report.warnings());
    }
}
