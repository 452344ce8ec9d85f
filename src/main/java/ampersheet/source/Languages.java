package ampersheet.source;

import ampersheet.language.Language;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeMap;

/**
 * The languages that the program speaks. Each is a folder of property files in UTF-8 among the resources of the room
 * {@code language}, one for each face; all their keys begin with the file's name.
 */
public final class Languages {
    /** In the order in which a language is put together. */
    private static final List<String> FACES = List.of(
            "common",
            "reading",
            "verdict",
            "practice",
            "page",
            "sheet",
            "print",
            "problem",
            "figure",
            "spoken",
            "report",
            "name",
            "rule");

    private static final List<String> CODES = List.of("en", "de");
    private static final Map<String, Language> READ = new TreeMap<>();

    /** The one whose sentences the authors of the program write first. */
    public static final Language ENGLISH = of("en").orElseThrow();

    private Languages() {}

    /** Tags of all of them. */
    public static List<String> codes() {
        return CODES;
    }

    /** @param code such as {@code en} */
    public static Optional<Language> of(String code) {
        synchronized (READ) {
            return CODES.contains(code) ? Optional.of(READ.computeIfAbsent(code, Languages::read)) : Optional.empty();
        }
    }

    private static Language read(String code) {
        return read(code, FACES);
    }

    /** The sentences of some faces only. */
    static Language read(String code, List<String> faces) {
        Map<String, String> sentences = new TreeMap<>();
        for (String face : faces) {
            Properties written = new Properties();
            String file = "/ampersheet/language/" + code + "/" + face + ".properties";
            try (InputStream bytes = Languages.class.getResourceAsStream(file)) {
                if (bytes == null) {
                    throw new IllegalStateException("the program has lost its file " + file);
                }
                Reader text = new InputStreamReader(bytes, StandardCharsets.UTF_8);
                written.load(text);
            } catch (IOException broken) {
                throw new UncheckedIOException(broken);
            }
            written.stringPropertyNames().forEach(key -> sentences.put(key, written.getProperty(key)));
        }
        return new Language(code, sentences);
    }
}
