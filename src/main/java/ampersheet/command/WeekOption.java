package ampersheet.command;

import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Which week of a course is meant. */
@Command
final class WeekOption {
    @Option(names = "--week", paramLabel = "N", descriptionKey = "command.help.week")
    private Integer week;

    Optional<Integer> week() {
        return Optional.ofNullable(week);
    }
}
