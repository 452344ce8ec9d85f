package ampersheet.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What every command understands. */
@Command
final class HelpOptions {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            descriptionKey = "command.help.help")
    boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            descriptionKey = "command.help.version")
    boolean version;

    @Option(names = "--trace", descriptionKey = "command.help.trace")
    boolean trace;
}
