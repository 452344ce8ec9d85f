package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.problem.Inventory;
import ampersheet.sheet.PartsReader;
import ampersheet.sheet.Plan;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What the workshop has in its bins. */
@Command
final class PartsOption {
    @Option(names = "--parts", paramLabel = "PARTS.csv", descriptionKey = "command.help.parts")
    private Path parts;

    boolean isGiven() {
        return parts != null;
    }

    /** That from which the inventory comes; null if there is none. */
    Path file(Path planFile, Plan plan) {
        return parts != null
                ? parts
                : plan.parts()
                        .map(named -> planFile.resolveSibling(named.file()))
                        .orElse(null);
    }

    /** Null if none was named. */
    Path file() {
        return parts;
    }

    /** The list named on the command line, or else that of the plan. */
    Optional<Inventory> inventory(Path planFile, Plan plan) {
        return parts == null
                ? PartsReader.beside(plan, planFile.toAbsolutePath().getParent())
                : Optional.of(
                        PartsReader.read(InputFile.shown(parts), InputFile.read(parts, say("command.file.parts"))));
    }
}
