package ampersheet.issue;

import java.nio.file.Path;

/**
 * Where the files of a course lie: all there is of it, plain files that commands and the desk read and write alike.
 *
 * @param folder absolute, no link
 */
public record CourseFolder(Path folder) {
    public static final String PLAN = "plan.yaml";
    public static final String CLASS = "class.csv";
    public static final String PARTS = "parts.csv";
    /** A font for names in letters that the program's own lack; need not be there. */
    public static final String FONT = "font.ttf";

    public static final String ANSWERS = "answers";
    /** When files came in, as the instructor wrote it down; need not be there. */
    public static final String RECEIVED = "received.csv";

    public static final String DECISIONS = "decisions.csv";
    public static final String MADE = "made";
    /** Of the instructor's own; need not be there. */
    public static final String TEMPLATES = "templates";

    public Path plan() {
        return folder.resolve(PLAN);
    }

    public Path roster() {
        return folder.resolve(CLASS);
    }

    public Path parts() {
        return folder.resolve(PARTS);
    }

    public Path font() {
        return folder.resolve(FONT);
    }

    public Path answers() {
        return folder.resolve(ANSWERS);
    }

    public Path received() {
        return folder.resolve(RECEIVED);
    }

    public Path decisions() {
        return folder.resolve(DECISIONS);
    }

    public Path made() {
        return folder.resolve(MADE);
    }

    public Path templates() {
        return folder.resolve(TEMPLATES);
    }

    /** Sheets, keys and homework pages. */
    public Path pages() {
        return made().resolve("class");
    }

    public Path handout() {
        return made().resolve("handout.pdf");
    }

    public Path cards() {
        return made().resolve("cards.pdf");
    }

    public Path practice() {
        return made().resolve("practice.html");
    }

    public Path exchange() {
        return made().resolve("exchange.zip");
    }

    public Path marks() {
        return made().resolve("marks");
    }

    /** The table of marks before the last time. */
    public Path marksBefore() {
        return made().resolve("marks-before.csv");
    }
}
