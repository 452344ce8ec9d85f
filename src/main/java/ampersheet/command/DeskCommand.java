package ampersheet.command;

import ampersheet.desk.Desk;
import ampersheet.desk.Limits;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
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
            throw new WrongUsage("--port", port + " is no port", "a number from 1 to 65535", "Leave it out.");
        }
        Desk desk = open();
        CountDownLatch ended = new CountDownLatch(1);
        Thread closing = new Thread(() -> close(desk), "desk-end");
        Runtime.getRuntime().addShutdownHook(closing);
        streams.line("The desk is open over " + InputFile.shown(folder) + ". In a browser on this machine:");
        streams.line("");
        streams.line("  " + desk.address());
        streams.line("");
        streams.line("Ctrl-C ends it.");
        streams.out().flush();
        if (!noBrowser) {
            browse(desk.address());
        }
        ended.await();
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
                            failure -> streams.err().print("A page failed where it should not: " + failure + "\n")));
        } catch (IOException failure) {
            throw new WrongUsage(
                    port == 0 ? InputFile.shown(folder) : "--port",
                    "the desk cannot be opened: " + failure.getMessage(),
                    "a folder that you may write to, and a port that is free",
                    port == 0 ? "Name another folder." : "Name another port, or leave --port out.");
        }
    }

    private void close(Desk desk) {
        try {
            desk.close();
        } catch (IOException failure) {
            streams.err().print("The desk did not end cleanly: " + failure.getMessage() + "\n");
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
