package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.Told;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * What has to go so that nothing of one learner is left among answers and lists: first told, then done. Marks, feedback
 * and report are made anew from what remains.
 */
public final class Erasure {
    private final List<Step> steps = new ArrayList<>();

    /** One file. */
    private sealed interface Step {
        String told();
    }

    private record Delete(Path file, String told) implements Step {}

    /** @param rest what the file holds afterwards */
    private record TakeOut(Path file, String rest, String told) implements Step {}

    private record ByHand(String told) implements Step {}

    Erasure() {}

    /** Holds nothing of anybody else. */
    void delete(Path file, String why) {
        steps.add(new Delete(file, say("folder.erasure.delete", "file", shown(file), "why", why)));
    }

    /** Nobody but the instructor can tell, or change it. */
    void byHand(String what) {
        steps.add(new ByHand(say("folder.erasure.by-hand", "what", what)));
    }

    /** Takes lines out of a text that holds others', too; what is no text in UTF-8 is left to the instructor. */
    void takeOut(Path file, SortedSet<Integer> records) {
        if (records.isEmpty()) {
            return;
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
                    .toString();
            steps.add(new TakeOut(
                    file,
                    without(text, records),
                    Told.count("folder.erasure.take-out", records.size(), "file", shown(file))));
        } catch (CharacterCodingException spreadsheet) {
            byHand(Told.count(
                    "folder.erasure.take-out-by-hand",
                    records.size(),
                    "file",
                    shown(file),
                    "line",
                    Integer.toString(records.first())));
        } catch (IOException failure) {
            throw failed(file, failure);
        }
    }

    /** A record ends where its quotes are closed, which may be some lines further down. */
    static String without(String text, SortedSet<Integer> records) {
        StringBuilder rest = new StringBuilder();
        int line = 0;
        boolean taking = false;
        boolean open = false;
        int at = 0;
        while (at < text.length()) {
            int end = text.indexOf('\n', at);
            String next = text.substring(at, end < 0 ? text.length() : end + 1);
            line++;
            taking = open ? taking : records.contains(line);
            boolean odd = next.chars().filter(c -> c == '"').count() % 2 == 1;
            open ^= odd && (taking || open || odd && isQuoted(next));
            if (!taking) {
                rest.append(next);
            }
            at += next.length();
        }
        return rest.toString();
    }

    /** Whether a quote with no partner opens a cell; one within a word, as for inches, does not. */
    private static boolean isQuoted(String line) {
        int last = line.lastIndexOf('"');
        return last == 0 || ",;\t".indexOf(line.charAt(last - 1)) >= 0;
    }

    /** A sentence for each file, in the order in which they are dealt with. */
    public List<String> told() {
        return steps.stream().map(Step::told).toList();
    }

    /**
     * Does it. If the machine fails in between, the same command goes on with what is left.
     *
     * @throws DiagnosticException if a file cannot be changed
     */
    public void apply() {
        for (Step step : steps) {
            if (step instanceof TakeOut out) {
                rewrite(out);
            }
        }
        for (Step step : steps) {
            if (step instanceof Delete gone) {
                try {
                    Files.deleteIfExists(gone.file());
                } catch (IOException failure) {
                    throw failed(gone.file(), failure);
                }
            }
        }
    }

    private static void rewrite(TakeOut out) {
        try {
            Path folder = out.file().toAbsolutePath().getParent();
            Path part = Files.createTempFile(folder, ".erasing-", ".part");
            try {
                Files.writeString(part, out.rest(), StandardCharsets.UTF_8);
                Files.move(part, out.file(), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException failure) {
            throw failed(out.file(), failure);
        }
    }

    private static DiagnosticException failed(Path file, IOException failure) {
        boolean gone = failure instanceof NoSuchFileException;
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(shown(file)),
                gone ? say("folder.erasure.gone") : say("folder.erasure.unchanged"),
                say("folder.erasure.failed.expected"),
                say("folder.erasure.failed.next")));
    }

    private static String shown(Path file) {
        return file.toString().replace('\\', '/');
    }

    /** Seats and lines of what belongs to one learner, of one file. */
    static final class Share {
        final SortedSet<Integer> lines = new TreeSet<>();
        boolean others;
    }
}
