package ampersheet.command;

import ampersheet.template.TemplateFiles;
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
 * The list of the built-in templates, made when the program is built: reading and checking all of them takes seconds,
 * and whoever wants the list has not chosen one yet. It holds only for the very files it was made from.
 */
public final class BuiltInList {
    private static final String RESOURCE = "templates-list";

    private BuiltInList() {}

    /** @param arguments the folder of classes, to which the list is added */
    public static void main(String[] arguments) throws IOException {
        Path classes = Path.of(arguments[0]);
        for (boolean json : new boolean[] {false, true}) {
            Files.writeString(classes.resolve(file(json)), fingerprint() + "\n" + TemplatesCommand.list(json));
        }
    }

    /** What the command prints; empty where the list was made from other files, or was not made. */
    static Optional<String> kept(boolean json) {
        URL place = BuiltInList.class.getClassLoader().getResource(file(json));
        if (place == null) {
            return Optional.empty();
        }
        try (InputStream in = place.openStream()) {
            String list = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            int end = list.indexOf('\n');
            boolean packedTogether =
                    place.getProtocol().equals("jar"); // else an author may be at work on the files beside it
            return packedTogether || list.substring(0, end).equals(fingerprint())
                    ? Optional.of(list.substring(end + 1))
                    : Optional.empty();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static String file(boolean json) {
        return RESOURCE + (json ? ".json" : ".txt");
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
