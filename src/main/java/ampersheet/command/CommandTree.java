package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.source.WithinMemory;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
        name = CommandTree.NAME,
        version = "ampersheet 0.1.0",
        sortOptions = false,
        description = "command.all.help",
        footer = {"", "command.all.footer"})
final class CommandTree implements Callable<Integer> {
    static final String NAME = "ampersheet";
    private static final String NEXT = "    next: ";
    static final int FINE = 0;
    static final int PROBLEMS_FOUND = 1;
    static final int WRONG_USAGE = 2;

    /** By the names that stand in their annotations, which take long to read. */
    private static final Map<String, Class<? extends Callable<Integer>>> COMMANDS = commands();

    @Spec
    CommandSpec spec;

    @Mixin
    HelpOptions help;

    static int run(String[] arguments, Streams streams) {
        Collection<Class<? extends Callable<Integer>>> meant = meant(arguments);
        // Above one command there is nothing to be said but its name.
        Object above =
                arguments.length > 0 && meant.size() == 1 ? CommandSpec.create().name(NAME) : new CommandTree();
        CommandLine line = new CommandLine(above, new Makers(streams));
        meant.forEach(line::addSubcommand);
        PrintWriter out = new PrintWriter(new WithLineFeeds(streams.out()), true);
        PrintWriter err = new PrintWriter(new WithLineFeeds(streams.err()), true);
        line.setOut(out).setErr(err);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
        line.setUsageHelpAutoWidth(false).setUsageHelpWidth(100);
        line.setHelpFactory(new HelpWords());
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

    static Map<String, Class<? extends Callable<Integer>>> commands() {
        Map<String, Class<? extends Callable<Integer>>> commands = new LinkedHashMap<>();
        commands.put("desk", DeskCommand.class);
        commands.put("start", StartCommand.class);
        commands.put("templates", TemplatesCommand.class);
        commands.put("work", WorkCommand.class);
        commands.put("prove", ProveCommand.class);
        commands.put("plan", PlanCommand.class);
        commands.put("issue", IssueCommand.class);
        commands.put("handout", HandoutCommand.class);
        commands.put("practice", PracticeCommand.class);
        commands.put("key", KeyCommand.class);
        commands.put("check", CheckCommand.class);
        commands.put("mark", MarkCommand.class);
        commands.put("course", CourseCommand.class);
        commands.put("export", ExportCommand.class);
        return commands;
    }

    /** The one that is named first, since making them all takes a third of a second; all where none is. */
    private static Collection<Class<? extends Callable<Integer>>> meant(String[] arguments) {
        Class<? extends Callable<Integer>> named = COMMANDS.get(arguments.length == 0 ? "desk" : arguments[0]);
        return named == null ? COMMANDS.values() : List.of(named);
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
            streams.err()
                    .print(NEXT
                            + say(
                                    "command.usage.next",
                                    "command",
                                    at.getCommandSpec().qualifiedName()) + "\n");
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
                .print(say("command.failed", "fault", Printable.line(fault.toString())) + "\n" + NEXT
                        + say("command.failed.next") + "\n");
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
