package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.Issue;
import ampersheet.issue.Output;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A class with more seats than templates have variants. */
class RepeatsTest {
    private static final Support BARE = new Support.Bare();
    private static final int SMALL_CLASS = 400;
    private static final String TWO_PLACES = """
      title: Lanterns
      seed: repeats
      problems:
        - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}}
        - {template: voltage-dividers/plain-divider, given: {Vs: 12 V, R1: 10 kohm}}
        - {template: voltage-dividers/plain-divider, given: {Vs: 9 V, R1: 10 kohm}}
      """;

    private static Slot slot(int number, int choice, int member, String... pool) {
        return new Slot(number, choice, member, List.of(pool), BARE, false, "");
    }

    private static Repeats repeats(SeatDraws draws, Map<String, Integer> variants) {
        return new Repeats(draws, (source, count) -> Math.min(count, variants.get(source)));
    }

    private static List<String> problems(SeatDraws draws, Repeats repeats, int seat) {
        return draws.of(seat).stream()
                .map(draw -> draw.template() + " " + repeats.index(draw, seat))
                .toList();
    }

    private static SheetMaker maker(String plan) {
        return SmallLibrary.maker(plan);
    }

    private static String repeating(String plan) {
        return plan + "repeats: allowed\n";
    }

    private static List<String> numbers(SheetMaker maker, int seat) {
        return maker.sheet(seat).problems().stream()
                .map(problem -> problem.template().name() + " "
                        + problem.problem().givens().quantities())
                .toList();
    }

    /** Looks at every pair: at most one problem in common, and that only for numbers that differ by so much. */
    private static long requireApart(List<List<String>> sheets, long nearest, String told) {
        long common = 0;
        for (int one = 0; one < sheets.size(); one++) {
            assertEquals(sheets.get(one).size(), new TreeSet<>(sheets.get(one)).size(), told + " seat " + (one + 1));
            for (int other = one + 1; other < sheets.size(); other++) {
                int same = 0;
                for (String problem : sheets.get(one)) {
                    same += sheets.get(other).contains(problem) ? 1 : 0;
                }
                assertTrue(same <= 1, told + ": seats " + (one + 1) + " and " + (other + 1) + " share " + same);
                assertTrue(same == 0 || other - one >= nearest, told + " too near: " + (one + 1) + ", " + (other + 1));
                common += same;
            }
        }
        return common;
    }

    @Test
    void noTwoOfAClassOfSeveralTimesTheVariantsHaveTwoProblemsInCommonWhateverThePlan() {
        long seed = Long.getLong("ampersheet.seed", 20261129L);
        Random random = new Random(seed);
        for (int plan = 0; plan < (Boolean.getBoolean("ampersheet.deep") ? 200 : 6); plan++) {
            List<Slot> slots = new ArrayList<>();
            Map<String, Integer> variants = new TreeMap<>();
            List<String> names = List.of("a", "b", "c", "d", "e", "f");
            names.forEach(name -> variants.put(name, 60 + random.nextInt(140)));
            int entries = 1 + random.nextInt(4);
            for (int entry = 0; entry < entries; entry++) {
                List<String> pool = new ArrayList<>(names);
                Collections.shuffle(pool, random);
                pool = pool.subList(0, 1 + random.nextInt(3));
                int first = slots.size();
                for (int member = 0; member <= random.nextInt(2); member++) {
                    slots.add(slot(slots.size(), first + member, member, pool.toArray(new String[0])));
                }
            }
            SeatDraws draws = new SeatDraws("seed " + plan, slots, false);
            Repeats repeats = repeats(draws, variants);
            int last = repeats.lastSeat(SMALL_CLASS);
            String told = "seed " + seed + ", plan " + plan + " " + variants + " " + slots + " up to " + last;
            long nearest = repeats.nearest(last);
            List<List<String>> all = IntStream.rangeClosed(1, last)
                    .mapToObj(seat -> problems(draws, repeats, seat))
                    .toList();
            requireApart(all, nearest, told);
            int own = 1;
            while (last > own && !repeats.begun(own + 1)) {
                own++;
            }
            // Where entries draw from one another's templates, little may be left to come again: such a class is
            // refused.
            boolean apart = names.stream()
                    .allMatch(name -> slots.stream()
                                    .filter(slot -> slot.pool().contains(name))
                                    .map(Slot::pool)
                                    .distinct()
                                    .count()
                            <= 1);
            assertTrue(
                    last >= Math.min(SMALL_CLASS, apart ? 2 * own : own + 1), told + ", without repeats up to " + own);
            for (int seat = 1; seat <= last; seat += 23) {
                List<SeatDraw> mine = draws.of(seat);
                for (int i = 0; i < mine.size(); i++) {
                    String problem = all.get(seat - 1).get(i);
                    int asked = seat;
                    assertEquals(
                            IntStream.rangeClosed(1, last)
                                    .filter(other ->
                                            other != asked && all.get(other - 1).contains(problem))
                                    .boxed()
                                    .toList(),
                            repeats.alsoAt(mine.get(i), seat, last),
                            told + ", who else has a problem of seat " + seat);
                }
            }
        }
    }

    @OnlyDeep
    @Test
    void aClassOfThousandsStaysApartWithTheVariantsOfUsualTemplates() {
        Map<String, Integer> variants = Map.of("a", 3469, "b", 2000, "c", 1160, "d", 2310, "e", 90_000, "f", 2000);
        List<Slot> slots = List.of(
                slot(0, 0, 0, "a"),
                slot(1, 1, 0, "b"),
                slot(2, 2, 0, "f"),
                slot(3, 3, 0, "c", "d"),
                slot(4, 4, 1, "c", "d"),
                slot(5, 5, 0, "a", "b", "d"),
                slot(6, 6, 0, "e"));
        SeatDraws draws = new SeatDraws("s", slots, false);
        Repeats repeats = repeats(draws, variants);
        int seats = 6_000;
        assertEquals(seats, repeats.lastSeat(seats));
        Map<String, List<Integer>> holders = new TreeMap<>();
        for (int seat = 1; seat <= seats; seat++) {
            for (String problem : problems(draws, repeats, seat)) {
                holders.computeIfAbsent(problem, first -> new ArrayList<>()).add(seat);
            }
        }
        TreeSet<Long> pairs = new TreeSet<>();
        holders.forEach((problem, sit) -> {
            for (int i = 0; i < sit.size(); i++) {
                for (int other : sit.subList(i + 1, sit.size())) {
                    assertTrue(other - sit.get(i) >= repeats.nearest(seats), problem + " at " + sit);
                    assertTrue(pairs.add((long) sit.get(i) * SheetId.LAST_SEAT + other), problem + " at " + sit);
                }
            }
        });
        assertTrue(pairs.size() > seats, pairs.size() + " pairs have a problem in common");
        assertTrue(repeats.nearest(seats) > 600, "a room of " + repeats.nearest(seats));
    }

    @Test
    void everyVariantIsUsedBeforeOneComesAgain() {
        SeatDraws draws =
                new SeatDraws("s", List.of(slot(0, 0, 0, "a"), slot(1, 1, 0, "b"), slot(2, 2, 0, "a")), false);
        Repeats repeats = repeats(draws, Map.of("a", 101, "b", 53));
        TreeSet<String> seen = new TreeSet<>();
        for (int seat = 1; seat <= 150; seat++) {
            for (SeatDraw draw : draws.of(seat)) {
                boolean fresh = seen.add(draw.template() + repeats.index(draw, seat));
                assertEquals(draw.index() < Map.of("a", 101, "b", 53).get(draw.template()), fresh, "seat " + seat);
            }
        }
        assertEquals(101 + 53, seen.size());
    }

    @Test
    void aSeatMadeAloneHasWhatItHasInAnyClassAndAfterAnyOther() {
        List<Slot> slots = List.of(
                slot(0, 0, 0, "a", "b", "c"), slot(1, 1, 0, "d"), slot(2, 2, 0, "a", "d"), slot(3, 3, 1, "a", "d"));
        Map<String, Integer> variants = Map.of("a", 90, "b", 400, "c", 61, "d", 150);
        SeatDraws draws = new SeatDraws("s", slots, false);
        Repeats whole = repeats(draws, variants);
        whole.nearest(500);
        for (int seat = 500; seat >= 1; seat -= 9) {
            assertEquals(problems(draws, repeats(draws, variants), seat), problems(draws, whole, seat), "seat " + seat);
        }
    }

    @Test
    void withoutTheKeyAClassThatIsTooLargeIsRefusedWithTheKeyAsTheNextAction() {
        String told = assertThrows(
                        DiagnosticException.class, () -> maker(TWO_PLACES).prepare(40))
                .diagnostics()
                .get(0)
                .nextAction();
        assertTrue(told.contains("Or write repeats: allowed into the plan"), told);
        String bySeat = assertThrows(
                        DiagnosticException.class, () -> maker(TWO_PLACES).sheet(40))
                .diagnostics()
                .get(0)
                .nextAction();
        assertTrue(bySeat.contains("repeats: allowed"), bySeat);
    }

    @Test
    void theKeyChangesNothingForSeatsThatHaveNumbersOfTheirOwn() {
        SheetMaker without = maker(TWO_PLACES);
        SheetMaker with = maker(repeating(TWO_PLACES));
        with.prepare(60);
        for (int seat = 1; seat <= 15; seat++) {
            assertEquals(without.sheet(seat).id(), with.sheet(seat).id());
            assertEquals(numbers(without, seat), numbers(with, seat), "seat " + seat);
        }
    }

    @Test
    void realSheetsOfSeveralTimesTheVariantsKeepApart() {
        SheetMaker maker = maker(repeating(TWO_PLACES));
        int seats = 100;
        maker.prepare(seats);
        List<List<String>> all = IntStream.rangeClosed(1, seats)
                .mapToObj(seat -> numbers(maker, seat))
                .toList();
        long common = requireApart(all, maker.nearest(seats), "real sheets");
        assertTrue(common > seats, common + " in common");
        assertTrue(maker.nearest(seats) >= 10, "the nearest are " + maker.nearest(seats) + " apart");
        assertEquals(all.get(99), numbers(maker(repeating(TWO_PLACES)), 100), "made again by itself");
    }

    @Test
    void moreThanASheetHoldsAreRefusedAndNotRepeatedOnIt() {
        SheetMaker maker = maker("title: Few\nseed: s\nrepeats: allowed\nproblems:\n"
                + "  - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}, count: 36}\n");
        String told =
                assertThrows(DiagnosticException.class, () -> maker.sheet(1)).getMessage();
        assertTrue(told.contains("fewer places for one template on a sheet"), told);
    }

    @Test
    void whereItCannotBeKeptTheLastSeatIsTold() {
        SheetMaker maker = maker("title: Few\nseed: s\nrepeats: allowed\nproblems:\n"
                + "  - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}, count: 12}\n");
        String told = assertThrows(DiagnosticException.class, () -> maker.prepare(400))
                .getMessage();
        assertTrue(told.contains("seat 400 would have two problems in common"), told);
        assertTrue(told.contains("seats up to "), told);
    }

    @Test
    void seatsOfOneRoomThatWouldHaveAProblemInCommonAreRefused() {
        StringBuilder list = new StringBuilder("seat,name,Room\n");
        for (int seat = 1; seat <= 100; seat++) {
            list.append(seat)
                    .append(",,")
                    .append(seat % 2 == 0 ? "even" : "odd")
                    .append('\n');
        }
        Roster mixed = RosterReader.read("class.csv", list.toString());
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> maker(repeating(TWO_PLACES)).prepare(mixed))
                .getMessage();
        assertTrue(
                told.contains(" of room ") && told.contains("Number the seats of the class list room by room"), told);

        SheetMaker maker = maker(repeating(TWO_PLACES));
        maker.prepare(100);
        StringBuilder rooms = new StringBuilder("seat,name,room\n");
        for (int seat = 1; seat <= 100; seat++) {
            rooms.append(seat).append(",,").append(seat / maker.nearest(100)).append('\n');
        }
        maker.prepare(RosterReader.read("class.csv", rooms.toString()));
    }

    @Test
    void theIndexSaysHowManyAreSharedAndByWhom(@TempDir Path folder) throws Exception {
        Roster roster = new Roster(IntStream.rangeClosed(1, 30)
                .mapToObj(seat -> new Roster.Seat(seat, ""))
                .toList());
        SheetMaker maker = maker(repeating(TWO_PLACES));
        Issue.issue(maker.set(), roster, folder.resolve("one"), 1, new Issue.Besides(false, false), Output.Terms.NONE);
        Issue.issue(maker.set(), roster, folder.resolve("many"), 4, new Issue.Besides(false, false), Output.Terms.NONE);
        String index = Files.readString(folder.resolve("one/index.html"));
        assertEquals(index, Files.readString(folder.resolve("many/index.html")));
        List<String> all = IntStream.rangeClosed(1, 30)
                .boxed()
                .flatMap(seat -> numbers(maker, seat).stream())
                .toList();
        long shared = all.stream()
                .filter(problem -> Collections.frequency(all, problem) > 1)
                .count();
        assertTrue(shared > 0);
        assertTrue(index.contains(" have " + shared + " problems that somebody else has, too"), index);
        assertTrue(index.contains("Also at seats"));
        Roster small = new Roster(roster.seats().subList(0, 10));
        Issue.issue(maker.set(), small, folder.resolve("few"), 1, new Issue.Besides(false, false), Output.Terms.NONE);
        assertFalse(Files.readString(folder.resolve("few/index.html")).contains("more than one has"));
    }
}
