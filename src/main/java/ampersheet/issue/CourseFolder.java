package ampersheet.issue;

import java.nio.file.Path;
import java.util.List;

/**
 * Where the files of a course lie: all there is of it, plain files that commands and the desk read and write alike.
 *
 * @param folder absolute, no link
 */
public record CourseFolder(Path folder) {
    public static final String PLAN = "plan.yaml";
    /** A course of weeks. */
    public static final String WEEKS = "course.yaml";

    public static final String CLASS = "class.csv";
    public static final String PARTS = "parts.csv";
    /** A font for names in letters that the program's own lack; need not be there. */
    public static final String FONT = "font.ttf";

    public static final String ANSWERS = "answers";
    /** When files came in, as the instructor wrote it down; need not be there. */
    public static final String RECEIVED = "received.csv";

    public static final String DECISIONS = "decisions.csv";
    public static final String MADE = "made";
    /** Folders of {@link #MADE}, behind which stands the number of a week. */
    public static final String WEEK = "week-";

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

    /** The weeks; need not be there. */
    public Path weeks() {
        return folder.resolve(WEEKS);
    }

    /** Whether a file is called as archives of what was given out are. */
    public static boolean isArchive(String name) {
        return name.matches("(.*-)?issued-[0-9A-Z]{5}\\.zip");
    }

    /** What is made of the plan. */
    public Made ofPlan() {
        return new Made(made());
    }

    /** What is made of a week of the course. */
    public Made ofWeek(int number) {
        return ofPlan().ofWeek(number);
    }

    /**
     * Where lies what is made of one set.
     *
     * @param folder within the course
     */
    public record Made(Path folder) {
        /** Sheets, keys and homework pages. */
        public static final String PAGES = "class";

        private static final String MARKS_BESIDE = "marks-";

        /** Where lies what is made of a week, if this is that of the plan. */
        public Made ofWeek(int number) {
            return new Made(folder.resolve(WEEK + number));
        }

        /** Folders in which archives lie, those of the class before those of handouts. */
        public List<Path> ofArchives() {
            return List.of(pages().resolve("keys"), folder);
        }

        public Path pages() {
            return folder.resolve(PAGES);
        }

        public Path handout() {
            return folder.resolve("handout.pdf");
        }

        public Path cards() {
            return folder.resolve("cards.pdf");
        }

        public Path practice() {
            return folder.resolve("practice.html");
        }

        public Path exchange() {
            return folder.resolve("exchange.zip");
        }

        /** What became of the answers to the sheets that were marked here first. */
        public Marked marked() {
            return new Marked(folder.resolve("marks"), folder.resolve("marks-before.csv"));
        }

        /**
         * The same of further sheets that were given out from here, with other numbers.
         *
         * @param code with which their IDs begin
         */
        public Marked marked(String code) {
            return new Marked(folder.resolve(MARKS_BESIDE + code), folder.resolve("marks-before-" + code + ".csv"));
        }
    }

    /**
     * Where lies what became of the answers to one class's sheets.
     *
     * @param folder of report, tables and feedback
     * @param before the table of marks before the last time
     */
    public record Marked(Path folder, Path before) {}
}
