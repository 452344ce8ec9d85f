package ampersheet.render;

import java.util.function.Consumer;

/**
 * Slots of a sentence that hold more than text: an element of markup, a formula, a counter of a style sheet. The
 * sentence is said with a mark in each of them, and taken apart at the marks.
 */
public final class Slots {
    /** Marks are letters that no text has: Unicode leaves them to whoever wants one. */
    private static final char FIRST = '\uE000';

    private Slots() {}

    /** What is said in a slot that is filled later; @param number from 0. */
    public static String mark(int number) {
        return String.valueOf((char) (FIRST + number));
    }

    /**
     * Writes a sentence from its beginning to its end.
     *
     * @param text takes what stands between the slots
     * @param fill writes what stands in the slot of each {@link #mark}
     */
    public static void write(String sentence, Consumer<String> text, Runnable... fill) {
        int from = 0;
        for (int i = 0; i < sentence.length(); i++) {
            int slot = sentence.charAt(i) - FIRST;
            if (slot >= 0 && slot < fill.length) {
                if (i > from) {
                    text.accept(sentence.substring(from, i));
                }
                fill[slot].run();
                from = i + 1;
            }
        }
        if (from < sentence.length()) {
            text.accept(sentence.substring(from));
        }
    }
}
