package ampersheet.issue;

import ampersheet.diagnostic.DiagnosticException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A small, complete course to begin with. What a folder holds already stays as it is. */
public final class CourseStart {
    private static final List<String> FILES =
            List.of(CourseFolder.PLAN, CourseFolder.CLASS, CourseFolder.PARTS, CourseFolder.DECISIONS);

    private CourseStart() {}

    /**
     * What was written.
     *
     * @param written names of files in the folder
     * @param there names of those that were there, and stay
     */
    public record Started(List<String> written, List<String> there) {
        public Started {
            written = List.copyOf(written);
            there = List.copyOf(there);
        }
    }

    /** @throws ampersheet.diagnostic.DiagnosticException if the folder cannot be made or written to */
    public static Started in(Path folder) {
        List<String> written = new ArrayList<>();
        List<String> there = new ArrayList<>();
        try (Output output = Output.folder(folder, Output.Terms.NONE)) {
            for (String file : FILES) {
                if (Files.exists(folder.resolve(file), LinkOption.NOFOLLOW_LINKS)) {
                    there.add(file);
                } else {
                    output.write(folder.resolve(file), text(file));
                    written.add(file);
                }
            }
            for (String name : List.of(CourseFolder.ANSWERS, CourseFolder.MADE)) {
                try {
                    if (!Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
                        Files.createDirectory(folder.resolve(name));
                    }
                } catch (IOException failure) {
                    throw new DiagnosticException(WholeFile.told(folder.resolve(name), failure));
                }
            }
            output.finish();
        }
        return new Started(written, there);
    }

    private static String text(String name) {
        try (InputStream in = CourseStart.class.getResourceAsStream("start/" + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
