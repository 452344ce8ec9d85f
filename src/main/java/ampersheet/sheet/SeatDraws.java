package ampersheet.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToIntFunction;

/**
 * Which draw of which template each slot of each seat gets: a pure function of seed, slots and seat, for any seat
 * without the others.
 *
 * <p>Seats are dealt to a pool in rounds of as many seats as it has members. Within a round every member comes up once,
 * in an order drawn for the round; so each member gets an equal share of any class, and neighbours get different ones.
 * Draws of a template are numbered through the whole plan: the number is how often earlier seats, and earlier slots of
 * the same seat, have taken from it. With other givens fixed it counts as another template. So a template used in
 * several slots never meets itself, and no draw is left out.
 *
 * <p>Where examples are shared, the first draws of a template are theirs, one for each slot of examples that it may
 * stand in, and everybody gets these.
 */
final class SeatDraws {
    private final String seed;
    private final List<Slot> slots;
    private final boolean sharedExamples;
    private final List<Slot> ownSlots;
    private final ToIntFunction<String> passedOver;

    SeatDraws(String seed, List<Slot> slots, boolean sharedExamples) {
        this(seed, slots, sharedExamples, source -> 0);
    }

    /** @param passedOver how many draws of a source go before the first that a seat takes here */
    SeatDraws(String seed, List<Slot> slots, boolean sharedExamples, ToIntFunction<String> passedOver) {
        this.seed = seed;
        this.slots = List.copyOf(slots);
        this.sharedExamples = sharedExamples;
        this.passedOver = passedOver;
        this.ownSlots = slots.stream().filter(slot -> !isShared(slot)).toList();
    }

    /** Those that take a draw of their own for each seat. */
    List<Slot> ownSlots() {
        return ownSlots;
    }

    private boolean isShared(Slot slot) {
        return sharedExamples && slot.example();
    }

    /** Seats are dealt to a slot in rounds, from 0, in each of which every member of its pool comes up once. */
    static int round(Slot slot, int seat) {
        return (seat - 1) / slot.pool().size();
    }

    /** Who gets this member of the slot's pool in this round. */
    int seat(Slot slot, String template, int round) {
        int members = slot.pool().size();
        int position = Math.floorMod(order(slot, round).indexOf(template) - slot.member(), members);
        return round * members + position + 1;
    }

    /** The draw that this slot takes of this member in this round. */
    long index(Slot slot, String template, int round) {
        return of(seat(slot, template, round)).get(slot.number()).index();
    }

    /** @param seat from 1 */
    List<SeatDraw> of(int seat) {
        Map<String, Long> takenByThisSeat = new TreeMap<>();
        List<SeatDraw> draws = new ArrayList<>();
        for (Slot slot : slots) {
            String template = template(slot, seat);
            String source = slot.source(template);
            int before = passedOver.applyAsInt(source);
            if (isShared(slot)) {
                draws.add(new SeatDraw(slot, template, before + shared(source, slot.number())));
            } else {
                long here = takenByThisSeat.merge(source, 1L, Long::sum) - 1;
                draws.add(new SeatDraw(slot, template, before + takenBefore(source, seat) + here));
            }
        }
        return draws;
    }

    private String template(Slot slot, int seat) {
        int members = slot.pool().size();
        int round = (seat - 1) / members;
        int position = (seat - 1) % members + slot.member();
        return order(slot, round).get(position % members);
    }

    /** How many draws of a source are shared examples of the slots before this one. */
    private long shared(String source, int slotNumber) {
        return slots.stream()
                .filter(slot -> slot.number() < slotNumber && isShared(slot) && mayShow(slot, source))
                .count();
    }

    private static boolean mayShow(Slot slot, String source) {
        return slot.pool().stream().anyMatch(member -> slot.source(member).equals(source));
    }

    /**
     * How many draws the seats before this one have taken from a source, a template or one with some givens fixed; what
     * all have in common is counted before the first.
     */
    long takenBefore(String source, int seat) {
        long taken = shared(source, slots.size());
        for (Slot slot : ownSlots) {
            if (mayShow(slot, source)) {
                int members = slot.pool().size();
                int round = (seat - 1) / members;
                taken += round;
                for (int earlier = round * members + 1; earlier < seat; earlier++) {
                    if (slot.source(template(slot, earlier)).equals(source)) {
                        taken++;
                    }
                }
            }
        }
        return taken;
    }

    private List<String> order(Slot slot, int round) {
        if (slot.pool().size() == 1) {
            return slot.pool();
        }
        int firstOfEntry = slot.choice() - slot.member();
        Map<String, String> ranks = new TreeMap<>();
        for (String member : slot.pool()) {
            ranks.put(
                    member,
                    Fingerprint.of("pool", seed, Integer.toString(firstOfEntry), Integer.toString(round), member));
        }
        List<String> order = new ArrayList<>(slot.pool());
        order.sort(Comparator.comparing(ranks::get));
        return order;
    }
}
