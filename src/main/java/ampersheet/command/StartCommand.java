package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.issue.CourseStart;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Command(
        name = "start",
        sortOptions = false,
        description = "command.start.help",
        footer = {"", "command.start.footer"})
final class StartCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(paramLabel = "FOLDER", descriptionKey = "command.start.help.folder")
    private Path folder;

    @Mixin
    HelpOptions help;

    StartCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        CourseStart.Started started = CourseStart.in(folder);
        String written = say("command.label.written");
        String stays = say("command.label.stays");
        LabelColumn files = LabelColumn.of(written, stays);
        started.written().forEach(file -> streams.line(files.line(written, InputFile.shown(folder.resolve(file)))));
        started.there().forEach(file -> streams.line(files.line(stays, InputFile.shown(folder.resolve(file)))));
        streams.line("");
        String next = say("command.label.go-on");
        streams.line(LabelColumn.of(next).line(next, "ampersheet desk " + InputFile.shown(folder)));
        return CommandTree.FINE;
    }
}
