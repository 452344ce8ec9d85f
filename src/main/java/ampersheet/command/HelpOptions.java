package ampersheet.command;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What every command understands. */
@Command
final class HelpOptions {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Show the version.")
    boolean version;

    @Option(names = "--trace", description = "If the program itself fails, show where.")
    boolean trace;
}
