package ampersheet.practice;

import java.util.ArrayList;
import java.util.List;

/**
 * A problem without numbers beside one with numbers: one given is changed and nothing else, and what becomes of an
 * asked value?
 *
 * @param change what is done to the given
 * @param given what it is
 * @param asked number of the step whose value is asked about
 * @param turns what becomes of each step on the way from the given to the asked value, in order and with that one; none
 *     if the given enters in no line on the way
 */
public record Twin(Change change, String given, int asked, List<Turn> turns) {
    /** What is done to a given, from the change that is easiest to picture. */
    public enum Change {
        DOUBLED(2),
        HALVED(0.5),
        A_FIFTH_MORE(1.2),
        A_FIFTH_LESS(0.8);

        private final double factor;

        Change(double factor) {
            this.factor = factor;
        }

        public double factor() {
            return factor;
        }

        /** So that a preferred value goes on to another, too. */
        public boolean isLarge() {
            return this == DOUBLED || this == HALVED;
        }
    }

    /** Which way a value goes. */
    public enum Way {
        RISES('+'),
        FALLS('-'),
        STAYS('=');

        private final char sign;

        Way(char sign) {
            this.sign = sign;
        }

        private static Way of(char sign) {
            for (Way way : values()) {
                if (way.sign == sign) {
                    return way;
                }
            }
            throw new IllegalArgumentException("a value goes +, - or =, not " + sign);
        }
    }

    /** @param step its number, from 1 */
    public record Turn(int step, Way way) {}

    public Twin {
        turns = List.copyOf(turns);
    }

    /** The key. */
    public Way way() {
        return turns.isEmpty() ? Way.STAYS : turns.get(turns.size() - 1).way();
    }

    /** On one line, for {@link #read}. */
    String write() {
        StringBuilder out = new StringBuilder();
        out.append(change.ordinal()).append(' ').append(asked);
        for (Turn turn : turns) {
            out.append(' ').append(turn.way().sign).append(turn.step());
        }
        return out.append('\t').append(given).toString();
    }

    /** @throws IllegalArgumentException for what {@link #write} does not write */
    static Twin read(String line) {
        int tab = line.indexOf('\t');
        List<String> words = Texts.parts(line.substring(0, Math.max(tab, 0)), ' ');
        if (words.size() < 2) {
            throw new IllegalArgumentException("a change, a step and a given are expected, not " + line);
        }
        List<Turn> turns = new ArrayList<>();
        for (String word : words.subList(2, words.size())) {
            turns.add(new Turn(Texts.whole(word.substring(1)), Way.of(word.charAt(0))));
        }
        return new Twin(
                Change.values()[Texts.whole(words.get(0))], line.substring(tab + 1), Texts.whole(words.get(1)), turns);
    }
}
