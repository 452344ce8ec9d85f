package ampersheet.render;

import ampersheet.language.Language;
import ampersheet.source.Languages;
import java.util.function.Predicate;

/**
 * Lines that stand on every sheet or key, by which a file that comes back is read: in whatever language it was made.
 */
public final class PrintedLines {
    private PrintedLines() {}

    /** Whether the line says that the page is a key. */
    public static boolean isKeyNotice(String line) {
        return inAny(language -> language.say("print.key-notice").equals(line));
    }

    /** Whether the line stands between a question and its options. */
    public static boolean isAboveOptions(String line) {
        return inAny(language -> language.say("print.tick-one").equals(line));
    }

    /** What stands in such a line in the place of the sheet ID; empty if it is another line. */
    public static String sheetId(String line) {
        for (String code : Languages.codes()) {
            String said = Languages.of(code).orElseThrow().say("print.sheet", "sheet", Slots.mark(0));
            int slot = said.indexOf(Slots.mark(0));
            String before = said.substring(0, slot);
            String behind = said.substring(slot + 1);
            if (line.length() > before.length() + behind.length() && line.startsWith(before) && line.endsWith(behind)) {
                return line.substring(before.length(), line.length() - behind.length())
                        .strip();
            }
        }
        return "";
    }

    private static boolean inAny(Predicate<Language> says) {
        return Languages.codes().stream()
                .map(code -> Languages.of(code).orElseThrow())
                .anyMatch(says);
    }
}
