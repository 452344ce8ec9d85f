package ampersheet.marking;

/** How far a learner's work came in, for the list of marks. */
enum Status {
    IN("in"),
    IN_PART("in part"),
    BLANK("blank"),
    /** What came in contradicts itself, or nobody knows whose it is. */
    UNDECIDED("undecided"),
    UNREADABLE("unreadable file"),
    NOTHING("nothing");

    private final String word;

    Status(String word) {
        this.word = word;
    }

    String word() {
        return word;
    }

    /** Of a sheet that came back. */
    static Status of(Standing standing) {
        long open = standing.count(Credit.BLANK);
        if (standing.count(Credit.UNDECIDED) > 0) {
            return UNDECIDED;
        }
        return open == 0 ? IN : open == standing.outcomes().size() ? BLANK : IN_PART;
    }
}
