package ampersheet.marking;

/**
 * What nobody but the instructor can decide.
 *
 * @param seat 0 where it is not known whose it is
 * @param question empty where a whole hand-in is meant
 * @param typed what stands there; empty where a whole hand-in is meant
 * @param file as it is shown
 * @param why it is undecided, a sentence
 * @param meanings what it may mean, or which decisions there are
 */
record ToDecide(
        int seat, String sheet, String question, String typed, String file, int line, String why, String meanings) {
    /** Without a line where the whole of a file is meant. */
    String told() {
        return file.isEmpty() ? "" : line == 0 ? file : file + ", line " + line;
    }
}
