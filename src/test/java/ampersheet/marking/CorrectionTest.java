package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A template is corrected after its sheets were issued; the class is marked anew by the numbers it was given. */
class CorrectionTest {
    private static final String PLAN = "title: Lanterns\nproblems:\n  - {template: current-limiting/indicator}\n";
    private static final Roster CLASS = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n3,Cem\n");

    @TempDir
    private Path folder;

    private TemplateLibrary corrected(String from, String to) throws IOException {
        Path copy = folder.resolve("templates");
        try (Stream<Path> files = Files.walk(SmallLibrary.FOLDER)) {
            for (Path file : files.toList()) {
                Path target = copy.resolve(SmallLibrary.FOLDER.relativize(file).toString());
                if (Files.isDirectory(file)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(file, target);
                }
            }
        }
        Path template = copy.resolve("current-limiting/indicator/problem.yaml");
        String text = Files.readString(template, StandardCharsets.UTF_8);
        assertTrue(text.contains(from), from);
        Files.writeString(template, text.replace(from, to), StandardCharsets.UTF_8);
        return new TemplateLibrary(List.of(TemplateFiles.in(copy)));
    }

    private static ProblemSet set(TemplateLibrary library) {
        return ProblemSet.of(PlanReader.read("plan.yaml", PLAN), library);
    }

    /** Seat 1 answers rightly, seat 2 three per cent off, seat 3 not at all. */
    private Path answers() throws IOException {
        Path answers = Files.createDirectories(folder.resolve("answers"));
        for (int seat = 1; seat <= 2; seat++) {
            Sheet sheet = new SheetMaker(set(SmallLibrary.open())).sheet(seat);
            AnswerKey key = sheet.places().get(0);
            Files.writeString(
                    answers.resolve(seat + ".csv"),
                    "sheet,question,answer\n" + sheet.id() + ",q1a,"
                            + SimulatedClass.written(key, key.expected() * (seat == 1 ? 1 : 1.03)) + "\n",
                    StandardCharsets.UTF_8);
        }
        return answers;
    }

    private static Map<String, String> marked(Marking.Task task) {
        Map<String, String> files = new TreeMap<>();
        Marking.mark(task, files::put);
        return files;
    }

    private static Marking.Task task(Path answers, Optional<TemplateLibrary> corrected, Optional<EarlierMarks> before) {
        return new Marking.Task(
                answers,
                new SheetMaker(set(SmallLibrary.open())),
                corrected.map(Corrections::new),
                CLASS,
                Optional.empty(),
                Optional.empty(),
                before,
                Optional.empty(),
                OtherSheets.NONE,
                false);
    }

    @Test
    void aWiderToleranceMarksTheClassAnewAndListsWhoseMarkChanged() throws IOException {
        Path answers = answers();
        TemplateLibrary wider = corrected("{step: R, within: 2 %", "{step: R, within: 4 %");
        String first = marked(task(answers, Optional.empty(), Optional.empty())).get("marks.csv");
        Map<String, String> second =
                marked(task(answers, Optional.of(wider), Optional.of(EarlierMarks.read("marks.csv", first))));
        assertEquals("seat,name,before,now\n2,Bo,0 of 3,1 of 3\n", second.get("changes.csv"));
        assertTrue(second.get("report.html").contains("Marks that changed"));
        assertEquals(
                "seat,name,before,now\n",
                marked(task(answers, Optional.empty(), Optional.of(EarlierMarks.read("marks.csv", first))))
                        .get("changes.csv"),
                "nothing corrected, nothing changed");
    }

    @Test
    void theCorrectedTemplateWorksTheNumbersOnTheSheet() throws IOException {
        TemplateLibrary stricter = corrected("require: [\"Vs - Vf >= 1.2 V\"]", "require: [\"Vs - Vf >= 3 V\"]");
        ProblemSet anew = set(stricter);
        assertTrue(
                !anew.id(1).templates().equals(set(SmallLibrary.open()).id(1).templates()),
                "a corrected template is another version, whose sheets have other IDs");
        Corrections corrections = new Corrections(stricter);
        SheetMaker maker = new SheetMaker(set(SmallLibrary.open()));
        boolean otherDraws = false;
        for (int seat = 1; seat <= 40; seat++) {
            var issued = maker.sheet(seat).problems().get(0);
            var corrected = (Corrections.Corrected.Anew) corrections.of(issued);
            assertEquals(
                    issued.problem().givens(), corrected.problem().problem().givens(), "seat " + seat);
            otherDraws |= !new SheetMaker(anew)
                    .sheet(seat)
                    .problems()
                    .get(0)
                    .problem()
                    .givens()
                    .equals(issued.problem().givens());
        }
        assertTrue(otherDraws, "drawn anew, the seats would have had other numbers");
    }

    @Test
    void whatTheCorrectedTemplateCannotProveIsLeftToTheInstructorAndNotLost() throws IOException {
        Path answers = answers();
        TemplateLibrary wrong = corrected("is: Vr / If", "is: Vs / If");
        Map<String, String> files = marked(task(answers, Optional.of(wrong), Optional.empty()));
        assertTrue(
                files.get("set-aside.csv")
                                .lines()
                                .filter(line -> line.endsWith(",to be marked by hand"))
                                .count()
                        == 2,
                files.get("set-aside.csv"));
        assertTrue(
                files.get("marks.csv")
                        .contains("1,Ada," + set(SmallLibrary.open()).id(1) + ",0,0,"),
                files.get("marks.csv"));
        assertTrue(files.get("feedback/seat-001.html").contains("This problem is marked by hand."));
    }

    @Test
    void aTemplateThatAsksForSomethingElseLeavesItToTheInstructor() throws IOException {
        String fit = "  - {step: Rn, exactly: E24, prompt: \"Which E24 value do you fit, so that the current is not "
                + "exceeded?\"}\n";
        String heat = "  - {step: P, within: 2 %, prompt: \"How much power does that resistor turn into heat?\"}\n";
        TemplateLibrary swapped = corrected(fit + heat, heat + fit);
        var issued =
                new SheetMaker(set(SmallLibrary.open())).sheet(1).problems().get(0);
        assertEquals(
                new Corrections.Corrected.ByHand("The corrected template asks for other things than the sheet does."),
                new Corrections(swapped).of(issued));
    }
}
