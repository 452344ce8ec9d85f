package ampersheet.command;

import ampersheet.issue.Exchange;
import ampersheet.render.qti.QtiVersion;
import ampersheet.sheet.Plan;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "export",
        sortOptions = false,
        description = "Packs variants of a plan's problems in the open exchange format QTI, 3.0 or 2.1, for other "
                + "learning platforms.",
        footer = {
            "",
            "Each variant is an item with fixed numbers, pooled by skill and by how much the plan shows (worked "
                    + "example before it, steps to fill in); the test draws from the pools. Attempts, and whether "
                    + "explanations are shown, are the plan's (exchange:). Scoring equals that of check for single "
                    + "answers with the unit printed, in both versions; of a design every right choice is listed. An "
                    + "answer that follows from an earlier wrong one is told as unexplained there. The package is "
                    + "made to the published format; it is not certified."
        })
final class ExportCommand implements Callable<Integer> {
    private static final int MOST_VARIANTS = 200;

    private final Streams streams;

    @Parameters(paramLabel = "PLAN", description = "What to pack; see \"Writing a plan\" in the template guide.")
    private Path plan;

    @Option(names = "--qti", required = true, paramLabel = "FILE.zip", description = "The package to write.")
    private Path out;

    @Option(
            names = "--qti-version",
            paramLabel = "VERSION",
            defaultValue = "3.0",
            description = "3.0, or 2.1 for platforms that read no other; 3.0 if not said.")
    private String version;

    @Option(
            names = "--variants",
            paramLabel = "N",
            defaultValue = "10",
            description = "Items for each template; 10 if not said.")
    private int variants;

    @Option(names = "--json", description = "Say what was packed as JSON.")
    private boolean json;

    @Mixin
    private WeekOption week;

    @Mixin
    private OutputOptions output;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    ExportCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (variants < 1 || variants > MOST_VARIANTS) {
            throw new WrongUsage(
                    "--variants",
                    variants + " items cannot be made of a template",
                    "a number from 1 to " + MOST_VARIANTS,
                    "Leave it out for 10.");
        }
        QtiVersion of = QtiVersion.numbered(version)
                .orElseThrow(() -> new WrongUsage(
                        "--qti-version",
                        "packages of version \"" + version + "\" cannot be written",
                        "3.0 or 2.1",
                        "Leave it out for 3.0."));
        TemplateLibrary library = templates.library();
        Plan read = new PlanFile(plan, week, library).toHandOut(streams);
        Exchange.Packed packed = Exchange.pack(read, library, variants, of, out, output.terms(streams, false, plan));
        if (json) {
            streams.line(Json.of(json -> json.number("items", packed.items())
                    .texts("left_out", packed.leftOut())
                    .objects(
                            "pools",
                            packed.pools().entrySet().stream().toList(),
                            (at, pool) -> at.text("skill", pool.getKey()).number("items", pool.getValue()))));
        } else {
            packed.pools()
                    .forEach((skill, items) -> streams.line(items + (items == 1 ? " item: " : " items: ") + skill));
            packed.leftOut().forEach(what -> streams.line("left out: " + what));
            streams.line(packed.items() == 0 ? "Nothing was written." : "");
            if (packed.items() > 0) {
                streams.line("Upload:  " + InputFile.shown(out));
            }
        }
        return packed.items() == 0 ? CommandTree.PROBLEMS_FOUND : CommandTree.FINE;
    }
}
