package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.issue.CourseFolder;
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The parts in the bins: whether sheets keep to them, one choice for the course, and their table. */
class DeskPartsTest {
    private static final String LIST = """
            Kind;value;shelf;tolerance;rating;count
            resistor;1 kohm;"A; left";5 %;0.25 W;50
            Resistor;4.7 kohm;B;5 %;0.25 W;40
            meter;10 mV;;0.5 % + 2 digits;;6
            """;

    /** Nothing here is about time. */
    private static final Limits PATIENT =
            new Limits(200_000, 600_000, 20, Duration.ofSeconds(10), Duration.ofSeconds(10));

    @TempDir
    private Path folder;

    private OpenDesk desk;

    @BeforeEach
    void open() throws IOException {
        desk = OpenDesk.withCourse(folder, PATIENT);
    }

    @AfterEach
    void nothingFailed() throws IOException {
        desk.close();
        assertEquals(List.of(), desk.failures);
    }

    private String planVersion() throws IOException {
        Matcher version = Pattern.compile("name=\"plan\" value=\"([^\"]*)\"").matcher(desk.get("/give-out"));
        assertTrue(version.find());
        return version.group(1);
    }

    private static void isSwitched(boolean on, String page) {
        assertTrue(page.contains("role=\"switch\" aria-checked=\"" + on + "\""), page);
    }

    private String id() throws IOException {
        String sheet = desk.get("/set/sheet?seat=1");
        Matcher id = Pattern.compile("Sheet <b>([^<]*)</b>").matcher(sheet);
        assertTrue(id.find(), sheet);
        return id.group(1);
    }

    private String use(String on, String back, String seen) throws IOException {
        return desk.post("/parts/use", "plan", seen, "use", on, "back", back);
    }

    @Test
    void whetherSheetsKeepToThePartsIsOneChoiceOfThePlanThatEveryPlaceShows() throws IOException {
        String before = desk.plan();
        String any = id();
        isSwitched(false, desk.get("/set"));
        String reply = use("yes", "give-out", planVersion());
        assertTrue(reply.contains("Location: /give-out"), reply);
        assertTrue(desk.plan().contains("\nparts: parts.csv\n"), desk.plan());
        for (String place : List.of("/set", "/give-out", "/parts")) {
            isSwitched(true, desk.get(place));
        }
        String built = id();
        assertFalse(built.equals(any), "the sheet beside the set keeps to the parts at once");
        assertTrue(use("no", "//elsewhere", planVersion()).contains("Location: /set"));
        assertEquals(before, desk.plan());
        assertEquals(any, id());
        Files.writeString(folder.resolve("plan.yaml"), "parts: parts.csv\n" + before);
        isSwitched(true, desk.get("/give-out"));
        assertEquals(built, id(), "what is written by hand is the same choice");
    }

    @Test
    void aChoiceOverAPlanThatChangedMeanwhileOrOfPartsThatCannotBeReadIsNotKept() throws IOException {
        String before = desk.plan();
        assertEquals(409, OpenDesk.status(use("yes", "set", "older")));
        Files.writeString(folder.resolve("parts.csv"), "kind,value,tolerance,count\nresistor,1 parsec,5 %,1\n");
        String reply = use("yes", "give-out", planVersion());
        assertEquals(422, OpenDesk.status(reply));
        assertTrue(reply.contains("Line 2 of parts.csv: "), reply);
        assertEquals(before, desk.plan());
    }

    @Test
    void theCourseToBeginWithCanBeBuiltFromItsOwnPartsByAClassOfThirty() throws IOException {
        use("yes", "give-out", planVersion());
        String names = IntStream.rangeClosed(1, 30).mapToObj(seat -> "L" + seat).collect(Collectors.joining("\n"));
        desk.post("/class/paste", "names", names, "seen", desk.seen("/class"));
        CourseSet set = new CourseSet(new Course(new CourseFolder(folder.toRealPath())));
        assertTrue(set.set().parts().isPresent());
        SheetMaker maker = set.maker();
        maker.prepare(set.roster().orElseThrow());
        assertEquals(
                List.of(),
                IntStream.rangeClosed(1, 30)
                        .filter(seat -> maker.sheet(seat).problems().size() != 4)
                        .boxed()
                        .toList());
    }

    @Test
    void aSetOfWhichALessonCannotBeBuiltIsNotMadeToKeepToTheParts() throws IOException {
        Files.writeString(folder.resolve("plan.yaml"), desk.plan().replace("first-current", "shared-current"));
        String before = desk.plan();
        String reply = use("yes", "set", planVersion());
        assertEquals(422, OpenDesk.status(reply));
        assertTrue(reply.contains("Current-limiting/shared-current draws R3 as one part"), reply);
        assertEquals(before, desk.plan());
    }

    @Test
    void aPlanThatKeepsToAListThatIsNotThereSaysSoAtItsLine() throws IOException {
        Files.delete(folder.resolve("parts.csv"));
        for (String name : List.of("parts.csv", "../parts.csv")) {
            Files.writeString(
                    folder.resolve("plan.yaml"),
                    "title: T\nparts: " + name + "\nproblems: [{template: current-limiting/one-indicator}]\n");
            String page = desk.get("/set");
            assertTrue(page.contains("<li value=\"2\" class=\"wrong\">"), page);
        }
    }

    /** As the table sends them. @param rows kind, value, count, tolerance, rating and the row that it was */
    private String table(List<List<String>> rows, String... more) throws IOException {
        List<String> fields = new ArrayList<>(List.of("seen", desk.seen("/parts"), "table", "yes"));
        List<String> names = List.of("kind", "value", "count", "tolerance", "rating", "from");
        for (List<String> row : rows) {
            for (int i = 0; i < names.size(); i++) {
                fields.addAll(List.of(names.get(i), row.get(i)));
            }
        }
        fields.addAll(List.of(more));
        return desk.post("/parts", fields.toArray(new String[0]));
    }

    private static final List<List<String>> ROWS = List.of(
            List.of("resistor", "1 kohm", "50", "5 %", "0.25 W", "0"),
            List.of("Resistor", "4.7 kohm", "40", "5 %", "0.25 W", "1"),
            List.of("meter", "10 mV", "6", "0.5 % + 2 digits", "", "2"),
            List.of("", "", "", "", "", ""));

    private static List<List<String>> with(int at, List<String> row) {
        List<List<String>> rows = new ArrayList<>(ROWS);
        rows.set(at, row);
        return rows;
    }

    @Test
    void theTableOfPartsIsChangedCellByCellAndLosesNothingThatItDoesNotShow() throws IOException {
        Files.writeString(folder.resolve("parts.csv"), LIST);
        String page = desk.get("/parts");
        assertTrue(page.contains("<option value=\"Resistor\" selected>"), page);
        assertTrue(page.contains("name=\"rating\" value=\"0.25 W\""), page);
        table(ROWS);
        assertEquals(LIST, Files.readString(folder.resolve("parts.csv")), "nothing was changed");
        table(with(1, List.of("Resistor", "4.7 kohm", "39", "5 %", "0.25 W", "1")));
        assertEquals(LIST.replace(";40", ";39"), Files.readString(folder.resolve("parts.csv")));
        desk.post("/parts/undo");
        assertEquals(LIST, Files.readString(folder.resolve("parts.csv")));
        table(with(3, List.of("led", "2 V", "9", "10 %", "", "")), "out", "1");
        assertEquals(
                LIST.replace("Resistor;4.7 kohm;B;5 %;0.25 W;40\n", "") + "led;2 V;;10 %;;9\n",
                Files.readString(folder.resolve("parts.csv")));
    }

    @Test
    void aFaultInARowIsToldBelowItWithWhatWasTypedAndNothingIsKept() throws IOException {
        Files.writeString(folder.resolve("parts.csv"), LIST);
        String reply = table(with(1, List.of("Resistor", "4.7 <b>", "39", "5 %", "0.25 W", "1")));
        assertEquals(422, OpenDesk.status(reply), reply);
        assertEquals(5, reply.split("wrong-1", -1).length - 1, "each cell of the row leads to what is told");
        assertTrue(reply.contains("value=\"4.7 &lt;b&gt;\"") && reply.contains("value=\"39\""), reply);
        assertEquals(LIST, Files.readString(folder.resolve("parts.csv")));
        assertEquals(
                422, OpenDesk.status(desk.post("/parts", "table", "yes", "seen", desk.seen("/parts"), "kind", "x")));
        assertEquals(409, OpenDesk.status(desk.post("/parts", "table", "yes", "seen", "older", "kind", "x")));
        assertEquals(LIST, Files.readString(folder.resolve("parts.csv")));
    }

    @Test
    void moreEmptyLinesKeepWhatWasTypedAndAFirstListIsTypedIntoTheTable() throws IOException {
        Files.delete(folder.resolve("parts.csv"));
        List<List<String>> one = List.of(List.of("resistor", "470 ohm", "30", "5 %", "", ""));
        String reply = table(one, "more", "yes");
        assertTrue(reply.contains("value=\"470 ohm\"") && reply.contains("not kept yet"), reply);
        assertFalse(Files.exists(folder.resolve("parts.csv")));
        table(one);
        assertEquals(
                "kind,value,tolerance,rating,count\nresistor,470 ohm,5 %,,30\n",
                Files.readString(folder.resolve("parts.csv")));
    }
}
