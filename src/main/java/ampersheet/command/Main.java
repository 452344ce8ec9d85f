package ampersheet.command;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Entry point of the command line, and the only place that ends the program. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        Streams streams = new Streams(in, out, err, Surroundings.isTerminal());
        int exitCode;
        try {
            Surroundings surroundings = Surroundings.present();
            surroundings.require();
            exitCode = run(surroundings.arguments(arguments), streams);
        } catch (WrongUsage unreadable) {
            err.print(unreadable.getMessage());
            exitCode = CommandTree.WRONG_USAGE;
        }
        out.flush();
        System.exit(exitCode);
    }

    /**
     * Does what the arguments ask for.
     *
     * @return 0 fine, 1 problems found, 2 wrong usage
     */
    static int run(String[] arguments, Streams streams) {
        return CommandTree.run(arguments, streams);
    }
}
