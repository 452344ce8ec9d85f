package ampersheet.problem;

import java.util.stream.LongStream;

/**
 * How many distinct problems a template has.
 *
 * @param combinations of its givens, before any is refused
 */
public record Variants(long combinations, long count, Basis basis) {
    private static final int SAMPLE = 2_000;

    public enum Basis {
        /** Every combination was worked by both routes. */
        PROVEN("proven by both routes"),
        /** Every combination was worked by the first route; what the models refuse is not taken off. */
        COUNTED("counted by the first route"),
        /** Scaled up from a sample. */
        ESTIMATED("estimated from a sample");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Counts without solving a model: exactly up to {@code most} combinations, from a sample of 2000 above. */
    public static Variants count(Workshop workshop, long most) {
        SpaceOfGivens space = new SpaceOfGivens(workshop.template());
        if (space.size() <= Math.max(most, SAMPLE)) {
            long passing = LongStream.range(0, space.size())
                    .parallel()
                    .filter(index -> workshop.passesFirstRoute(space.values(index)))
                    .count();
            return new Variants(space.size(), passing, Basis.COUNTED);
        }
        Permutation order =
                new Permutation(space.size(), "variants", workshop.template().name());
        long passing = LongStream.range(0, SAMPLE)
                .parallel()
                .filter(position -> workshop.passesFirstRoute(space.values(order.at(position))))
                .count();
        return new Variants(space.size(), Math.round((double) space.size() * passing / SAMPLE), Basis.ESTIMATED);
    }
}
