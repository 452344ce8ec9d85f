package ampersheet.issue;

import java.util.BitSet;
import java.util.List;
import java.util.function.Consumer;

/**
 * A large class or slice in steps, so that no more of it is held in memory than one, and a run that was cut off is
 * taken up where it ended. A step is a slice again, of as many times more.
 *
 * @param slice that is divided
 * @param steps of which it consists
 */
record Steps(Slice slice, int steps) {
    /** The steps that a slice takes of a class of so many seats: as many for all slices of it. */
    static Steps of(Slice slice, int seats) {
        long inSteps = (long) slice.of() * Issue.STEP;
        return new Steps(slice, (int) Math.max(1, (seats + inSteps - 1) / inSteps));
    }

    Slice step(int number) {
        return new Slice((slice.number() - 1) * steps + number, slice.of() * steps);
    }

    /** Makes what is not there or not right; how many files changed. */
    int make(Issue.Run run, SliceParts parts, int threads, Progress progress) {
        BitSet right = new BitSet();
        int toMake = 0;
        for (int number = 1; number <= steps; number++) {
            boolean there = parts.right(step(number)).isPresent();
            right.set(number, there);
            toMake += there ? 0 : step(number).of(run.roster()).size();
        }
        int all = toMake;
        int files = 0;
        for (int number = right.nextClearBit(1); number <= steps; number = right.nextClearBit(number + 1)) {
            Slice step = step(number);
            List<Issue.Written> made =
                    run.seats(step.of(run.roster()), threads, parts.besides(), (of, some) -> progress.made(of, all));
            parts.write(step, made, run.maker().tallies(), run.output());
            files += Issue.files(made);
        }
        return files;
    }

    boolean areRight(SliceParts parts) {
        for (int number = 1; number <= steps; number++) {
            if (parts.right(step(number)).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    /** What was made, as it was noted. */
    void each(Issue.Run run, SliceParts parts, Consumer<Issue.Written> to) {
        for (int number = 1; number <= steps; number++) {
            SlicePart part = parts.read(step(number)).orElseThrow(parts::gone);
            parts.written(step(number), part, run.keeping()).forEach(to);
        }
    }
}
