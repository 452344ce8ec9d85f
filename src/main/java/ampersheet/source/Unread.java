package ampersheet.source;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.language.Saying;

/** Why a file was not read; its message is one sentence without its end and without the file's name. */
public final class Unread extends Exception {
    private static final long serialVersionUID = 1L;

    /** What the file is instead of a text within bounds. */
    public enum Why {
        MISSING("Check the path."),
        FOLDER("Name a file in it."),
        LINK("Put the file itself in its place."),
        NO_ORDINARY_FILE("Write what comes out of it into a file, and name that."),
        TOO_LARGE("Look what it is; if all of it is meant, divide it."),
        UNREADABLE("Check its permissions, or ask for it again."),
        UTF_16("Save it again with the encoding UTF-8; spreadsheets call it CSV UTF-8."),
        NOT_UTF_8("Save it again with the encoding UTF-8; spreadsheets call it CSV UTF-8.");

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
