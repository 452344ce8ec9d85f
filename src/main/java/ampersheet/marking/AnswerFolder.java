package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.language.Saying;
import ampersheet.source.AsciiCase;
import ampersheet.source.Bounds;
import ampersheet.source.ForeignText;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import ampersheet.source.WithinMemory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The folder in which an instructor has collected what learners sent. Anybody may have put anything into it: only
 * ordinary files within bounds are read, no link is followed, and what is not read costs no other file its marks.
 */
final class AnswerFolder {
    /** A class of a thousand sends a file or two each; a sheet's Markdown has some 20 kB. */
    static final int MOST_FILES = 20_000;

    private static final long MOST_BYTES_IN_ALL = 64L << 20;
    private static final Set<String> KINDS = Set.of("csv", "tsv", "txt", "md", "xlsx", "ods");
    private static final String EXPECTED = say("folder.answers.forms");

    private final Path folder;
    /** Names in their order, with the sizes of what may be read. */
    private final Map<String, Long> sizes;

    private AnswerFolder(Path folder, Map<String, Long> sizes) {
        this.folder = folder;
        this.sizes = sizes;
    }

    /** @throws DiagnosticException if it holds more files than any class sends */
    static AnswerFolder of(Path folder) throws IOException {
        List<String> names;
        try (Stream<Path> files = Files.list(folder)) {
            names = files.map(file -> file.getFileName().toString())
                    .limit(MOST_FILES + 1L)
                    .sorted()
                    .toList();
        }
        if (names.size() > MOST_FILES) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(folder.toString().replace('\\', '/')),
                    say("folder.answers.many-files", "most", Integer.toString(MOST_FILES)),
                    say("folder.answers.many-files.expected"),
                    say("folder.answers.many-files.next")));
        }
        Map<String, Long> sizes = new LinkedHashMap<>();
        for (String name : names) {
            sizes.put(name, size(folder.resolve(name)));
        }
        return new AnswerFolder(folder, sizes);
    }

    /** 0 for what is not read at all, whyever. */
    private static long size(Path file) {
        try {
            return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    ? Math.min(Files.size(file), Bounds.WRITTEN.bytes() + 1L)
                    : 0;
        } catch (IOException unreadable) {
            // Reading it will tell.
            return 0;
        }
    }

    List<String> names() {
        return List.copyOf(sizes.keySet());
    }

    /** The order to read in: where there is too much in all, it is the largest files that are left out. */
    List<String> smallestFirst() {
        List<String> names = new ArrayList<>(sizes.keySet());
        names.sort(Comparator.comparing(sizes::get));
        return names;
    }

    /** Whether there is room left in memory for this file after so many bytes, as {@link #size}s count them. */
    boolean hasRoomFor(String name, long before) {
        return before + sizes.get(name) <= MOST_BYTES_IN_ALL;
    }

    long size(String name) {
        return sizes.get(name);
    }

    /** Reads one of the {@link #names()}, whatever it is; what is wrong with it stands in the file's faults. */
    ReturnedFile read(String name, String shown, Privacy privacy) {
        Path file = folder.resolve(name);
        String kind = AsciiCase.small(name.substring(name.lastIndexOf('.') + 1));
        if (name.startsWith(".")) {
            return new ReturnedFile(shown, List.of(), new FileFaults(shown));
        }
        if (Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
            return faulty(shown, Saying.of("report.file.folder"), say("folder.answers.folder.next"));
        }
        if (!KINDS.contains(kind)) {
            return faulty(
                    shown,
                    switch (kind) {
                        case "html", "htm" -> Saying.of("report.file.page");
                        case "zip" -> Saying.of("report.file.archive");
                        default -> Saying.of("report.file.unknown-kind");
                    },
                    switch (kind) {
                        case "html", "htm" -> say("folder.answers.page.next");
                        case "zip" -> say("folder.answers.archive.next");
                        default -> say("folder.answers.unknown-kind.next");
                    });
        }
        try {
            ForeignText text = SourceFile.foreign(file, Bounds.WRITTEN, SourceFile.Links.REFUSED);
            return WithinMemory.of(
                    shown,
                    () -> noting(
                            text,
                            kind.equals("md")
                                    ? FilledSheet.read(shown, text.text(), privacy)
                                    : AnswerTable.read(name, shown, text.text(), privacy)));
        } catch (Unread other) {
            return faulty(shown, told(other, privacy), next(other));
        } catch (DiagnosticException tooLarge) {
            return faulty(
                    shown, tooLarge.diagnostics().stream().map(FileFault::of).toList());
        }
    }

    private static ReturnedFile noting(ForeignText text, ReturnedFile file) {
        if (text.note().isEmpty()) {
            return file;
        }
        FileFaults notes = new FileFaults(file.name());
        notes.add(FileFault.warning(
                Place.inFile(file.name()),
                text.note().get().said(),
                text.note().get().nextAction()));
        notes.add(file.faults());
        return new ReturnedFile(file.name(), file.answers(), notes);
    }

    /** What the system says of a failure may hold the file's name. */
    private static Saying told(Unread other, Privacy privacy) {
        return privacy.isOn() && other.why() == Unread.Why.UNREADABLE
                ? Saying.of("report.unread.unreadable")
                : other.said();
    }

    private static String next(Unread other) {
        return switch (other.why()) {
            case TOO_LARGE -> say("folder.answers.too-large.next");
            case NO_ORDINARY_FILE -> say("folder.answers.no-file.next");
            default -> other.why().nextAction();
        };
    }

    static ReturnedFile faulty(String shown, Saying problem, String nextAction) {
        return faulty(shown, List.of(FileFault.error(Place.inFile(shown), problem, EXPECTED, nextAction)));
    }

    private static ReturnedFile faulty(String shown, List<FileFault> faults) {
        FileFaults list = new FileFaults(shown);
        faults.forEach(list::add);
        return new ReturnedFile(shown, List.of(), list);
    }
}
