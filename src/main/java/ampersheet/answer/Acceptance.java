package ampersheet.answer;

import ampersheet.quantity.PreferredSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What counts as the right answer. */
public sealed interface Acceptance {
    /** Room for the last bits, so that 0.98 and 1.02 of the key are inside a band of 0.02. */
    double LAST_BITS = 1e-12;
    /** Two values this near are the same member of a series, or the same whole number. */
    double SAME = 1e-9;
    /** How near to a value that cannot be typed exactly a person will round it: three figures. */
    double ROUNDED_BY_HAND = 0.005;
    /** Of the key: a rounded answer that strays farther is no longer told as one. */
    double COARSEST = 0.05;
    /** Of a band: where only what is surely meant is taken. */
    double HALF = 0.5;

    /** As it stands in keys and in JSON. */
    String kind();

    /**
     * How far (SI) from {@code value} an answer may lie and still be taken for it; {@code value} is the key, a
     * mistake's value, or what follows from an earlier answer.
     */
    double band(double value);

    /** Whether an answer of {@code si} is taken for {@code value}; the ends of the band belong to it. */
    default boolean accepts(double value, double si) {
        return Math.abs(si - value) <= band(value) + LAST_BITS * Math.abs(value);
    }

    /**
     * Whether no answer can be taken for both values: a draw is refused unless this holds for the key and every
     * mistake's value, two by two. For a computed quantity they must differ by more than both bands together.
     */
    default boolean apart(double a, double b) {
        return Math.abs(a - b) > (band(a) + band(b)) * (1 + SAME);
    }

    /**
     * The same for one divided by an answer: never more than is usual, since an absolute tolerance may be wide enough
     * to take a number for the inverse of nearly any other.
     */
    default double reciprocalBand(double value) {
        return Math.min(band(value), UsualAcceptance.RELATIVE * Math.abs(value));
    }

    /**
     * A computed quantity: within {@code relative} of the unrounded key, or within {@code floor} (SI), whichever is
     * more. A temperature in °C has {@code relative} 0, for a percentage of it means nothing.
     */
    record Within(double relative, double floor) implements Acceptance {
        @Override
        public String kind() {
            return "within";
        }

        @Override
        public double band(double expected) {
            return Math.max(Math.abs(expected) * relative, floor);
        }
    }

    /** Less than any step of a series, more than the last bits. */
    double BETWEEN = 1e-4;

    /** A preferred value: exactly this member of the series. A mistake's value need not be a member. */
    record Preferred(PreferredSeries series) implements Acceptance {
        @Override
        public String kind() {
            return "preferred";
        }

        @Override
        public double band(double value) {
            return Math.abs(value) * (series.contains(value) ? SAME : ROUNDED_BY_HAND);
        }

        /** The next member below a member. */
        public double below(double member) {
            return series.nextDown(member * (1 - BETWEEN));
        }

        /** The next member above a member. */
        public double above(double member) {
            return series.nextUp(member * (1 + BETWEEN));
        }
    }

    /** A whole number, exactly. A mistake's value need not be whole. */
    record Count() implements Acceptance {
        @Override
        public String kind() {
            return "count";
        }

        @Override
        public double band(double value) {
            boolean whole = Math.abs(value - Math.floor(value + 0.5)) <= SAME * Math.max(1, Math.abs(value));
            return whole ? SAME * Math.max(1, Math.abs(value)) : Math.abs(value) * ROUNDED_BY_HAND;
        }
    }

    /**
     * One blank of a design task: any member of the series (without one, any whole number) from {@code from} to
     * {@code to}, SI, ends included, that meets every criterion of its {@link DesignKey} together with the other
     * blanks. The key's value is only one that does.
     */
    record Designed(Optional<PreferredSeries> series, double from, double to) implements Acceptance {
        @Override
        public String kind() {
            return "designed";
        }

        @Override
        public double band(double value) {
            return Math.abs(value) * SAME;
        }

        /** Whether the value may be chosen at all, whatever the criteria say. */
        public boolean allows(double si) {
            return isMember(si) && si >= from * (1 - SAME) && si <= to * (1 + SAME);
        }

        boolean isMember(double si) {
            return series.isPresent() ? series.get().contains(si) : Math.abs(si - Math.floor(si + 0.5)) <= SAME;
        }

        /** The very value that is meant by one that differs from it in its last bits only. */
        double member(double si) {
            return series.isPresent() ? series.get().nearest(si) : Math.floor(si + 0.5);
        }

        /** Every value that may be chosen, ascending. */
        public List<Double> members() {
            if (series.isPresent()) {
                return series.get().between(from, to);
            }
            List<Double> whole = new ArrayList<>();
            for (double n = Math.ceil(from); n <= to; n++) {
                whole.add(n);
            }
            return List.copyOf(whole);
        }
    }

    /** One of several options; the expected value is the index of the right one. */
    record Choice(List<Option> options) implements Acceptance {
        public Choice {
            options = List.copyOf(options);
        }

        @Override
        public String kind() {
            return "choice";
        }

        @Override
        public double band(double value) {
            return 0;
        }

        /** The option that a value stands for: its number, from 0, kept where any other answer keeps its value. */
        public Option option(double value) {
            return options.get(number(value));
        }

        static int number(double value) {
            return (int) value;
        }
    }

    /** @param explanation why this is wrong, said when it was chosen wrongly; may be empty for the right one */
    record Option(String text, String explanation) {}
}
