package ampersheet.render.pdf;

import com.openhtmltopdf.bidi.BidiReorderer;
import com.openhtmltopdf.bidi.BidiSplitter;
import com.openhtmltopdf.bidi.BidiTextRun;
import java.lang.Character.UnicodeScript;
import java.text.Bidi;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Names in other scripts than that of the page: which way they run (Unicode Standard Annex 9) and how the letters of
 * Arabic are joined. Scripts whose letters change places or grow together by rules of a font are not set: such a name
 * is refused, for it would be printed wrong.
 */
final class Writing implements BidiReorderer {
    private static final Set<UnicodeScript> SET = EnumSet.of(
            UnicodeScript.COMMON,
            UnicodeScript.INHERITED,
            UnicodeScript.LATIN,
            UnicodeScript.GREEK,
            UnicodeScript.CYRILLIC,
            UnicodeScript.ARMENIAN,
            UnicodeScript.GEORGIAN,
            UnicodeScript.HEBREW,
            UnicodeScript.ARABIC,
            UnicodeScript.HAN,
            UnicodeScript.HIRAGANA,
            UnicodeScript.KATAKANA,
            UnicodeScript.BOPOMOFO,
            UnicodeScript.HANGUL,
            UnicodeScript.ETHIOPIC,
            UnicodeScript.CHEROKEE,
            UnicodeScript.CANADIAN_ABORIGINAL,
            UnicodeScript.YI);

    private static final char NON_JOINER = '\u200C';
    private static final char JOINER = '\u200D';
    private static final char SOFT_HYPHEN = '\u00AD';
    /** Each followed by the one that it looks like from the other side. */
    private static final String MIRRORED = "()[]{}<>«»‹›";

    static boolean runsRightToLeft(String text) {
        return text.codePoints().anyMatch(c -> {
            byte direction = Character.getDirectionality(c);
            return direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                    || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
        });
    }

    /** Characters that would be printed wrong, whatever the fonts hold. */
    static Set<String> notSet(String text) {
        Set<String> wrong = new TreeSet<>();
        text.codePoints()
                .filter(c -> !SET.contains(UnicodeScript.of(c)) || isHidden(c) || ArabicJoining.isWithoutForms(c))
                .forEach(c -> wrong.add(isHidden(c) ? named(c) : Character.toString(c)));
        return wrong;
    }

    private static String named(int c) {
        String digits = Integer.toHexString(c).toUpperCase(Locale.ROOT);
        return "U+" + "0".repeat(Math.max(0, 4 - digits.length())) + digits;
    }

    /** Orders that nobody sees, such as to run the other way. */
    private static boolean isHidden(int c) {
        return Character.getType(c) == Character.FORMAT && c != NON_JOINER && c != JOINER && c != SOFT_HYPHEN;
    }

    @Override
    public String shapeText(String text) {
        return ArabicJoining.join(text);
    }

    @Override
    public String deshapeText(String text) {
        return ArabicJoining.part(text);
    }

    @Override
    public String reorderRTLTextToLTR(String text) {
        StringBuilder turned = new StringBuilder(text).reverse();
        for (int i = 0; i < turned.length(); i++) {
            int pair = MIRRORED.indexOf(turned.charAt(i));
            if (pair >= 0) {
                turned.setCharAt(i, MIRRORED.charAt(pair ^ 1));
            }
        }
        return turned.toString();
    }

    @Override
    public boolean isLiveImplementation() {
        return true;
    }

    /** A paragraph in pieces that run one way each, in the order in which they are seen. */
    static final class Directions implements BidiSplitter {
        private BidiTextRun[] runs = {};

        @Override
        public void setParagraph(String paragraph, byte direction) {
            Bidi bidi = new Bidi(
                    paragraph,
                    direction == RTL
                            ? Bidi.DIRECTION_RIGHT_TO_LEFT
                            : direction == LTR ? Bidi.DIRECTION_LEFT_TO_RIGHT : Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
            runs = new BidiTextRun[bidi.getRunCount()];
            byte[] levels = new byte[runs.length];
            for (int i = 0; i < runs.length; i++) {
                levels[i] = (byte) bidi.getRunLevel(i);
                runs[i] = new BidiTextRun(
                        bidi.getRunStart(i), bidi.getRunLimit(i) - bidi.getRunStart(i), levels[i] % 2 == 0 ? LTR : RTL);
            }
            if (runs.length > 0) {
                Bidi.reorderVisually(levels, 0, runs, 0, runs.length);
            }
        }

        @Override
        public int countTextRuns() {
            return runs.length;
        }

        @Override
        public BidiTextRun getVisualRun(int index) {
            return runs[index];
        }

        @Override
        public byte getBaseDirection(String paragraph) {
            return new Bidi(paragraph, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT).baseIsLeftToRight() ? LTR : RTL;
        }
    }
}
