package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the system makes of letters beyond English before the program sees them. Under a setting such as LC_ALL=C Java
 * has lost them in arguments, and opens no file whose name has one. Arguments are read again from where the system
 * keeps them; a name that cannot be opened is refused with the setting that lets it be, before anything is judged.
 *
 * @param names the charset of arguments and of names of files
 * @param texts the charset that libraries take where they are told none
 * @param folder the present one
 * @param windows where names of files have a charset of their own, and this one does not count
 */
record Surroundings(String names, String texts, String folder, boolean windows) {
    private static final Path COMMAND_LINE = Path.of("/proc/self/cmdline");

    private static final String EXAMPLE = "  LC_ALL=C.UTF-8 java -jar …";
    private static final int DEPTH = 4;
    /** What Java puts in place of a letter that it could not read. */
    private static final char LOST = '\ufffd';

    static Surroundings present() {
        return new Surroundings(
                System.getProperty("sun.jnu.encoding", "UTF-8"),
                System.getProperty("file.encoding", "UTF-8"),
                System.getProperty("user.dir", ""),
                System.getProperty("os.name", "").startsWith("Windows"));
    }

    /** Whether what is said on the stream of errors is seen at once, by somebody at a terminal. */
    @SuppressWarnings("SystemConsoleNull") // never so on Java 22 and later: there, progress is told too often
    static boolean isTerminal() {
        try {
            String errors = Files.readSymbolicLink(Path.of("/proc/self/fd/2")).toString();
            return errors.startsWith("/dev/pts/") || errors.startsWith("/dev/tty");
        } catch (IOException | UnsupportedOperationException otherSystem) {
            return System.console() != null;
        }
    }

    /**
     * @throws WrongUsage if the present folder cannot be named, or libraries would write something else than letters
     */
    void require() {
        if (!Arrays.equals(
                "%PDF-1.7".getBytes(Charset.forName(texts)), "%PDF-1.7".getBytes(StandardCharsets.US_ASCII))) {
            throw new WrongUsage(
                    "-Dfile.encoding=" + texts,
                    say("command.surroundings.texts"),
                    "UTF-8",
                    say("command.leave-out.next"));
        }
        if (!windows && !letsAllLettersThrough() && folder.indexOf(LOST) >= 0) {
            throw lost(folder, say("command.surroundings.folder", "encoding", names));
        }
    }

    private static WrongUsage lost(String what, String told) {
        return new WrongUsage(List.of(unreadable(what, told)));
    }

    private static Diagnostic unreadable(String what, String told) {
        return Diagnostic.error(
                Place.inFile(what),
                told,
                say("command.surroundings.expected"),
                say("command.surroundings.next") + EXAMPLE);
    }

    private boolean letsAllLettersThrough() {
        return windows || Charset.forName(names).equals(StandardCharsets.UTF_8);
    }

    /** @throws WrongUsage if arguments have lost letters that cannot be found again */
    String[] arguments(String[] given) {
        if (letsAllLettersThrough() || Stream.of(given).allMatch(Surroundings::isEnglish)) {
            return given;
        }
        return typed(given).orElseThrow(() -> {
            String lost = Stream.of(given)
                    .filter(argument -> !isEnglish(argument))
                    .findFirst()
                    .orElseThrow();
            return lost(lost, say("command.surroundings.argument", "encoding", names));
        });
    }

    /** As the system keeps them; empty if it does not, or if they are not UTF-8. */
    private Optional<String[]> typed(String[] given) {
        try {
            return Files.isReadable(COMMAND_LINE) ? typed(given, Files.readAllBytes(COMMAND_LINE)) : Optional.empty();
        } catch (IOException failure) {
            return Optional.empty();
        }
    }

    /** @param line everything that was typed, each word ended by a zero */
    Optional<String[]> typed(String[] given, byte[] line) {
        List<byte[]> words = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < line.length; i++) {
            if (line[i] == 0) {
                words.add(Arrays.copyOfRange(line, from, i));
                from = i + 1;
            }
        }
        if (words.size() < given.length) {
            return Optional.empty();
        }
        String[] typed = new String[given.length];
        for (int i = 0; i < given.length; i++) {
            byte[] word = words.get(words.size() - given.length + i);
            if (!new String(word, Charset.forName(names)).equals(given[i])) {
                return Optional.empty(); // the words came from elsewhere, such as a file of arguments
            }
            try {
                typed[i] = StandardCharsets.UTF_8
                        .newDecoder()
                        .decode(ByteBuffer.wrap(word))
                        .toString();
            } catch (CharacterCodingException foreign) {
                return Optional.empty();
            }
        }
        return Optional.of(typed);
    }

    private static boolean isEnglish(String text) {
        return text.chars().allMatch(c -> c < 128);
    }

    /** Why a file of this name cannot be opened; empty if it can. */
    Optional<Diagnostic> unopenable(String name) {
        return letsAllLettersThrough() || isEnglish(name)
                ? Optional.empty()
                : Optional.of(unreadable(name, say("command.surroundings.file", "encoding", names)));
    }

    /** @throws WrongUsage if the folder holds a name that cannot be read */
    void requireReadableNames(Path folder) {
        if (letsAllLettersThrough()) {
            return;
        }
        try (Stream<Path> all = Files.walk(folder, DEPTH)) {
            all.filter(file -> !isEnglish(file.toString())).findFirst().ifPresent(file -> {
                throw lost(InputFile.shown(folder), say("command.surroundings.files", "encoding", names));
            });
        } catch (IOException failure) {
            throw new WrongUsage(
                    InputFile.shown(folder),
                    say("command.folder.unreadable", "reason", String.valueOf(failure.getMessage())),
                    say("command.folder.unreadable.expected"),
                    say("command.folder.unreadable.next"));
        }
    }
}
