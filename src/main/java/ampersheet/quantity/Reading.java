package ampersheet.quantity;

import ampersheet.language.Language;
import ampersheet.language.Saying;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a typed answer was understood to be. */
public sealed interface Reading {
    String asTyped();

    /**
     * A number with or without a unit.
     *
     * @param number the number as typed, before prefix and unit
     * @param prefixFactor factor of a prefix typed without a unit ("4.7k") or by a letter code ("4k7"), otherwise 1
     * @param unit the unit typed, empty if none
     * @param significantFigures digits typed that carry meaning
     * @param wholeNumber whether the number typed, with such a prefix, is a whole number
     */
    record Value(
            String asTyped,
            double number,
            double prefixFactor,
            Optional<Unit> unit,
            int significantFigures,
            boolean wholeNumber)
            implements Reading {

        /**
         * In coherent SI units; a bare number is taken in {@code expected}, a bare prefix in its base unit. An angle
         * where turns are asked for becomes turns, and the other way round: both have dimension one.
         */
        public double si(Unit expected) {
            double scaled = Unit.scaled(number, prefixFactor);
            if (unit.isPresent()) {
                double si = unit.get().toSi(scaled);
                return isAngleFor(expected) ? si / (2 * Math.PI) : isTurnsFor(expected) ? si * (2 * Math.PI) : si;
            }
            return (hasPrefix() ? expected.withoutPrefix() : expected).toSi(scaled);
        }

        /** Whether the unit asked counts turns, and that typed measures an angle. */
        public boolean isAngleFor(Unit expected) {
            return unit.isPresent() && unit.get().measuresAngle() && expected.countsTurns();
        }

        /** Whether the unit asked measures an angle, and that typed counts turns. */
        public boolean isTurnsFor(Unit expected) {
            return unit.isPresent() && unit.get().countsTurns() && expected.measuresAngle();
        }

        /** Whether a prefix was typed without a unit, or as the letter of a code. */
        public boolean hasPrefix() {
            return prefixFactor != 1;
        }
    }

    /** More than one number could be meant, as in "4,700". */
    record Ambiguous(String asTyped, List<Saying> meanings) implements Reading {
        public Ambiguous {
            meanings = List.copyOf(meanings);
        }

        public List<String> meanings(Language language) {
            List<String> said = new ArrayList<>();
            for (Saying meaning : meanings) {
                said.add(language.say(meaning));
            }
            return said;
        }
    }

    /** Not a number with a unit. {@code problem} are sentences for the learner. */
    record Unreadable(String asTyped, List<Saying> problem) implements Reading {
        public Unreadable {
            problem = List.copyOf(problem);
        }

        public String problem(Language language) {
            return language.say(problem);
        }
    }
}
