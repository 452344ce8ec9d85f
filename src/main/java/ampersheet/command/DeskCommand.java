package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.desk.Desk;
import ampersheet.desk.Limits;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "desk",
        sortOptions = false,
        description = "command.desk.help",
        footer = {"", "command.desk.footer"})
final class DeskCommand implements Callable<Integer> {
    private static final int HIGHEST_PORT = 65_535;

    private final Streams streams;

    @Parameters(
            arity = "0..1",
            paramLabel = "FOLDER",
            defaultValue = "course",
            descriptionKey = "command.desk.help.folder")
    private Path folder;

    @Option(names = "--port", paramLabel = "N", defaultValue = "0", descriptionKey = "command.desk.help.port")
    private int port;

    @Option(names = "--no-browser", descriptionKey = "command.desk.help.no-browser")
    private boolean noBrowser;

    @Mixin
    HelpOptions help;

    DeskCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() throws InterruptedException {
        if (port < 0 || port > HIGHEST_PORT) {
            throw new WrongUsage(
                    "--port",
                    say("command.desk.port", "port", Integer.toString(port)),
                    say("command.number.expected", "least", "1", "most", Integer.toString(HIGHEST_PORT)),
                    say("command.leave-out.next"));
        }
        Desk desk = open();
        Thread closing = new Thread(() -> close(desk), "desk-end");
        Runtime.getRuntime().addShutdownHook(closing);
        streams.line(say("command.desk.open", "folder", InputFile.shown(desk.folder())));
        if (!desk.isAlone()) {
            streams.line(say("command.desk.second"));
        }
        streams.line("");
        streams.line("  " + desk.address());
        streams.line("");
        streams.line(say("command.desk.end"));
        streams.out().flush();
        if (!noBrowser) {
            browse(desk.address());
        }
        desk.awaitEnd();
        return CommandTree.FINE;
    }

    private Desk open() {
        try {
            return Desk.open(
                    folder,
                    new Desk.Settings(
                            port,
                            Limits.USUAL,
                            System::nanoTime,
                            failure -> streams.err()
                                    .print(say("command.desk.page-failed", "failure", failure.toString()) + "\n")));
        } catch (IOException failure) {
            throw new WrongUsage(
                    port == 0 ? InputFile.shown(folder) : "--port",
                    say("command.desk.closed", "reason", String.valueOf(failure.getMessage())),
                    say("command.desk.closed.expected"),
                    port == 0 ? say("command.desk.closed.folder.next") : say("command.desk.closed.port.next"));
        }
    }

    private void close(Desk desk) {
        try {
            desk.close();
        } catch (IOException failure) {
            streams.err().print(say("command.desk.unclean", "reason", String.valueOf(failure.getMessage())) + "\n");
        }
    }

    /** Where there is a browser; the address stands there all the same. */
    private static void browse(String address) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> command = system.startsWith("windows")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                : List.of(system.startsWith("mac") ? "open" : "xdg-open", address);
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException noBrowser) {
            return; // whoever reads the address can type it
        }
    }
}
