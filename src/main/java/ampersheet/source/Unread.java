package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.language.Saying;

/** Why a file was not read; its message is one sentence without its end and without the file's name. */
public final class Unread extends Exception {
    private static final long serialVersionUID = 1L;

    /** What the file is instead of a text within bounds. */
    public enum Why {
        MISSING(say("folder.file.missing.next")),
        FOLDER(say("folder.file.folder.next")),
        LINK(say("folder.file.link.next")),
        NO_ORDINARY_FILE(say("folder.file.no-ordinary-file.next")),
        TOO_LARGE(say("folder.file.too-large.next")),
        UNREADABLE(say("folder.file.unreadable.next")),
        UTF_16(say("folder.file.no-utf-8.next")),
        NOT_UTF_8(say("folder.file.no-utf-8.next"));

        private final String nextAction;

        Why(String nextAction) {
            this.nextAction = nextAction;
        }

        public String nextAction() {
            return nextAction;
        }
    }

    private final Why why;
    private final transient Saying said;

    Unread(Why why, Saying said) {
        this.why = why;
        this.said = said;
    }

    /** The message, for whoever reads it in another language. */
    public Saying said() {
        return said;
    }

    @Override
    public String getMessage() {
        return Languages.ENGLISH.say(said);
    }

    public Why why() {
        return why;
    }

    /** @param shown the file as its reader knows it */
    public Diagnostic told(String shown, String expected) {
        return Diagnostic.error(Place.inFile(shown), getMessage(), expected, why.nextAction());
    }
}
