package ampersheet.issue;

import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.IssuedParts;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.List;

/** The seed that all weeks of a course have, by the rules of {@link SeedFile}. */
public final class CourseSeed {
    private CourseSeed() {}

    /**
     * The weeks, and how they came by their seed.
     *
     * @param common what they have in common
     */
    public record Seeded(Timetable timetable, SeedFile.Seeded common) {}

    /**
     * The weeks before anything of them is handed out; they get no seed.
     *
     * @param file in which the course stands
     * @param archives of what lies out
     */
    public static Timetable known(CoursePlan course, Path file, TemplateLibrary library, List<Path> archives) {
        return timetable(course.with(SeedFile.known(course.common(), file)), library, archives);
    }

    /** The weeks as they are handed out; a course that does not fit its templates gets no seed. */
    public static Seeded issued(CoursePlan course, Path file, TemplateLibrary library, List<Path> archives) {
        Timetable untitled = new Timetable(course, library);
        SeedFile.Seeded common = SeedFile.issued(course.common(), file, none -> false);
        boolean same = common.plan().equals(course.common()) && archives.isEmpty();
        return new Seeded(same ? untitled : timetable(course.with(common.plan()), library, archives), common);
    }

    private static Timetable timetable(CoursePlan course, TemplateLibrary library, List<Path> archives) {
        return new Timetable(
                course, library, IssuedParts.read(archives, course.common().seed(), library));
    }
}
