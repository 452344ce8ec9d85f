package ampersheet.issue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.CourseDraft;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A small, complete course to begin with. What a folder holds already stays as it is. */
public final class CourseStart {
    private static final List<String> FILES =
            List.of(CourseFolder.PLAN, CourseFolder.CLASS, CourseFolder.PARTS, CourseFolder.DECISIONS);

    /** Whose problems a course of weeks begins with. */
    private static final String WEEKS = "weeks.yaml";

    private static final int FEWEST_SEATS = 40;
    private static final int ROUND = 10;

    private CourseStart() {}

    /**
     * What was written.
     *
     * @param written names of files in the folder
     * @param there names of those that were there, and stay
     */
    public record Started(List<String> written, List<String> there) {
        public Started {
            written = List.copyOf(written);
            there = List.copyOf(there);
        }
    }

    /** @throws ampersheet.diagnostic.DiagnosticException if the folder cannot be made or written to */
    public static Started in(Path folder) {
        List<String> written = new ArrayList<>();
        List<String> there = new ArrayList<>();
        try (Output output = Output.folder(folder, Output.Terms.NONE)) {
            for (String file : FILES) {
                if (Files.exists(folder.resolve(file), LinkOption.NOFOLLOW_LINKS)) {
                    there.add(file);
                } else {
                    output.write(folder.resolve(file), text(file));
                    written.add(file);
                }
            }
            for (String name : List.of(CourseFolder.ANSWERS, CourseFolder.MADE)) {
                try {
                    if (!Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
                        Files.createDirectory(folder.resolve(name));
                    }
                } catch (IOException failure) {
                    throw new DiagnosticException(WholeFile.told(folder.resolve(name), failure));
                }
            }
            output.finish();
        }
        return new Started(written, there);
    }

    /**
     * A course of weeks to begin with.
     *
     * @param text of its file
     * @param unfit why it is not made of the problems of a plan; empty if it is, or if there is none
     */
    public record Weeks(String text, List<Diagnostic> unfit) {
        public Weeks {
            unfit = List.copyOf(unfit);
        }
    }

    /**
     * Of the problems of a plan where these make a course, of a few others otherwise. Whether their variants last for
     * all weeks is told with each week's forecast.
     *
     * @param first day of the first week
     * @param lastSeat seats up to this one at least get numbers
     * @throws DiagnosticException if a course keeps numbers for fewer
     */
    public static Weeks weeks(Optional<Plan> plan, LocalDate first, int weeks, int lastSeat, TemplateLibrary library) {
        int rounded = Math.max(FEWEST_SEATS, (lastSeat + ROUND - 1) / ROUND * ROUND);
        int seats = lastSeat <= CoursePlan.MOST_SEATS ? Math.min(rounded, CoursePlan.MOST_SEATS) : lastSeat;
        List<Diagnostic> unfit = List.of();
        if (plan.isPresent()) {
            try {
                return new Weeks(fitting(CourseDraft.of(plan.get(), first, weeks, seats), library), List.of());
            } catch (DiagnosticException told) {
                unfit = told.diagnostics();
            }
        }
        Plan usual = PlanReader.read(WEEKS, text(WEEKS));
        return new Weeks(fitting(CourseDraft.of(usual, first, weeks, seats), library), unfit);
    }

    private static String fitting(String text, TemplateLibrary library) {
        new Timetable(CoursePlanReader.read(CourseFolder.WEEKS, text), library);
        return text;
    }

    private static String text(String name) {
        try (InputStream in = CourseStart.class.getResourceAsStream("start/" + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
