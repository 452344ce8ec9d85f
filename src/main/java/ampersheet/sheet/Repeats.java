package ampersheet.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;

/**
 * Which problems come again, once a template has no more of them: so that no two seats have two problems in common, and
 * those who have one in common sit far apart. Like {@link SeatDraws} a function of plan, seed and seat.
 *
 * <p>A slot deals its template in rounds. Its first K rounds, before a template runs out, take draws that no other slot
 * and no other round takes; a later round r takes what round r mod M took, for a number M ≤ K, the slot's cycle. So two
 * seats have the problem of a slot in common only if their rounds differ by a multiple of M, and (since a round is as
 * many seats as the pool has members, P) only if their numbers differ by a multiple of M P, give or take P − 1. The
 * cycles are chosen so that no difference of two seats is near multiples of two of them: where P is the same, by
 * numbers without a common divisor, whose common multiples are at least their product. As this would fail from some
 * seat on, that seat is refused.
 *
 * <p>A slot's cycle depends on slots that run out at an earlier seat only, never on those that run out later: nobody's
 * problems change because a class becomes larger.
 */
final class Repeats {
    /** With a cycle of one round, neighbours would have the same problem. */
    private static final int SHORTEST = 2;
    /** Rather a common problem at a far seat than half of the variants left unused. */
    private static final int LARGEST_SHARE_UNUSED = 2;

    private final SeatDraws draws;
    private final Supply supply;
    private final Map<String, Cycle> ownRounds = new ConcurrentSkipListMap<>();
    private volatile Known known = new Known(0, Map.of(), List.of());

    /** How many draws there are. */
    @FunctionalInterface
    interface Supply {
        /**
         * How many a source has, counted up to this many.
         *
         * @param source by its name in {@link ProblemSet#sources}
         */
        long upTo(String source, long count);
    }

    /**
     * A slot whose problems come again.
     *
     * @param rounds that take draws of their own
     * @param from the first seat whose problem came before
     * @param length in rounds
     */
    private record Cycle(Slot slot, int rounds, int from, int length) {
        int members() {
            return slot.pool().size();
        }

        /** The least difference of two seats that have this slot's problem in common. */
        long nearest() {
            return (long) members() * (length - 1) + 1;
        }

        /** No difference of seats below this is one at which both slots may have a problem in common. */
        long apartBelow(Cycle other) {
            if (members() == other.members()) {
                long product = (long) length * other.length / greatestCommonDivisor(length, other.length);
                return members() * (product - 1) + 1;
            }
            long step = (long) members() * length;
            long otherStep = (long) other.members() * other.length;
            long near = members() + other.members() - 2L;
            for (long at = step; at <= SheetId.LAST_SEAT + near; at += step) {
                long beyond = at % otherStep;
                if (beyond <= near && at >= otherStep || otherStep - beyond <= near) {
                    return at - members() + 1;
                }
            }
            return Long.MAX_VALUE;
        }

        private static int greatestCommonDivisor(int one, int other) {
            return other == 0 ? one : greatestCommonDivisor(other, one % other);
        }
    }

    /**
     * What has been found out.
     *
     * @param seat up to which
     * @param variants of each source that has too few for the seats up to this
     * @param cycles of the slots whose problems come again up to this seat, by when they do
     */
    private record Known(int seat, Map<String, Long> variants, List<Cycle> cycles) {
        boolean isShort(SeatDraw draw) {
            return draw.index() >= variants.getOrDefault(draw.source(), Long.MAX_VALUE);
        }

        Cycle cycle(Slot slot) {
            return cycles.stream()
                    .filter(cycle -> cycle.slot().equals(slot))
                    .findFirst()
                    .orElseThrow();
        }
    }

    Repeats(SeatDraws draws, Supply supply) {
        this.draws = draws;
        this.supply = supply;
    }

    /** Whether a problem of this seat may be one that an earlier seat has. */
    boolean begun(int seat) {
        return knownFor(seat).cycles().stream().anyMatch(cycle -> cycle.from() <= seat);
    }

    /** The last seat, up to this one, that has no two problems in common with an earlier one. */
    int lastSeat(int seat) {
        Known now = knownFor(seat);
        long last = seat;
        for (int i = 0; i < now.cycles().size(); i++) {
            Cycle cycle = now.cycles().get(i);
            if (cycle.length() < SHORTEST) {
                last = Math.min(last, cycle.from() - 1L);
                continue;
            }
            for (Cycle before : usable(now.cycles().subList(0, i))) {
                last = Math.min(last, Math.max(cycle.from() - 1L, before.apartBelow(cycle)));
            }
        }
        return (int) last;
    }

    /** The least difference of numbers of two seats up to this one that have a problem in common. */
    long nearest(int seat) {
        return knownFor(seat).cycles().stream()
                .filter(cycle -> cycle.from() <= seat)
                .mapToLong(Cycle::nearest)
                .min()
                .orElse(Long.MAX_VALUE);
    }

    /** Which of the draws it is that this seat gets, its own or one that came before. */
    long index(SeatDraw draw, int seat) {
        Known now = knownFor(seat);
        return now.isShort(draw)
                ? draws.index(
                        draw.slot(),
                        draw.template(),
                        SeatDraws.round(draw.slot(), seat)
                                % now.cycle(draw.slot()).length())
                : draw.index();
    }

    /** The other seats, up to the last, that get the same. */
    List<Integer> alsoAt(SeatDraw draw, int seat, int lastSeat) {
        Known now = knownFor(lastSeat);
        Slot slot = draw.slot();
        List<Integer> also = new ArrayList<>();
        if (now.cycles().stream().noneMatch(cycle -> cycle.slot().equals(slot))
                || !now.variants().containsKey(draw.source())) {
            return also;
        }
        int length = now.cycle(slot).length();
        int own = ownRounds(slot, draw.template(), now.variants().get(draw.source()))
                .rounds();
        int round = SeatDraws.round(slot, seat);
        int first = now.isShort(draw) ? round % length : round;
        for (int other = first; other <= SeatDraws.round(slot, lastSeat); other += length) {
            boolean comesAgain = first < length && other >= own;
            int sits = draws.seat(slot, draw.template(), other);
            if ((other == first || comesAgain) && sits != seat && sits <= lastSeat) {
                also.add(sits);
            }
        }
        return also;
    }

    /** Asks for draws without a lock: a thread that waits for one may be the one that is to work. */
    private Known knownFor(int seat) {
        Known now = known;
        if (seat <= now.seat()) {
            return now;
        }
        Map<String, Long> variants = new TreeMap<>(now.variants());
        for (String source : sources()) {
            long needed = draws.takenBefore(source, seat + 1);
            long there = supply.upTo(source, needed);
            if (there < needed) {
                variants.put(source, there);
            }
        }
        Known found = new Known(seat, variants, cycles(variants, seat));
        known = found;
        return found;
    }

    private TreeSet<String> sources() {
        TreeSet<String> sources = new TreeSet<>();
        draws.ownSlots().forEach(slot -> slot.pool().forEach(template -> sources.add(slot.source(template))));
        return sources;
    }

    private List<Cycle> cycles(Map<String, Long> variants, int seat) {
        List<Cycle> begun = new ArrayList<>();
        for (Slot slot : draws.ownSlots()) {
            slot.pool().stream()
                    .filter(template -> variants.containsKey(slot.source(template)))
                    .map(template -> ownRounds(slot, template, variants.get(slot.source(template))))
                    .min(Comparator.comparing(Cycle::from))
                    .filter(cycle -> cycle.from() <= seat)
                    .ifPresent(begun::add);
        }
        begun.sort(Comparator.comparing(Cycle::from)
                .thenComparing(cycle -> cycle.slot().number()));
        List<Cycle> chosen = new ArrayList<>();
        begun.forEach(cycle -> chosen.add(fitting(cycle, chosen)));
        return List.copyOf(chosen);
    }

    /** As long as the rounds that take draws of their own. */
    private Cycle ownRounds(Slot slot, String template, long variants) {
        return ownRounds.computeIfAbsent(
                slot.number() + " " + template, first -> countOwnRounds(slot, template, variants));
    }

    private Cycle countOwnRounds(Slot slot, String template, long variants) {
        int least = 0;
        int most = SeatDraws.round(slot, SheetId.LAST_SEAT) + 1;
        while (least < most) {
            int middle = (least + most) / 2;
            if (draws.index(slot, template, middle) < variants) {
                least = middle + 1;
            } else {
                most = middle;
            }
        }
        return new Cycle(slot, least, draws.seat(slot, template, least), least);
    }

    /** The longest that keeps apart for all seats there may be, or the one that does so longest. */
    private static Cycle fitting(Cycle wanted, List<Cycle> chosen) {
        List<Cycle> before = usable(chosen);
        Cycle best = wanted;
        long bestBelow = -1;
        for (int length = wanted.rounds();
                length >= Math.max(SHORTEST, wanted.rounds() / LARGEST_SHARE_UNUSED);
                length--) {
            Cycle tried = new Cycle(wanted.slot(), wanted.rounds(), wanted.from(), length);
            long below = before.stream().mapToLong(tried::apartBelow).min().orElse(Long.MAX_VALUE);
            if (below > bestBelow) {
                best = tried;
                bestBelow = below;
            }
            if (below > SheetId.LAST_SEAT) {
                break;
            }
        }
        return best;
    }

    private static List<Cycle> usable(List<Cycle> cycles) {
        return cycles.stream().filter(cycle -> cycle.length() >= SHORTEST).toList();
    }
}
