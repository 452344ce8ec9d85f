package ampersheet.command;

import ampersheet.problem.Inventory;
import ampersheet.sheet.PartsReader;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What the workshop has in its bins. */
@Command
final class PartsOption {
    @Option(
            names = "--parts",
            paramLabel = "PARTS.csv",
            description = "What the bins of the workshop hold: every problem can "
                    + "then be built and measured with it. The sheet IDs depend on it; see \"A parts "
                    + "list\" in the template guide.")
    private Path parts;

    boolean isGiven() {
        return parts != null;
    }

    /** Null if none was named. */
    Path file() {
        return parts;
    }

    Optional<Inventory> inventory() {
        return Optional.ofNullable(parts)
                .map(file -> PartsReader.read(InputFile.shown(file), InputFile.read(file, "a parts list")));
    }
}
