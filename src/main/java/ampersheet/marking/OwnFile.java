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
            "late",
            "undecided",
            "if_in_time",
            "status",
            "percent"),
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
            "line",
            "decided"),
    FILES("files.csv", "file", "received", "late", "answers_marked", "what_became_of_it", "notes"),
    /** Under another name it may come back, with its answers mended. */
    SET_ASIDE("set-aside.csv", "file", "line", "sheet", "question", "answer", "why"),
    DECIDE(
            "decide.csv",
            "seat",
            "name",
            "sheet",
            "question",
            "answer",
            "file",
            "line",
            "why",
            "may_mean",
            "template",
            "step",
            "asked",
            "right_answer",
            "issue",
            "decision",
            "value",
            "reason"),
    CHANGES("changes.csv", "seat", "name", "before", "now"),
    CORRECTIONS("corrections.csv", "seat", "name", "sheet", "question", "template", "typed", "before", "now"),
    /** Which feedback page goes to whom. */
    SEND("send.csv", "file", "seat", "name"),
    NAMES("names.csv", "what", "number", "name");

    /** Those after them may be newer than the file. */
    private static final int TELLING_COLUMNS = 5;

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
            int telling = Math.min(TELLING_COLUMNS, own.head.size());
            boolean begins = head.size() >= telling && head.subList(0, telling).equals(own.head.subList(0, telling));
            if (own.file.equals(small) && begins) {
                return true;
            }
        }
        return false;
    }
}
