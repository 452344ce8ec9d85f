package ampersheet.template;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.YamlReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** What a template, its folder and its files may be called, and how their bytes become text. */
final class FileNames {
    static final int MOST_BYTES = YamlReader.MOST_CHARACTERS;

    private FileNames() {}

    /** Whether a name is {@code family/name}: lower-case letters, digits and single hyphens. */
    static boolean isTemplate(String name) {
        int slash = name.indexOf('/');
        return slash > 0 && isFolder(name.substring(0, slash)) && isFolder(name.substring(slash + 1));
    }

    static boolean isFolder(String name) {
        if (name.isEmpty() || name.charAt(0) == '-' || name.charAt(name.length() - 1) == '-') {
            return false;
        }
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            if (!(c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '-')) {
                return false;
            }
        }
        return true;
    }

    /** A plain file name: no path, not hidden. */
    static boolean isPlain(String file) {
        return !file.isEmpty()
                && file.charAt(0) != '.'
                && file.indexOf('/') < 0
                && file.indexOf('\\') < 0
                && file.indexOf('\0') < 0;
    }

    static void require(String template, String file) {
        if (!isTemplate(template)) {
            throw new IllegalArgumentException("not a template name (family/name): " + template);
        }
        if (!isPlain(file)) {
            throw new IllegalArgumentException("not a plain file name: " + file);
        }
    }

    /** UTF-8 to text, line ends to line feeds: a checkout under another system must not be another template. */
    static String decode(byte[] bytes, String shown) {
        if (bytes.length > MOST_BYTES) {
            throw new DiagnosticException(tooLarge(shown));
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            String plain = text.replace("\r\n", "\n").replace('\r', '\n');
            return plain.startsWith("\uFEFF") ? plain.substring(1) : plain;
        } catch (CharacterCodingException malformed) {
            throw new DiagnosticException(Diagnostic.error(
                    notUtf8(bytes, shown),
                    "the file is not UTF-8 text",
                    "text in UTF-8",
                    "Save the file again with the encoding UTF-8."));
        }
    }

    static Diagnostic tooLarge(String shown) {
        return Diagnostic.error(
                Place.inFile(shown),
                "the file is larger than " + MOST_BYTES + " bytes",
                "a template of some hundred lines",
                "Shorten the file or split it into several templates.");
    }

    /** The line of the first byte that does not fit. */
    private static Place notUtf8(byte[] bytes, String shown) {
        int good = 0;
        int line = 1;
        while (good < bytes.length) {
            int next = good + 1;
            while (next < bytes.length && (bytes[next] & 0xC0) == 0x80) {
                next++;
            }
            String piece = new String(bytes, good, next - good, StandardCharsets.UTF_8);
            if (piece.indexOf('\uFFFD') >= 0) {
                return new Place(shown, line, 0, "");
            }
            if (bytes[good] == '\n') {
                line++;
            }
            good = next;
        }
        return Place.inFile(shown);
    }
}
