package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.issue.Output;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What a writing command may do with what it finds where it writes. */
@Command
final class OutputOptions {
    @Option(names = "--replace", descriptionKey = "command.help.replace")
    private boolean replace;

    /** @param inputs files that the command reads; null for those that were not named */
    Output.Terms terms(Streams streams, boolean clean, Path... inputs) {
        List<Path> named = new ArrayList<>();
        for (Path input : inputs) {
            if (Objects.nonNull(input)) {
                named.add(input);
            }
        }
        return new Output.Terms(
                        named,
                        replace,
                        clean,
                        place -> streams.err()
                                .print("\n" + say("command.stopped", "place", InputFile.shown(place)) + "\n"))
                .watchedBy(streams.progress());
    }
}
