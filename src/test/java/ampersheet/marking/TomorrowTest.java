package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class of twenty-four in which three wrong ideas are planted, and an instructor with ten minutes. */
class TomorrowTest {
    private static final long SEED = 29L;
    private static final int LEARNERS = 24;
    private static final ProblemSet SET =
            ProblemSet.of(PlanReader.read("plan.yaml", """
      title: "Lantern night: the supply"
      seed: tomorrow
      problems:
        - {template: current-limiting/one-indicator, example: yes}
        - {template: voltage-dividers/battery-sense}
        - {template: voltage-dividers/loaded-divider}
        - {template: thermal-rise/regulator-junction}
      """), new TemplateLibrary(List.of(TemplateFiles.builtIn())));

    /** By first and last seat. */
    private static final Map<String, int[]> PLANTED = new TreeMap<>(Map.of(
            "load-ignored", new int[] {1, 9},
            "no-forward-voltage", new int[] {8, 14},
            "output-power", new int[] {15, 18}));

    private static final List<Roster.Seat> SEATS = new ArrayList<>();
    private static Map<String, String> named;
    private static Map<String, String> withoutNames;

    @BeforeAll
    static void handIn(@TempDir Path folder) throws IOException {
        SheetMaker maker = new SheetMaker(SET);
        SimulatedClass learners = new SimulatedClass(maker, SEED);
        for (int seat = 1; seat <= LEARNERS; seat++) {
            int at = seat;
            SEATS.add(new Roster.Seat(seat, "Learner" + (char) ('A' + seat - 1)));
            Set<String> holds = new TreeSet<>();
            PLANTED.forEach((idea, from) -> {
                if (from[0] <= at && at <= from[1]) {
                    holds.add(idea);
                }
            });
            Files.writeString(
                    folder.resolve(seat + ".csv"),
                    SimulatedClass.file(learners.holding(seat, holds, 0.06, 0.03)),
                    StandardCharsets.UTF_8);
        }
        named = mark(folder, maker, false);
        withoutNames = mark(folder, maker, true);
    }

    private static Map<String, String> mark(Path folder, SheetMaker maker, boolean pseudonyms) {
        Map<String, String> files = new TreeMap<>();
        Marking.mark(
                new Marking.Task(
                        folder,
                        maker,
                        Optional.empty(),
                        new Roster(SEATS),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        pseudonyms),
                files::put);
        return files;
    }

    private static String text(String html) {
        return html.replaceAll("(?s)<(style|svg|math).*?</\\1>", " ")
                .replaceAll("<[^>]*>", " ")
                .replace("&#39;", "'")
                .replaceAll("[\\s\\u00a0]+", " ");
    }

    @Test
    void theReportBeginsWithThreeThingsToTakeUpWithHowManyAndWhoRuleExampleAndGroups() {
        String report = text(named.get("report.html"));
        int tomorrow = report.indexOf("What to do tomorrow");
        assertTrue(tomorrow > 0 && tomorrow < report.indexOf("Who handed in"), "it comes first");
        String first = report.substring(tomorrow, report.indexOf("Who handed in"));
        assertTrue(first.contains("1. Load ignored: 9 of 24 learners"), first);
        assertTrue(first.contains("2. No forward voltage: 7 of 24 learners"), first);
        assertTrue(first.contains("3. Output power: 4 of 24 learners"), first);
        assertFalse(first.contains("4. "), first);
        assertTrue(
                first.contains("q4c , the output with the load"), "named as on the sheet, examples counted: " + first);
        assertTrue(first.contains("Seat 8, LearnerH"), first);
        assertTrue(first.contains("The rule behind it:"), first);
        assertTrue(first.contains("Show: problem 4 with the numbers of seat "), first);
        assertTrue(first.contains("and with the mistake"), first);
        assertTrue(first.contains("Problem 1 on every learner's sheet is one like it, worked in full"), first);
        assertTrue(first.contains("Voltage left for the resistor"), "the line where the mistake is made: " + first);
        assertTrue(first.contains("Groups by mistake, each learner in one;"), first);
    }

    @Test
    void theExampleToShowIsRightAndOfSomebodyWhoHasItRight() {
        String first = text(named.get("report.html"));
        Matcher shown =
                Pattern.compile("problem 4 with the numbers of seat (\\d+)").matcher(first);
        assertTrue(shown.find());
        int seat = Integer.parseInt(shown.group(1));
        assertTrue(seat > 9, "seat " + seat + " ignores the load");
    }

    /** A slip of any problem gathers learners from many questions: each question is weighed with its own. */
    @Test
    void aSlipThatMostMakeOnceEachIsNoReasonToDoubtAKey(@TempDir Path folder) throws IOException {
        SheetMaker maker = new SheetMaker(SET);
        SimulatedClass learners = new SimulatedClass(maker, SEED);
        for (int seat = 1; seat <= LEARNERS; seat++) {
            List<String> lines = new ArrayList<>(List.of(
                    SimulatedClass.file(learners.holding(seat, Set.of(), 0, 0)).split("\\R")));
            List<Integer> withUnit = new ArrayList<>();
            for (int i = 1; i < lines.size(); i++) {
                if (lines.get(i).matches(".*[\\d.][ \\u00a0](V|A|mA|mV|Ω|kΩ|W|mW)\"?$")) {
                    withUnit.add(i);
                }
            }
            int at = withUnit.get(seat % withUnit.size());
            lines.set(at, lines.get(at).replaceAll("[ \\u00a0](V|A|mA|mV|Ω|kΩ|W|mW)(\"?)$", "$2"));
            Files.writeString(folder.resolve(seat + ".csv"), String.join("\n", lines) + "\n", StandardCharsets.UTF_8);
        }
        String report = text(mark(folder, maker, false).get("report.html"));
        assertTrue(report.contains("Unit missing: "), report.substring(0, 2000));
        assertFalse(report.contains("Look first"), report.substring(0, 3000));
    }

    @Test
    void thePageForTheProjectorNamesNobody() {
        String page = text(named.get("projector.html"));
        assertTrue(page.contains("Load ignored"), page);
        assertTrue(page.contains("Made by 9 of 24 learners"), page);
        assertFalse(page.contains("Learner"), page);
        assertFalse(page.contains("eat 1"), page);
        for (Roster.Seat seat : SEATS) {
            assertFalse(page.contains(SET.id(seat.number()).toString()), seat.toString());
        }
        assertFalse(text(withoutNames.get("report.html")).contains("LearnerH"));
    }

    /** One who met two things works where she met it more often, else with the more frequent one. */
    @Test
    void eachLearnerIsInOneGroup() {
        Cause one = new Cause("one", "one", "One.", true);
        Cause two = new Cause("two", "two", "Two.", true);
        Roster.Seat both = new Roster.Seat(1, "");
        Roster.Seat other = new Roster.Seat(2, "");
        Standing.Item item = new Standing.Item(0, "t", "s");
        List<TakeUp> things = List.of(
                new TakeUp(Optional.of(one), item, 2, Map.of(both, 1, other, 1), List.of(item)),
                new TakeUp(Optional.of(two), item, 1, Map.of(both, 2), List.of(item)));
        assertEquals(List.of(List.of(other), List.of(both)), TakeUp.groups(things));
    }
}
