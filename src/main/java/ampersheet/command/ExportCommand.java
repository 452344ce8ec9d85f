package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

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

    @Option(names = "--json", descriptionKey = "command.export.help.as-json")
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
                    say("command.export.variants", "variants", Integer.toString(variants)),
                    say("command.number.expected", "least", "1", "most", Integer.toString(MOST_VARIANTS)),
                    say("command.usual.next", "usual", "10"));
        }
        QtiVersion of = QtiVersion.numbered(version)
                .orElseThrow(() -> new WrongUsage(
                        "--qti-version",
                        say("command.export.version", "version", version),
                        say("command.export.version.expected"),
                        say("command.usual.next", "usual", "3.0")));
        TemplateLibrary library = templates.library();
        Plan read = new PlanFile(plan, week, library, out).toHandOut(streams);
        Exchange.Packed packed = Exchange.pack(read, library, variants, of, out, output.terms(streams, false, plan));
        if (json) {
            streams.line(Json.of(json -> json.number("items", packed.items())
                    .texts("left_out", packed.leftOut())
                    .objects(
                            "pools",
                            packed.pools().entrySet().stream().toList(),
                            (at, pool) -> at.text("skill", pool.getKey()).number("items", pool.getValue()))));
        } else {
            packed.pools().forEach((skill, items) -> streams.line(count("command.export.pool", items, "skill", skill)));
            packed.leftOut().forEach(what -> streams.line(say("command.export.left-out", "what", what)));
            streams.line(packed.items() == 0 ? say("command.export.nothing") : "");
            if (packed.items() > 0) {
                String upload = say("command.label.upload");
                streams.line(LabelColumn.of(upload).line(upload, InputFile.shown(out)));
            }
        }
        return packed.items() == 0 ? CommandTree.PROBLEMS_FOUND : CommandTree.FINE;
    }
}
