package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class WordingTest {
    @Test
    void aPhraseBecomesASentence() {
        assertEquals("The LED takes its share.", Wording.sentence("the LED takes its share"));
        assertEquals("A row runs back.", Wording.sentence("a row runs back"));
        assertEquals("Done already.", Wording.sentence("Done already."));
        assertEquals("Is it?", Wording.sentence("is it?"));
        assertEquals("", Wording.sentence("  "));
    }

    @Test
    void aSymbolAtTheStartKeepsItsLetters() {
        for (String phrase :
                new String[] {"n tiles share a row", "mA is the unit", "pH value", "x1 comes first", "kΩ and Ω"}) {
            assertEquals(phrase, Wording.capitalised(phrase));
        }
    }

    @Test
    void aWordWithAccentsHyphensOrApostrophesGetsItsCapital() {
        assertEquals("Écart of the routes", Wording.capitalised("écart of the routes"));
        assertEquals("Half-open relay", Wording.capitalised("half-open relay"));
        assertEquals("Ohm's law", Wording.capitalised("ohm's law"));
    }

    @Test
    void controlCharactersAndLoneSurrogatesAreReplaced() {
        assertEquals("a b\uFFFDc\uFFFD", Wording.oneLine("a\nb\u0000c\uD800"));
        assertEquals("\uFFFDlive", Wording.oneLine("\u202Elive"), "or a name could make a key look like a sheet");
        assertEquals("a\nb\nc\td", Wording.lines("a\r\nb\rc\td"));
        assertEquals("\uD83D\uDE00", Wording.oneLine("\uD83D\uDE00"));
    }
}
