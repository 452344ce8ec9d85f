package ampersheet.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;

/**
 * Whom the variants of a group of seats go to, so that everybody's problems together are about equally hard. Seats 1 to
 * 25 are a group, 26 to 50 the next. Its seats exchange variants of one template with each other until no exchange of
 * two brings their sums nearer together; which template a seat has at a place stays.
 *
 * <p>Like {@link SeatDraws} a function of plan, seed and seat, not of the class: all seats of a group are dealt to,
 * whether anybody sits there or not. So who comes late, a slice and a larger class change nobody's sheet, no two groups
 * meet, and in return a group takes all of its variants even for one seat. How far apart the means of two groups lie is
 * left to chance, a fifth of what it does to two seats.
 */
public final class EvenDeal {
    /** Of one room, and of Retake's fifties an even part. */
    static final int GROUP = 25;
    /** Groups that are kept; of a large class those nearby, since sheets are made in their order. */
    private static final int MOST_KNOWN = 64;

    private final ProblemSet set;
    private final Weighing weighing;
    private final ConcurrentSkipListMap<Integer, Dealt> known = new ConcurrentSkipListMap<>();

    /** How hard a variant is. */
    @FunctionalInterface
    interface Weighing {
        /** @param source by its name in {@link ProblemSet#sources} */
        int points(String source, long index);
    }

    /**
     * How far apart the summed difficulties of a class lie, as standard deviations.
     *
     * @param evenly as dealt
     * @param asTheyCome if nothing were exchanged
     */
    public record Spread(double evenly, double asTheyCome) {
        /** A wish: what a plan can gain is at least this much. */
        private static final double MOST = 0.6;

        public boolean isWorthIt() {
            return evenly <= MOST * asTheyCome;
        }
    }

    private record Place(int seat, int slot) {}

    /**
     * @param before sum of the points of each seat, as variants come
     * @param after the same as dealt
     */
    private record Dealt(Map<Place, Long> indices, long[] before, long[] after) {}

    /** A variant that may be exchanged, and the seat that has it. */
    private static final class Held {
        private final Place place;
        private long index;
        private int points;

        Held(Place place, long index, int points) {
            this.place = place;
            this.index = index;
            this.points = points;
        }
    }

    EvenDeal(ProblemSet set, Weighing weighing) {
        this.set = set;
        this.weighing = weighing;
    }

    /** The last seat for which the plan keeps numbers may cut a group short. */
    static int lastOfGroup(Plan plan, int seat) {
        return Math.min(
                (seat + GROUP - 1) / GROUP * GROUP,
                Math.max(seat, plan.portion().seats()));
    }

    /** Which of the draws it is that this seat gets. */
    long index(SeatDraw draw, int seat) {
        return group(seat).indices().getOrDefault(new Place(seat, draw.slot().number()), draw.index());
    }

    /** Of seats 1 to the last. */
    Spread spread(int lastSeat) {
        double[] before = new double[lastSeat];
        double[] after = new double[lastSeat];
        for (int seat = 1; seat <= lastSeat; seat++) {
            int inGroup = (seat - 1) % GROUP;
            before[seat - 1] = group(seat).before()[inGroup];
            after[seat - 1] = group(seat).after()[inGroup];
        }
        return new Spread(deviation(after), deviation(before));
    }

    private static double deviation(double[] sums) {
        double mean = Arrays.stream(sums).average().orElse(0);
        return Math.sqrt(Arrays.stream(sums)
                .map(sum -> (sum - mean) * (sum - mean))
                .average()
                .orElse(0));
    }

    /** Without a lock, and so perhaps worked twice: a thread that waits for one may be the one that is to work. */
    private Dealt group(int seat) {
        int group = (seat - 1) / GROUP;
        Dealt dealt = known.get(group);
        if (dealt == null) {
            dealt = deal(group * GROUP + 1, lastOfGroup(set.plan(), seat));
            known.putIfAbsent(group, dealt);
            while (known.size() > MOST_KNOWN) {
                boolean firstIsFarther = group - known.firstKey() > known.lastKey() - group;
                known.remove(firstIsFarther ? known.firstKey() : known.lastKey());
            }
        }
        return dealt;
    }

    private Dealt deal(int first, int last) {
        long[] sums = new long[last - first + 1];
        Map<String, List<Held>> bySource = new TreeMap<>();
        for (int seat = first; seat <= last; seat++) {
            for (SeatDraw draw : set.draws(seat)) {
                if (!(draw.slot().support() instanceof Support.Full)) { // what is shown worked nobody has to solve
                    int points = weighing.points(draw.source(), draw.index());
                    sums[seat - first] += points;
                    bySource.computeIfAbsent(draw.source(), source -> new ArrayList<>())
                            .add(new Held(new Place(seat, draw.slot().number()), draw.index(), points));
                }
            }
        }
        long[] before = sums.clone();
        boolean better;
        do {
            better = false;
            for (List<Held> held : bySource.values()) {
                better |= exchange(held, sums, first);
            }
        } while (better);
        Map<Place, Long> indices = new LinkedHashMap<>();
        bySource.values().forEach(held -> held.forEach(one -> indices.put(one.place, one.index)));
        return new Dealt(indices, before, sums);
    }

    /** Each exchange makes the sum of the squares smaller by a whole number, so that there is an end. */
    private static boolean exchange(List<Held> held, long[] sums, int first) {
        boolean better = false;
        for (int i = 0; i < held.size(); i++) {
            for (int k = i + 1; k < held.size(); k++) {
                Held one = held.get(i);
                Held other = held.get(k);
                int at = one.place.seat() - first;
                int otherAt = other.place.seat() - first;
                long more = (long) other.points - one.points;
                if (at != otherAt && more * (sums[at] - sums[otherAt] + more) < 0) {
                    sums[at] += more;
                    sums[otherAt] -= more;
                    long index = one.index;
                    one.index = other.index;
                    other.index = index;
                    one.points += (int) more;
                    other.points -= (int) more;
                    better = true;
                }
            }
        }
        return better;
    }
}
