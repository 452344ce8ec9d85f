package ampersheet.problem;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Values;
import ampersheet.template.ProblemTemplate;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * The problems of one template in the order of a seed: its space of givens is walked through in a permuted order, and
 * what is refused is skipped. Problem {@code k} depends on the template, the seed and {@code k} only, and no two are
 * alike.
 *
 * <p>May be used by several threads.
 */
public final class Draws {
    /** After so many refusals in a row, the template is told off instead of searched for ever. */
    private static final int PATIENCE = 5_000;
    /** The same where models are solved for each, which takes most of the time. */
    private static final int PATIENCE_WITH_MODELS = 1_000;
    /** Positions worked at once, by all processors, when many are still to come. */
    private static final int STRIDE = 256;
    /** Draws tried for the givens that were not chosen. */
    private static final int TRIES_AROUND_CHOSEN = 60;

    private final Workshop workshop;
    private final SpaceOfGivens space;
    private final Permutation order;
    private final Stretch stretch;
    private final long length;
    private final Optional<Stock> stock;

    /** Position in the permuted order of each accepted problem so far. */
    private final Positions accepted = new Positions();

    private long next;
    private final Tally tally = new Tally();

    /**
     * Which positions of the permuted order are walked through: position {@code lane}, and from there every
     * {@code lanes}-th. Two lanes of as many never meet, nor do the two ends of a shared order.
     *
     * @param fromTheEnd counted from the last position
     * @param shared whether the last quarter of the order is kept for those who walk from the end, and no more
     */
    public record Stretch(boolean fromTheEnd, boolean shared, int lane, int lanes) {
        /** All of it. */
        public static final Stretch WHOLE = new Stretch(false, false, 0, 1);

        /**
         * From the other end: as long as the two do not meet in the middle, what is drawn here is on no sheet of the
         * class that draws with this seed.
         */
        public static final Stretch FROM_THE_END = new Stretch(true, false, 0, 1);
        /** All but the last quarter. */
        public static final Stretch FRONT = new Stretch(false, true, 0, 1);

        private static final int SHARE_OF_THE_END = 4;

        public Stretch {
            if (lane < 0 || lane >= lanes) {
                throw new IllegalArgumentException("lane " + lane + " of " + lanes);
            }
        }

        /** One lane of the last quarter. */
        public static Stretch lane(int lane, int lanes) {
            return new Stretch(true, true, lane, lanes);
        }

        /** How many positions it has in an order of this size. */
        private long length(long size) {
            long end = size / SHARE_OF_THE_END;
            long positions = !shared ? size : fromTheEnd ? end : size - end;
            return Math.max(0, (positions - lane + lanes - 1) / lanes);
        }

        private long at(long number, long size) {
            long position = lane + lanes * number;
            return fromTheEnd ? size - 1 - position : position;
        }
    }

    /** @param seed any text, such as the seed of a plan */
    public Draws(Workshop workshop, String seed) {
        this(workshop, seed, Stretch.WHOLE);
    }

    public Draws(Workshop workshop, String seed, Stretch stretch) {
        this(workshop, seed, stretch, Optional.empty());
    }

    /** Only what can be built from these bins, by everybody who draws here at the same time. */
    public static Draws buildable(Workshop workshop, String seed, Inventory inventory) {
        return buildable(workshop, seed, Stretch.WHOLE, inventory);
    }

    public static Draws buildable(Workshop workshop, String seed, Stretch stretch, Inventory inventory) {
        return new Draws(workshop, seed, stretch, Optional.of(new Stock(inventory)));
    }

    private Draws(Workshop workshop, String seed, Stretch stretch, Optional<Stock> stock) {
        this.workshop = workshop;
        this.stock = stock;
        this.stretch = stretch;
        this.space = new SpaceOfGivens(workshop.template());
        this.length = stretch.length(space.size());
        this.order =
                new Permutation(space.size(), "draws", seed, workshop.template().name());
    }

    public ProblemTemplate template() {
        return workshop.template();
    }

    /** Combinations of givens, before any is refused. */
    public long size() {
        return space.size();
    }

    /**
     * @param k from 0
     * @throws DiagnosticException if the template has no {@code k + 1} distinct variants
     */
    public Problem draw(int k) {
        goFar(k);
        long position;
        synchronized (this) {
            while (accepted.size() <= k) {
                if (next == length) {
                    throw new DiagnosticException(exhausted());
                }
                Attempt attempt = at(next);
                note(attempt);
                if (accepted.size() == k + 1) {
                    return ((Attempt.Worked) attempt).problem();
                }
            }
            position = accepted.get(k);
        }
        return ((Attempt.Worked) at(position)).problem();
    }

    /**
     * Whether there is a problem {@code k}; if not, {@link #tally} tells how many there are.
     *
     * @param k from 0
     * @throws DiagnosticException if too many draws in a row are refused to go on looking
     */
    public boolean has(int k) {
        goFar(k);
        synchronized (this) {
            while (accepted.size() <= k && next < length) {
                note(at(next));
            }
            return accepted.size() > k;
        }
    }

    /**
     * The first problem in the order that is not refused once the chosen givens are in it; if all that is tried is
     * refused, the first of all, with what speaks against it.
     */
    public Attempt work(ChosenGivens chosen) {
        Attempt first = null;
        long tries = chosen.coverAll(template()) ? 1 : Math.min(length, TRIES_AROUND_CHOSEN);
        for (long position = 0; position < tries; position++) {
            Attempt attempt = workshop.workChosen(chosen.putInto(givens(position)));
            if (attempt instanceof Attempt.Worked worked && worked.notes().isEmpty()) {
                return attempt;
            }
            if (first == null || first instanceof Attempt.Refused && attempt instanceof Attempt.Worked) {
                first = attempt;
            }
        }
        return first;
    }

    /** Refusals among everything tried so far. */
    public synchronized Tally tally() {
        return tally.copy();
    }

    /** What becomes of the givens at a position of the permuted order. */
    Attempt at(long position) {
        Attempt attempt = workshop.work(givens(position));
        return stock.isPresent() && attempt instanceof Attempt.Worked worked
                ? stock.get()
                        .objection(worked.problem())
                        .<Attempt>map(refused -> refused)
                        .orElse(attempt)
                : attempt;
    }

    Values givens(long position) {
        return space.values(order.at(stretch.at(position, space.size())));
    }

    /**
     * Gets near a distant problem with all processors. Works outside the lock, since a thread that waits for others to
     * work may be given a task that draws.
     */
    private void goFar(int k) {
        while (true) {
            long from;
            synchronized (this) {
                if (k - accepted.size() < STRIDE || length - next < STRIDE) {
                    return;
                }
                from = next;
            }
            List<Attempt> attempts = LongStream.range(from, from + STRIDE)
                    .parallel()
                    .mapToObj(this::at)
                    .toList();
            synchronized (this) {
                if (next == from) {
                    attempts.forEach(this::note);
                }
            }
        }
    }

    private synchronized void note(Attempt drawn) {
        Attempt attempt = stock.isPresent() && drawn instanceof Attempt.Worked worked
                ? stock.get()
                        .take(worked.problem())
                        .<Attempt>map(refused -> refused)
                        .orElse(drawn)
                : drawn;
        if (attempt instanceof Attempt.Worked) {
            accepted.add(next);
        }
        tally.add(attempt);
        next++;
        if (tally.refusedInARow() >= PATIENCE || tally.refusedByModelsInARow() >= PATIENCE_WITH_MODELS) {
            throw new DiagnosticException(fruitless());
        }
    }

    /** Of a template that {@linkplain #has has not} as many as are wanted. */
    public Diagnostic exhausted() {
        return Diagnostic.error(
                Place.inFile(template().name()),
                "the template has only " + accepted.size() + " distinct variants" + " (of " + space.size()
                        + " combinations of its givens; refused: " + tally.reasons() + ")",
                "a variant of its own for everyone who gets this problem",
                stock.isPresent()
                        ? "Put more parts or other values into the bins, or another template of the same skill "
                                + "into the pool."
                        : "Widen the ranges of the givens, or put another template of the same skill into the pool.");
    }

    private Diagnostic fruitless() {
        return Diagnostic.error(
                Place.inFile(template().name()),
                tally.refusedInARow() + " draws in a row were refused (" + tally.reasons() + ")",
                "a template that refuses less than 30 % of its draws",
                "Run prove on it and narrow the ranges of the givens to what can be asked.");
    }
}
