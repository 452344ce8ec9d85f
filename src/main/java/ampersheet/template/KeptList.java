package ampersheet.template;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Lists of the built-in templates, made when the program is built: reading and checking all of them takes seconds, and
 * whoever wants a list has not chosen one yet. They hold only for the very files they were made from.
 */
public final class KeptList {
    private KeptList() {}

    /** Keeps a list among the classes, as the program is built. */
    public static void keep(Path classes, String file, String list) throws IOException {
        Files.writeString(classes.resolve(file), Now.FINGERPRINT + "\n" + list);
    }

    /** Empty where the list was made from other files, or was not made. */
    public static Optional<String> read(String file) {
        URL place = KeptList.class.getClassLoader().getResource(file);
        if (place == null) {
            return Optional.empty();
        }
        try (InputStream in = place.openStream()) {
            String list = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            int end = list.indexOf('\n');
            boolean packedTogether =
                    !place.getProtocol().equals("file"); // else an author may be at work on the files beside it
            return packedTogether || list.substring(0, end).equals(Now.FINGERPRINT)
                    ? Optional.of(list.substring(end + 1))
                    : Optional.empty();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Of the files as this run of the program reads them; it keeps what it has read. */
    private static final class Now {
        static final String FINGERPRINT = fingerprint();
    }

    private static String fingerprint() {
        TemplateFiles files = TemplateFiles.builtIn();
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
        for (String template : files.names()) {
            for (String file : files.files(template)) {
                add(digest, template + "/" + file);
                add(digest, files.text(template, file).orElseThrow());
            }
        }
        add(digest, files.limits().orElse(""));
        return HexFormat.of().formatHex(digest.digest());
    }

    private static void add(MessageDigest digest, String text) {
        digest.update(text.getBytes(StandardCharsets.UTF_8));
        digest.update((byte) 0);
    }
}
