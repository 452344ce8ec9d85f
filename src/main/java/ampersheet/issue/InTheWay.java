package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What stands where a file is to be written, and must not be lost. */
final class InTheWay {
    private static final int HEAD = 64;
    /** Of UTF-8, as some spreadsheets put it first; read byte by byte, and made small. */
    private static final String BYTE_ORDER_MARK = "\u00ef\u00bb\u00bf";
    /** How each kind of file that this program writes begins, in small letters. */
    private static final Map<String, List<String>> BEGINNINGS = new TreeMap<>(Map.of(
            ".html", List.of("<!doctype html"),
            ".md", List.of("# "),
            ".svg", List.of("<svg style=\"background:#fff\""),
            ".pdf", List.of("%pdf-"),
            ".zip", List.of("pk\003\004"),
            ".xlsx", List.of("pk\003\004"),
            ".csv",
                    List.of(
                            "seat,name,sheet,",
                            "seat;name;sheet;",
                            "seat,name,before,",
                            "sheet,seat,name,",
                            "seat,sheet,question,",
                            "file,received,",
                            "file,seat,name",
                            "learner,",
                            "file,line,sheet,",
                            "what,number,name",
                            SlicePart.HEAD,
                            "file,issue")));

    private InTheWay() {}

    /**
     * @param kind of what is to be written, as names of such files end: {@code .pdf}
     * @param ours whether this program wrote that file, as far as is known
     * @return why it must stay; empty if nothing is lost
     */
    static Optional<Diagnostic> of(Path target, String kind, Output.Terms terms, boolean ours) throws IOException {
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        for (Path input : terms.inputs()) {
            if (Files.exists(target) && Files.exists(input) && Files.isSameFile(target, input)) {
                return told(
                        target,
                        input.equals(target)
                                ? say("folder.in-the-way.input")
                                : say("folder.in-the-way.input-by-another-name", "input", Output.shown(input)),
                        say("folder.in-the-way.input.expected"),
                        say("folder.in-the-way.input.next"));
            }
        }
        BasicFileAttributes is = Files.readAttributes(target, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        if (is.isDirectory()) {
            return told(
                    target,
                    say("folder.in-the-way.folder"),
                    say("folder.in-the-way.folder.expected"),
                    say("folder.in-the-way.folder.next"));
        }
        if (is.isSymbolicLink()) {
            return terms.replace()
                    ? Optional.empty()
                    : told(
                            target,
                            say("folder.in-the-way.link"),
                            say("folder.in-the-way.ordinary.expected"),
                            say("folder.in-the-way.link.next"));
        }
        if (!is.isRegularFile()) {
            return told(
                    target,
                    say("folder.in-the-way.device"),
                    say("folder.in-the-way.ordinary.expected"),
                    say("folder.in-the-way.device.next"));
        }
        if (ours || terms.replace() || is.size() == 0 || begins(target, BEGINNINGS.getOrDefault(kind, List.of()))) {
            return Optional.empty();
        }
        return told(
                target,
                say("folder.in-the-way.foreign"),
                say("folder.in-the-way.foreign.expected"),
                say("folder.in-the-way.foreign.next"));
    }

    private static boolean begins(Path file, List<String> beginnings) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEAD);
        }
        String begins = new String(head, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
        String bare = begins.startsWith(BYTE_ORDER_MARK) ? begins.substring(BYTE_ORDER_MARK.length()) : begins;
        return beginnings.stream().anyMatch(bare::startsWith);
    }

    private static Optional<Diagnostic> told(Path target, String problem, String expected, String next) {
        return Optional.of(Diagnostic.error(Place.inFile(Output.shown(target)), problem, expected, next));
    }
}
