package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class SheetIdTest {
    private static final String PLAN = "A7";
    private static final String TEMPLATES = "K3M";
    private static final SheetIdReader READER = new SheetIdReader(PLAN, TEMPLATES, "plan.yaml");
    private static final long SEED = 20_260_101;

    private static String issued(int seat) {
        return new SheetId(PLAN, TEMPLATES, seat).toString();
    }

    private static boolean accepted(String typed) {
        try {
            READER.read(typed);
            return true;
        } catch (DiagnosticException refused) {
            return false;
        }
    }

    private static String refusal(String typed) {
        return assertThrows(DiagnosticException.class, () -> READER.read(typed)).getMessage();
    }

    /**
     * The identifier A1-2425G-ABC1234002-M is the example of the Global Release Identifier, a music industry standard
     * whose check character is ISO/IEC 7064 MOD 37,36 (from memory).
     */
    /** With 1 set of 2,000 the search for a padding that catches every swap never ended. */
    @Test
    void everySetAndSeatHasAnIdThatIsPrintedAsIdsAre() {
        assertEquals("KTAQZ-0166-5", new SheetId("KT", "AQZ", 166).toString());
        assertTrue(SheetId.PRINTED
                .matcher(new SheetId("MS", "7RC", 823_554).toString())
                .matches());
        long seed = 20_261_130L;
        Random random = new Random(seed);
        int letPass = 0;
        for (int i = 0; i < 60_000; i++) {
            StringBuilder set = new StringBuilder();
            for (int k = 0; k < 5; k++) {
                set.append(SheetId.ALPHABET.charAt(random.nextInt(32)));
            }
            int seat = 1 + random.nextInt(i % 2 == 0 ? 300 : SheetId.LAST_SEAT);
            String id = new SheetId(set.substring(0, 2), set.substring(2), seat).toString();
            assertTrue(SheetId.PRINTED.matcher(id).matches(), id + ", seed " + seed);
            String whole = id.replace("-", "");
            for (int at = 5; at + 1 < whole.length() && seat <= 300; at++) {
                assertTrue(
                        whole.charAt(at) == whole.charAt(at + 1) || !CheckCharacter.fits(SheetId.swapped(whole, at)),
                        id + ", swap at " + at + ", seed " + seed);
            }
            letPass += whole.charAt(4) != whole.charAt(5) && CheckCharacter.fits(SheetId.swapped(whole, 4)) ? 1 : 0;
        }
        assertTrue(letPass < 60, letPass + " sets of 60 000 miss a swap over the hyphen");
    }

    @Test
    void theCheckCharacterIsThatOfTheStandard() {
        assertEquals('M', CheckCharacter.of("A12425GABC1234002"));
        assertTrue(CheckCharacter.fits("A12425GABC1234002M"));
        assertFalse(CheckCharacter.fits("A12425GABC1234003M"));
    }

    @Test
    void everyIssuedIdIsReadBack() {
        Set<String> all = new TreeSet<>();
        for (int seat = 1; seat <= 20_000; seat++) {
            String id = issued(seat);
            assertEquals(seat, READER.read(id).seat());
            assertTrue(all.add(id), "two seats share " + id);
        }
        assertEquals(SheetId.LAST_SEAT, READER.read(issued(SheetId.LAST_SEAT)).seat());
    }

    @Test
    void aSeatIsPaddedToThreeDigitsAndSeldomMore() {
        int longer = 0;
        for (int seat = 1; seat < 1000; seat++) {
            int digits = issued(seat).length() - "A7K3M--X".length();
            assertTrue(digits >= 3 && digits <= 5, issued(seat));
            longer += digits > 3 ? 1 : 0;
        }
        assertTrue(longer < 250, longer + " of 999 are longer");
    }

    @Test
    void noLookAlikeIsPrinted() {
        for (int seat = 1; seat <= 20_000; seat++) {
            String id = issued(seat);
            assertTrue(id.chars().noneMatch(c -> "ILOU".indexOf(c) >= 0), id);
        }
    }

    @Test
    void everySingleWrongCharacterIsCaught() {
        for (int seat : new int[] {1, 7, 10, 12, 21, 99, 123, 987, 1_000, 54_321}) {
            String id = new SheetId(PLAN, TEMPLATES, seat).characters();
            for (int i = 0; i < id.length(); i++) {
                for (int a = 0; a < SheetId.ALPHABET.length(); a++) {
                    char c = SheetId.ALPHABET.charAt(a);
                    if (c != id.charAt(i)) {
                        String wrong = id.substring(0, i) + c + id.substring(i + 1);
                        assertFalse(CheckCharacter.fits(wrong), wrong + " passes the check of " + id);
                        assertFalse(accepted(wrong), wrong + " is read although " + id + " was issued");
                    }
                }
            }
        }
    }

    @Test
    void everySwapOfNeighboursIsCaught() {
        for (int seat = 1; seat <= (Boolean.getBoolean("ampersheet.deep") ? 5_000 : 1_000); seat++) {
            String id = new SheetId(PLAN, TEMPLATES, seat).characters();
            for (int i = 0; i + 1 < id.length(); i++) {
                if (id.charAt(i) != id.charAt(i + 1)) {
                    String wrong = SheetId.swapped(id, i);
                    assertFalse(accepted(wrong), wrong + " is read although " + id + " was issued");
                }
            }
        }
    }

    @Test
    void readingForgivesCaseLookAlikesBlanksAndHyphens() {
        Random random = new Random(SEED);
        for (int n = 0; n < 2_000; n++) {
            int seat = 1 + random.nextInt(5_000);
            String typed =
                    issued(seat).replace("-", random.nextBoolean() ? "" : random.nextBoolean() ? " " : " \u2013 ");
            if (random.nextBoolean()) {
                typed = typed.replace('0', 'O').replace('1', random.nextBoolean() ? 'I' : 'L');
            }
            if (random.nextBoolean()) {
                typed = typed.toLowerCase(Locale.ROOT);
            }
            assertEquals(seat, READER.read(" " + typed + "\t").seat(), "seed " + SEED + ", typed " + typed);
        }
    }

    @Test
    void aSlipIsRefusedWithTheIdItMayHaveBeen() {
        String id = issued(12);
        String swapped = SheetId.swapped(id.replace("-", ""), 6);
        assertTrue(refusal(swapped).contains(id), refusal(swapped));
        String wrong = "B" + id.substring(1);
        assertTrue(refusal(wrong).contains(id), refusal(wrong));
        String missing = id.substring(0, 3) + id.substring(4);
        assertTrue(refusal(missing).contains(id), refusal(missing));
    }

    @Test
    void anIdOfAnotherPlanHasItsOwnMessage() {
        String message = refusal(new SheetId("Z9", "Q4R", 7).toString());
        assertTrue(message.contains("another plan than plan.yaml"), message);
        assertTrue(message.contains("begin with A7K3M"), message);
    }

    @Test
    void anIdOfAnOlderTemplateVersionHasItsOwnMessage() {
        String message = refusal(new SheetId(PLAN, "Q4R", 7).toString());
        assertTrue(message.contains("another version of its templates"), message);
    }

    @Test
    void aForeignCharacterIsPointedAt() {
        String message = refusal("A7K3M-0u7-X");
        assertTrue(message.contains("no character “u”"), message);
        assertTrue(message.startsWith("sheet ID:1:8: error"), message);
    }

    @Test
    void tooShortATextIsRefused() {
        assertTrue(refusal("").contains("too short"));
        assertTrue(refusal("A7K3M").contains("too short"));
    }
}
