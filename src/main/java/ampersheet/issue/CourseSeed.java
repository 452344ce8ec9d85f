package ampersheet.issue;

import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;

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
     */
    public static Timetable known(CoursePlan course, Path file, TemplateLibrary library) {
        return new Timetable(course.with(SeedFile.known(course.common(), file)), library);
    }

    /** The weeks as they are handed out; a course that does not fit its templates gets no seed. */
    public static Seeded issued(CoursePlan course, Path file, TemplateLibrary library) {
        Timetable untitled = new Timetable(course, library);
        SeedFile.Seeded common = SeedFile.issued(course.common(), file, none -> false);
        return new Seeded(
                common.plan().equals(course.common()) ? untitled : new Timetable(course.with(common.plan()), library),
                common);
    }
}
