package ampersheet.marking;

/** An answer that was not marked, and why: nothing that came in is lost. */
record SetAside(TypedAnswer answer, String why) {
    private static final String REPLACED = "replaced by ";
    private static final String LATE = "late; the answer given in time counts";

    static SetAside replaced(TypedAnswer answer, String file, int line) {
        return new SetAside(answer, REPLACED + file + ", line " + line);
    }

    static SetAside late(TypedAnswer answer) {
        return new SetAside(answer, LATE);
    }

    /**
     * Whether nothing was wrong with it but that another was given; read a second time it would take that one's place.
     */
    static boolean anotherCounts(String why) {
        return why.startsWith(REPLACED) || why.equals(LATE);
    }
}
