package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Retake;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SmallLibrary;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class issued by several runs. */
class SlicedIssueTest {
    private static final String PLAN = """
      title: Lanterns
      seed: sliced
      order: mixed
      problems:
        - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}, example: yes}
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], given: {Vs: 9 V}, support: faded}
      """;
    private static final Roster CLASS = RosterReader.read(
            "class.csv", "seat,name\n1,Ada\n2,<b>Bo</b>\n3,\"Cem, \"\"the 3rd\"\"\"\n7,=1+1\n9,Dee\n12,\n15,Eve\n");
    private static final Issue.Besides USUAL = new Issue.Besides(false, false);

    @TempDir
    private Path folder;

    private static ProblemSet set(String plan) {
        return ProblemSet.of(PlanReader.read("plan.yaml", plan), SmallLibrary.open());
    }

    private static SlicedIssue sliced(ProblemSet set, Roster roster, Path out, Issue.Besides besides) {
        return new SlicedIssue(set, roster, out, besides, Output.Terms.NONE);
    }

    private static void assertSame(Map<String, byte[]> expected, Map<String, byte[]> actual) {
        assertEquals(expected.keySet(), actual.keySet());
        expected.forEach((name, bytes) -> assertArrayEquals(bytes, actual.get(name), name));
    }

    private void requireSameAsWhole(ProblemSet set, Roster roster, Issue.Besides besides, int slices)
            throws IOException {
        Path whole = folder.resolve("whole-" + slices);
        Path parts = folder.resolve("parts-" + slices);
        Issue.Issued issued = Issue.issue(set, roster, whole, 2, besides, Output.Terms.NONE);
        for (int number = slices; number >= 1; number--) {
            sliced(set, roster, parts, besides).write(new Slice(number, slices), 1);
        }
        Issue.Issued joined = sliced(set, roster, parts, besides).join(slices);
        assertSame(WrittenFiles.under(whole), WrittenFiles.under(parts));
        assertEquals(issued.sheets(), joined.sheets());
        assertEquals(
                issued.tallies().keySet(), joined.tallies().keySet(), "what was drawn is told of the class as a whole");
    }

    @Test
    void joinedSlicesAreTheWholeByteForByteInWhateverOrderTheyWereMade() throws IOException {
        for (int slices : Boolean.getBoolean("ampersheet.deep") ? List.of(1, 3, 10) : List.of(3)) {
            requireSameAsWhole(set(PLAN), CLASS, USUAL, slices);
        }
    }

    @Test
    void aRetakeIsSlicedForThoseOnlyWhoTakeIt() throws IOException {
        String plan = "title: Lanterns\nseed: sliced\nproblems: [{template: voltage-dividers/plain-divider}]\n";
        Set<String> skill = Set.of(set(plan).templates().get(0).skill());
        ProblemSet again = ProblemSet.of(
                Retake.of(
                        PlanReader.read("plan.yaml", plan),
                        15,
                        Map.of(2, skill, 9, skill, 15, skill),
                        SmallLibrary.open()),
                SmallLibrary.open());
        requireSameAsWhole(again, CLASS, USUAL, 2);
        assertFalse(Files.exists(folder.resolve("parts-2/sheets/seat-001.html")), "nothing to take again");
    }

    @OnlyDeep
    @Test
    void theyAreSoWithHomeworkPrintsDrawingsAndCautions() throws IOException {
        ProblemSet set = ProblemSet.of(
                PlanReader.read(
                        "plan.yaml",
                        "title: Lanterns\nseed: drawings\nproblems:\n"
                                + "  - {template: thermal-rise/regulator-junction, example: yes}\n"
                                + "  - {pool: [current-limiting/driver-test-point, voltage-dividers/battery-sense]}\n"),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        Roster three = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n3,Cem\n");
        requireSameAsWhole(set, three, new Issue.Besides(true, true, true, Optional.empty()), 2);
    }

    @Test
    @OnlyDeep
    void theyAreSoWhereProblemsComeAgain() throws IOException {
        Roster many = new Roster(IntStream.rangeClosed(1, 45)
                .mapToObj(seat -> new Roster.Seat(seat, ""))
                .toList());
        requireSameAsWhole(set(PLAN + "repeats: allowed\nexamples: shared\n"), many, USUAL, 4);
    }

    @OnlyDeep
    @Test
    void theyAreSoWhereAGroupThatIsDealtEvenlyIsCutByASlice() throws IOException {
        Roster many = new Roster(IntStream.rangeClosed(1, 40)
                .mapToObj(seat -> new Roster.Seat(seat, ""))
                .toList());
        requireSameAsWhole(
                set("title: Lanterns\nseed: sliced\neven: yes\nproblems:\n"
                        + "  - {template: current-limiting/indicator, count: 3}\n"),
                many,
                USUAL,
                3);
    }

    @Test
    void aSecondIssueIntoTheSameFolderKeepsTheArchiveOfTheFirst() throws IOException {
        Roster before = new Roster(CLASS.seats().subList(4, 7));
        Roster after = new Roster(CLASS.seats().subList(0, 6));
        Path whole = folder.resolve("whole");
        Path parts = folder.resolve("parts");
        for (Path out : List.of(whole, parts)) {
            Issue.issue(set(PLAN), before, out, 1, USUAL, Output.Terms.NONE);
        }
        Issue.issue(set(PLAN), after, whole, 1, USUAL, Output.Terms.NONE);
        for (int number = 1; number <= 2; number++) {
            sliced(set(PLAN), after, parts, USUAL).write(new Slice(number, 2), 1);
        }
        sliced(set(PLAN), after, parts, USUAL).join(2);
        assertSame(WrittenFiles.under(whole), WrittenFiles.under(parts));
    }

    @Test
    void aSliceThatIsThereAndRightIsLeftAloneAndOneThatWasTouchedIsMadeAgain() throws IOException {
        SlicedIssue sliced = sliced(set(PLAN), CLASS, folder, USUAL);
        assertFalse(sliced.write(new Slice(1, 2), 1).wasThere());
        Path sheet = folder.resolve("sheets/seat-002.html");
        byte[] right = Files.readAllBytes(sheet);
        Files.setLastModifiedTime(sheet, FileTime.fromMillis(1_000));
        assertTrue(sliced.write(new Slice(1, 2), 1).wasThere());
        assertEquals(FileTime.fromMillis(1_000), Files.getLastModifiedTime(sheet));

        Files.writeString(sheet, "<!DOCTYPE html> touched");
        sliced.write(new Slice(2, 2), 1);
        String told =
                assertThrows(DiagnosticException.class, () -> sliced.join(2)).getMessage();
        assertTrue(told.contains("slice 1/2 has lost sheets/seat-002.html, or somebody changed it"), told);
        assertTrue(told.contains("--slice 1/2"), told);
        assertFalse(Files.exists(folder.resolve("index.html")), "nothing is joined by halves");
        assertEquals(1, sliced.write(new Slice(1, 2), 1).written());
        assertArrayEquals(right, Files.readAllBytes(sheet));
        Path numbers = folder.resolve("keys/" + new Slice(1, 2).fileName() + ".zip");
        Files.write(numbers, Arrays.copyOf(Files.readAllBytes(numbers), 100));
        assertFalse(sliced.write(new Slice(1, 2), 1).wasThere(), "its archive was cut short");
        assertEquals(7, sliced.join(2).sheets());
    }

    @Test
    void whatIsMissingOrMadeFromSomethingElseIsToldByItsSlice() {
        SlicedIssue sliced = sliced(set(PLAN), CLASS, folder, USUAL);
        sliced.write(new Slice(2, 3), 1);
        String missing =
                assertThrows(DiagnosticException.class, () -> sliced.join(3)).getMessage();
        assertTrue(missing.contains("slice 1/3 is not there, or not finished"), missing);
        assertTrue(missing.contains("slice 3/3 is not there"), missing);
        assertFalse(missing.contains("slice 2/3"), missing);

        Roster renamed = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n3,Cem\n7,Fay\n9,Dee\n12,\n15,Eve\n");
        String other = assertThrows(
                        DiagnosticException.class,
                        () -> sliced(set(PLAN), renamed, folder, USUAL).join(3))
                .getMessage();
        assertTrue(other.contains("slice 2/3 was made from another plan, class list"), other);
    }

    @Test
    void aSliceIsReadAsItIsTyped() {
        assertEquals(Optional.of(new Slice(3, 10)), Slice.read("3/10"));
        for (String wrong : List.of("", "3", "0/10", "11/10", "3/0", "-1/3", "1/1000000", "3 / 10", "a/b")) {
            assertEquals(Optional.empty(), Slice.read(wrong), wrong);
        }
    }

    private static Output.Terms watched(AtomicInteger made, int until) {
        return Output.Terms.NONE.watchedBy((of, seats) -> {
            if (made.incrementAndGet() > until) {
                throw new CancellationException("that is enough");
            }
        });
    }

    @Test
    void aRunThatWasCutOffGoesOnWhereItEndedAndMakesAgainWhatWasTouched() throws IOException {
        ProblemSet set = set("title: Large\nseed: large\nproblems:\n  - {template: current-limiting/indicator}\n");
        Roster many = new Roster(IntStream.rangeClosed(1, 110)
                .mapToObj(seat -> new Roster.Seat(seat, ""))
                .toList());
        Path whole = folder.resolve("whole");
        Path cut = folder.resolve("cut");
        Issue.issue(set, many, whole, 2, USUAL, Output.Terms.NONE);
        assertTrue(
                WrittenFiles.under(whole).keySet().stream().noneMatch(file -> file.contains("slice")),
                "notes of how far a run came stay no longer than it takes");

        AtomicInteger first = new AtomicInteger();
        assertThrows(CancellationException.class, () -> Issue.issue(set, many, cut, 1, USUAL, watched(first, 80)));
        AtomicInteger second = new AtomicInteger();
        Path touched = cut.resolve("keys/seat-023.md");
        Files.writeString(touched, "# of somebody else");
        Issue.issue(set, many, cut, 2, USUAL, watched(second, 110));
        assertSame(WrittenFiles.under(whole), WrittenFiles.under(cut));
        assertTrue(second.get() >= 37 && second.get() < 80, second + " made, of 110");

        AtomicInteger other = new AtomicInteger();
        assertThrows(
                CancellationException.class,
                () -> Issue.issue(set, many, folder.resolve("other"), 1, USUAL, watched(other, 60)));
        Roster fewer = new Roster(many.seats().subList(0, 9));
        Issue.issue(set, fewer, folder.resolve("other"), 1, USUAL, Output.Terms.NONE);
        assertTrue(
                WrittenFiles.under(folder.resolve("other")).keySet().stream().noneMatch(file -> file.contains("slice")),
                "another run takes them away");
    }
}
