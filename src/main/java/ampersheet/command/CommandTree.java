package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.source.WithinMemory;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** All commands, and what becomes of their failures. */
@Command(
        name = "ampersheet",
        version = "ampersheet 0.1.0",
        sortOptions = false,
        description =
                "Worked-example problem sets for bench electronics: every answer solved twice, every typed answer "
                        + "checked by"
                        + " the same engine.",
        footer = {
            "",
            "Exit codes: 0 fine, 1 problems found, 2 wrong usage. When stopped from outside: 130 by Ctrl-C, 143 "
                    + "by an ordinary "
                    + "kill, 137 by one that cannot be caught; each file is then whole or missing, and the same "
                    + "command again makes the "
                    + "rest."
        })
final class CommandTree implements Callable<Integer> {
    private static final String NEXT = "    next: ";
    static final int FINE = 0;
    static final int PROBLEMS_FOUND = 1;
    static final int WRONG_USAGE = 2;

    private static final List<Class<? extends Callable<Integer>>> COMMANDS = List.of(
            DeskCommand.class,
            StartCommand.class,
            TemplatesCommand.class,
            WorkCommand.class,
            ProveCommand.class,
            PlanCommand.class,
            IssueCommand.class,
            HandoutCommand.class,
            PracticeCommand.class,
            KeyCommand.class,
            CheckCommand.class,
            MarkCommand.class,
            CourseCommand.class,
            ExportCommand.class);

    private final Streams streams;

    @Spec
    CommandSpec spec;

    @Mixin
    HelpOptions help;

    private CommandTree(Streams streams) {
        this.streams = streams;
    }

    static int run(String[] arguments, Streams streams) {
        CommandLine line = new CommandLine(new CommandTree(streams), new Makers(streams));
        for (Class<? extends Callable<Integer>> command : meant(arguments)) {
            line.addSubcommand(command);
        }
        PrintWriter out = new PrintWriter(new WithLineFeeds(streams.out()), true);
        PrintWriter err = new PrintWriter(new WithLineFeeds(streams.err()), true);
        line.setOut(out).setErr(err);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
        line.setUsageHelpAutoWidth(false).setUsageHelpWidth(100);
        line.setAbbreviatedOptionsAllowed(false);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((fault, given) -> wrongUsage(fault, streams));
        line.setExecutionExceptionHandler((fault, at, result) -> failed(fault, at, streams));
        line.registerConverter(Path.class, CommandTree::path);
        int exitCode;
        try {
            exitCode = line.execute(arguments);
        } catch (OutOfMemoryError | StackOverflowError exhausted) {
            // Whatever it was, it is no longer held; what remains is to say so.
            exitCode = exhausted(exhausted, arguments, streams);
        }
        streams.out().flush();
        streams.err().flush();
        return streams.out().checkError() ? PROBLEMS_FOUND : exitCode;
    }

    /** The one that is named first, since making them all takes a third of a second; all where none is. */
    private static List<Class<? extends Callable<Integer>>> meant(String[] arguments) {
        String first = arguments.length == 0 ? "desk" : arguments[0];
        List<Class<? extends Callable<Integer>>> named = COMMANDS.stream()
                .filter(command -> command.getAnnotation(Command.class).name().equals(first))
                .toList();
        return named.isEmpty() ? COMMANDS : named;
    }

    /** Without a subcommand: the desk. */
    @Override
    public Integer call() {
        return spec.commandLine().getSubcommands().get("desk").execute();
    }

    private static Path path(String typed) {
        Optional<Diagnostic> unopenable = Surroundings.present().unopenable(typed);
        if (unopenable.isPresent()) {
            throw new CommandLine.TypeConversionException(unopenable.get().print());
        }
        return Path.of(typed);
    }

    private static int wrongUsage(CommandLine.ParameterException fault, Streams streams) {
        CommandLine at = fault.getCommandLine();
        String message = fault.getMessage();
        streams.err().print((message.contains(NEXT) ? message.strip() : Printable.line(message)) + "\n");
        if (!message.contains(NEXT) && !CommandLine.UnmatchedArgumentException.printSuggestions(fault, at.getErr())) {
            streams.err().print(NEXT + "See " + at.getCommandSpec().qualifiedName() + " --help for what fits.\n");
        }
        return WRONG_USAGE;
    }

    private static int failed(Exception fault, CommandLine at, Streams streams) {
        streams.out().flush();
        if (fault instanceof WrongUsage usage) {
            streams.err().print(usage.getMessage());
            return WRONG_USAGE;
        }
        if (fault instanceof CancellationException) {
            return PROBLEMS_FOUND; // the program is being stopped, and what is there has been said
        }
        if (fault instanceof DiagnosticException told) {
            streams.err().print(told.getMessage());
            return PROBLEMS_FOUND;
        }
        if (at.getParseResult() != null && at.getParseResult().hasMatchedOption("--trace")) {
            fault.printStackTrace(streams.err());
            return PROBLEMS_FOUND;
        }
        streams.err()
                .print("ampersheet failed where it should not: " + Printable.line(fault.toString()) + "\n"
                        + "    next: Please report this with the command you typed and its files; the same "
                        + "command with --trace shows"
                        + " where it happened.\n");
        return PROBLEMS_FOUND;
    }

    private static int exhausted(VirtualMachineError fault, String[] arguments, Streams streams) {
        streams.err()
                .print(WithinMemory.told(String.join(" ", arguments), fault).print());
        if (List.of(arguments).contains("--trace")) {
            fault.printStackTrace(streams.err());
        }
        return PROBLEMS_FOUND;
    }

    /** Gives commands their streams. */
    private record Makers(Streams streams) implements CommandLine.IFactory {
        @Override
        public <K> K create(Class<K> wanted) throws Exception {
            if (Callable.class.isAssignableFrom(wanted)) {
                return wanted.getDeclaredConstructor(Streams.class).newInstance(streams);
            }
            return CommandLine.defaultFactory().create(wanted);
        }
    }
}
