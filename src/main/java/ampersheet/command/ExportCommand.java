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
        description = "command.export.help",
        footer = {"", "command.export.footer"})
final class ExportCommand implements Callable<Integer> {
    private static final int MOST_VARIANTS = 200;

    private final Streams streams;

    @Parameters(paramLabel = "PLAN", descriptionKey = "command.export.help.plan")
    private Path plan;

    @Option(names = "--qti", required = true, paramLabel = "FILE.zip", descriptionKey = "command.export.help.qti")
    private Path out;

    @Option(
            names = "--qti-version",
            paramLabel = "VERSION",
            defaultValue = "3.0",
            descriptionKey = "command.export.help.qti-version")
    private String version;

    @Option(
            names = "--variants",
            paramLabel = "N",
            defaultValue = "10",
            descriptionKey = "command.export.help.variants")
    private int variants;

    @Option(names = "--json", descriptionKey = "command.export.help.json")
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
