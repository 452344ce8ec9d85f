package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.Progress;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whoever writes a file of the course while it is read gets what she wrote from then on, not what stood there before.
 */
class CourseReadOnceTest {
    private static final int MOST_READS = 3;
    private static final String WEEKS = """
            title: Before
            seed: lanterns
            seats: 5
            problems-a-week: 1
            weeks:
              - {date: 2026-03-02, new: [{template: current-limiting/first-current}]}
            """;
    private static final String PLAN = """
            title: Before
            seed: lanterns
            problems: [{template: current-limiting/first-current}]
            """;

    private static final String TWO_WEEKS = WEEKS + "  - {date: 2026-03-09, title: Before}\n";
    private static final Call WEEK_TWO =
            new Call(false, "/weeks/week", new Form(Map.of("week", List.of("2"))), Form.NONE, List.of(), false);

    @TempDir
    private Path folder;

    /** A course of which a file is written anew just when it has been read for the n-th time. */
    private final class Written extends Course {
        private final String name;
        private final String anew;
        private int left;

        Written(String name, String text, int reads) throws IOException {
            this(name, text, text.replace("Before", "After"), reads);
        }

        Written(String name, String text, String anew, int reads) throws IOException {
            super(new CourseFolder(folder));
            this.name = name;
            this.anew = anew;
            this.left = reads;
            Files.writeString(folder.resolve(name), text);
        }

        @Override
        Kept read(String file) {
            Kept kept = super.read(file);
            if (file.equals(name) && --left == 0) {
                try {
                    Files.writeString(folder.resolve(name), anew);
                } catch (IOException failure) {
                    throw new UncheckedIOException(failure);
                }
            }
            return kept;
        }
    }

    @Test
    void weeksThatAreWrittenWhileTheyAreReadAreSeenAtTheNextPage() throws IOException {
        for (int reads = 1; reads <= MOST_READS; reads++) {
            CourseWeeks weeks = new CourseWeeks(new CourseSet(new Written(CourseFolder.WEEKS, WEEKS, reads)));
            for (int page = 0; page < reads; page++) {
                weeks.timetable();
            }
            assertEquals("After: week 1", weeks.timetable().week(1).title());
        }
    }

    @Test
    void weeksThatAreWrittenWhileTheyAreGivenOutAreGivenOutAsTheyAreFromThenOn() throws IOException {
        for (int reads = 1; reads <= MOST_READS; reads++) {
            CourseWeeks weeks = new CourseWeeks(new CourseSet(new Written(CourseFolder.WEEKS, WEEKS, reads)));
            for (int page = 0; page < reads; page++) {
                weeks.source(1).sheets();
            }
            assertEquals("After: week 1", weeks.source(1).sheets().plan().title());
        }
    }

    @Test
    void aPlanThatIsWrittenWhileItIsReadIsSeenAtTheNextPage() throws IOException {
        for (int reads = 1; reads <= MOST_READS; reads++) {
            CourseSet set = new CourseSet(new Written(CourseFolder.PLAN, PLAN, reads));
            for (int page = 0; page < reads; page++) {
                set.maker();
            }
            assertEquals("After", set.maker().plan().title());
        }
    }

    @Test
    void lessonsOfTheInstructorsOwnThatAreTakenAwayAreLookedAtNoMore() throws IOException {
        Path builtIn = Path.of("problem-templates/current-limiting/first-current");
        Path own = Files.createDirectories(folder.resolve("templates/my/one"));
        for (String file : List.of("problem.yaml", "statement.md.ftl")) {
            Files.copy(builtIn.resolve(file), own.resolve(file));
        }
        Files.writeString(folder.resolve("plan.yaml"), PLAN.replace("current-limiting/first-current", "my/one"));
        CourseSet set = new CourseSet(new Course(new CourseFolder(folder)));
        assertEquals("Before", set.maker().plan().title());
        Files.move(folder.resolve("templates"), folder.resolve("templates-away"));
        assertThrows(DiagnosticException.class, set::maker);
        assertEquals(List.of(), set.templates().names());
    }

    private WeekPlace place(Course course) {
        CourseSet set = new CourseSet(course);
        Frame frame = new Frame(set, new Alone(folder), new OwnFiles());
        return new WeekPlace(set, new CourseWeeks(set), new GivenOut(set), frame, new Work(System::nanoTime));
    }

    @Test
    void whatIsMadeIsNotedAsOfThePlanThatWasReadForIt() throws IOException {
        CourseSet set = new CourseSet(new Written(CourseFolder.PLAN, PLAN, 1));
        Form one = new Form(Map.of("variants", List.of("1")));
        Making.Begun begun = new Making(set, set.source()).begun(Making.What.PRACTICE, one);
        begun.task().run(Progress.UNWATCHED);
        assertTrue(Files.readString(folder.resolve("made/practice.html")).contains("Before"), "as it was read");
        assertEquals(Course.version(PLAN), begun.from().versions().get("plan.yaml"));
        assertEquals("the set", set.ingredients().toldSince(begun.from()));
    }

    @Test
    void theFormOfAWeekIsOfOneVersionOfTheWeeksAndSaysWhich() throws IOException {
        String anew = TWO_WEEKS.replace("Before", "After");
        for (int reads = 1; reads <= 2 * MOST_READS; reads++) {
            Course course = new Written(CourseFolder.WEEKS, TWO_WEEKS, anew, reads);
            String page = new String(place(course).show(WEEK_TWO).body(), StandardCharsets.UTF_8);
            String shown = page.contains("name=\"title\" value=\"After\"") ? anew : TWO_WEEKS;
            assertTrue(page.contains("name=\"seen\" value=\"" + Course.version(shown) + "\""), page);
        }
    }

    @Test
    void aWeekThatIsTakenOutWhileItsPageIsMadeIsRefusedInWords() throws IOException {
        for (int reads = 1; reads <= 2 * MOST_READS; reads++) {
            WeekPlace place = place(new Written(CourseFolder.WEEKS, TWO_WEEKS, WEEKS, reads));
            try {
                assertEquals(Reply.FINE, place.show(WEEK_TWO).status());
            } catch (DiagnosticException gone) {
                assertTrue(gone.getMessage().contains("no week 2"), gone.getMessage());
            }
        }
    }
}
