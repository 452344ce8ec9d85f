package ampersheet.marking;

/** An answer that was not marked, and why: nothing that came in is lost. */
record SetAside(TypedAnswer answer, String why) {
    private static final String REPLACED = "replaced by ";
    private static final String CONTRADICTED = "undecided: contradicts ";
    private static final String DISMISSED = "does not count, as you decided";
    private static final String LATE = "late; the answer given in time counts";

    /** Of a later round after which the learner had fewer marks. */
    static SetAside worse(TypedAnswer answer) {
        return new SetAside(answer, REPLACED + "an earlier round, after which there were more marks");
    }

    static SetAside replaced(TypedAnswer answer, String file, int line) {
        return new SetAside(answer, REPLACED + file + ", line " + line);
    }

    static SetAside contradicted(TypedAnswer answer, String file) {
        return new SetAside(answer, CONTRADICTED + file);
    }

    static SetAside dismissed(TypedAnswer answer) {
        return new SetAside(answer, DISMISSED);
    }

    static SetAside late(TypedAnswer answer) {
        return new SetAside(answer, LATE);
    }

    /**
     * Whether nothing was wrong with it but that another was given, or that the instructor decided against it; read a
     * second time it would be in the way of that.
     */
    static boolean anotherCounts(String why) {
        return why.startsWith(REPLACED) || why.equals(LATE) || why.startsWith(CONTRADICTED) || why.equals(DISMISSED);
    }
}
