package ampersheet.figure;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;

/**
 * Which rows of a tile, or which columns, bear their number, and where its ports lie so that lines leave the numbers
 * alone. A number stands at its own row or nowhere.
 *
 * @param pixels of the tile in this direction
 * @param pitch between them
 * @param half of what a number takes in this direction, in pixels of the page
 * @param room that a number has from one to the next where all are regular
 */
record Numbering(int pixels, double pitch, double half, double room) {
    /** Between a number and what is next to it. */
    private static final double CLEARANCE = 2.4;

    private static final double NO_MARKED_NUMBER = 1000;
    private static final double NO_FIRST_NUMBER = 100;
    private static final double ONE_NUMBER_LESS = 1;
    private static final double OFF_THE_MIDDLE = 0.4;
    /** Places for a port that are compared, in pixels of the page. */
    private static final double FINEST = 0.5;

    /**
     * The numbered ones: those that are marked, the first, so that one need not count on from another tile, regular
     * ones after it, and the last, as far as there is room.
     *
     * @param marked whose numbers matter more than others
     * @param free whether nothing else is where this one's number would stand
     */
    List<Integer> numbered(Set<Integer> marked, IntPredicate free) {
        List<Integer> wanted = new ArrayList<>(marked);
        wanted.add(0);
        int step = step();
        if (2 * step < pixels) {
            for (int i = step; i < pixels; i += step) {
                wanted.add(i);
            }
        }
        wanted.add(pixels - 1);
        Set<Integer> numbered = new TreeSet<>();
        for (int i : wanted) {
            if (isClear(i, numbered) && free.test(i)) {
                numbered.add(i);
            }
        }
        for (int i = 0; numbered.isEmpty() && i < pixels; i++) {
            if (free.test(i)) {
                numbered.add(i); // any is better than none
            }
        }
        return List.copyOf(numbered);
    }

    private boolean isClear(int i, Set<Integer> numbered) {
        for (int other : numbered) {
            if (Math.abs(other - i) * pitch < 2 * half + 2 * CLEARANCE) {
                return false;
            }
        }
        return true;
    }

    private int step() {
        for (int step : new int[] {1, 2, 5, 10, 20}) {
            if (step * pitch >= room) {
                return step;
            }
        }
        return 50;
    }

    /**
     * Where the lines of the ports cost the fewest numbers, nearest to the middle.
     *
     * @param marked in each tile where the lines meet the numbers
     * @param beyond the last pixel, how far the middle of a port may lie
     * @param lines as they lie on either side of the place wanted; none where no line meets the numbers
     * @return from the middle of the pixels
     */
    double port(Collection<Set<Integer>> marked, double beyond, double... lines) {
        Map<Set<Integer>, Integer> undisturbed = new LinkedHashMap<>();
        marked.forEach(here -> undisturbed.computeIfAbsent(
                here, set -> numbered(set, i -> true).size()));
        double middle = (pixels - 1) * pitch / 2;
        double best = 0;
        double least = Double.MAX_VALUE;
        for (double away = 0; away <= middle + beyond; away += FINEST) {
            for (int side : new int[] {1, -1}) {
                double off = side * away;
                double cost = OFF_THE_MIDDLE * away / pitch;
                for (Set<Integer> here : marked) {
                    if (cost >= least) {
                        break; // no line saves a number
                    }
                    cost += cost(here, undisturbed.get(here), middle + off, lines);
                }
                if (cost < least) {
                    least = cost;
                    best = off;
                }
            }
        }
        return best;
    }

    private double cost(Set<Integer> marked, int undisturbed, double port, double... lines) {
        List<Integer> numbered = numbered(marked, i -> {
            boolean free = true;
            for (double line : lines) {
                free = free && Math.abs(port + line - i * pitch) >= half + Stroke.LINE.width() / 2 + CLEARANCE;
            }
            return free;
        });
        double cost = ONE_NUMBER_LESS * (undisturbed - numbered.size());
        cost += numbered.containsAll(marked) ? 0 : NO_MARKED_NUMBER;
        return cost + (numbered.contains(0) || numbered.stream().anyMatch(marked::contains) ? 0 : NO_FIRST_NUMBER);
    }
}
