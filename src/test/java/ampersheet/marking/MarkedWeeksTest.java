package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.Languages;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Three weeks of a class of three. */
class MarkedWeeksTest {
    private static final String MARKS = "seat,name,sheet,marks,of\n";
    private static final String ANSWERS = "seat,sheet,question,template,step,typed,read_as,verdict,cause,mark\n";

    private static MarkedWeeks.Week week(String name, String marks, String answers) {
        return new MarkedWeeks.Week(
                name,
                new Marking.NamedText(name + "/marks.csv", MARKS + marks),
                new Marking.NamedText(name + "/answers.csv", ANSWERS + answers));
    }

    private static MarkedWeeks course() {
        return MarkedWeeks.read(
                List.of(
                        week(
                                "week-1",
                                "1,Ada,X,1,2\n2,Bo,Y,2,2\n3,Cem,,,\n",
                                "1,X,q1,led/a,R,9,9,known-mistake,no-forward-voltage,0\n"
                                        + "1,X,q2,divider/b,V,9,9,correct,,1\n"
                                        + "2,Y,q1,led/a,R,9,9,correct,,1\n2,Y,q2,divider/b,V,9,9,correct,,1\n"),
                        // Another seating: learners are known by their names.
                        week(
                                "week-2",
                                "1,Bo,X,1.5,2\n2,Ada,Y,1,2\n3,Cem,Z,0,2\n",
                                "2,Y,q1,led/c,R,9,9,known-mistake,no-forward-voltage,0\n"
                                        + "2,Y,q2,led/c,P,9,9,correct,,1\n"
                                        + "3,Z,q1,led/c,R,,,blank,,0\n"
                                        + "1,X,q1,led/c,R,9,9,unit-missing,slip: unit missing,0.5\n")),
                template -> template.startsWith("led") ? "series resistors" : "dividers",
                Languages.ENGLISH);
    }

    @Test
    void oneTableHoldsWeeksSkillsAndWhatStaysOfEachLearner() {
        assertEquals(
                "learner,week-1 %,week-2 %,dividers % right,series resistors % right,mistakes_that_stay\n"
                        + "Ada,50,50,100,33,no forward voltage\n"
                        + "Bo,100,75,100,50,\n"
                        + "Cem,,0,,,\n",
                course().table().replace("\r\n", "\n"));
    }

    @Test
    void onePageHasAFigureForTheClassAndOneForEachLearner() {
        String page = course().page("spring");
        for (String said : List.of(
                "Course: spring",
                "the middle of the class",
                "Share of the marks of Ada",
                "Share of the marks of Cem",
                "Mistakes that stay",
                "no forward voltage",
                "nothing came in",
                "33\u00A0%")) {
            assertTrue(page.contains(said), said);
        }
        assertEquals(page, course().page("spring"), "the same marks give the same bytes");
    }

    @Test
    void aTableThatMarkHasNotWrittenIsTold() {
        MarkedWeeks.Week other = new MarkedWeeks.Week(
                "w",
                new Marking.NamedText("w/marks.csv", "a,b\n1,2\n"),
                new Marking.NamedText("w/answers.csv", ANSWERS));
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> MarkedWeeks.read(List.of(other), name -> name, Languages.ENGLISH))
                .getMessage();
        assertTrue(told.contains("w/marks.csv"), told);
    }
}
