package ampersheet.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LanguageTest {
    private static final Language SPOKEN = new Language("en", sentences());

    private static Map<String, String> sentences() {
        Map<String, String> sentences = new LinkedHashMap<>();
        sentences.put("list.comma", ", ");
        sentences.put("list.and", " and ");
        sentences.put("list.or", " or ");
        sentences.put("number.1", "one");
        sentences.put("number.2", "two");
        sentences.put("tile.left.one", "{number} tile is left at {place}");
        sentences.put("tile.left.other", "{count} tiles are left at {place}");
        sentences.put("tile.lines", "one\ntwo");
        sentences.put("tile.both", "{b} after {a}, and {b} again");
        return sentences;
    }

    @Test
    void slotsAreFilledByNameInWhateverOrderTheSentenceHasThem() {
        assertEquals("two after one, and two again", SPOKEN.say("tile.both", "a", "one", "b", "two"));
        assertEquals(List.of("b", "a", "b"), SPOKEN.slots("tile.both"));
    }

    @Test
    void aNumberChoosesTheForm() {
        assertEquals("one tile is left at A", SPOKEN.count("tile.left", 1, "place", "A"));
        assertEquals("2 tiles are left at A", SPOKEN.count("tile.left", 2, "place", "A"));
        assertEquals("0 tiles are left at A", withZero().count("tile.left", 0, "place", "A"));
        assertEquals("two", SPOKEN.number(2));
        assertEquals("13", SPOKEN.number(13));
        assertEquals("-1", SPOKEN.number(-1));
    }

    private static Language withZero() {
        Map<String, String> more = sentences();
        more.put("number.0", "no");
        return new Language("en", more);
    }

    @Test
    void listsAreJoinedAsTheLanguageDoes() {
        assertEquals("", SPOKEN.all(List.of()));
        assertEquals("a", SPOKEN.all(List.of("a")));
        assertEquals("a and b", SPOKEN.all(List.of("a", "b")));
        assertEquals("a, b or c", SPOKEN.either(List.of("a", "b", "c")));
    }

    @Test
    void whatIsFilledInMayHoldBraces() {
        assertEquals("{a} after {b}, and {a} again", SPOKEN.say("tile.both", "a", "{b}", "b", "{a}"));
    }

    @Test
    void aMissingSentenceOrSlotIsAFaultOfTheProgramAndSaysWhich() {
        IllegalStateException none = assertThrows(IllegalStateException.class, () -> SPOKEN.say("tile.none"));
        assertTrue(none.getMessage().contains("tile.none"), none.getMessage());
        IllegalStateException slot = assertThrows(IllegalStateException.class, () -> SPOKEN.say("tile.both", "a", "1"));
        assertTrue(slot.getMessage().contains("{b}"), slot.getMessage());
    }

    @Test
    void theFacesOfAPageTravelAsOneText() {
        Language read = Language.read("en", SPOKEN.written(List.of("tile", "list")));
        assertEquals(SPOKEN.say("tile.both", "a", "1", "b", "2"), read.say("tile.both", "a", "1", "b", "2"));
        assertEquals(" or ", read.say("list.or"));
        assertEquals("one\ntwo", read.say("tile.lines"));
        assertEquals(7, read.keys().size());
        assertThrows(IllegalArgumentException.class, () -> Language.read("en", "no tab\n"));
        assertThrows(IllegalArgumentException.class, () -> Language.read("en", "key\tno end"));
    }

    @Test
    void aSayingIsSaidInAnyLanguage() {
        Saying saying = Saying.of("tile.both", "a", "1", "b", "2");
        assertEquals("2 after 1, and 2 again", SPOKEN.say(saying));
        assertEquals("2 after 1, and 2 again 2 after 1, and 2 again", SPOKEN.say(List.of(saying, saying)));
    }
}
