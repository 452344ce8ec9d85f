package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.CoursePlanReader;
import ampersheet.sheet.PlanReader;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A course of weeks to begin with. */
class CourseStartTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final String PLAN = """
            title: Lamps
            order: as listed
            problems: [{template: current-limiting/first-current}, {template: voltage-dividers/two-in-series}]
            """;

    private static CourseStart.Weeks weeks(String plan, int lastSeat) {
        return CourseStart.weeks(
                Optional.of(PlanReader.read("plan.yaml", plan)), LocalDate.of(2026, 3, 2), 3, lastSeat, LIBRARY);
    }

    private static int seats(int lastSeat) {
        return CoursePlanReader.read("course.yaml", weeks(PLAN, lastSeat).text())
                .seats();
    }

    @Test
    void numbersAreKeptForTheHighestSeatOfTheClassUpToTheMostThatACourseKeeps() {
        assertEquals(List.of(40, 130, 999), List.of(seats(3), seats(125), seats(995)));
        assertEquals(CoursePlan.MOST_SEATS, seats(CoursePlan.MOST_SEATS));
    }

    @Test
    void forASeatBehindTheMostThatACourseKeepsNothingIsBegunAndTheReaderSaysWhy() {
        DiagnosticException refused = assertThrows(DiagnosticException.class, () -> weeks(PLAN, 1_005));
        assertTrue(refused.getMessage().contains("999"), refused.getMessage());
    }

    @Test
    void anOrderThatThePlanSaysIsTheOrderOfTheWeeks() {
        CourseStart.Weeks made = weeks(PLAN, 3);
        assertTrue(
                made.text().contains("\norder: \"as listed\"\n") || made.text().contains("\norder: as listed\n"),
                made.text());
        assertEquals(List.of(), made.unfit());
    }

    @Test
    void whyTheProblemsOfAPlanMakeNoCourseIsToldByTheReadersThatRefuseThem() {
        CourseStart.Weeks made = weeks(PLAN + "repeats: allowed\n", 3);
        assertTrue(made.text().contains("title: "), made.text());
        assertEquals(
                List.of("in a course nobody meets the same numbers twice"),
                made.unfit().stream().map(fault -> fault.problem()).toList());
        CoursePlanReader.read("course.yaml", made.text());
    }
}
