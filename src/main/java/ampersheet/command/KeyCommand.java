package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.answer.AnswerKey;
import ampersheet.command.SheetOptions.KeyedSheet;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.issue.Issue;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "key",
        sortOptions = false,
        description = "command.key.help",
        footer = {"", "command.key.footer.out", "command.key.footer.issued-with"})
final class KeyCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(paramLabel = "SHEET-ID", descriptionKey = "command.help.sheet-id")
    private String typedId;

    @Mixin
    private SheetOptions which;

    @Option(names = "--out", paramLabel = "DIR", descriptionKey = "command.key.help.out")
    private Path out;

    @Option(names = "--roster", paramLabel = "CLASS.csv", descriptionKey = "command.key.help.roster")
    private Path roster;

    @Option(names = "--sheet", descriptionKey = "command.key.help.sheet")
    private boolean sheetInstead;

    @Option(names = "--json", descriptionKey = "command.key.help.as-json")
    private boolean json;

    @Mixin
    private OutputOptions output;

    @Mixin
    HelpOptions help;

    KeyCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        KeyedSheet sheet = which.sheet(typedId);
        int seat = sheet.issued().id().seat();
        String name = learner(seat);
        sheet.remarks().forEach(remark -> streams.err().print(remark.print()));
        Document plain = Composer.key(sheet.corrected(), name);
        List<CorrectedKey> corrected = CorrectedKey.of(sheet, Composer.key(sheet.issued(), name), plain);
        Document key = CorrectedKey.ahead(plain, corrected, sheet);
        Document printed = Composer.sheet(sheet.issued(), name);
        if (out != null) {
            Issue.again(printed, key, sheet.issued().id(), out, output.terms(streams, false, inputs()));
        }
        if (json) {
            streams.line(Json.of(json -> write(json, sheet, plain, corrected)));
        } else if (out != null) {
            String file = Issue.fileName(seat);
            String again = say("command.label.sheet");
            String its = say("command.label.key");
            LabelColumn labels = LabelColumn.of(again, its);
            streams.line(
                    labels.line(again, InputFile.shown(out.resolve("sheets").resolve(file + ".html"))));
            streams.line(labels.line(its, InputFile.shown(out.resolve("keys").resolve(file + ".html"))));
            corrected.forEach(one -> streams.line(say("command.key.corrected-since", "question", one.told())));
        } else {
            streams.out().print(MarkdownPage.render(sheetInstead ? printed : key));
        }
        return sheet.lost().isEmpty() ? CommandTree.FINE : CommandTree.PROBLEMS_FOUND;
    }

    private Path[] inputs() {
        List<Path> inputs = new ArrayList<>(which.files());
        Optional.ofNullable(roster).ifPresent(inputs::add);
        return inputs.toArray(Path[]::new);
    }

    private String learner(int seat) {
        if (roster == null) {
            return "";
        }
        return RosterFile.read(roster, streams).seats().stream()
                .filter(learner -> learner.number() == seat)
                .map(Roster.Seat::name)
                .findFirst()
                .orElseThrow(() -> new WrongUsage(
                        "--roster",
                        say("command.key.seat", "seat", Integer.toString(seat)),
                        say("command.key.seat.expected"),
                        say("command.key.seat.next")));
    }

    private static void write(Json json, KeyedSheet keyed, Document key, List<CorrectedKey> corrected) {
        Sheet sheet = keyed.corrected();
        json.text("sheet_id", sheet.id().toString())
                .number("seat", sheet.id().seat())
                .text("title", sheet.plan().title());
        json.objects("problems", sheet.problems(), (at, problem) -> {
            at.number("number", problem.number())
                    .text("template", problem.template().name())
                    .text("title", problem.template().title())
                    .flag("example", problem.example());
            List<KeyLine> lines = CorrectedKey.lines(key, problem);
            List<AnswerKey> answers = problem.answers();
            at.objects("answers", lines, (line, told) -> {
                AnswerKey answer = answers.get(lines.indexOf(told));
                line.text("question", told.question())
                        .text("step", answer.step())
                        .number("value_si", answer.expected())
                        .text("unit", answer.unit().symbol())
                        .text("answer", told.answer())
                        .text("accepted", told.accepted())
                        .text("second_route", told.secondRoute());
                line.objects(
                        "mistakes",
                        told.mistakes(),
                        (one, mistake) ->
                                one.text("value", mistake.value()).text("explanation", mistake.explanation()));
            });
        });
        if (!corrected.isEmpty()) {
            json.objects(
                    "corrected",
                    corrected,
                    (at, one) -> at.text("question", one.question())
                            .text("template", one.template())
                            .text("before", one.before())
                            .text("now", one.now()));
        }
        if (!keyed.remarks().isEmpty()) {
            json.texts(
                    "remarks", keyed.remarks().stream().map(Diagnostic::problem).toList());
        }
    }
}
