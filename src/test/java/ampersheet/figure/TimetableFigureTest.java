package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class TimetableFigureTest {
    private static final Figure TIMETABLE = TimetableFigure.draw(
            "Timetable",
            List.of("week 1", "week 2", "week 3"),
            List.of(
                    new TimetableFigure.Row("Ohm's law", List.of(1, 3)),
                    new TimetableFigure.Row("dividers", List.of(2))),
            TimetableFigure.Names.BESIDE,
            "t",
            Languages.ENGLISH);

    @Test
    void aSkillEntersWithASquareInItsWeekAndReturnsWithACircle() {
        List<Point> squares = new ArrayList<>();
        List<Point> circles = new ArrayList<>();
        SvgReader.read(TIMETABLE.svg(), new Ink() {
            @Override
            public void polygon(List<Point> corners, Stroke stroke, boolean filled) {
                squares.add(Box.around(corners.toArray(new Point[0])).centre());
            }

            @Override
            public void circle(Point centre, double radius, Stroke stroke, boolean filled) {
                circles.add(centre);
            }
        });
        assertEquals(3, squares.size(), "two skills and the legend");
        assertEquals(2, circles.size(), "one return and the legend");
        assertEquals(squares.get(0).y(), circles.get(0).y(), 0.1, "in the row of its skill");
        double column = squares.get(1).x() - squares.get(0).x();
        assertEquals(2 * column, circles.get(0).x() - squares.get(0).x(), 0.1, "two weeks later");
    }

    @Test
    void theTableSaysTheSame() {
        assertEquals(
                List.of("skill", "week 1", "week 2", "week 3"),
                TIMETABLE.table().head());
        assertEquals(
                List.of(List.of("Ohm's law", "enters", "", "returns"), List.of("dividers", "", "enters", "")),
                TIMETABLE.table().rows());
        assertTrue(TIMETABLE.summary().startsWith("A timetable of two skills in three weeks"), TIMETABLE.summary());
        assertThrows(
                IllegalArgumentException.class,
                () -> TimetableFigure.draw(
                        "", List.of("1"), List.of(), TimetableFigure.Names.BESIDE, "t", Languages.ENGLISH));
    }

    @Test
    void withNamesAboveTheLinesTheWeeksBeginAtTheLeftEdgeAndAPhoneShowsThemAll() {
        Figure narrow = TimetableFigure.draw(
                "Timetable",
                List.of("week 1", "week 2", "week 3", "week 4"),
                List.of(new TimetableFigure.Row("series resistor for an indicator", List.of(1, 4))),
                TimetableFigure.Names.ABOVE,
                "t",
                Languages.ENGLISH);
        assertTrue(narrow.picture().width() < 300, narrow.picture().width() + " wide");
    }
}
