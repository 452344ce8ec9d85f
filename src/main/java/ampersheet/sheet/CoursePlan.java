package ampersheet.sheet;

import ampersheet.diagnostic.Place;
import ampersheet.sheet.Plan.Entry;
import ampersheet.source.Yaml;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What an instructor wants of the weeks of a course, as written in a course file; what comes of it is told by
 * {@link Timetable}.
 *
 * @param common what every week's plan has in common: a plan without problems, whose title is the course's
 * @param said the keys of the file that belong to every week's plan as they stand
 * @param problems to work on in a week that does not say otherwise
 * @param gap weeks from one meeting with a skill to the next; more only where a week would be too full
 * @param seats for so many each week keeps numbers
 * @param together whether all seats have one template of a pool each time, and the next one the next time
 */
public record CoursePlan(
        Plan common, List<Yaml.Entry> said, int problems, int gap, int seats, boolean together, List<Week> weeks) {
    /** Of a year. */
    public static final int MOST_WEEKS = 52;

    /** Each week keeps numbers for them, whether anybody sits there or not. */
    public static final int MOST_SEATS = 999;

    public CoursePlan {
        said = List.copyOf(said);
        weeks = List.copyOf(weeks);
    }

    /**
     * A week.
     *
     * @param title what the sheets are called after the course; empty for the week's number
     * @param due as printed on the sheets; empty if nothing is said
     * @param problems to work on
     * @param enters what is new, in the order written
     */
    public record Week(LocalDate date, String title, String due, int problems, List<Topic> enters, Place place) {
        public Week {
            enters = List.copyOf(enters);
        }
    }

    /**
     * What enters in a week, and returns.
     *
     * @param gap its own; empty for that of the course, 0 if it does not return
     */
    public record Topic(Entry entry, Optional<Integer> gap) {}

    /** The same course with a plan that has another seed. */
    public CoursePlan with(Plan seeded) {
        return new CoursePlan(seeded, said, problems, gap, seats, together, weeks);
    }
}
