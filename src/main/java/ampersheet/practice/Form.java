package ampersheet.practice;

/**
 * How much of the working is shown: the example beside a place for every step, some steps blank and the others worked,
 * or the question only. More support comes first.
 *
 * @param blanks of a faded form, how many steps it leaves open; else 0
 */
public record Form(Kind kind, int blanks) implements Comparable<Form> {
    /** From the most support to none. */
    public enum Kind {
        FULL("full"),
        FADED("faded"),
        BARE("bare"),
        /** A worked solution with one wrong line, which is to be found and mended; it is no step on the way to bare. */
        FAULTY("faulty");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As a record and a page name it. */
        public String word() {
            return word;
        }
    }

    public static final Form FULL = new Form(Kind.FULL, 0);
    public static final Form BARE = new Form(Kind.BARE, 0);
    public static final Form FAULTY = new Form(Kind.FAULTY, 0);

    public static Form faded(int blanks) {
        return new Form(Kind.FADED, blanks);
    }

    @Override
    public int compareTo(Form other) {
        return kind == other.kind ? Integer.compare(blanks, other.blanks) : kind.compareTo(other.kind);
    }

    /** The one that shows more. */
    Form orMoreSupport(Form other) {
        return compareTo(other) <= 0 ? this : other;
    }

    /** {@code full}, {@code faded 2}, {@code bare}. */
    public String written() {
        return kind == Kind.FADED ? kind.word() + " " + blanks : kind.word();
    }

    /** @throws UnfitText for what {@link #written} does not write */
    static Form read(String written) {
        for (Kind kind : Kind.values()) {
            if (written.equals(kind.word()) && kind != Kind.FADED) {
                return new Form(kind, 0);
            }
        }
        String faded = Kind.FADED.word() + " ";
        if (!written.startsWith(faded)) {
            throw new UnfitText("practice.unfit.form", "word", written);
        }
        return faded(Texts.whole(written.substring(faded.length())));
    }
}
