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
    void aNumberKeepsItsUnitOnItsLine() {
        assertEquals("from 30\u00a0% to 70\u00a0%, 5\u00a0K/W,", Wording.bound("from 30 % to 70 %, 5 K/W,"));
        assertEquals("1.5\u00a0V.", Wording.bound("1.5 V."));
        assertEquals("4 tiles, 5 is, R1 V", Wording.bound("4 tiles, 5 is, R1 V").replace('\u00a0', ' '));
        assertEquals("all 6 boards", Wording.bound("all 6 boards"));
        assertEquals("7 ", Wording.bound("7 "));
    }

    @Test
    void controlCharactersAndLoneSurrogatesAreReplaced() {
        assertEquals("a b\uFFFDc\uFFFD", Wording.oneLine("a\nb\u0000c\uD800"));
        assertEquals("\uFFFDlive", Wording.oneLine("\u202Elive"), "or a name could make a key look like a sheet");
        assertEquals("a\nb\nc\td", Wording.lines("a\r\nb\rc\td"));
        assertEquals("\uD83D\uDE00", Wording.oneLine("\uD83D\uDE00"));
    }
}
