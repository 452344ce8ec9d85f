package ampersheet.marking;

import ampersheet.source.AsciiCase;
import java.util.List;

/** The tables that marking itself writes. One that lies among the answers is nobody's answers. */
enum OwnFile {
    MARKS(
            "marks.csv",
            "seat",
            "name",
            "sheet",
            "marks",
            "of",
            "right",
            "carried",
            "half",
            "wrong",
            "unreadable",
            "blank",
            "late"),
    ANSWERS(
            "answers.csv",
            "seat",
            "sheet",
            "question",
            "template",
            "step",
            "typed",
            "read_as",
            "verdict",
            "cause",
            "mark",
            "late",
            "file",
            "line"),
    FILES("files.csv", "file", "received", "late", "answers_marked", "what_became_of_it", "notes"),
    /** Under another name it may come back, with its answers mended. */
    SET_ASIDE("set-aside.csv", "file", "line", "sheet", "question", "answer", "why"),
    CHANGES("changes.csv", "seat", "name", "before", "now"),
    CORRECTIONS("corrections.csv", "seat", "name", "sheet", "question", "template", "typed", "before", "now"),
    NAMES("names.csv", "what", "number", "name");

    private final String file;
    private final List<String> head;

    OwnFile(String file, String... head) {
        this.file = file;
        this.head = List.of(head);
    }

    String file() {
        return file;
    }

    List<String> head() {
        return head;
    }

    /** A learner may call a table as one of these is called; its first line is another then. */
    static boolean is(String name, List<String> head) {
        String small = AsciiCase.small(name);
        for (OwnFile own : values()) {
            if (own.file.equals(small) && own.head.equals(head)) {
                return true;
            }
        }
        return false;
    }
}
