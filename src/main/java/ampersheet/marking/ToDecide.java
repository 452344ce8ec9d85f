package ampersheet.marking;

import java.util.List;

/**
 * What nobody but the instructor can decide.
 *
 * @param maybe seats whose it may be, the nearest first; one where it is known
 * @param question empty where a whole hand-in is meant
 * @param typed what stands there; empty where a whole hand-in is meant
 * @param file as it is shown
 * @param why it is undecided, a sentence
 * @param meanings what it may mean, or which decisions there are
 */
record ToDecide(
        List<Integer> maybe,
        String sheet,
        String question,
        String typed,
        String file,
        int line,
        String why,
        String meanings) {
    ToDecide {
        maybe = List.copyOf(maybe);
    }

    /** 0 where it is not known whose it is. */
    int seat() {
        return maybe.size() == 1 ? maybe.get(0) : 0;
    }

    /** Without a line where the whole of a file is meant. */
    String told() {
        return file.isEmpty() ? "" : line == 0 ? file : file + ", line " + line;
    }
}
