package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.language.Language;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a file that comes back is read by, and how sentences are taken apart. */
class PrintedLinesTest {
    @Test
    void aSheetIsKnownAgainInEveryLanguage() {
        for (String code : Languages.codes()) {
            Language language = Languages.of(code).orElseThrow();
            assertEquals(List.of("sheet"), language.slots("print.sheet"), code);
            String line = language.say("print.sheet", "sheet", "A7K3M-042");
            assertEquals("A7K3M-042", PrintedLines.sheetId(line), code);
            assertTrue(PrintedLines.isKeyNotice(language.say("print.key-notice")), code);
            assertTrue(PrintedLines.isAboveOptions(language.say("print.tick-one")), code);
        }
        assertEquals("", PrintedLines.sheetId("Sheet"));
        assertEquals("", PrintedLines.sheetId("Sheets A7K3M-042"));
        assertFalse(PrintedLines.isKeyNotice("Key"));
    }

    @Test
    void slotsMayComeInAnyOrder() {
        assertEquals(List.of("page ", "7", " of ", "9"), parts("page " + Slots.mark(0) + " of " + Slots.mark(1)));
        assertEquals(List.of("9", " pages, this is ", "7"), parts(Slots.mark(1) + " pages, this is " + Slots.mark(0)));
        assertEquals(List.of("no page"), parts("no page"));
    }

    private static List<String> parts(String sentence) {
        List<String> parts = new ArrayList<>();
        Slots.write(sentence, parts::add, () -> parts.add("7"), () -> parts.add("9"));
        return parts;
    }
}
