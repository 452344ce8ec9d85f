package ampersheet.command;

import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Which week of a course is meant. */
@Command
final class WeekOption {
    @Option(
            names = "--week",
            paramLabel = "N",
            description = "PLAN is a course, and this week of it is meant, from 1; see \"Writing a course\" in the "
                    + "template guide.")
    private Integer week;

    Optional<Integer> week() {
        return Optional.ofNullable(week);
    }
}
