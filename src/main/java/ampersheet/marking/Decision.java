package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.SheetId;
import java.util.Optional;

/**
 * What the instructor decided of an answer, a question or a file.
 *
 * @param line of her list
 * @param seat 0 where none is meant
 * @param question as the sheet calls it; empty where a file is meant
 * @param answer as it was typed when she decided; empty where that makes no difference
 * @param file empty where no file is meant
 * @param sheet the ID as it is written in that file, or of the sheet on which the answer stands; empty where it makes
 *     no difference
 * @param issue for which sheets it was taken, as {@link IssuedArchive#issue} calls them; empty where that is not said
 * @param value the mark, or how the answer is to be read
 * @param reason for whoever asks
 */
record Decision(
        int line,
        Kind kind,
        int seat,
        String question,
        String answer,
        String file,
        String sheet,
        String issue,
        String value,
        String reason) {

    /** What can be decided. */
    enum Kind {
        ACCEPT("accept"),
        READ_AS("read as"),
        MARK("mark"),
        LEAVE_OUT("leave out"),
        COUNTS("counts"),
        DOES_NOT_COUNT("does not count");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }

        static Optional<Kind> of(String word) {
            String plain = word.strip().replace('-', ' ').replace('_', ' ');
            for (Kind kind : values()) {
                if (kind.word.equalsIgnoreCase(plain)) {
                    return Optional.of(kind);
                }
            }
            return Optional.empty();
        }

        boolean isOfFile() {
            return this == COUNTS || this == DOES_NOT_COUNT;
        }
    }

    /** With what the IDs begin of the sheets that it is on, as far as it says so itself. */
    Optional<String> set() {
        String code = IssuedArchive.set(issue);
        return code.matches("[0-9A-Z]{5}") && issue.startsWith(IssuedArchive.issue(code))
                ? Optional.of(code)
                : kind.isOfFile() ? Optional.empty() : SheetId.set(sheet);
    }

    /** How it counts; for {@link Kind#MARK} and {@link Kind#ACCEPT}. */
    Credit credit() {
        if (kind == Kind.ACCEPT) {
            return Credit.RIGHT;
        }
        return switch (value.replace(',', '.')) {
            case "1" -> Credit.RIGHT;
            case "0.5", ".5", "½" -> Credit.HALF;
            default -> Credit.WRONG;
        };
    }

    static boolean isMark(String value) {
        return switch (value.replace(',', '.')) {
            case "0", "0.5", ".5", "½", "1" -> true;
            default -> false;
        };
    }

    /** For feedback and report, without the reason. */
    String told(Language language) {
        return switch (kind) {
            case ACCEPT -> language.say("report.decision.accept");
            case READ_AS -> language.say("report.decision.read-as", "value", value);
            case MARK ->
                switch (credit()) {
                    case HALF -> language.say("report.decision.mark-half");
                    case RIGHT -> language.say("report.decision.mark-one");
                    default -> language.say("report.decision.mark-none");
                };
            case LEAVE_OUT -> language.say("report.decision.leave-out");
            case COUNTS -> language.say("report.decision.counts");
            case DOES_NOT_COUNT -> language.say("report.decision.dismissed");
        };
    }
}
