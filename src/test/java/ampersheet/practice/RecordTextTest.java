package ampersheet.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.practice.Attempt.Slip;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class RecordTextTest {
    private static final long SEED = Long.getLong("ampersheet.practice.seed", 20_261_129L);

    /** What a learner may do, at random, on some days. */
    private static Practice some(Practice from, Random random, int events) {
        Practice practice = from;
        int day = Lessons.MONDAY + random.nextInt(5);
        for (int i = 0; i < events; i++) {
            day += random.nextInt(8) == 0 ? 1 : 0;
            List<String> places = Lessons.places(practice);
            practice = switch (random.nextInt(10)) {
                case 0 -> practice.goOn(day, random.nextInt(6));
                case 1 -> practice.another(day, random.nextInt(6));
                case 2 -> practice.choose(random.nextInt(3), day, 0);
                case 3 -> Lessons.wrong(practice, random.nextBoolean() ? "sure" : "", day);
                case 4, 5 -> Lessons.solve(practice, day);
                case 6 -> practice.showSolution(day);
                case 7 ->
                    practice.nextHint(Lessons.key(), places).map(practice::take).orElse(practice);
                case 8 ->
                    practice.support(List.of("auto", "full", "faded", "bare").get(random.nextInt(4)));
                default -> practice.type(places.get(0), "draft\n" + random.nextInt(9) + " = \\n\\");
            };
        }
        return practice;
    }

    @Test
    void everyRecordReadsBackAsItWasWritten() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            LearnerRecord record = some(Lessons.start(Lessons.course("A", "B", "C")), random, random.nextInt(40))
                    .record();
            String text = RecordText.write(record);
            assertEquals(record, RecordText.read(text), "seed " + SEED + ", record " + i);
            assertEquals(record, RecordText.read(text.replace("\n", "\r\n")));
        }
    }

    @Test
    void aRecordIsReadWhateverBecameOfItsEmptyLinesAndOfTheEndsOfItsLines() {
        Random random = new Random(SEED);
        for (int i = 0; i < 50; i++) {
            LearnerRecord record = some(Lessons.start(Lessons.course("A", "B", "C")), random, random.nextInt(40))
                    .record();
            String text = RecordText.write(record);
            String told = "seed " + SEED + ", record " + i + "\n" + text;
            assertEquals(record, RecordText.read(text.replaceAll("\n\n+", "\n")), told);
            assertEquals(
                    record, RecordText.read(text.replaceAll("\n\n+", "\r\n").strip()), told);
            assertEquals(record, RecordText.read("\n \n" + text.replace("\n", "\n\n") + "\n\t\n"), told);
            assertEquals(record, RecordText.read(text.replaceAll("(?m)^(?!typed)(.*)$", " $1 \t\u00a0")), told);
        }
        assertTrue(told("Ampersheet practice record, version 1\n\n\n\nset A\nsupport no 0 -\n")
                .startsWith("Line 6 of"));
    }

    @Test
    void joiningIsTheSameInAnyOrderAndHoweverOftenAndLosesNothing() {
        Random random = new Random(SEED);
        for (int i = 0; i < 100; i++) {
            String told = "seed " + SEED + ", round " + i;
            Practice common = some(Lessons.start(Lessons.course("A", "B", "C")), random, random.nextInt(15));
            List<LearnerRecord> copies = new ArrayList<>();
            for (String writer : List.of("phone", "desk", "lab")) {
                Practice own = new Practice(common.course(), common.record(), writer, common.current());
                copies.add(some(own, random, random.nextInt(25)).record());
            }
            LearnerRecord a = copies.get(0);
            LearnerRecord b = copies.get(1);
            LearnerRecord c = copies.get(2);
            LearnerRecord all = a.joined(b).joined(c);
            assertEquals(all, c.joined(a).joined(b), told);
            assertEquals(all, a.joined(b.joined(c)), told);
            assertEquals(all, all.joined(b).joined(all), told);
            for (LearnerRecord copy : copies) {
                copy.attempts().forEach((id, attempt) -> {
                    Attempt joined = all.attempts().get(id);
                    assertTrue(joined.slips().containsAll(attempt.slips()), told);
                    attempt.help()
                            .forEach((about, level) -> assertTrue(joined.help().get(about) >= level, told));
                    assertTrue(attempt.ending().isEmpty() || joined.ending().isPresent(), told);
                    if (!joined.left()) {
                        assertTrue(
                                joined.typed()
                                        .keySet()
                                        .containsAll(attempt.typed().keySet()),
                                told);
                    }
                });
            }
        }
    }

    @Test
    void twoTabsThatTypeIntoOneProblemBothKeepWhatTheyTyped() {
        Practice common = Lessons.start(Lessons.course("A"));
        Practice one = new Practice(common.course(), common.record(), "one", common.current()).type("a", "400 ohm");
        Practice other = new Practice(common.course(), common.record(), "two", common.current()).type("b", "96 mW");
        Practice joined = one.joined(other.record());
        assertEquals("400 ohm", joined.attempt().text("a"));
        assertEquals("96 mW", joined.attempt().text("b"));
    }

    @Test
    void aFormWithLessSupportStaysChosenWhenRecordsAreJoined() {
        Practice practice = Lessons.start(Lessons.course("A", "B"));
        Practice bare = practice.support("bare");
        assertEquals(Form.BARE, bare.joined(practice.record()).form());
        assertEquals(
                Form.BARE,
                new Practice(practice.course(), practice.record(), "other", practice.current())
                        .joined(bare.record())
                        .form());
    }

    @Test
    void theTextIsReadByAPersonAndNamesItsVersion() {
        Practice practice = Lessons.wrong(Lessons.start(Lessons.course("series resistor")), "unsure", Lessons.MONDAY);
        assertEquals("""
        Ampersheet practice record, version 1
        set SET-1
        support auto 0 -

        problem tab.1
        skill series resistor
        template family/series resistor-one
        variant 0
        given 2024-10-04 1 tab
        form 1 tab full
        slip 2024-10-04 5 tab no-forward-voltage unsure a
        typed 3 tab a = 529 ohm
        """, withoutOtherPlaces(RecordText.write(practice.record())));
    }

    /** A map has no order: the moments of three places typed at once are left out, but for the one that matters. */
    private static String withoutOtherPlaces(String text) {
        return text.replaceAll("typed \\d tab (b|step 1) = .*\n", "")
                .replaceAll("typed \\d tab a", "typed 3 tab a")
                .replaceAll("checked .*\n", "");
    }

    @Test
    void whatIsNoRecordIsToldInWordsWithItsLine() {
        String text = RecordText.write(Lessons.wrong(Lessons.start(Lessons.course("A")), "", Lessons.MONDAY)
                .record());
        assertTrue(told("a shopping list").contains("not a practice record"), told("a shopping list"));
        assertTrue(told("").contains("not a practice record"));
        assertTrue(told(text.replace("version 1", "version 2")).contains("version 2; this page reads version 1"));
        assertTrue(told(text.replace("variant 0", "variant many")).startsWith("Line 8 of the record does not fit"));
        assertTrue(told(text.replace("2024-10-04", "2024-02-30")).contains("there is no day 2024-02-30"));
        assertTrue(told(text.replace("tab full", "tab loose")).contains("full, faded and a number, bare or faulty"));
        for (int cut = text.length() - 1; cut > 60; cut -= 7) {
            // Either a shorter record, or a sentence: never anything else.
            try {
                RecordText.read(text.substring(0, cut));
            } catch (UnfitText unfit) {
                String sentence = unfit.said(Languages.ENGLISH);
                assertTrue(sentence.endsWith("from its first line to its last."), sentence);
            }
        }
    }

    private static String told(String text) {
        return assertThrows(UnfitText.class, () -> RecordText.read(text)).said(Languages.ENGLISH);
    }

    @Test
    void daysAreThoseOfTheCalendar() {
        assertEquals("1970-01-01", Day.written(0));
        for (int day = -200_000; day < 200_000; day += 37) {
            assertEquals(java.time.LocalDate.ofEpochDay(day).toString(), Day.written(day));
            assertEquals(day, Day.read(Day.written(day)));
        }
    }

    @Test
    void theSameSlipCheckedTwiceCountsOnceAndAnotherOneMore() {
        Practice once = Lessons.wrong(Lessons.start(Lessons.course("A")), "", Lessons.MONDAY);
        Practice twice = once.check(Lessons.key(), Lessons.FULL, "", Lessons.MONDAY);
        assertEquals(1, twice.attempt().slips().size());
        Practice changed = twice.type("a", "530 ohm").check(Lessons.key(), Lessons.FULL, "", Lessons.MONDAY);
        assertEquals(2, changed.attempt().slips().size());
        assertEquals(
                new TreeSet<>(List.of("no-forward-voltage")),
                new TreeSet<>(
                        changed.attempt().slips().stream().map(Slip::cause).toList()));
        assertEquals(
                Map.of("no-forward-voltage", 2),
                Map.of(
                        changed.mistakes().get(0).cause(),
                        changed.mistakes().get(0).times()));
    }
}
